/** The launcher alone, beside a small program that stands in the place of main.ts. */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const PROGRAM = `
import { text } from 'node:stream/consumers';
const [task, ...rest]: string[] = process.argv.slice(2);
if (task === 'say') {
  console.log(JSON.stringify({ rest, typed: await text(process.stdin), version: process.version }));
  console.error('a word on the side');
  process.exitCode = 7;
} else if (task === 'wait') {
  process.on('SIGTERM', () => process.exit(9));
  setInterval(() => {}, 1000);
  console.log('waiting');
} else {
  process.kill(process.pid, 'SIGKILL');
}
`;

let clone: string;
let launcher: string;

beforeAll(() => {
  clone = realpathSync(mkdtempSync(join(tmpdir(), 'fallwright-launcher-')));
  mkdirSync(join(clone, 'cli'));
  mkdirSync(join(clone, 'node_modules', '.bin'), { recursive: true });
  symlinkSync(process.execPath, join(clone, 'node_modules', '.bin', 'node'));
  launcher = join(clone, 'cli', 'fallwright.mjs');
  copyFileSync(join(import.meta.dirname, 'fallwright.mjs'), launcher);
  writeFileSync(join(clone, 'cli', 'main.ts'), PROGRAM);
  writeFileSync(join(clone, 'package.json'), '{"type":"module"}');
});

afterAll(() => rmSync(clone, { recursive: true }));

/** A Node.js on this machine that is too old for TypeScript, if there is one. */
const oldNode = (process.env.PATH ?? '')
  .split(delimiter)
  .map((folder) => join(folder, 'node'))
  .filter((path) => existsSync(path))
  .find((path) => {
    const [major = 0, minor = 0] = String(spawnSync(path, ['--version']).stdout)
      .slice(1)
      .split('.')
      .map(Number);
    return major < 22 || (major === 22 && minor < 18);
  });

const runs: readonly (readonly [string, string | undefined])[] = [
  ['on a Node.js that runs TypeScript', process.execPath],
  [`on an older Node.js${oldNode ? '' : ' (skipped: none on the path)'}`, oldNode],
];

for (const [where, node] of runs) {
  describe.skipIf(node === undefined)(where, () => {
    const nodePath = node ?? '';

    test('arguments, input, output and exit code pass through', () => {
      const run = spawnSync(nodePath, [launcher, 'say', 'Larkrise spring', '--fall', '4 ft'], {
        input: 'typed in',
        encoding: 'utf8',
      });
      expect(JSON.parse(run.stdout)).toEqual({
        rest: ['Larkrise spring', '--fall', '4 ft'],
        typed: 'typed in',
        version: process.version,
      });
      expect(run.stderr).toBe('a word on the side\n');
      expect(run.status).toBe(7);
    });

    test('a signal reaches the program, which ends as it sees fit', async () => {
      const run = spawn(nodePath, [launcher, 'wait'], { stdio: ['ignore', 'pipe', 'inherit'] });
      await once(run.stdout, 'data');
      run.kill('SIGTERM');
      expect(await once(run, 'exit')).toEqual([9, null]);
    });

    test('a program that a signal ended is seen to end by it', () => {
      expect(spawnSync(nodePath, [launcher, 'die']).signal).toBe('SIGKILL');
    });
  });
}

test.skipIf(oldNode === undefined)('without any fitting Node.js it says what to install', () => {
  const lonely = mkdtempSync(join(tmpdir(), 'fallwright-lonely-'));
  copyFileSync(launcher, join(lonely, 'fallwright.mjs'));
  const run = spawnSync(oldNode ?? '', [join(lonely, 'fallwright.mjs')], { encoding: 'utf8' });
  rmSync(lonely, { recursive: true });
  expect(run.status).toBe(1);
  expect(run.stderr).toContain('install Node.js 24');
});
