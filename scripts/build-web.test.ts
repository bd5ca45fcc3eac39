import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { hashOfSources } from './build-web.mjs';

let clone: string;
beforeEach(() => {
  clone = mkdtempSync(join(tmpdir(), 'fallwright-clone-'));
  write('web/src/page.tsx', 'a page');
  write('engine/water/density.ts', 'density');
  write('package-lock.json', '{}');
});
afterEach(() => rmSync(clone, { recursive: true }));

function write(file: string, content: string): void {
  mkdirSync(dirname(join(clone, file)), { recursive: true });
  writeFileSync(join(clone, file), content);
}

test.each([
  ['web/src/page.tsx', 'another page'],
  ['engine/water/density.ts', 'another density'],
  ['units/parse.ts', 'a new file'],
  ['web/public/icon.svg', 'a new icon'],
  ['package-lock.json', '{"packages":{}}'],
])('a change of %s makes the built app stale', (file, content) => {
  const before = hashOfSources(clone);
  write(file, content);
  expect(hashOfSources(clone)).not.toBe(before);
});

test.each([
  ['web/src/page.tsx', 'a page'],
  ['web/dist/index.html', 'built'],
  ['web/tests/page.spec.ts', 'a test'],
  ['engine/water/density.test.ts', 'a test'],
  ['web/node_modules/pump/index.js', 'a package'],
  ['server/app.ts', 'the server'],
])('%s with nothing new for the app does not', (file, content) => {
  const before = hashOfSources(clone);
  write(file, content);
  expect(hashOfSources(clone)).toBe(before);
});

test('a file that moves makes it stale, though no byte has changed', () => {
  write('web/src/a.ts', 'x');
  const before = hashOfSources(clone);
  rmSync(join(clone, 'web/src/a.ts'));
  write('web/src/b.ts', 'x');
  expect(hashOfSources(clone)).not.toBe(before);
});
