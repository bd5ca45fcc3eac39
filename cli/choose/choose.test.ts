/** Choosing as a person or a script meets it: the real search on real threads, with the files of the examples. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type ChoiceRequest, partsListOf } from '@fallwright/engine';
import { offersOf, placeToFit, readPlace, readPrices, readRange } from '@fallwright/records';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ChoiceRecord } from './choice-record.ts';
import type { WorkerSetUp } from './choice-worker.ts';
import { unsureAt } from './choose-command.ts';
import { chooseInView } from './choose-in-view.ts';

const launcher = join(import.meta.dirname, '..', 'fallwright.mjs');
const workshop = join(import.meta.dirname, '..', '..', 'examples', 'workshop');
const [beck = '', rams = '', prices = ''] = ['otter-beck.yaml', 'rams.yaml', 'prices.csv'].map(
  (name) => join(workshop, name),
);

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'fallwright-choose-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function fallwright(...args: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [launcher, ...args], {
    encoding: 'utf8',
    env: { ...process.env, FORCE_COLOR: undefined },
  });
  return { status, stdout, stderr };
}

/** A file with some of its words changed. */
function changed(from: string, name: string, ...changes: readonly [string, string][]): string {
  let text = readFileSync(from, 'utf8');
  for (const [before, after] of changes) {
    expect(text).toContain(before);
    text = text.replaceAll(before, after);
  }
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

/** A range of the Swallow alone, so that a choice is quick. */
function swallowAlone(): string {
  const text = readFileSync(rams, 'utf8');
  const path = join(folder, 'swallow.yaml');
  const [head = ''] = text.split('  - id: wren-20');
  const [, swallow = ''] = text.split(/(?= {2}- id: swallow-25)/);
  writeFileSync(path, `${head}${swallow.split('  - id: heron-32')[0]}`);
  return path;
}

/** A few rows of the price list: the chosen pipes, and every small part. */
function fewPipes(): string {
  const keep = /^#|^code|^(?!.*,pipe,)|^GI25,|^PE20-50,/;
  const path = join(folder, 'few.csv');
  const lines = readFileSync(prices, 'utf8').split('\n');
  writeFileSync(path, lines.filter((line) => keep.test(line)).join('\n'));
  return path;
}

const QUICK = ['--samples', '20', '--lengths', '16 m', '--workers', '1'];

describe('a choice with range and prices', () => {
  let page: ReturnType<typeof fallwright>;
  let built: string;
  beforeAll(() => {
    built = join(folder, 'built.yaml');
    const with_ = [
      '--likely',
      '50 %',
      '--range',
      swallowAlone(),
      '--prices',
      fewPipes(),
      '--write',
      built,
    ];
    page = fallwright('choose', beck, ...with_, ...QUICK, '--why', 'weight 70 g');
  }, 60_000);

  test('has its picks, the front, what to buy and why the others were left out', () => {
    expect(page).toMatchObject({ status: 0, stderr: '' });
    expect(page.stdout).toMatch(/^Otter Beck\n\n728 litres a day are needed at the tank\.\n/);
    for (const part of [
      'Cheapest that meets the need',
      '£',
      'most forgiving',
      'Limits, the nearest first: ',
      'The chance that it gives the 728 L a day',
      'The front: nothing costs less and gives more',
      'Sizes for the cheapest that meets the need',
      'Parts and work for the cheapest that meets the need',
      'Total',
      'Why: weight 70 g',
      'Why the others were left out',
      'were spared',
      'Assumed, because the files do not say',
      'This is a prediction',
    ]) {
      expect(page.stdout).toContain(part);
    }
  });

  test('fits 80 columns, and is plain text in a pipe', () => {
    for (const line of page.stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: colour is a control character
    expect(page.stdout).not.toMatch(/[\u001b\u00a0]|undefined|NaN|Infinity/);
  });

  test('writes the pick as a site file, which answers alone and beside its range', () => {
    const text = readFileSync(built, 'utf8');
    expect(text).toContain('range: swallow-25@3');
    const said = /Cheapest that meets the need[\s\S]*?,\s+([\d,]+)\s+litres\s+a\s+day/.exec(
      page.stdout,
    )?.[1];
    expect(said).toBeDefined();
    // A newer revision is told, with what it would give here.
    const newer = changed(
      rams,
      'newer.yaml',
      [
        '    revision: 3\n    date: 2026-04-02\n    change: wider seat, so that it takes more water\n',
        '    revision: 4\n    change: a seat of 31 mm\n',
      ],
      [
        '    earlier:\n      - revision: 2',
        `    earlier:\n      - revision: 3\n        name: Swallow 25\n        ram: ${RAM_3}\n        settings: ${SETTINGS_3}\n      - revision: 2`,
      ],
      [
        'seat: 27 mm, stroke: 3.2 mm, weight: 95 g }\n      deliveryValve',
        'seat: 31 mm, stroke: 3.2 mm, weight: 95 g }\n      deliveryValve',
      ],
    );
    const later = fallwright('answer', built, '--range', newer, '--no-band', '--json');
    const answer = JSON.parse(later.stdout);
    expect(answer.deliveredLitresPerDay).toBeCloseTo(Number(said), -1);
    expect(answer.range).toMatchObject({
      kind: 'newer',
      reference: 'swallow-25@3',
      newest: 'swallow-25@4',
      isDifferent: true,
      words: [expect.stringContaining('a seat of 31 mm'), expect.stringContaining('would differ')],
    });
  }, 60_000);

  test('never writes over a file', () => {
    const before = readFileSync(built, 'utf8');
    const again = fallwright(
      'choose',
      beck,
      '--range',
      swallowAlone(),
      ...QUICK,
      '--no-chance',
      '--pick',
      'water',
      '--write',
      built,
    );
    expect(again.status).toBe(2);
    expect(again.stderr).toContain('There is such a file already');
    expect(readFileSync(built, 'utf8')).toBe(before);
  }, 60_000);
});

const RAM_3 =
  '{ bore: 25 mm, rating: 10 bar, wasteValve: { kind: weighted, seat: 27 mm, stroke: 3.2 mm, weight: 95 g }, deliveryValve: { bore: 15 mm, loss: 4, backFlow: 2.4 mL }, airVessel: { volume: 1.2 L } }';
const SETTINGS_3 = '{ stroke: { least: 2.6 mm, most: 3.8 mm, steps: 3 }, weights: [ 70 g, 95 g ] }';

describe('the search on threads', () => {
  const read = readPlace(readFileSync(beck, 'utf8'));
  const range = readRange(readFileSync(rams, 'utf8'));
  const list = readPrices(readFileSync(prices, 'utf8'));
  if (!read.ok || !range.ok || !list.ok) throw new Error('the examples must read');
  const { place, wish } = placeToFit(read.site);
  const made = offersOf({ range: range.range, prices: list.list });
  if (!made.ok) throw new Error('the examples must go together');
  const { offers } = made.value;
  const unsureOf = unsureAt(read.site, made.value);
  const few: ChoiceRequest = {
    place,
    wish: { ...wish, driveLengths: [16] },
    offers: { ...offers, rams: offers.rams.slice(0, 2), tanks: [], vessels: [] },
  };
  const setUp: WorkerSetUp = { place, samples: 20, seed: 1 };

  test('says the same whatever the number of threads', async () => {
    const said = async (workers: number) => {
      const { choice } = await chooseInView(few, setUp, { workers, unsureOf });
      const { priced, unpriced, progress } = choice;
      const reasons = [...choice.keys()].map((key) => [key, choice.reasonFor(key)]);
      return { priced, unpriced, progress, reasons };
    };
    const one = await said(1);
    expect(one.priced.picks.cheapest?.contender.judgement?.chance).toBeGreaterThan(0.5);
    expect(await said(2)).toEqual(one);
  }, 60_000);

  test('is stopped with what stands, and shows how far it is on a terminal alone', async () => {
    const stop = new AbortController();
    const written: string[] = [];
    const screen = {
      isTTY: true,
      write: (text: string) => {
        written.push(text);
        stop.abort();
        return true;
      },
    };
    const { choice } = await chooseInView(
      few,
      setUp,
      { workers: 2, unsureOf, signal: stop.signal },
      screen,
    );
    expect(choice.isComplete).toBe(false);
    expect(choice.progress.runs).toBeLessThan(choice.progress.distinctRuns);
    expect(written[0]).toMatch(/^\r\d+ % of [\d,]+ combinations/);
    // The line is wiped off at the end.
    expect(written.at(-1)).toMatch(/^\r +\r$/);
    const untried = [...choice.keys()].filter((key) => choice.reasonFor(key)?.kind === 'notTried');
    expect(untried.length).toBeGreaterThan(0);
  }, 60_000);

  test('a parts list adds up to the cost that was compared', async () => {
    const { choice } = await chooseInView(few, setUp, { workers: 2 });
    for (const { candidate } of choice.priced.contenders) {
      const { rows, total } = partsListOf(place, offers, candidate.parts);
      expect(total).toBe(candidate.cost);
      expect(rows.reduce((sum, row) => sum + (row.total ?? Number.NaN), 0)).toBe(total);
    }
  }, 60_000);
});

/** Names of the fields of a record, of its builds, its picks and their parts. */
function namesIn(found: ChoiceRecord): readonly string[] {
  const [pick] = found.priced.picks;
  const [part] = pick?.parts ?? [];
  return [found, found.priced, found.progress, pick ?? {}, part ?? {}].flatMap(Object.keys);
}

describe('as a new user would try it', () => {
  const record = (...args: readonly string[]): ChoiceRecord => {
    const { status, stdout, stderr } = fallwright('choose', ...args, ...QUICK, '--json');
    expect(stderr).toBe('');
    expect(status).toBe(0);
    return JSON.parse(stdout);
  };

  test('no ram works: says what would have to change', () => {
    const high = changed(
      beck,
      'high.yaml',
      ['lift: 18 m ± 0.3 m', 'lift: 140 m'],
      ['140 m }', '400 m }'],
    );
    const { status, stdout } = fallwright(
      'choose',
      high,
      '--range',
      swallowAlone(),
      '--prices',
      fewPipes(),
      ...QUICK,
    );
    expect(status).toBe(0);
    expect(stdout).toContain('Nothing that is offered works here.');
    expect(stdout).toMatch(/What would have to change\n {2}- .*combinations, nearest/);
    expect(stdout).toMatch(/Nearest to working:\s+Swallow\s+25/);
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  }, 60_000);

  test('prices missing: names what lacks one, and compares by water', () => {
    const gap = changed(fewPipes(), 'gap.csv', [
      'footing,concrete footing and bolts,,each,58.00',
      'footing,concrete footing and bolts,,each,',
    ]);
    const { stdout } = fallwright(
      'choose',
      beck,
      '--range',
      swallowAlone(),
      '--prices',
      gap,
      ...QUICK,
      '--no-chance',
    );
    expect(stdout).toContain('Without a price\n  - Concrete footing and bolts: no price.');
  }, 60_000);

  test('a source that needs two rams: says so, and two do it', () => {
    const two = [
      '--range',
      swallowAlone(),
      '--prices',
      fewPipes(),
      '--need',
      '1400 L/day',
      '--no-chance',
    ];
    const { stdout } = fallwright('choose', beck, ...two, ...QUICK);
    expect(stdout).toContain('nothing on offer gives more than');
    expect(stdout).toContain('try --rams 2');
    const found = record(beck, ...two, '--rams', '2');
    const docs = readFileSync(join(import.meta.dirname, '../../docs/choosing.md'), 'utf8');
    for (const name of namesIn(found).filter((one) => one !== 'fallwright'))
      expect(docs).toContain(`\`${name}\``);
    expect(found.priced.shortfall).toBeNull();
    expect(found.priced.picks[0]).toMatchObject({
      names: expect.arrayContaining(['cheapest']),
      count: 2,
    });
  }, 60_000);

  test('every mistake is named, and nothing is chosen', () => {
    const slips = changed(
      rams,
      'slips.yaml',
      ['price: 320 GBP', 'prise: 320 GBP'],
      ['bore: 32 mm', 'bore: 32'],
    );
    const range = fallwright('choose', beck, '--range', slips);
    expect(range).toMatchObject({ status: 2, stdout: '' });
    expect(range.stderr).toContain('Did you mean price?');
    expect(range.stderr).toContain('32 what?');
    const options = fallwright(
      'choose',
      beck,
      '--rams',
      '0',
      '--need',
      '900',
      '--lengths',
      '12',
      '--likely',
      '2',
      '--workers',
      'x',
    );
    for (const field of ['--rams', '--need', '--lengths', '--likely', '--workers']) {
      expect(options.stderr).toContain(field);
    }
    expect(options.stderr).toContain('900 what?');
  }, 60_000);

  test('bad rows of a price list stop it, unless the good ones are kept on purpose', () => {
    const bad = changed(fewPipes(), 'bad.csv', ['UN,union', 'UN,onion']);
    const refused = fallwright('choose', beck, '--range', swallowAlone(), '--prices', bad);
    expect(refused.status).toBe(2);
    expect(refused.stderr).toMatch(/^One problem in .*bad\.csv:\n {2}line \d+, kind\n/);
    expect(refused.stderr).toContain('--keep-good goes on with them alone.');
    const kept = fallwright(
      'choose',
      beck,
      '--range',
      swallowAlone(),
      '--prices',
      bad,
      '--keep-good',
      ...QUICK,
      '--no-chance',
    );
    expect(kept.status).toBe(0);
    expect(kept.stdout).toContain('The row is left out.');
    expect(kept.stdout).toMatch(/Union, DN \d+: none on the price list that\s+fits/);
  }, 60_000);

  test('help has an example that works as it stands', () => {
    const { stdout } = fallwright('choose', '--help');
    const example = /\$ npx fallwright ([\s\S]*)$/.exec(stdout)?.[1] ?? '';
    const files = example.split(/[\s\\]+/).filter((word) => word.includes('/'));
    expect(files).toHaveLength(3);
    for (const name of files) expect(existsSync(join(workshop, '..', '..', name))).toBe(true);
  });
});
