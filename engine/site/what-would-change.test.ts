/** What would turn the verdict. */
import { expect, test } from 'vitest';
import { driveOf, plainPlace } from '../cycle/fixtures/made-installation.ts';
import type { Installation } from '../cycle/installation.ts';
import { operatingPoint } from '../cycle/operating-point.ts';
import { typicalRam } from '../machine/typical-ram.ts';
import type { Change, Changeable, VerdictKind } from './answer.ts';
import { varied } from './varied.ts';
import { kindOf } from './verdict.ts';
import { changesOneByOne, inOrderOfTrying, materialsOneByOne } from './what-would-change.ts';

/** Places on both sides of several limits. */
const PLACES: Record<string, Installation> = {
  'a ram that runs': plainPlace(),
  'a ram on a hose that cannot shut it': plainPlace({
    fall: 1.2,
    lift: 6,
    ram: typicalRam('DN15'),
    driveLine: driveOf('garden hose 1/2 in', 30),
  }),
  'a ram whose line is too soft': plainPlace({
    lift: 25,
    driveLine: driveOf('garden hose 3/4 in', 12),
  }),
  'a ram that its spring cannot feed': plainPlace({ source: { kind: 'steady', yield: 3e-5 } }),
};

function verdictAt(place: Installation, what: Changeable, value: number): VerdictKind {
  const other = varied(place, what, value);
  return kindOf(other, operatingPoint(other));
}

/** The walk goes in steps of 1.2 and halves the last five times: inside and outside differ by 1.2^(1/32), or 0.57 %. */
const NARROWEST = 1.2 ** (1 / 32);

for (const [name, place] of Object.entries(PLACES)) {
  const changes = [...changesOneByOne(place)];

  test(`${name}: at each turning value the verdict really turns`, () => {
    let turns = 0;
    for (const { what, runs, searchedLow, searchedHigh } of changes) {
      // A ram on a bubble beats so irregularly that its verdict may turn with the last digit of the bubble's size.
      if (!runs || what === 'trappedAir') continue;
      expect(runs.low).toBeLessThanOrEqual(runs.high);
      expect(verdictAt(place, what, runs.low), `${what} at its low end`).toBe('runs');
      expect(verdictAt(place, what, runs.high), `${what} at its high end`).toBe('runs');
      // A step cut short by the end of the search is halved to less than that; such an outside is not known from here.
      if (runs.belowLow !== undefined && runs.low / 1.2 > searchedLow) {
        turns++;
        expect(verdictAt(place, what, runs.low / NARROWEST), `${what} just below`).toBe(
          runs.belowLow,
        );
      }
      if (runs.aboveHigh !== undefined && runs.high * 1.2 < searchedHigh) {
        turns++;
        expect(verdictAt(place, what, runs.high * NARROWEST), `${what} just above`).toBe(
          runs.aboveHigh,
        );
      }
      expect(runs.belowLow).not.toBe('runs');
      expect(runs.aboveHigh).not.toBe('runs');
    }
    expect(turns).toBeGreaterThan(0);
  });

  test(`${name}: a stretch lies in what was searched, and an open end is the end of the search`, () => {
    for (const { now, runs, searchedLow, searchedHigh, what } of changes) {
      expect(now, what).toBeGreaterThanOrEqual(searchedLow);
      expect(now, what).toBeLessThanOrEqual(searchedHigh);
      if (!runs) continue;
      expect(runs.low, what).toBeGreaterThanOrEqual(searchedLow);
      expect(runs.high, what).toBeLessThanOrEqual(searchedHigh);
      if (runs.belowLow === undefined) expect(runs.low, what).toBe(searchedLow);
      if (runs.aboveHigh === undefined) expect(runs.high, what).toBe(searchedHigh);
    }
  });

  test(`${name}: the present value lies in every stretch, or in none of them`, () => {
    const isRunning = kindOf(place, operatingPoint(place)) === 'runs';
    for (const { now, runs, what } of changes) {
      const isInside = runs !== undefined && runs.low <= now && now <= runs.high;
      expect(isInside, what).toBe(isRunning);
    }
  });
}

test('a ram that runs has no stretch without it, and one that does not may have several ways out', () => {
  for (const change of changesOneByOne(PLACES['a ram that runs'] as Installation)) {
    expect(change.runs).toBeDefined();
  }
  const hose = [...changesOneByOne(PLACES['a ram on a hose that cannot shut it'] as Installation)];
  const stretchOf = (what: Changeable) => hose.find((c) => c.what === what)?.runs;
  // More fall and a shorter hose drive more water.
  expect(stretchOf('fall')?.low).toBeGreaterThan(1.2);
  expect(stretchOf('fall')?.belowLow).toBe('staysOpen');
  expect(stretchOf('driveLength')?.high).toBeLessThan(30);
  expect(stretchOf('driveLength')?.aboveHigh).toBe('staysOpen');
});

test('what starves a ram is cured by what the ram takes, and no sooner', () => {
  const place = PLACES['a ram that its spring cannot feed'] as Installation;
  const change = [...changesOneByOne(place)].find((c) => c.what === 'sourceFlow');
  const takes = operatingPoint(plainPlace()).supplyFlow;
  expect(change?.runs?.low).toBeGreaterThanOrEqual(takes);
  expect(change?.runs?.low).toBeLessThan(1.01 * takes);
  expect(change?.runs?.belowLow).toBe('starves');
});

test('when more is needed than comes, the stretch that gives enough lies within one on which it runs', () => {
  const place = plainPlace();
  const now = operatingPoint(place).deliveryFlow;
  const needed = 1.5 * now;
  let found = 0;
  for (const { what, runs, enough } of changesOneByOne(place, needed)) {
    if (!enough) continue;
    found++;
    expect(runs).toBeDefined();
    for (const end of [enough.low, enough.high]) {
      const other = varied(place, what, end);
      expect(operatingPoint(other).deliveryFlow, what).toBeGreaterThanOrEqual(needed);
      expect(kindOf(other, operatingPoint(other)), what).toBe('runs');
    }
  }
  expect(found).toBeGreaterThan(0);
  // Enough is not looked for where enough comes.
  for (const change of changesOneByOne(place, 0.5 * now)) expect(change.enough).toBeUndefined();
});

test('a tank hardly above the source is not searched for below the source', () => {
  // The search once left its own range here, and told of lifts below the fall.
  const base = plainPlace();
  const leaky = {
    ...base.ram.deliveryValve,
    backFlowPerBeat: 4 * base.ram.deliveryValve.backFlowPerBeat,
  };
  const place = plainPlace({
    lift: 2.01,
    ram: { ...base.ram, deliveryValve: leaky },
    driveLine: driveOf('steel sch 40 3/4 in', 12, { pockets: [{ distance: 9, volume: 1e-3 }] }),
  });
  const found = new Map([...changesOneByOne(place)].map((c) => [c.what, c]));
  for (const what of ['lift', 'fall'] as const) {
    const change = found.get(what) as Change;
    expect(change.searchedLow).toBeLessThanOrEqual(change.now);
    expect(change.searchedHigh).toBeGreaterThanOrEqual(change.now);
    if (!change.runs) continue;
    expect(change.runs.low).toBeGreaterThanOrEqual(change.searchedLow);
    expect(change.runs.high).toBeLessThanOrEqual(change.searchedHigh);
  }
  expect(found.get('lift')?.searchedLow).toBeGreaterThan(place.fall);
  expect(found.get('fall')?.searchedHigh).toBeLessThan(place.lift);
});

test('what is no trouble comes first, then what is nearest; in whatever order they were found', () => {
  const changes = [
    ...changesOneByOne(PLACES['a ram on a hose that cannot shut it'] as Installation),
  ];
  const ordered = inOrderOfTrying(changes);
  expect(ordered).toHaveLength(changes.length);
  const trouble = { free: 0, small: 1, large: 2 };
  const distance = ({ now, runs }: Change) =>
    runs ? Math.min(Math.abs(Math.log(runs.low / now)), Math.abs(Math.log(runs.high / now))) : 99;
  for (let i = 1; i < ordered.length; i++) {
    const [a, b] = [ordered[i - 1] as Change, ordered[i] as Change];
    expect(trouble[a.effort]).toBeLessThanOrEqual(trouble[b.effort]);
    if (a.effort === b.effort) expect(distance(a)).toBeLessThanOrEqual(distance(b));
  }
  // Those without a way out tie; the others keep their order however they come.
  const withWay = (list: readonly Change[]) => list.filter((c) => c.runs).map((c) => c.what);
  expect(withWay(inOrderOfTrying([...changes].reverse()))).toEqual(withWay(ordered));
  expect(withWay(inOrderOfTrying([...ordered].reverse()))).toEqual(withWay(ordered));
});

test('changes come one by one, so that a search can be stopped', () => {
  const search = changesOneByOne(plainPlace());
  const first = search.next();
  expect(first.done).toBe(false);
  search.return();
  expect(search.next().done).toBe(true);
});

test('other materials are tried as the table pipe nearest in bore, and a stiff one cures a soft line', () => {
  const place = PLACES['a ram whose line is too soft'] as Installation;
  const materials = [...materialsOneByOne(place)];
  const present = place.driveLine.segments[0]?.pipe.material;
  expect(materials.length).toBeGreaterThan(3);
  expect(materials.map((m) => m.material)).not.toContain(present);
  const steel = materials.find((m) => m.material === 'steel');
  expect(steel?.verdict).toBe('runs');
  expect(steel?.deliveryFlow).toBeGreaterThan(0);
  expect(materials.find((m) => m.material === 'rubberHose')?.verdict).not.toBe('runs');
});
