import { answerFor } from '@fallwright/engine';
import { installationOf, siteFromData } from '@fallwright/records';
import { describe, expect, test } from 'vitest';
import { openPlace, undo } from '../state/place.ts';
import type { SiteDocument } from '../state/site-document.ts';
import { adopted } from './adopt.ts';
import { familiesNear } from './candidates.ts';
import { cellOf } from './cells.ts';
import {
  isStraight,
  lengthOf,
  overCrest,
  straightened,
  withLength,
  withPipe,
} from './changed-line.ts';
import { choicesFor, sizesBeside, withOpened, withPipeAdded, withRamToggled } from './choices.ts';
import { onSheet } from './comparison.ts';
import { driveRows } from './drive-rows.ts';
import { followingSheet } from './follow-sheet.ts';
import { createComparison, withAsked } from './kept-comparison.ts';
import { rowsInOrder } from './order.ts';
import { jobsFor, pairAskedFor, pairName, pairsOf, siteWith } from './pairs.ts';
import { ramColumns, tuned, tunedRams } from './ram-columns.ts';
import { sameText } from './same-text.ts';
import { sweepPairs } from './sweep-pairs.ts';
import { tableInWords } from './table-words.ts';

const PLACE: SiteDocument = {
  fallwright: 'site@1',
  name: 'Tarn Hollow',
  source: { flow: '14 L/min' },
  fall: { value: '1.9 m', origin: 'measured' },
  drive: [
    { pipe: 'PE100 SDR11 25', length: { value: '14 m', origin: 'measured' }, fittings: 'elbow' },
  ],
  ram: 'DN20',
  lift: '12 m',
  delivery: [{ pipe: 'PE100 SDR11 20', length: '160 m' }],
};

function installationFor(document: SiteDocument) {
  const read = siteFromData(document);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join(' '));
  return installationOf(read.site).installation;
}

const installation = installationFor(PLACE);
const choices = choicesFor(PLACE, installation, 'metric');
const drive = PLACE.drive as readonly Record<string, string>[];

describe('pipes that might be laid instead', () => {
  test('are of every kind that shops sell, the nearest bore and one on either side', () => {
    const families = familiesNear(0.0204, 'metric');
    expect(families.map(({ called }) => called)).toEqual([
      'garden hose',
      'PE100 SDR11',
      'PVC-U PN16',
      'steel EN 10255',
      'galvanised steel',
      'copper L',
    ]);
    expect(families[1]?.pipes.map(({ name }) => name)).toEqual([
      'PE100 SDR11 20',
      'PE100 SDR11 25',
      'PE100 SDR11 32',
    ]);
    expect(families[1]?.nearest.name).toBe('PE100 SDR11 25');
  });

  test('are those of the reader’s own country', () => {
    const names = familiesNear(0.0204, 'us').map(({ nearest }) => nearest.name);
    expect(names).toContain('PVC sch 40 3/4 in');
    expect(names).toContain('PE4710 SIDR 9 3/4 in');
  });

  test('end with the tables', () => {
    expect(familiesNear(1, 'metric').every(({ pipes }) => pipes.length === 2)).toBe(true);
  });
});

describe('a changed drive line', () => {
  test('with another pipe keeps its trench: length, bends and how it is held', () => {
    const line = [
      { ...drive[0], material: 'steel', bore: '20 mm', rating: '6 bar', held: 'loose' },
    ];
    expect(withPipe(line, 'copper L 3/4 in')).toEqual([
      {
        pipe: 'copper L 3/4 in',
        length: { value: '14 m', origin: 'measured' },
        fittings: 'elbow',
        held: 'loose',
      },
    ]);
  });

  test('takes a new length as it was typed, and moves what is told by its distance along', () => {
    const line = [
      {
        pipe: 'PE100 SDR11 25',
        length: '14 m',
        air: '10 mL at 7 m',
        profile: [{ at: '3.5 m', height: '1.8 m' }],
      },
    ];
    expect(withLength(line, '28 m', 'metric')).toEqual([
      {
        pipe: 'PE100 SDR11 25',
        length: '28 m',
        air: ['10 mL at 14 m'],
        profile: [{ at: '7 m', height: '1.8 m' }],
      },
    ]);
  });

  test('of two pipes is stretched in proportion', () => {
    const line = [
      { pipe: 'PE100 SDR11 32', length: '6 m' },
      { pipe: 'PE100 SDR11 25', length: '12 m' },
    ];
    const longer = withLength(line, '27 m', 'metric');
    expect(longer.map(({ length }) => length)).toEqual(['9 m', '18 m']);
    expect(lengthOf(longer)).toBeCloseTo(27, 9);
  });

  test('that cannot be read stays as it is', () => {
    expect(withLength(drive, 'a bit', 'metric')).toBe(drive);
  });

  test('over a crest holds the air that was said, and straightened none', () => {
    const crested = overCrest(drive, '40 mL');
    expect(crested[0]).toMatchObject({ laid: 'over a crest', air: '40 mL' });
    expect(isStraight(crested)).toBe(false);
    expect(straightened(crested)).toEqual(drive);
    expect(overCrest(drive, ' ')[0]).not.toHaveProperty('air');
  });

  test('holds its air at the highest surveyed point', () => {
    const line = [
      {
        pipe: 'PE100 SDR11 25',
        length: '14 m',
        profile: [
          { at: '3 m', height: '1.2 m' },
          { at: '9 m', height: '1.6 m' },
        ],
      },
    ];
    expect(overCrest(line, '40 mL')[0]).toMatchObject({ air: '40 mL at 9 m' });
  });

  test('in every form can be read back as a site', () => {
    for (const line of [
      overCrest(drive, '40 mL'),
      overCrest(drive, ''),
      withLength(drive, '9.3 m', 'metric'),
      withPipe(drive, 'garden hose 3/4 in'),
    ]) {
      expect(siteFromData({ ...PLACE, drive: line }).ok).toBe(true);
    }
  });
});

describe('rows and columns', () => {
  test('begin with the line on the sheet; each place stands once', () => {
    const rows = driveRows(choices, PLACE, 'metric');
    expect(rows[0]).toMatchObject({ name: 'PE100 SDR11 25', isOnSheet: true, details: [] });
    expect(new Set(rows.map(({ key }) => key)).size).toBe(rows.length);
    expect(rows.filter(({ isOnSheet }) => isOnSheet)).toHaveLength(1);
  });

  test('multiply by length and laying, and say how they differ', () => {
    const more = {
      ...choices,
      pipes: [''],
      lengths: { ...choices.lengths, longer: { isChosen: true, text: '20 m' } },
      laid: { ...choices.laid, overCrest: true, air: '30 mL' },
    };
    expect(driveRows(more, PLACE, 'metric').map(({ details }) => details)).toEqual([
      ['14\u00a0m long'],
      ['14\u00a0m long', 'over a crest, 30\u00a0mL of air'],
      ['20\u00a0m long'],
      ['20\u00a0m long', 'over a crest, 30\u00a0mL of air'],
    ]);
  });

  test('hold the line on the sheet even when nobody ticked it', () => {
    const others = { ...choices, pipes: ['copper L 3/4 in'] };
    expect(
      driveRows(others, PLACE, 'metric').map(({ name, isOnSheet }) => [name, isOnSheet]),
    ).toEqual([
      ['PE100 SDR11 25', true],
      ['copper L 3/4 in', false],
    ]);
  });

  test('rams are the present one with its neighbours in size', () => {
    expect(sizesBeside(0.02)).toEqual(['DN15', 'DN20', 'DN25']);
    const names = ramColumns(choices, 'DN20', 'metric').map(({ name }) => name);
    expect(names).toEqual(['DN15', 'DN20', 'DN25']);
  });

  test('a tuned ram is written where its file has the part', () => {
    expect(tuned('DN20', 'stroke', '4 mm')).toEqual({ typical: 'DN20', stroke: '4 mm' });
    expect(tuned({ bore: '20 mm', wasteValve: { weight: '40 g' } }, 'weight', '60 g')).toEqual({
      bore: '20 mm',
      wasteValve: { weight: '60 g' },
    });
  });

  test('every tuning offered can be read and changes the ram as it says', () => {
    const { wasteValve } = installation.ram;
    const [lighter, heavier, shorter, longer] = tunedRams(choices, 'metric').map(
      ({ entry }) => installationFor({ ...PLACE, ram: entry }).ram.wasteValve,
    );
    expect((lighter?.movingMass ?? 0) / wasteValve.movingMass).toBeCloseTo(2 / 3, 2);
    expect((heavier?.movingMass ?? 0) / wasteValve.movingMass).toBeCloseTo(3 / 2, 2);
    expect((shorter?.stroke ?? 0) / wasteValve.stroke).toBeCloseTo(2 / 3, 2);
    expect((longer?.stroke ?? 0) / wasteValve.stroke).toBeCloseTo(3 / 2, 2);
  });
});

const SMALL = {
  ...choices,
  pipes: ['', 'steel EN 10255 DN20', 'garden hose 1/2 in'],
  rams: ['DN20', 'DN25'],
};
const rows = driveRows(SMALL, PLACE, 'metric');
const columns = ramColumns(SMALL, 'DN20', 'metric');
const pairs = pairsOf(rows, columns);
const results = new Map(sweepPairs(jobsFor(pairs, new Map())));

describe('pairs that were run', () => {
  test('are all there, and what is done is not asked again', () => {
    expect([...results.keys()]).toEqual(pairs.map(({ key }) => key));
    expect(jobsFor(pairs, results)).toEqual([]);
    const [first, ...others] = pairs;
    const half = new Map([[first?.key ?? '', results.get(first?.key ?? '')]].filter(isKnown));
    expect(jobsFor(pairs, half).flatMap(({ rams }) => rams)).toHaveLength(others.length);
  });

  test('say what the sheet says once they are on it', () => {
    for (const pair of pairs) {
      const place = adopted(openPlace(PLACE), pair);
      const alone = answerFor(installationFor(place.document), { changes: false });
      const result = results.get(pair.key);
      if (result?.kind !== 'answered') throw new Error(`${pair.key} was not answered`);
      expect(result.alternative.verdict.kind).toBe(alone.verdict.kind);
      expect(result.alternative.operatingPoint).toEqual(alone.operatingPoint);
      expect(sameText(siteWith(pair))).toBe(sameText(place.document));
    }
  });

  test('refuse a place that cannot be put together, and run the others', () => {
    const broken = {
      ...PLACE,
      drive: [{ pipe: 'PE100 SDR11 25', length: '9 m', air: '5 mL at 12 m' }],
    };
    const jobs = [
      { driveName: 'too short', site: broken, rams: [{ key: 'a', entry: 'DN20' }] },
      { driveName: 'own', site: PLACE, rams: [{ key: 'b', entry: 'DN20' }] },
    ];
    const [first, second] = [...sweepPairs(jobs)];
    expect(first).toMatchObject(['a', { kind: 'refused' }]);
    expect(second).toMatchObject(['b', { kind: 'answered' }]);
  });

  test('stand in words: a figure with what it takes, or the verdict with its numbers', () => {
    const cells = pairs.map((pair) => cellOf(results.get(pair.key), { needed: 1 }, 'metric'));
    for (const cell of cells) expect(cell?.spoken).toMatch(/^[A-Z]/);
    const hose = cellOf(results.get(pairs.at(-1)?.key ?? ''), {}, 'metric');
    expect(hose).toMatchObject({ kind: 'staysOpen', figure: 'Stays open', isFigure: false });
    expect(hose?.note).toMatch(/^[\d.]+ of [\d.]+\u00a0L\/min$/);
    const steel = cellOf(results.get(pairs[2]?.key ?? ''), { needed: 1 }, 'us');
    expect(steel?.figure).toMatch(/^\d+\u00a0gal$/);
    expect(steel?.note).toMatch(/^takes [\d.]+; \d+\u00a0%\u00a0of\u00a0need$/);
  });

  test('put the line with most water first, and those on which nothing runs last', () => {
    const ordered = rowsInOrder(rows, columns, results, 'delivered').map(({ name }) => name);
    expect(ordered[0]).toBe('steel EN 10255 DN20');
    expect(ordered.at(-1)).toBe('garden hose 1/2 in');
    expect(rowsInOrder(rows, columns, results, 'taken').at(-1)?.name).toBe('garden hose 1/2 in');
    expect(rowsInOrder(rows, columns, results, 'listed')).toBe(rows);
  });

  test('are summed up in sentences, without a best before all are run', () => {
    const told = tableInWords(pairs, results, { needed: 1 }, 'metric').join(' ');
    expect(told).toMatch(/On the sheet, PE100 SDR11 25 with DN20: runs/);
    expect(told).toMatch(/None gives the [\d,]+\u00a0L\u00a0a\u00a0day that are needed/);
    const part = new Map([...results].slice(0, 2));
    expect(tableInWords(pairs, part, { needed: 1 }, 'metric').join(' ')).not.toMatch(/None|Most/);
  });
});

function isKnown<Value>(entry: (string | Value | undefined)[]): entry is [string, Value] {
  return entry[1] !== undefined;
}

describe('adopting a pair', () => {
  test('puts line and ram on the sheet, keeps the rest, and is one step back', () => {
    const pair = pairs.find(
      ({ row, column }) => row.name.startsWith('steel') && column.name === 'DN25',
    );
    if (pair === undefined) throw new Error('the pair is not in the table');
    const before = openPlace(PLACE);
    const after = adopted(before, pair);
    expect(after.document).toMatchObject({
      name: 'Tarn Hollow',
      ram: 'DN25',
      drive: [{ pipe: 'steel EN 10255 DN20', length: { value: '14 m', origin: 'measured' } }],
    });
    expect(undo(after).document).toEqual(PLACE);
  });

  test('of what stands there changes nothing', () => {
    const place = openPlace(PLACE);
    const own = pairs.find(({ row, column }) => row.isOnSheet && column.isOnSheet);
    if (own === undefined) throw new Error('the pair on the sheet is not in the table');
    expect(adopted(place, own)).toBe(place);
  });

  test('leaves a sheet without a ram so, while its pipe gives that very ram', () => {
    const { ram: _ram, ...without } = PLACE;
    const fresh = choicesFor(without, installationFor(without), 'metric');
    const freshRows = driveRows(fresh, without, 'metric');
    const freshColumns = ramColumns(fresh, 'DN20', 'metric');
    const [row] = freshRows;
    const column = freshColumns.find(({ isOnSheet }) => isOnSheet);
    if (row === undefined || column === undefined) throw new Error('nothing is on the sheet');
    const place = openPlace(without);
    expect(adopted(place, { key: '', row, column })).toBe(place);
  });

  test('does not move the table: rows stay, only the mark goes along', () => {
    const pair = pairs[3];
    if (pair === undefined) throw new Error('too few pairs');
    const { document } = adopted(openPlace(PLACE), pair);
    const followed = followingSheet(SMALL, document, installationFor(document), 'metric');
    expect(followed).toBe(SMALL);
    const after = driveRows(followed, document, 'metric');
    expect(after.map(({ name }) => name)).toEqual(rows.map(({ name }) => name));
    expect(after.find(({ isOnSheet }) => isOnSheet)?.name).toBe(pair.row.name);
  });
});

describe('when the sheet is changed elsewhere', () => {
  test('the rows take its length; pipes that were named and ticks stay', () => {
    const named = {
      ...withPipeAdded(choices, 'PVC hose 25 mm'),
      laid: { ...choices.laid, overCrest: true },
    };
    const document = { ...PLACE, drive: [{ pipe: 'PE100 SDR11 25', length: '20 m' }] };
    const followed = followingSheet(named, document, installationFor(document), 'metric');
    expect(lengthOf(followed.line)).toBe(20);
    expect(followed.pipes).toContain('PVC hose 25 mm');
    expect(followed.laid.overCrest).toBe(true);
    const copper = driveRows(followed, document, 'metric').find(({ name }) =>
      name.startsWith('copper'),
    );
    expect(copper?.site).toMatchObject({ drive: [{ length: '20 m' }] });
  });

  test('another ram takes the place of the old one and its tunings', () => {
    const tunedOnce = withRamToggled(choices, tuned('DN20', 'stroke', '4 mm'));
    const document = { ...PLACE, ram: { typical: 'DN32', stroke: '6 mm' } };
    const followed = followingSheet(tunedOnce, document, installationFor(document), 'metric');
    expect(followed.rams).toEqual([{ typical: 'DN32', stroke: '6 mm' }, 'DN20', 'DN15', 'DN25']);
  });

  test('another place begins anew, with what waited for it', () => {
    const asked = withAsked(createComparison().get(), { kind: 'length', length: 20 });
    const sheet = { document: PLACE, installation, opening: 0 };
    const first = onSheet(asked, sheet, 'metric');
    expect(first.choices?.opened).toEqual([{ kind: 'length', length: 20 }]);
    expect(first.asked).toEqual({ kind: 'length', length: 20 });
    expect(onSheet(first, sheet, 'metric')).toBe(first);
    const other = onSheet(first, { ...sheet, opening: 1 }, 'metric');
    expect(other.choices?.opened).toEqual([]);
    expect(other.asked).toBeUndefined();
  });
});

describe('alternatives opened from what would change it', () => {
  const rowOf = (opened: Parameters<typeof withOpened>[1]) =>
    driveRows(withOpened({ ...choices, pipes: [''] }, opened), PLACE, 'metric').at(-1);

  test('a length and caught air are rows', () => {
    expect(rowOf({ kind: 'length', length: 20 })?.site).toMatchObject({
      drive: [{ length: '20 m' }],
    });
    expect(rowOf({ kind: 'air', volume: 5e-5 })?.site).toMatchObject({
      drive: [{ laid: 'over a crest', air: '50 mL' }],
    });
  });

  test('another fall, lift or source is a row that changes the place', () => {
    const fall = rowOf({ kind: 'place', what: 'fall', value: 2.4, isStore: false });
    expect(fall).toMatchObject({ details: ['fall of 2.4 m'], site: { fall: '2.4 m' } });
    const flow = rowOf({ kind: 'place', what: 'sourceFlow', value: 2 / 6e4, isStore: true });
    expect(flow?.changes).toEqual([{ path: ['source', 'inflow'], value: '2 L/min' }]);
  });

  test('a stroke is a column', () => {
    const opened = withOpened(choices, { kind: 'stroke', stroke: 0.004 });
    const tunings = ramColumns(opened, 'DN20', 'metric').map(({ detail }) => detail);
    expect(tunings).toContain('stroke 4 mm');
  });

  test('what was asked for is the pair that is looked at, with all else as on the sheet', () => {
    const nameFor = (asked: Parameters<typeof withOpened>[1]) => {
      const opened = withOpened(choices, asked);
      const pairs = pairsOf(
        driveRows(opened, PLACE, 'metric'),
        ramColumns(opened, 'DN20', 'metric'),
      );
      const pair = pairAskedFor(pairs, asked);
      return pair === undefined ? undefined : pairName(pair);
    };
    expect(nameFor({ kind: 'stroke', stroke: 0.004 })).toBe(
      'PE100 SDR11 25 with DN20 (stroke 4 mm)',
    );
    expect(nameFor({ kind: 'length', length: 20 })).toBe('PE100 SDR11 25, 20 m long with DN20');
    expect(nameFor({ kind: 'pipe', name: 'PVC-U PN16 25' })).toBe('PVC-U PN16 25 with DN20');
    expect(nameFor({ kind: 'pipe', name: 'PE100 SDR11 25' })).toBeUndefined();
  });
});
