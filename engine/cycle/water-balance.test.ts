/**
 * Water in is water out and what is stored, at every step of every run.
 *
 * The tolerance is rounding: each of the few thousand steps of a run adds some ten sums of numbers near the volume that
 * passed, each good to 10⁻¹⁶, and they add up to less than 10⁻¹¹ of it.
 */
import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { DeliveryColumn, STOP_VALVE_SHUT } from './delivery-column.ts';
import type { LineOptions } from './detailed-line.ts';
import {
  driveOf,
  lengthOf,
  NUMBERS_OF_A_PLACE,
  placeFrom,
  plainPlace,
} from './fixtures/made-installation.ts';
import type { Installation } from './installation.ts';
import { ramKernel, startedKernel } from './operating-point.ts';
import type { RamKernel, VesselOutflow } from './ram-kernel.ts';

const SEED = 20260202;
const IS_LONG = process.env.FALLWRIGHT_LONG === '1';
const RUNS = IS_LONG ? 2000 : 200;
// A busy machine may need longer than a test usually has.
vi.setConfig({ testTimeout: IS_LONG ? 3_600_000 : 60_000 });
const ROUNDING = 1e-11;

const places = fc
  .array(fc.integer({ min: 0, max: NUMBERS_OF_A_PLACE.largest }), {
    minLength: NUMBERS_OF_A_PLACE.count,
    maxLength: NUMBERS_OF_A_PLACE.count,
  })
  .map(placeFrom);

/** Share of the water that a kernel has lost or found since it held `before`. */
function lostShare(kernel: RamKernel, before: number): number {
  const { supplied, wasted, delivered } = kernel.volumes;
  const stored = kernel.storedVolume;
  const scale = Math.abs(supplied) + Math.abs(wasted) + Math.abs(delivered) + Math.abs(before);
  return Math.abs(supplied - wasted - delivered - (stored - before)) / scale;
}

function expectBalance(
  place: Installation,
  options: LineOptions & { readonly reaches?: number },
): RamKernel {
  const kernel = startedKernel(place, place.lift, options);
  const before = kernel.storedVolume;
  for (const until of [1, 2, 7, 100, 3000]) {
    while (kernel.steps < until) kernel.run(until - kernel.steps);
    expect(lostShare(kernel, before)).toBeLessThan(ROUNDING);
  }
  return kernel;
}

test('no water is lost or found in any line, after any number of steps', () => {
  fc.assert(
    fc.property(places, fc.integer({ min: 2, max: 24 }), (place, reaches) => {
      expectBalance(place, { reaches });
    }),
    { seed: SEED, numRuns: RUNS },
  );
});

test('creeping walls, unsteady friction, caught air and vapour keep the balance too', () => {
  let withCavity = 0;
  let withAir = 0;
  fc.assert(
    fc.property(places, fc.boolean(), fc.boolean(), (place, unsteadyFriction, wallCreep) => {
      const kernel = expectBalance(place, { envelope: true, unsteadyFriction, wallCreep });
      if (kernel.detail.hasCavity) withCavity++;
      if (place.driveLine.pockets.length > 0) withAir++;
    }),
    { seed: SEED, numRuns: RUNS },
  );
  // A balance that never met a cavity or a bubble would say nothing about them.
  expect(withCavity).toBeGreaterThan(RUNS / 20);
  expect(withAir).toBeGreaterThan(RUNS / 20);
});

test('a vapour cavity in a creeping wall gives back all the water that it displaced', () => {
  // High above the ram the line stands near vapour pressure, and the recoil of a hard blow tears it.
  const place = plainPlace({
    fall: 8,
    lift: 60,
    driveLine: driveOf('PE100 SDR11 25', 30, {
      profile: [
        { distance: 0, elevation: 8 },
        { distance: 28, elevation: 8 },
        { distance: 30, elevation: 0 },
      ],
    }),
  });
  const kernel = expectBalance(place, { wallCreep: true, envelope: true });
  expect(kernel.detail.hasCavity).toBe(true);
});

test('a body with no give at all keeps the balance, even when its water boils', () => {
  const { ram, water } = plainPlace();
  const kernel = expectBalance(plainPlace({ ram: { ...ram, bodyElasticity: 0 } }), {});
  expect(kernel.extremes.lowest).toBe(water.vapourHead);
});

test('what leaves a store is what its level and its inflow account for', () => {
  const store = { surfaceArea: 0.2, depthOverIntake: 0.4 };
  for (const inflow of [0, 2e-5, 1e-3]) {
    const place = plainPlace({ source: { kind: 'store', inflow, ...store } });
    const kernel = startedKernel(place, place.lift, {});
    const before = kernel.storedVolume;
    while (kernel.steps < 40_000) kernel.run(40_000 - kernel.steps);
    const { supplied, spilled } = kernel.volumes;
    const drop = (store.depthOverIntake - kernel.sourceLevel) * store.surfaceArea;
    const ranIn = inflow * kernel.time;
    // Held against the store's whole volume, whose level is the number that the balance is kept in.
    const whole = store.depthOverIntake * store.surfaceArea + ranIn;
    expect(Math.abs(supplied + spilled - ranIn - drop) / whole).toBeLessThan(ROUNDING);
    expect(lostShare(kernel, before)).toBeLessThan(ROUNDING);
    if (inflow > 5e-4) expect(spilled).toBeGreaterThan(0);
    else expect(drop).toBeGreaterThan(0);
  }
});

test('what passes the delivery valve is in the vessel or has left it', () => {
  const place = plainPlace();
  const { water, ram, fall } = place;
  const outflows: readonly VesselOutflow[] = [
    new DeliveryColumn(place, 'toSourceLevel'),
    new DeliveryColumn(place, 'full'),
    STOP_VALVE_SHUT,
  ];
  for (const outflow of outflows) {
    const kernel = ramKernel(place, fall);
    let left = 0;
    let pending = 0;
    kernel.setVesselSide({
      kind: 'air',
      outflow: {
        advance(vesselHead, timeStep) {
          const flow = outflow.advance(vesselHead, timeStep);
          // A flow leaves the vessel in the step after the one in which it was asked for.
          left += pending;
          pending = flow * timeStep;
          return flow;
        },
      },
    });
    kernel.fillVessel(fall);
    // The air's volume from its head: slow filling keeps p V, beats keep p Vⁿ.
    const absolute = (head: number) => head + water.atmosphericHead;
    const filled = (ram.airVessel.volume * water.atmosphericHead) / absolute(fall);
    const air = () =>
      filled *
      (absolute(fall) / absolute(kernel.vesselHead)) ** (1 / ram.airVessel.polytropicIndex);
    kernel.pushOpen();
    for (let beat = 0; beat < 40; beat++) {
      if (kernel.run(4000) === 0) kernel.pushOpen();
      const { delivered } = kernel.volumes;
      // The head is carried by a product of tens of thousands of ratios, each good to 10⁻¹⁶, so the air is good to 10⁻¹¹.
      expect(Math.abs(delivered - left - (filled - air())) / filled).toBeLessThan(1e-10);
    }
    expect(kernel.volumes.delivered).toBeGreaterThan(0);
  }
});

test('a line of three pipes and a bubble hands on all its water', () => {
  const place = plainPlace({
    driveLine: driveOf('steel sch 40 3/4 in', 1, {
      segments: [
        lengthOf('PE100 SDR11 32', 9),
        lengthOf('steel sch 40 3/4 in', 4),
        lengthOf('garden hose 3/4 in', 0.5),
      ],
      pockets: [
        { distance: 3, volume: 2e-4 },
        { distance: 9, volume: 1e-5 },
      ],
    }),
  });
  expectBalance(place, { unsteadyFriction: true, wallCreep: true });
});
