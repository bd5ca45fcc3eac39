/** `beats` and `test` as a person or a script meets them: a real process with real files. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { seededStream } from '@fallwright/engine';
import { afterAll, beforeAll, expect, test } from 'vitest';

const launcher = join(import.meta.dirname, 'fallwright.mjs');
const bench = join(import.meta.dirname, '..', 'examples', 'bench');

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'fallwright-bench-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function fallwright(args: readonly string[], input: string | Uint8Array = '') {
  const { status, stdout, stderr } = spawnSync(process.execPath, [launcher, ...args], {
    input,
    encoding: 'utf8',
    env: { ...process.env, FORCE_COLOR: undefined },
  });
  return { status, stdout, stderr };
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

test('beats of a log, on a page of 80 columns with a strip of one line', () => {
  const { status, stdout, stderr } = fallwright(['beats', join(bench, 'tarn-hollow-log.csv')]);
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  expect(stdout).toMatch(/^120\.\d+ ± 0\.\d+ beats a minute\n20 beats/);
  expect(stdout).toMatch(/\n[·|!]{80}\n/);
  expect(stdout).toContain('the log also has');
  expect(isNarrow(stdout)).toBe(true);
});

test('beats of a recording, by name or through a pipe, and none in silence', () => {
  const { status, stdout } = fallwright(['beats', '-', '--units', 'us'], recording());
  expect(status).toBe(0);
  expect(stdout).toMatch(/^80\.00 ± \d/);
  const silent = fallwright(['beats', file('silent.wav', recording({ isSilent: true }))]);
  expect(silent.status).toBe(0);
  expect(silent.stdout).toMatch(/^No beats\.\nThere is no sound/);
  const record = JSON.parse(fallwright(['beats', file('ram.wav', recording()), '--json']).stdout);
  expect(record).toMatchObject({ fallwright: 'beats@1', heard: true, missed: 0, log: null });
  expect(Math.abs(record.beatsPerMinute - 80)).toBeLessThan(0.1);
  expect(record.beats.length).toBeGreaterThan(24);
});

test('a recording that is packed is refused with what to do', () => {
  const { status, stdout, stderr } = fallwright(['beats', file('song.mp3', 'ID3\u0003\u0000')]);
  expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
  expect(stderr).toMatch(/MP3.*WAV/s);
});

test('a test on a page of 80 columns: finding, tables, efficiencies, cautions', () => {
  const { status, stdout, stderr } = fallwright(['test', join(bench, 'swallow-test.yaml')]);
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  expect(stdout).toMatch(/^Swallow 25 at three lifts\n/);
  expect(stdout.replace(/\s+/g, ' ')).toContain(
    'Delivers a fifth less than predicted at high lift (13.3 m): look at the delivery valve',
  );
  expect(stdout).toMatch(/delivered .*−21 % .*off\n/);
  expect(stdout).toContain('by Rankine');
  expect(stdout).toContain('never plug the waste valve');
  expect(isNarrow(stdout)).toBe(true);
});

test('a reading that breaks conservation is questioned, in words and for programs', () => {
  const text = readFileSync(join(bench, 'swallow-test.yaml'), 'utf8').replace(
    'handStrokes: 9',
    'supply: [9 L/min, 9.1 L/min]',
  );
  const record = JSON.parse(
    fallwright(['test', file('leak.yaml', text), '--json']).stdout,
  );
  expect(record.readings[0].doubts[0]).toMatchObject({ kind: 'waterBalance' });
  expect(record.readings[0].doubts[0].words).toMatch(/^Supply, waste and delivery differ by 2\.\d+ L\/min/);
  expect(record.readings[2].residuals[1]).toMatchObject({
    quantity: 'deliveryFlow',
    agrees: false,
  });
});

test('a test with a wrong unit is refused with its line', () => {
  const text = readFileSync(join(bench, 'swallow-test.yaml'), 'utf8');
  const wrong = fallwright(['test', file('wrong.yaml', text.replace('0.90 bar', '0.90 L/min'))]);
  expect(wrong.status).toBe(2);
  expect(wrong.stderr).toMatch(/line \d+, readings\[1\]\.backPressure/);
});
  expect(site.stderr).toContain('a site and not a test');
});

test('the schema of a test is printed', () => {
  const committed = new URL('../records/schema/test.schema.json', import.meta.url);
  expect(JSON.parse(fallwright(['schema', 'test']).stdout)).toEqual(
    JSON.parse(readFileSync(committed, 'utf8')),
  );
});
