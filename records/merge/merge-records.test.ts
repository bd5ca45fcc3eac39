import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type AuthoredDraft, mergeRecords, problemsOf } from './merge-records.ts';
import { mergeTrees } from './merge-trees.ts';
import type { Plain, PlainRecord } from './plain.ts';

const SITE = {
  fallwright: 'site@1',
  name: 'Larkrise spring',
  source: { flow: '14 L/min' },
  fall: '1.9 m',
  drive: [
    { pipe: 'PE100 SDR11 25', length: '9 m' },
    { pipe: 'galvanised steel DN25', length: '5 m', held: 'clamped' },
  ],
  ram: 'DN20',
  lift: '12 m',
  delivery: [{ pipe: 'PE100 SDR11 20', length: '160 m' }],
  demand: '900 L/day',
} as const satisfies PlainRecord;

const by = (document: PlainRecord, by = 'Ann'): AuthoredDraft => ({ document, by });

function merged(mine: PlainRecord, theirs: PlainRecord, base: PlainRecord = SITE) {
  return mergeRecords({ base: { document: base }, mine: by(mine), theirs: by(theirs, 'Ben') });
}

describe('two people at one place', () => {
  test('what each changed alone comes together', () => {
    const { document, conflicts } = merged(
      { ...SITE, fall: '2.1 m' },
      { ...SITE, lift: '14 m', notes: 'gate is shut at night' },
    );
    expect(conflicts).toEqual([]);
    expect(document).toEqual({
      ...SITE,
      fall: '2.1 m',
      lift: '14 m',
      notes: 'gate is shut at night',
    });
  });

  test('two falls are a conflict with both values and their writers; what both began from stays', () => {
    const { document, conflicts } = merged({ ...SITE, fall: '2.1 m' }, { ...SITE, fall: '1.8 m' });
    expect(document).toEqual(SITE);
    expect(conflicts).toMatchObject([
      {
        path: ['fall'],
        kind: 'bothChanged',
        base: '1.9 m',
        mine: { value: '2.1 m', by: 'Ann' },
        theirs: { value: '1.8 m', by: 'Ben' },
      },
    ]);
  });

  test('a choice settles the conflict it names, and nothing else', () => {
    const sides = {
      base: { document: SITE },
      mine: by({ ...SITE, fall: '2.1 m', demand: '700 L/day' }),
      theirs: by({ ...SITE, fall: '1.8 m', demand: '800 L/day' }, 'Ben'),
    };
    const [first] = mergeRecords(sides).conflicts;
    const settled = mergeRecords(sides, { choices: new Map([[first?.key ?? '', 'theirs']]) });
    expect(settled.document).toEqual({ ...SITE, fall: '1.8 m' });
    expect(settled.conflicts.map(({ path }) => path)).toEqual([['demand']]);
  });

  test('a value and its ± stay with the one who gave them', () => {
    const base = { ...SITE, fall: { value: '1.9 m', origin: 'stated' } };
    const { conflicts } = merged(
      { ...base, fall: { value: '1.9 m', origin: 'measured' } },
      { ...base, fall: { value: '2.2 m ± 0.1 m', origin: 'stated' } },
      base,
    );
    expect(conflicts.map(({ path }) => path)).toEqual([['fall']]);
  });

  test('text that cannot be read yet is merged as fields are', () => {
    const { unread, conflicts } = mergeRecords({
      base: { document: SITE, unread: { lift: '12' } },
      mine: { ...by(SITE), unread: { lift: '12', fall: '2 mm or so' } },
      theirs: { ...by(SITE, 'Ben'), unread: { lift: '12 or 13' } },
    });
    expect(conflicts).toEqual([]);
    expect(unread).toEqual({ lift: '12 or 13', fall: '2 mm or so' });
  });
});

describe('lists', () => {
  const [hose, steel] = SITE.drive;

  test('a pipe put in before another does not move the other’s new length onto it', () => {
    const feeder = { pipe: 'PVC-U PN10 40', length: '3 m' };
    const { document, conflicts } = merged(
      { ...SITE, drive: [feeder, hose, steel] },
      { ...SITE, drive: [hose, { ...steel, length: '6 m' }] },
    );
    expect(conflicts).toEqual([]);
    expect(document.drive).toEqual([feeder, hose, { ...steel, length: '6 m' }]);
  });

  test('two fields of one pipe, changed by two people, both stay', () => {
    const { document } = merged(
      { ...SITE, drive: [hose, { ...steel, length: '6 m' }] },
      { ...SITE, drive: [hose, { ...steel, held: 'loose' }] },
    );
    expect(document.drive).toEqual([hose, { ...steel, length: '6 m', held: 'loose' }]);
  });

  test('a pipe taken out by one and changed by the other is a conflict', () => {
    const { document, conflicts } = merged(
      { ...SITE, drive: [hose] },
      { ...SITE, drive: [hose, { ...steel, length: '6 m' }] },
    );
    expect(document.drive).toEqual(SITE.drive);
    expect(conflicts).toMatchObject([{ path: ['drive', 1], theirs: { value: { length: '6 m' } } }]);
    expect(conflicts[0]?.mine).toEqual({ by: 'Ann' });
  });

  test('a pipe that both put in at one place may be one pipe: it is asked', () => {
    const { document, conflicts } = merged(
      { ...SITE, drive: [hose, { pipe: 'PVC-U PN10 40', length: '3 m' }, steel] },
      { ...SITE, drive: [hose, { pipe: 'PVC-U PN10 40', length: '3.2 m' }, steel] },
    );
    expect(document.drive).toEqual(SITE.drive);
    expect(conflicts.map(({ path }) => path)).toEqual([['drive']]);
  });

  test('fillings that two people timed all stay', () => {
    const source = (times: readonly string[]): PlainRecord => ({
      ...SITE,
      source: { gauging: [{ method: 'bucket', volume: '10 L', times }] },
    });
    const { document, conflicts } = merged(
      source(['42 s', '43 s', '44.5 s']),
      source(['42 s', '43.2 s']),
      source(['42 s']),
    );
    expect(conflicts).toEqual([]);
    const [gauging] = (document.source as { gauging: { times: string[] }[] }).gauging;
    expect(gauging?.times.toSorted()).toEqual(['42 s', '43 s', '43.2 s', '44.5 s']);
  });

  test('rams of a range are told by their id, rows of prices by their code', () => {
    const range = (rams: readonly PlainRecord[]) => ({ fallwright: 'range@1', rams });
    const swallow = { id: 'swallow-25', name: 'Swallow 25', ram: 'DN25', price: '300 GBP' };
    const wren = { id: 'wren-15', name: 'Wren 15', ram: 'DN15' };
    const heron = { id: 'heron-50', name: 'Heron 50', ram: 'DN50' };
    const { document, conflicts } = merged(
      range([heron, wren, { ...swallow, price: '320 GBP' }]),
      range([{ ...swallow, leadTime: '3 weeks' }, wren, heron]),
      range([swallow, wren]),
    );
    expect(conflicts).toEqual([]);
    expect(document.rams).toEqual([
      heron,
      wren,
      { ...swallow, price: '320 GBP', leadTime: '3 weeks' },
    ]);

    const rows = (price: string, second = '1.90') => ({
      fallwright: 'prices@1',
      rows: [
        { code: 'PE25', price },
        { code: 'PE32', price: second },
      ],
    });
    const lists = merged(rows('1.20'), rows('1.30', '2.10'), rows('1.10'));
    expect(lists.conflicts.map(({ path }) => path)).toEqual([['rows', 'PE25', 'price']]);
    expect((lists.document.rows as readonly PlainRecord[])[1]).toEqual({
      code: 'PE32',
      price: '2.10',
    });
  });
});

describe('right alone and wrong together', () => {
  // A lift must be above the fall: 4 m of fall is right under 12 m, 3 m of lift is right over 1.9 m.
  const mine = { ...SITE, fall: '4 m', name: 'Larkrise, upper spring' };
  const theirs = { ...SITE, lift: '3 m', notes: 'a low tank' };

  test('the fewest changes that are wrong together are held back, with what would be wrong', () => {
    expect(problemsOf(mine)).toEqual([]);
    expect(problemsOf(theirs)).toEqual([]);
    const { document, conflicts } = merged(mine, theirs);
    expect(document).toEqual({ ...SITE, name: 'Larkrise, upper spring', notes: 'a low tank' });
    expect(conflicts.map(({ path, kind }) => [path[0], kind])).toEqual([
      ['fall', 'wrongTogether'],
      ['lift', 'wrongTogether'],
    ]);
    expect(conflicts[0]?.problems[0]?.message).toMatch(/above/);
    expect(problemsOf(document)).toEqual([]);
  });

  test('a choice among them is followed', () => {
    const sides = {
      base: { document: SITE },
      mine: by(mine),
      theirs: by(theirs, 'Ben'),
    };
    const [fall, lift] = mergeRecords(sides).conflicts;
    const choices = new Map([
      [fall?.key ?? '', 'mine'],
      [lift?.key ?? '', 'mine'],
    ] as const);
    expect(mergeRecords(sides, { choices })).toMatchObject({
      document: { fall: '4 m', lift: '12 m' },
      conflicts: [],
    });
  });
});

/** Documents with the names of our lists, small enough that two of them often meet. */
const word = fc.constantFrom('a', 'b', 'c', '1 m', '2 m');
const pipe = fc.record({ pipe: word, length: word, held: word }, { requiredKeys: [] });
const ram = fc.record({ id: word, name: word, price: word }, { requiredKeys: ['id'] });
const document: fc.Arbitrary<PlainRecord> = fc.record(
  {
    name: word,
    fall: fc.oneof(word, fc.record({ value: word, origin: word })),
    source: fc.record({ flow: word, times: fc.array(word, { maxLength: 4 }) }),
    drive: fc.array(pipe, { maxLength: 4 }),
    rams: fc.array(ram, { maxLength: 4 }),
    readings: fc.array(fc.record({ lift: word, beats: word }), { maxLength: 4 }),
    hops: fc.array(word, { maxLength: 4 }),
    strange: fc.oneof(fc.jsonValue({ maxDepth: 2 }) as fc.Arbitrary<Plain>, word),
  },
  { requiredKeys: [] },
);
const RUNS = { numRuns: 300, seed: 20_261_125 };
const merge = (base: Plain, mine: Plain, theirs: Plain) => mergeTrees({ base, mine, theirs });

describe('laws of merging, for any documents', () => {
  test('one who changed nothing takes what the other has', () => {
    fc.assert(
      fc.property(document, document, (base, a) => {
        for (const { value, conflicts } of [merge(base, a, base), merge(base, base, a)]) {
          expect(conflicts).toEqual([]);
          expect(value).toEqual(a);
        }
      }),
      RUNS,
    );
  });

  test('two who have the same have it afterwards', () => {
    fc.assert(
      fc.property(document, document, (base, a) => {
        expect(merge(base, a, a)).toMatchObject({ value: a, conflicts: [] });
      }),
      RUNS,
    );
  });

  test('who merges plays no part, but for the sides of a conflict', () => {
    fc.assert(
      fc.property(document, document, document, (base, a, b) => {
        const [one, other] = [merge(base, a, b), merge(base, b, a)];
        expect(one.value).toEqual(other.value);
        const swapped = other.conflicts.map(({ mine, theirs, ...rest }) => ({
          ...rest,
          mine: theirs,
          theirs: mine,
        }));
        const byKey = (x: { key: string }, y: { key: string }) => (x.key < y.key ? -1 : 1);
        expect(one.conflicts.toSorted(byKey)).toEqual(swapped.toSorted(byKey));
      }),
      RUNS,
    );
  });

  test('edits of different fields both survive', () => {
    const fields = ['name', 'fall', 'source', 'drive', 'rams', 'readings', 'hops'];
    fc.assert(
      fc.property(document, document, document, fc.subarray(fields), (base, a, b, ofMine) => {
        const only = (from: PlainRecord, has: (field: string) => boolean): PlainRecord =>
          Object.fromEntries([
            ...Object.entries(base).filter(([field]) => !has(field)),
            ...Object.entries(from).filter(([field]) => has(field)),
          ]);
        const isMine = (field: string) => ofMine.includes(field);
        const { value, conflicts } = merge(
          base,
          only(a, isMine),
          only(b, (field) => !isMine(field)),
        );
        expect(conflicts).toEqual([]);
        expect(value).toEqual({ ...without(a, (field) => !isMine(field)), ...without(b, isMine) });
      }),
      RUNS,
    );
  });

  test('a word that one side added is in the result or in a conflict', () => {
    const words = (value: Plain | undefined): string =>
      value === undefined ? '' : JSON.stringify(value);
    fc.assert(
      fc.property(document, document, document, (base, a, b) => {
        const marked = { ...a, times: [...times(a), 'only mine'], drive: [...pipes(a), MINE] };
        const { value, conflicts } = merge({ ...base, times: times(base) }, marked, {
          ...b,
          times: [...times(base), 'only theirs'],
        });
        const everything = words(value) + words(conflicts as unknown as Plain);
        for (const mark of ['only mine', 'only theirs', MINE.pipe]) {
          expect(everything).toContain(mark);
        }
      }),
      RUNS,
    );
  });

  test('choosing one side for every conflict leaves none', () => {
    fc.assert(
      fc.property(document, document, document, (base, a, b) => {
        const { conflicts } = merge(base, a, b);
        const choices = new Map(conflicts.map(({ key }) => [key, 'mine'] as const));
        const settled = mergeTrees({ base, mine: a, theirs: b }, { choices });
        expect(settled.conflicts).toEqual([]);
      }),
      RUNS,
    );
  });
});

const MINE = { pipe: 'a pipe of mine' };
const times = (of: PlainRecord): readonly Plain[] => (Array.isArray(of.times) ? of.times : []);
const pipes = (of: PlainRecord): readonly Plain[] => (Array.isArray(of.drive) ? of.drive : []);

function without(record: PlainRecord, has: (field: string) => boolean): PlainRecord {
  return Object.fromEntries(Object.entries(record).filter(([field]) => !has(field)));
}

test('three thousand rows of prices merge in a moment', () => {
  const rows = (price: (index: number) => string) =>
    Array.from({ length: 3000 }, (_, index) => ({ code: `P${index}`, price: price(index) }));
  const started = performance.now();
  const { conflicts } = merge(
    { rows: rows(() => '1') },
    { rows: rows((index) => (index % 2 ? '2' : '1')) },
    { rows: rows((index) => (index % 2 ? '1' : '3')) },
  );
  expect(conflicts).toEqual([]);
  // Judgement: a second where 30 ms were measured, so that a busy machine does not fail it and a square law does.
  expect(performance.now() - started).toBeLessThan(1000);
});
