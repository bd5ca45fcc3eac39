/** The program as a person or a script meets it: a real process with real files. */
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const launcher = join(import.meta.dirname, 'fallwright.mjs');
const examples = join(import.meta.dirname, '..', 'examples');
const larkrise = join(examples, 'larkrise-spring.yaml');

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'fallwright-commands-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function fallwright(args: readonly string[], input = '') {
  const { status, stdout, stderr } = spawnSync(process.execPath, [launcher, ...args], {
    input,
    encoding: 'utf8',
    env: { ...process.env, FORCE_COLOR: undefined },
  });
  return { status, stdout, stderr };
}

function file(name: string, text: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

/** The example with one thing changed, as a file. */
function changed(from: string, to: string): string {
  return file('changed.yaml', readFileSync(larkrise, 'utf8').replace(from, to));
}

describe('answer', () => {
  const page = fallwright(['answer', larkrise]);

  test('prints a page with everything a person asks, verdict first', () => {
    expect(page).toMatchObject({ status: 0, stderr: '' });
    expect(page.stdout).toMatch(/^Larkrise spring\n\nThe DN20 /);
    for (const part of [
      'litres a day',
      'Why\n',
      'How sure\n',
      'How it starts\n',
      'What would change it\n',
      'Pressures\n',
      'Along the lines\n',
      'Assumed',
      'Cautions\n',
    ]) {
      expect(page.stdout).toContain(part);
    }
    expect(page.stdout).toContain('This is a prediction');
  });

  test('fits 80 columns, and is plain text in a pipe', () => {
    for (const line of page.stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: colour is a control character
    expect(page.stdout).not.toMatch(/[\u001b\u00a0]|undefined|NaN/);
  });

  test('--units us turns every number', () => {
    const { stdout } = fallwright(['answer', larkrise, '--units', 'us']);
    expect(stdout).toContain('gallons a day');
    // A metric pipe keeps its name.
    expect(stdout.replaceAll(/hose \d+ mm/g, 'hose')).not.toMatch(/\d (m|mm|L\/min|bar|°C)\b/);
  });

  test('a file in US units is answered in them', () => {
    expect(fallwright(['answer', join(examples, 'cutters-fork.yaml')]).stdout).toContain(
      'gallons a day',
    );
  });

  test('shows what was measured, and names a weir outside its range', () => {
    const rake = readFileSync(join(examples, 'alder-rake.yaml'), 'utf8');
    const low = file(
      'low-notch.yaml',
      rake.replace('[62 mm, 63 mm, 62 mm]', '[32 mm, 33 mm, 32 mm]'),
    );
    const { status, stdout } = fallwright(['answer', low]);
    expect(status).toBe(0);
    const text = stdout.replace(/\s+/g, ' ');
    expect(text).toMatch(/Worth checking first.*The V-notch: the head is 32 mm, and under 50 mm/);
    expect(text).toContain('which is further apart than the two spreads together');
    expect(text).toContain('Measured - 22.90 ± 0.65 L/min by a timed container on 2026-08-19');
    expect(stdout).toMatch(/\nLevel book of the fall\n {2}in m +back +inter +fore/);
    expect(stdout).toMatch(/\n {2}ram +1\.498 +1\.501 +−0\.846 +−0\.569 +−2\.067 +−2\.069\n/);
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  test('--json is for programs', () => {
    const { status, stdout } = fallwright(['answer', larkrise, '--json']);
    const record = JSON.parse(stdout);
    expect(status).toBe(0);
    expect(record.verdict).toMatch(/^runs/);
    expect(record.closingFlowLitresPerMinute).toBeGreaterThan(0);
    expect(record.assumptions.length).toBeGreaterThan(5);
    const {
      deliveredLitresPerDay: q,
      wastedLitresPerMinute: w,
      supplyLitresPerMinute: supply,
    } = record;
    // Water in is water out; six figures are kept.
    expect(q / 1440 + w).toBeCloseTo(supply, 3);
  });

  test('a need by its uses and a tank are shown over the year and the day, drawn', () => {
    const { status, stdout } = fallwright(['answer', join(examples, 'bracken-fold.yaml')]);
    expect(status).toBe(0);
    for (const part of ['Demand\n', 'Tank\n', 'The year\n', 'A day\n'])
      expect(stdout).toContain(part);
    expect(
      stdout.match(/^ {2}(Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) .*\d/gm),
    ).toHaveLength(12);
    expect(stdout.match(/^ {2}\d\d–\d\d .*\d/gm)).toHaveLength(24);
    expect(stdout).toMatch(/^ {2}Jan .* #+$/m);
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  test('how sure it is has its tries and its seed, and can be left out', () => {
    const { stdout } = fallwright(['answer', larkrise, '--json', '--samples', '40', '--seed', '3']);
    const record = JSON.parse(stdout);
    expect(record).toMatchObject({ samples: 40, seed: 3 });
    expect(record.chanceItRuns).toBeGreaterThan(0.5);
    expect(record.deliveredLitresPerDayLow).toBeLessThan(record.deliveredLitresPerDayHigh);
    expect(fallwright(['answer', larkrise, '--no-band']).stdout).not.toContain('How sure');
    const refused = fallwright(['answer', larkrise, '--samples', 'many', '--seed', 'x']);
    expect(refused).toMatchObject({ status: 2, stdout: '' });
    expect(refused.stderr).toContain('--samples 500');
    expect(refused.stderr).toContain('--seed 7');
  });

  test('- reads standard input, and another process gives the same page to the last digit', () => {
    const text = readFileSync(larkrise, 'utf8');
    expect(fallwright(['answer', '-'], text).stdout).toBe(page.stdout);
  });

  test('a ram that does not run is an answer, not an error', () => {
    const { status, stdout, stderr } = fallwright(['answer', join(examples, 'nettle-bank.yaml')]);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toContain('stays open');
    const record = JSON.parse(
      fallwright(['answer', join(examples, 'nettle-bank.yaml'), '--json']).stdout,
    );
    expect(record).toMatchObject({
      verdict: 'staysOpen',
      deliveredLitresPerDay: null,
      handStrokes: null,
    });
    expect(record.terminalFlowLitresPerMinute).toBeLessThan(record.closingFlowLitresPerMinute);
  });

  test('a reader that leaves early is no fault', async () => {
    const child = spawn(process.execPath, [launcher, 'pipes'], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let stderr = '';
    child.stderr.on('data', (data) => {
      stderr += data;
    });
    child.stdout.once('data', () => child.stdout.destroy());
    const status = await new Promise((resolve) => child.on('close', resolve));
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  });
});

describe('bad input: status 2, every problem on standard error, and nothing else', () => {
  const BAD: readonly (readonly [string, () => string, readonly string[]])[] = [
    [
      'no unit',
      () => changed('1.9 m', '1.9'),
      ['line 4, fall', '1.9 what? Write the unit: 1.9 m, 0.19 bar or 6.2 ft.'],
    ],
    ['missing field', () => changed('fall: 1.9 m\n', ''), ['fall', 'The fall is missing']],
    [
      'lift below the fall',
      () => changed('lift: 12 m', 'lift: 1.2 m'),
      ['line 7, lift', 'A ram lifts above its source.'],
    ],
    [
      'zero bore',
      () => changed('pipe: PE100 SDR11 25', 'material: PVC hose, bore: 0 mm'),
      ['line 5, drive[0].bore', 'The bore is nought'],
    ],
    [
      'not YAML',
      () => file('notes.txt', 'The ram stands below the weir.\n'),
      ['not a site file', 'fallwright: site@1'],
    ],
    [
      'binary',
      () => file('photo.jpg', new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 0, 16])),
      ['not a text file'],
    ],
    ['empty', () => file('empty.yaml', ''), ['This file is empty']],
    ['no such file', () => join(folder, 'none.yaml'), ['There is no such file']],
    ['a folder', () => folder, ['This is a folder']],
  ];
  for (const [name, path, words] of BAD) {
    test(name, () => {
      const { status, stdout, stderr } = fallwright(['answer', path()]);
      expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
      const text = stderr.replace(/\n\s+/g, ' ');
      for (const word of words) expect(text).toContain(word);
      expect(stderr).not.toMatch(/\bat .*\.ts:\d/);
    });
  }

  test('all problems are listed', () => {
    const text = readFileSync(larkrise, 'utf8')
      .replace('1.9 m', '1.9')
      .replace('length: 14', 'lenght: 14');
    const { status, stderr } = fallwright(['answer', '-', '--json'], text);
    expect(status).toBe(2);
    expect(stderr).toContain('3 problems in standard input');
    expect(stderr).toContain('Did you mean length?');
  });

  test('a device that never ends is left in time', () => {
    expect(fallwright(['answer', '/dev/zero'])).toMatchObject({ status: 2, stdout: '' });
  });
});

describe('trace', () => {
  test('writes heads, flows and valve against time', () => {
    const out = join(folder, 'trace.csv');
    const { status, stdout } = fallwright(['trace', larkrise, '--out', out, '--seconds', '2']);
    expect({ status, stdout }).toEqual({ status: 0, stdout: '' });
    const [head = '', ...rows] = readFileSync(out, 'utf8').trim().split('\r\n');
    expect(head).toBe(
      'time (s),head at the ram (m),drive flow (m3/s),waste flow (m3/s),delivery flow (m3/s),waste valve opening (m),air vessel head (m)',
    );
    const samples = rows.map((row) => row.split(',').map(Number));
    expect(samples.every((row) => row.length === 7 && row.every(Number.isFinite))).toBe(true);
    const times = samples.map(([time = Number.NaN]) => time);
    expect(times).toEqual([...times].sort((a, b) => a - b));
    expect(times.at(-1)).toBeGreaterThanOrEqual(2);
    // The valve opens and shuts, and the ram feels more than its fall.
    const openings = samples.map((row) => row[5] ?? Number.NaN);
    expect(Math.max(...openings)).toBeGreaterThan(0);
    expect(Math.min(...openings)).toBe(0);
    expect(Math.max(...samples.map((row) => row[1] ?? Number.NaN))).toBeGreaterThan(1.9);
  });

  test('does not write over its own site, nor into a folder that is not there', () => {
    const site = changed('1.9 m', '1.9 m');
    const before = readFileSync(site, 'utf8');
    expect(fallwright(['trace', site, '--out', site]).status).toBe(2);
    expect(readFileSync(site, 'utf8')).toBe(before);
    expect(fallwright(['trace', site, '--out', join(folder, 'no', 'trace.csv')])).toMatchObject({
      status: 2,
      stdout: '',
    });
  });

  test('says what a length of time is', () => {
    for (const seconds of ['soon', '0', '-1', '1e9']) {
      const { status, stderr } = fallwright(['trace', larkrise, `--seconds=${seconds}`]);
      expect(status).toBe(2);
      expect(stderr).toContain('Write a number of seconds');
    }
  });
});

describe('profile', () => {
  const walk = join(examples, 'larkrise-delivery.gpx');

  test('prints what was done, a table, and a block that a site file takes', () => {
    const { status, stdout, stderr } = fallwright([
      ...['profile', walk, '--line', 'delivery', '--lift', '12 m', '--bore', '16 mm'],
      ...['--points', '12'],
    ]);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toMatch(/averaged over 16 m/);
    expect(stdout).toMatch(/too\s+coarse/);
    expect(stdout).toMatch(/points are left out; none lies more than/);
    expect(stdout).toMatch(/76 +11\.46 +crest +\d+ mL/);
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    const block = stdout.slice(stdout.indexOf('length: '));
    const site = readFileSync(larkrise, 'utf8').replace(
      /delivery: .*/,
      `delivery:\n  pipe: PE100 SDR11 20\n${block.replaceAll(/^(?=.)/gm, '  ')}`,
    );
    const answer = fallwright(['answer', file('surveyed.yaml', site)]);
    expect(answer.stderr).toBe('');
    expect(answer.stdout).toMatch(/Delivery line: a crest 76 m along/);
  });

  test('a table on standard input, held to the fall', () => {
    const csv = 'distance (m),height (m)\n0,3\n4,2\n7,2.5\n14,1\n';
    const { status, stdout } = fallwright(['profile', '-', '--fall', '1.9 m'], csv);
    expect(status).toBe(0);
    expect(stdout.replaceAll(/\s+/g, ' ')).toContain('was out by 0.1 m');
    expect(stdout).toContain('{ at: 0 m, height: 1.9 m }');
    expect(stdout).toMatch(/ 7 +1\.45 +crest/);
    const backwards = fallwright(['profile', '-'], 'distance (m),height (m)\n0,0\n14,2\n');
    expect(backwards.stdout).toContain('--reverse');
    expect(
      fallwright(['profile', '-', '--reverse'], 'distance (m),height (m)\n0,0\n14,2\n').stdout,
    ).toContain('{ at: 0 m, height: 2 m }');
  });

  test('bad input says what to do, and what could be read is not lost', () => {
    const text = readFileSync(walk, 'utf8');
    const broken = text.slice(0, text.indexOf('</trkseg>'));
    const refused = fallwright(['profile', '-', '--line', 'delivery'], broken);
    expect(refused).toMatchObject({ status: 2, stdout: '' });
    expect(refused.stderr.replaceAll(/\s+/g, ' ')).toContain(
      '33 points could be read all the same. To go on',
    );
    const kept = fallwright(['profile', '-', '--line', 'delivery', '--as-far-as-read'], broken);
    expect(kept.stdout).toContain('33 points');
    const two = text.replace(/<trk>[\s\S]*<\/trk>/, (track) => track + track);
    const which = fallwright(['profile', '-'], two);
    expect(which.stderr).toContain('--track 2');
    expect(fallwright(['profile', '-', '--track', '2'], two).status).toBe(0);
    for (const wrong of [
      ['--track', '3'],
      ['--points', '1'],
      ['--fall', '2'],
      ['--lift', '12 m'],
      ['--bore', '0 mm'],
    ]) {
      expect(fallwright(['profile', walk, ...wrong])).toMatchObject({ status: 2, stdout: '' });
    }
  });
});

describe('lists', () => {
  test.each(['site', 'range'])('schema %s is the committed schema', (record) => {
    const committed = readFileSync(
      join(import.meta.dirname, '..', 'records', 'schema', `${record}.schema.json`),
      'utf8',
    );
    expect(JSON.parse(fallwright(['schema', record]).stdout)).toEqual(JSON.parse(committed));
    expect(fallwright(['schema', 'castle']).status).toBe(2);
  });

  test('pipes can be searched', () => {
    const { status, stdout } = fallwright(['pipes', 'PE100', '25']);
    expect(status).toBe(0);
    expect(stdout).toContain('PE100 SDR11 25');
    expect(stdout).toContain('20.4 mm');
    expect(stdout).not.toContain('garden hose');
    expect(fallwright(['pipes', 'zeppelin']).stdout).toContain('No pipe');
  });
});

describe('help', () => {
  test('--version', () => {
    expect(fallwright(['--version'])).toMatchObject({ status: 0, stderr: '' });
  });

  test.each(['answer', 'trace', 'pipes', 'profile', 'schema'])(
    '%s --help shows an example',
    (command) => {
      const { status, stdout } = fallwright([command, '--help']);
      expect(status).toBe(0);
      expect(stdout).toContain(`npx fallwright ${command}`);
    },
  );

  test('wrong use is bad input', () => {
    for (const args of [
      ['answre'],
      ['answer'],
      ['answer', larkrise, '--units', 'ells'],
      ['answer', larkrise, '--colour'],
    ]) {
      const { status, stdout, stderr } = fallwright(args);
      expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
      expect(stderr).not.toBe('');
    }
  });
});
