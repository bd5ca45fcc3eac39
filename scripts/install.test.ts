import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { runsTypeScript, whatIsMissing } from './install.mjs';

let clone: string;
beforeEach(() => {
  clone = mkdtempSync(join(tmpdir(), 'fallwright-clone-'));
});
afterEach(() => rmSync(clone, { recursive: true }));

const PUMP = { version: '1.2.0', integrity: 'sha512-aaaa' };

function write(wanted: object, installed?: object): void {
  const packages = { '': { name: 'workspace' }, ...wanted };
  writeFileSync(join(clone, 'package-lock.json'), JSON.stringify({ packages }));
  if (installed === undefined) return;
  mkdirSync(join(clone, 'node_modules'));
  writeFileSync(
    join(clone, 'node_modules', '.package-lock.json'),
    JSON.stringify({ packages: installed }),
  );
}

describe('what is missing', () => {
  test('everything, in a fresh clone or after an install that was cut short', () => {
    write({ 'node_modules/pump': PUMP });
    expect(whatIsMissing(clone)).toBe('nothing is installed yet');
  });

  test('nothing, when the installed packages are those of the lockfile', () => {
    write({ 'node_modules/pump': PUMP }, { 'node_modules/pump': PUMP });
    expect(whatIsMissing(clone)).toBeUndefined();
  });

  test('a package that the lockfile has got since', () => {
    write({ 'node_modules/pump': PUMP, 'node_modules/pipe': PUMP }, { 'node_modules/pump': PUMP });
    expect(whatIsMissing(clone)).toBe('node_modules/pipe is missing');
  });

  test('another version, or the same version with other content', () => {
    write({ 'node_modules/pump': PUMP }, { 'node_modules/pump': { ...PUMP, version: '1.1.0' } });
    expect(whatIsMissing(clone)).toBe('node_modules/pump is 1.1.0, the lockfile wants 1.2.0');
    rmSync(join(clone, 'node_modules'), { recursive: true });
    write(
      { 'node_modules/pump': PUMP },
      { 'node_modules/pump': { ...PUMP, integrity: 'sha512-b' } },
    );
    expect(whatIsMissing(clone)).toBeDefined();
  });

  test('an optional package for another kind of machine is not', () => {
    write({ 'node_modules/pump-for-windows': { ...PUMP, optional: true } }, {});
    expect(whatIsMissing(clone)).toBeUndefined();
  });
});

test('which Node.js runs TypeScript as it is', () => {
  expect(['20.20.2', '22.17.9', '18.0.0'].map(runsTypeScript)).toEqual([false, false, false]);
  expect(['22.18.0', '22.20.1', '24.0.0', '25.1.0'].map(runsTypeScript)).toEqual([
    true,
    true,
    true,
    true,
  ]);
});
