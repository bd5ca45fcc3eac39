/** One thing changed, and all others left as they are. */
import { expect, test } from 'vitest';
import { driveOf, lengthOf, plainPlace } from '../cycle/fixtures/made-installation.ts';
import type { Installation } from '../cycle/installation.ts';
import { submergedWeightOfMass } from '../machine/typical-ram.ts';
import type { SprungValve, WeightedValve } from '../machine/waste-valve.ts';
import type { Changeable } from './answer.ts';
import { EFFORT, presentValue, varied } from './varied.ts';

const THINGS = Object.keys(EFFORT) as Changeable[];

const place = plainPlace({
  source: { kind: 'steady', yield: 2e-4 },
  driveLine: driveOf('steel sch 40 3/4 in', 12, {
    segments: [lengthOf('steel sch 40 1 in', 5), lengthOf('steel sch 40 3/4 in', 7)],
    profile: [
      { distance: 0, elevation: 2 },
      { distance: 4, elevation: 0.7 },
      { distance: 6, elevation: 1.5 },
      { distance: 12, elevation: 0 },
    ],
    pockets: [{ distance: 6, volume: 1e-4 }],
  }),
});

/** Paths of the numbers and words that differ between two records. */
function differences(a: unknown, b: unknown, path = ''): string[] {
  if (a === b) return [];
  const isRecord = (x: unknown): x is Record<string, unknown> =>
    typeof x === 'object' && x !== null;
  if (!isRecord(a) || !isRecord(b)) return [path];
  const names = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...names].flatMap((name) => differences(a[name], b[name], `${path}/${name}`));
}

/** Where an installation may differ when each thing is changed. */
const TOUCHES: Record<Changeable, RegExp> = {
  fall: /^\/fall$|^\/driveLine\/profile\/\d+\/elevation$/,
  lift: /^\/lift$/,
  driveLength:
    /^\/driveLine\/(segments\/\d+\/length|pockets\/\d+\/distance|profile\/\d+\/distance)$/,
  driveBore: /^\/driveLine\/segments\/\d+\/pipe\/(innerDiameter|wallThickness)$/,
  valveWeight: /^\/ram\/wasteValve\/(submergedWeight|movingMass)$/,
  stroke: /^\/ram\/wasteValve\/stroke$/,
  sourceFlow: /^\/source\/yield$/,
  trappedAir: /^\/driveLine\/pockets\/0\/volume$/,
};

for (const what of THINGS) {
  test(`changing ${what} changes it to the value that was asked, and nothing else`, () => {
    const now = presentValue(place, what) as number;
    expect(now).toBeGreaterThan(0);
    for (const times of [0.6, 1.7]) {
      const other = varied(place, what, times * now);
      expect(presentValue(other, what)).toBeCloseTo(times * now, 12);
      for (const unlike of THINGS) {
        if (unlike === what) continue;
        expect(presentValue(other, unlike), unlike).toBe(presentValue(place, unlike));
      }
      const touched = differences(place, other);
      expect(touched.length).toBeGreaterThan(0);
      for (const path of touched) expect(path).toMatch(TOUCHES[what]);
    }
  });

  test(`${what} at its present value is the present place`, () => {
    const same = varied(place, what, presentValue(place, what) as number);
    expect(same).toEqual(place);
  });
}

test('the place that was given is not touched', () => {
  const before = structuredClone(place);
  for (const what of THINGS) varied(place, what, 0.5 * (presentValue(place, what) as number));
  expect(place).toEqual(before);
});

test('a longer line is stretched with its profile and its pockets', () => {
  const { driveLine } = varied(place, 'driveLength', 24);
  expect(driveLine.segments.map((s) => s.length)).toEqual([10, 14]);
  expect(driveLine.profile?.map((p) => p.distance)).toEqual([0, 8, 12, 24]);
  expect(driveLine.pockets[0]?.distance).toBe(12);
});

test('a profile ends at the source’s surface at whatever fall', () => {
  const { driveLine } = varied(place, 'fall', 3);
  expect(driveLine.profile?.[0]?.elevation).toBe(3);
  expect(driveLine.profile?.at(-1)?.elevation).toBe(0);
});

test('a wider bore has a thicker wall, so that it is the same kind of pipe', () => {
  const [before, after] = [place, varied(place, 'driveBore', 0.04)].map(
    (p) => p.driveLine.segments[1]?.pipe,
  );
  if (!before || !after) throw new Error('two pipes');
  expect(after.innerDiameter).toBeCloseTo(0.04, 12);
  expect(after.wallThickness / after.innerDiameter).toBeCloseTo(
    before.wallThickness / before.innerDiameter,
    12,
  );
});

test('weight put on a valve brings its mass along', () => {
  const now = place.ram.wasteValve as WeightedValve;
  const heavier = varied(place, 'valveWeight', now.submergedWeight + submergedWeightOfMass(0.2)).ram
    .wasteValve as WeightedValve;
  expect(heavier.movingMass - now.movingMass).toBeCloseTo(0.2, 12);
  // However much is taken off, something is left that moves.
  const lighter = varied(place, 'valveWeight', 0).ram.wasteValve as WeightedValve;
  expect(lighter.movingMass).toBeGreaterThan(0);
});

test('a spring set harder pushes harder at both stops', () => {
  const { submergedWeight, ...form } = place.ram.wasteValve as WeightedValve;
  const wasteValve: SprungValve = {
    ...form,
    kind: 'sprung',
    forceAtOpen: submergedWeight,
    forceAtShut: 3 * submergedWeight,
  };
  const sprung: Installation = { ...place, ram: { ...place.ram, wasteValve } };
  const harder = varied(sprung, 'valveWeight', submergedWeight + 1).ram.wasteValve as SprungValve;
  expect(harder.forceAtOpen).toBeCloseTo(submergedWeight + 1, 12);
  expect(harder.forceAtShut).toBeCloseTo(3 * submergedWeight + 1, 12);
});

test('air that is let in collects where it is caught, or at the highest crest, or near the ram', () => {
  const { driveLine } = place;
  const caught = {
    ...place,
    driveLine: { ...driveLine, pockets: [{ distance: 1, volume: 1e-5 }] },
  };
  const bled = { ...place, driveLine: { ...driveLine, pockets: [] } };
  const { profile: _, ...straight } = driveLine;
  const even = { ...place, driveLine: { ...straight, pockets: [] } };
  const whereIn = (p: Installation) => varied(p, 'trappedAir', 1e-3).driveLine.pockets;
  expect(whereIn(caught)).toEqual([{ distance: 1, volume: 1e-3 }]);
  expect(whereIn(bled)).toEqual([{ distance: 6, volume: 1e-3 }]);
  expect(whereIn(even)).toEqual([{ distance: 9, volume: 1e-3 }]);
});

test('a bled line has no pockets', () => {
  expect(varied(place, 'trappedAir', 0).driveLine.pockets).toEqual([]);
});

test('a source that gives more than any ram takes has no flow that could be changed', () => {
  expect(presentValue(plainPlace(), 'sourceFlow')).toBeUndefined();
  const store = plainPlace({
    source: { kind: 'store', surfaceArea: 1, inflow: 3e-5, depthOverIntake: 1 },
  });
  expect(presentValue(store, 'sourceFlow')).toBe(3e-5);
  expect(presentValue(varied(store, 'sourceFlow', 5e-5), 'sourceFlow')).toBe(5e-5);
});
