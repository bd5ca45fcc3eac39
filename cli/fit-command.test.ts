/** `fit` with real files: the page, the new revision that is written, and what is refused. */
import { copyFileSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { stripVTControlCharacters } from 'node:util';
import { ramAt, readRange, tuningsOf } from '@fallwright/records';
import { afterAll, expect, test, vi } from 'vitest';
import { BadInput } from './bad-input.ts';
import { program } from './program.ts';

const examples = join(import.meta.dirname, '..', 'examples');
const swallow = join(examples, 'bench', 'swallow-test.yaml');
const folder = mkdtempSync(join(tmpdir(), 'fallwright-fit-'));
afterAll(() => rmSync(folder, { recursive: true }));

async function printed(...args: readonly string[]): Promise<string> {
  const write = vi.spyOn(process.stdout, 'write').mockReturnValue(true);
  try {
    await program().parseAsync(['node', 'fallwright', 'fit', ...args]);
    return stripVTControlCharacters(write.mock.calls.map(([text]) => String(text)).join(''));
  } finally {
    write.mockRestore();
  }
}

test('a fitted ram is a new revision with its spreads, and the one before is kept', async () => {
  const file = join(folder, 'rams.yaml');
  copyFileSync(join(examples, 'workshop', 'rams.yaml'), file);
  const page = await printed(file, swallow, '--ram', 'swallow-25', '--write');
  expect(page).toContain('90 % limits');
  expect(page).toContain('Not told by these tests');
  expect(page).toContain('swallow-25@4 stands in');
  expect(page.split('\n').every((line) => line.length <= 80)).toBe(true);
  const read = readRange(readFileSync(file, 'utf8'));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const found = ramAt(read.range, 'swallow-25@4');
  expect(found?.isNewest).toBe(true);
  const parts = found?.revision.ram;
  if (typeof parts !== 'object') throw new Error('a fitted ram has parts');
  expect(parts.deliveryValve?.backFlow?.spread).toBeGreaterThan(0);
  expect(parts.deliveryValve?.backFlow?.origin).toBe('measured');
  // Every weight that can be fitted is told with the fitted force, under the name it had.
  const before = ramAt(read.range, 'swallow-25@3')?.revision;
  if (!before || !found) throw new Error('both revisions stand in the range');
  expect(found.revision.settings).toBeUndefined();
  expect(before.settings).toBeDefined();
  expect(tuningsOf(found.revision).map(({ name }) => name)).toEqual(
    tuningsOf(before).map(({ name }) => name),
  );
  for (const { weightInWater } of found.revision.tunings ?? []) {
    expect(weightInWater?.spread).toBeGreaterThan(0);
  }
});

test('a range of several rams asks which was tested', async () => {
  const range = join(examples, 'workshop', 'rams.yaml');
  await expect(printed(range, swallow)).rejects.toBeInstanceOf(BadInput);
  await expect(printed(range, swallow, '--ram', 'none-9')).rejects.toBeInstanceOf(BadInput);
});

test('--help shows an example', async () => {
  const write = vi.spyOn(process.stdout, 'write').mockReturnValue(true);
  await expect(program().parseAsync(['node', 'fallwright', 'fit', '--help'])).rejects.toThrow();
  expect(write.mock.calls.join('')).toContain('$ npx fallwright fit examples/workshop/rams.yaml');
  write.mockRestore();
});
