/** `beats` and `test` with real files; one of them as a real process, the rest in this one, which is ten times as quick. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { stripVTControlCharacters } from 'node:util';
import { seededStream } from '@fallwright/engine';
import { afterAll, afterEach, beforeAll, expect, test, vi } from 'vitest';
import { BadInput } from './bad-input.ts';
import { program } from './program.ts';

const bench = join(import.meta.dirname, '..', 'examples', 'bench');

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'fallwright-bench-'));
});
afterAll(() => rmSync(folder, { recursive: true }));
afterEach(() => vi.restoreAllMocks());

/** What a command prints. */
async function printed(...args: readonly string[]): Promise<string> {
  const write = vi.spyOn(process.stdout, 'write').mockReturnValue(true);
  try {
    await program().parseAsync(['node', 'fallwright', ...args]);
    return stripVTControlCharacters(write.mock.calls.map(([text]) => String(text)).join(''));
  } finally {
    write.mockRestore();
  }
}

/** What a command says of a file that it cannot use. */
async function refused(...args: readonly string[]): Promise<string> {
  try {
    await printed(...args);
  } catch (error) {
    if (!(error instanceof BadInput)) throw error;
    return error.problems
      .map(({ line, field, message }) => `${line} ${field} ${message}`)
      .join('\n');
  }
  throw new Error('it was read');
}

function file(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

/** Sixteen bits, one channel: 20 s of a knock every 0.75 s in hiss, or of nothing. */
function recording({ isSilent = false } = {}): Uint8Array {
  const rate = 8000;
  const next = seededStream(1, 'hiss');
  const bytes = Buffer.alloc(44 + 2 * 20 * rate);
  bytes.write('RIFF');
  bytes.writeUInt32LE(bytes.length - 8, 4);
  bytes.write('WAVEfmt ', 8);
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(1, 22);
  bytes.writeUInt32LE(rate, 24);
  bytes.writeUInt32LE(2 * rate, 28);
  bytes.writeUInt16LE(2, 32);
  bytes.writeUInt16LE(16, 34);
  bytes.write('data', 36);
  bytes.writeUInt32LE(2 * 20 * rate, 40);
  for (let i = 0; i < 20 * rate && !isSilent; i++) {
    const t = (i / rate) % 0.75;
    const knock = Math.exp(-t / 0.02) * Math.sin(2 * Math.PI * 700 * t);
    bytes.writeInt16LE(Math.round(15000 * knock + 3000 * (next() - 0.5)), 44 + 2 * i);
  }
  return bytes;
}

const isNarrow = (page: string) => page.split('\n').every((line) => line.length <= 80);

test('beats of a log, on a page of 80 columns with a strip of one line', async () => {
  const page = await printed('beats', join(bench, 'tarn-hollow-log.csv'), '--units', 'us');
  expect(page).toMatch(/^120\.\d+ ± 0\.\d+ beats a minute\n20 beats/);
  expect(page).toMatch(/\n[·|!]{80}\n/);
  expect(page).toContain('the log also has');
  expect(page).toMatch(/Heads from −\d+\.?\d* ft/);
  expect(isNarrow(page)).toBe(true);
});

test('beats of a recording through a pipe, as a process', () => {
  const launcher = join(import.meta.dirname, 'fallwright.mjs');
  const { status, stdout, stderr } = spawnSync(process.execPath, [launcher, 'beats', '-'], {
    input: recording(),
    encoding: 'utf8',
    env: { ...process.env, FORCE_COLOR: undefined },
  });
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  expect(stdout).toMatch(/^80\.00 ± \d/);
});

test('beats for programs: each with its time, and why there are none', async () => {
  const record = JSON.parse(await printed('beats', file('ram.wav', recording()), '--json'));
  expect(record).toMatchObject({ fallwright: 'beats@1', heard: true, missed: 0, log: null });
  expect(Math.abs(record.beatsPerMinute - 80)).toBeLessThan(0.1);
  expect(record.beats.length).toBeGreaterThan(24);
  const silent = file('silent.wav', recording({ isSilent: true }));
  expect(await printed('beats', silent)).toMatch(/^No beats\.\nThere is no sound/);
  expect(JSON.parse(await printed('beats', silent, '--json'))).toMatchObject({ whyNone: 'silent' });
});

test.each([
  ['song.mp3', 'ID3\u0003\u0000', /MP3.*WAV/],
  ['log.csv', 'time,pressure\n0,1\n1,2\n', /no unit/],
  ['empty.wav', '', /empty/],
])('%s is refused with what to do', async (name, content, words) => {
  expect(await refused('beats', file(name, content))).toMatch(words);
});

test('a folder and a file that is not there are refused', async () => {
  expect(await refused('beats', folder)).toContain('folder');
  expect(await refused('beats', join(folder, 'none.wav'))).toContain('no such file');
});

test('a test on a page of 80 columns: finding, tables, efficiencies, cautions', async () => {
  const page = await printed('test', join(bench, 'swallow-test.yaml'));
  expect(page).toMatch(/^Swallow 25 at three lifts\n/);
  expect(page.replace(/\s+/g, ' ')).toContain(
    'Delivers a fifth less than predicted at high lift (13.3 m): look at the delivery valve',
  );
  expect(page).toMatch(/delivered .*−21 % .*off\n/);
  expect(page).toContain('by Rankine');
  expect(page).toContain('never plug the waste valve');
  expect(isNarrow(page)).toBe(true);
});

test('a reading that breaks conservation is questioned, in words and for programs', async () => {
  const text = readFileSync(join(bench, 'swallow-test.yaml'), 'utf8');
  const path = file('leak.yaml', text.replace('handStrokes: 9', 'supply: [9 L/min, 9.1 L/min]'));
  expect(await printed('test', path)).toMatch(
    /Cannot be: Supply, waste and delivery differ by 2\.\d+ L\/min/,
  );
  const record = JSON.parse(await printed('test', path, '--json'));
  expect(record.readings[0].doubts[0]).toMatchObject({ kind: 'waterBalance' });
  expect(record.readings[2].residuals[1]).toMatchObject({
    quantity: 'deliveryFlow',
    agrees: false,
  });
});

test('a test with a wrong unit is refused with its line, and a site is no test', async () => {
  const text = readFileSync(join(bench, 'swallow-test.yaml'), 'utf8');
  const wrong = file('wrong.yaml', text.replace('0.90 bar', '0.90 L/min'));
  expect(await refused('test', wrong)).toMatch(/^\d+ readings\[1\]\.backPressure/);
  const site = join(bench, '..', 'larkrise-spring.yaml');
  expect(await refused('test', site)).toContain('a site and not a test');
});

test.each(['beats', 'test'])('%s --help shows an example', async (command) => {
  const write = vi.spyOn(process.stdout, 'write').mockReturnValue(true);
  await expect(program().parseAsync(['node', 'fallwright', command, '--help'])).rejects.toThrow();
  expect(write.mock.calls.join('')).toContain(`$ npx fallwright ${command} examples/bench/`);
});

test('the schema of a test is printed', async () => {
  const committed = new URL('../records/schema/test.schema.json', import.meta.url);
  expect(JSON.parse(await printed('schema', 'test'))).toEqual(
    JSON.parse(readFileSync(committed, 'utf8')),
  );
});
