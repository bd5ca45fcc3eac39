import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { findChromium } from './find-chromium.mjs';

const folder = mkdtempSync(join(tmpdir(), 'fallwright-chromium-'));
afterAll(() => rmSync(folder, { recursive: true }));

function program(name: string, mode: number): string {
  const path = join(folder, name);
  writeFileSync(path, '#!/bin/sh\n');
  chmodSync(path, mode);
  return path;
}

test('the one named in FALLWRIGHT_CHROMIUM goes before one on the path', () => {
  const named = program('my-browser', 0o755);
  program('chromium', 0o755);
  expect(findChromium({ FALLWRIGHT_CHROMIUM: named, PATH: folder })).toBe(named);
  expect(findChromium({ PATH: folder })).toBe(join(folder, 'chromium'));
});

test('a name that leads nowhere is an error, not replaced by another browser', () => {
  program('chromium', 0o755);
  const missing = join(folder, 'not-there');
  expect(() => findChromium({ FALLWRIGHT_CHROMIUM: missing, PATH: folder })).toThrow(missing);
});
