/** A line in which nothing happens, and a line in which nothing is lost. */
import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { waterAt } from '../water/water.ts';
import { airLockOf } from './air-lock.ts';
import type { LineOptions } from './detailed-line.ts';
import {
  driveOf,
  lengthOf,
  NUMBERS_OF_A_PLACE,
  placeFrom,
  plainPlace,
  withoutSnifter,
} from './fixtures/made-installation.ts';
import type { Installation } from './installation.ts';
import { lineGrid } from './line-grid.ts';
import { ramKernel } from './operating-point.ts';
import { RamKernel } from './ram-kernel.ts';

const SEED = 20260203;
const IS_LONG = process.env.FALLWRIGHT_LONG === '1';
const RUNS = IS_LONG ? 2000 : 200;
// A busy machine may need longer than a test usually has.
vi.setConfig({ testTimeout: IS_LONG ? 3_600_000 : 60_000 });
/** Heads are sums of numbers of some metres, each good to 10⁻¹⁵ m; nothing adds them up over the steps. */
const STILL = 1e-11;

const numbers = fc.array(fc.integer({ min: 0, max: NUMBERS_OF_A_PLACE.largest }), {
  minLength: NUMBERS_OF_A_PLACE.count,
  maxLength: NUMBERS_OF_A_PLACE.count,
});

/** Heads, flows and valves after a while are those of the beginning. */
function expectRest(place: Installation, options: LineOptions, steps: number): void {
  const kernel = ramKernel(place, place.lift, options);
  while (kernel.steps < steps) expect(kernel.run(steps - kernel.steps)).toBe(0);
  const { forward, backward } = kernel;
  for (const wave of [...forward, ...backward]) {
    expect(Math.abs(wave - place.fall)).toBeLessThan(STILL);
  }
  expect(Math.abs(kernel.bodyHead - place.fall)).toBeLessThan(STILL);
  expect(kernel.opening).toBe(0);
  expect(kernel.lastMotion).toBe(0);
  // 1 mm³ in all, of lines that hold litres.
  expect(Math.abs(kernel.volumes.supplied)).toBeLessThan(1e-9);
  expect(kernel.volumes.delivered).toBe(0);
}

test('a full line at rest behind a shut, tight ram stays at rest', () => {
  fc.assert(
    fc.property(numbers.map(placeFrom), fc.boolean(), (place, isDetailed) => {
      const bled = { ...place.driveLine, pockets: [] };
      const ram = withoutSnifter(place.ram);
      const options = isDetailed ? { envelope: true, unsteadyFriction: true, wallCreep: true } : {};
      expectRest({ ...place, ram, driveLine: bled }, options, 1000);
    }),
    { seed: SEED, numRuns: RUNS },
  );
});

test('it is still at rest after a hundred thousand steps', () => {
  const place = plainPlace();
  expectRest({ ...place, ram: withoutSnifter(place.ram) }, {}, 100_000);
});

test('a store that nothing runs into or out of keeps its level', () => {
  const place = plainPlace({
    ram: withoutSnifter(plainPlace().ram),
    source: { kind: 'store', surfaceArea: 0.05, inflow: 0, depthOverIntake: 0.3 },
  });
  const kernel = ramKernel(place, place.lift);
  kernel.run(20_000);
  expect(Math.abs(kernel.sourceLevel - 0.3)).toBeLessThan(STILL);
});

test('a bubble on a level stretch leaves the water at rest', () => {
  const place = plainPlace({
    ram: withoutSnifter(plainPlace().ram),
    driveLine: driveOf('steel sch 40 3/4 in', 12, {
      profile: [
        { distance: 0, elevation: 1 },
        { distance: 10, elevation: 1 },
        { distance: 12, elevation: 0 },
      ],
      pockets: [{ distance: 5, volume: 3e-4 }],
    }),
  });
  expect(airLockOf(place.driveLine, place.fall)).toBe(0);
  expectRest(place, {}, 20_000);
});

test('a line that holds no head and no water’s push is at rest too, even with a tight ram', () => {
  const place = plainPlace();
  const kernel = ramKernel({ ...place, ram: withoutSnifter(place.ram) }, place.lift);
  // Empty of head: the first wave reaches the shut ram only after eight steps, and till then there is nought at both sides.
  kernel.rest(0, 0);
  kernel.run(3);
  expect(kernel.bodyHead).toBe(0);
  expect(kernel.driveFlow).toBe(0);
  kernel.run(200);
  expect(Number.isFinite(kernel.bodyHead)).toBe(true);
  expect(kernel.bodyHead).toBeGreaterThan(0);
});

test('caught air takes its height from the head at the shut ram', () => {
  const place = plainPlace({
    ram: withoutSnifter(plainPlace().ram),
    driveLine: driveOf('steel sch 40 3/4 in', 12, {
      profile: [
        { distance: 0, elevation: 1.9 },
        { distance: 5, elevation: 1.6 },
        { distance: 12, elevation: 0 },
      ],
      pockets: [{ distance: 5, volume: 4e-4 }],
    }),
  });
  // 0.4 litre is 1.159 m of a bore of 20.96 mm, on a leg that falls 1.6 m in 7 m: 0.265 m of head.
  const lock = airLockOf(place.driveLine, place.fall);
  expect(lock).toBeCloseTo(0.265, 3);
  const kernel = ramKernel(place, place.lift);
  kernel.run(200_000);
  // The surge of the bubble dies away with laminar friction; a millimetre of it may be left.
  expect(Math.abs(kernel.bodyHead - (place.fall - lock))).toBeLessThan(1e-3);
});

/** A shut, tight, stiff ram on a line without friction, its water running. */
function losslessKernel(place: Installation, flow: number, reaches: number): RamKernel {
  const bare: Installation = {
    ...place,
    ram: { ...withoutSnifter(place.ram), bodyElasticity: 0 },
    driveLine: { ...place.driveLine, entranceLoss: 0 },
  };
  const grid = lineGrid(bare.driveLine, bare.water, bare.fall, reaches, 1e-3, () => 0);
  const kernel = new RamKernel(bare, grid, { kind: 'fixedHead', head: bare.lift }, {});
  kernel.rest(flow, bare.fall);
  return kernel;
}

test('without friction a stopped flow rings at 4L/a for ever, and nothing of it is lost', () => {
  const place = plainPlace({
    fall: 4,
    lift: 40,
    driveLine: driveOf('steel sch 40 3/4 in', 12),
    water: waterAt({ temperature: 15, altitude: 0 }),
  });
  for (const reaches of [2, 8, 31]) {
    // 5 mL/s in 345 mm² is 14.5 mm/s: a blow of 2 m, so that the head stays above nought and the valve shut.
    const kernel = losslessKernel(place, 5e-6, reaches);
    const forward = [...kernel.forward];
    const backward = [...kernel.backward];
    const quarter = kernel.grid.reaches;
    const blow = 5e-6 * (kernel.grid.impedance[0] as number);
    for (let period = 0; period < 500; period++) {
      // Half a period after the blow the whole line has it with the other sign.
      kernel.run(quarter);
      expect(Math.abs(kernel.bodyHead - (4 + blow))).toBeLessThan(1e-9);
      kernel.run(2 * quarter);
      expect(Math.abs(kernel.bodyHead - (4 - blow))).toBeLessThan(1e-9);
      kernel.run(quarter);
    }
    // 500 periods of 4 · reaches steps, each copying or mirroring a number: a few roundings of 10⁻¹⁵ m each.
    forward.forEach((wave, i) => {
      expect(Math.abs((kernel.forward[i] as number) - wave)).toBeLessThan(1e-9);
      expect(Math.abs((kernel.backward[i] as number) - (backward[i] as number))).toBeLessThan(1e-9);
    });
  }
});

test('where two pipes meet a lossless wave keeps its energy', () => {
  const place = plainPlace({
    fall: 4,
    lift: 40,
    driveLine: driveOf('steel sch 40 3/4 in', 14, {
      // One bore, two walls: the joint reflects, and loses nothing.
      segments: [
        { ...lengthOf('steel sch 40 3/4 in', 8), restraint: 'anchoredUpstream' },
        {
          ...lengthOf('steel sch 40 3/4 in', 6),
          pipe: { ...lengthOf('steel sch 40 3/4 in', 6).pipe, wallThickness: 2e-4 },
        },
      ],
    }),
  });
  const kernel = losslessKernel(place, 3e-6, 12);
  const { impedance } = kernel.grid;
  expect(new Set(impedance.map((z) => Math.round(z))).size).toBe(2);
  const energy = () => {
    let sum = 0;
    for (let i = 0; i < kernel.grid.reaches; i++) {
      const up = (kernel.forward[i] as number) - place.fall;
      const down = (kernel.backward[i] as number) - place.fall;
      sum += (up ** 2 + down ** 2) / (impedance[i] as number);
    }
    return sum;
  };
  const before = energy();
  kernel.run(20_000);
  expect(Math.abs(energy() / before - 1)).toBeLessThan(1e-9);
});
