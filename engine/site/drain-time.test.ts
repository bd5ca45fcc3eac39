import { expect, test } from 'vitest';
import { driveOf, plainPlace } from '../cycle/fixtures/made-installation.ts';
import type { StoredSource } from '../cycle/installation.ts';
import { operatingPoint, startedKernel } from '../cycle/operating-point.ts';
import { earlyAnswer } from './answer-for.ts';
import { atFall, drainTime, emptying } from './drain-time.ts';

const BUCKET: StoredSource = {
  kind: 'store',
  surfaceArea: 0.06,
  inflow: 0,
  depthOverIntake: 0.3,
};
const place = plainPlace({ source: BUCKET });

test('a store lasts for its volume over the draw', () => {
  const drawAtBrim = operatingPoint(atFall(place, place.fall)).supplyFlow;
  const drawAtIntake = operatingPoint(atFall(place, place.fall - 0.3)).supplyFlow;
  const time = drainTime(place, BUCKET);
  // The draw lies between those at brim and intake, to the 2 % to which beats agree.
  const volume = BUCKET.surfaceArea * BUCKET.depthOverIntake;
  const [least, most] = [volume / drawAtBrim, volume / drawAtIntake].sort((a, b) => a - b);
  expect(time).toBeGreaterThan(0.98 * (least as number));
  expect(time).toBeLessThan(1.02 * (most as number));
});

test('it lasts as long as in a run that follows every beat of it', () => {
  const kernel = startedKernel(place, place.lift, {});
  while (!kernel.isSourceEmpty) kernel.run(100_000);
  // Measured: 0.2 %. Vessel at the lift, so without the little friction of the delivery line; beats agree to 2 %.
  expect(Math.abs(drainTime(place, BUCKET) / kernel.time - 1)).toBeLessThan(0.03);
});

test('an inflow makes it last longer, and one that keeps up makes it last for ever', () => {
  const slow = { ...BUCKET, inflow: 2e-5 };
  const draw = operatingPoint(atFall(place, place.fall)).supplyFlow;
  const without = drainTime(place, BUCKET);
  // The same water at the draw less the inflow; the draw changes by some per cent on the way down.
  expect(drainTime({ ...place, source: slow }, slow) / without).toBeCloseTo(
    draw / (draw - 2e-5),
    1,
  );
  const fast = { ...BUCKET, inflow: 1e-3 };
  expect(drainTime({ ...place, source: fast }, fast)).toBe(Infinity);
});

test('twice the store lasts twice as long', () => {
  const twice = { ...BUCKET, surfaceArea: 2 * BUCKET.surfaceArea };
  expect(drainTime({ ...place, source: twice }, twice) / drainTime(place, BUCKET)).toBeCloseTo(
    2,
    9,
  );
});

test('a ram that does not run even from a full store empties it in no time', () => {
  const open = { ...place, driveLine: driveOf('PVC hose 10 mm', 60) };
  expect(drainTime(open, BUCKET)).toBe(0);
});

test('a ram that stops part of the way down lasts to that level', () => {
  const deep = { ...BUCKET, depthOverIntake: 1.9 };
  // From 2 m down to 0.1 m of fall: near the end the line cannot reach the closing flow any more.
  const time = drainTime(place, deep);
  const draw = operatingPoint(atFall(place, 2)).supplyFlow;
  expect(operatingPoint(atFall(place, 0.2)).end.outcome).toBe('staysOpen');
  expect(time).toBeGreaterThan(0);
  // The draw hardly changes with the fall (the valve shuts at one flow), so what was drawn is short of the whole store.
  expect(time * draw).toBeLessThan(0.9 * deep.surfaceArea * deep.depthOverIntake);
});

test('an installation at another level is otherwise the same, and its source stands still', () => {
  const lower = atFall(place, 1.7);
  expect(lower).toEqual({ ...place, fall: 1.7, source: { kind: 'steady' } });
});

test('a store without inflow gives one filling a day, and the mean is that over the day', () => {
  const { end, time, drop, delivered, dailyVolume, meanDelivery } = emptying(place, BUCKET);
  expect(end).toBe('intakeUncovers');
  expect(drop).toBeCloseTo(BUCKET.depthOverIntake, 12);
  expect(time).toBe(drainTime(place, BUCKET));
  // Between what brim and intake deliver, over the time that it lasts; beats agree to 2 %.
  const at = (fall: number) => operatingPoint(atFall(place, fall)).deliveryFlow;
  const [least, most] = [at(place.fall), at(place.fall - 0.3)].sort((a, b) => a - b);
  expect(delivered).toBeGreaterThan(0.96 * time * (least as number));
  expect(delivered).toBeLessThan(1.04 * time * (most as number));
  expect(dailyVolume).toBe(delivered);
  expect(meanDelivery).toBeCloseTo(delivered / 86_400, 15);
});

test('day after day a store gives the ram what runs in, when it never refills to the brim', () => {
  // 3 L/min fill a store of a cubic metre in 5.6 hours: full each morning. A trickle of 0.1 L/min brings 144 L a day.
  const store = { ...BUCKET, surfaceArea: 1, depthOverIntake: 0.3, inflow: 0.1e-3 / 60 };
  const slow = emptying(place, store);
  const { deliveryFlow, supplyFlow } = operatingPoint(atFall(place, place.fall - 0.25));
  const ratio = slow.dailyVolume / ((store.inflow * 86_400 * deliveryFlow) / supplyFlow);
  // All that runs in is drawn, at about the share of the lower levels, where the store then works.
  expect(ratio).toBeGreaterThan(0.93);
  expect(ratio).toBeLessThan(1.07);
  expect(slow.dailyVolume).toBeLessThan(slow.delivered);
});

test('a store that refills over night gives a whole run each day', () => {
  const store = { ...BUCKET, inflow: 0.2e-3 / 60 };
  const { dailyVolume, delivered, time } = emptying(place, store);
  expect(time).toBeLessThan(3600);
  expect(dailyVolume).toBeCloseTo(delivered, 9);
});

test('where the inflow keeps up the surface stays and the day is a whole one', () => {
  const { supplyFlow, deliveryFlow } = operatingPoint(atFall(place, place.fall));
  const kept = emptying(place, { ...BUCKET, inflow: 2 * supplyFlow });
  expect(kept).toMatchObject({ end: 'keepsUp', time: Infinity, drop: 0 });
  expect(kept.meanDelivery / deliveryFlow).toBeCloseTo(1, 1);
});

test('a ram that stops before the intake uncovers says so', () => {
  const deep = emptying(place, { ...BUCKET, depthOverIntake: 1.9 });
  expect(deep.end).toBe('ramStops');
  expect(deep.drop).toBeLessThan(1.9);
});

test('the course of the surface goes from the brim to the end, and over a day back up as far as runs in', () => {
  const inflow = 0.2e-3 / 60;
  const store = { ...BUCKET, inflow };
  const { fromFull, overADay, time, drop } = emptying(place, store);
  expect(fromFull[0]).toEqual({ time: 0, drop: 0 });
  expect(fromFull.at(-1)).toEqual({ time, drop });
  // Water balance: it refills at the inflow over the surface, and is full again before the day ends.
  const [lowest, full, evening] = overADay.slice(-3);
  expect(lowest).toEqual({ time, drop });
  expect(((full?.time ?? 0) - time) / ((drop * store.surfaceArea) / inflow)).toBeCloseTo(1, 9);
  expect(evening).toEqual({ time: 86_400, drop: 0 });
  // One without inflow stays low.
  expect(emptying(place, BUCKET).overADay.at(-1)?.drop).toBeCloseTo(0.3, 9);
});

test('a store that sinks to a level and stays there runs, and gives what it gives there', () => {
  const high = plainPlace({ fall: 4 });
  const [brim, intake] = [high.fall, high.fall - 2].map((fall) =>
    operatingPoint(atFall(high, fall)),
  );
  const inflow = ((brim?.supplyFlow ?? 0) + (intake?.supplyFlow ?? 0)) / 2;
  expect(intake?.supplyFlow).toBeLessThan(0.99 * (brim?.supplyFlow ?? 0));
  const source = { ...BUCKET, depthOverIntake: 2, inflow };
  const { answer } = earlyAnswer({ ...high, source }, { changes: false, startUp: false });
  expect(answer.verdict.kind).toBe('runs');
  expect(answer.drainTime).toBeUndefined();
  expect(answer.emptying?.end).toBe('keepsUp');
  const comes = answer.operatingPoint?.deliveryFlow ?? 0;
  expect(comes).toBeLessThan(brim?.deliveryFlow ?? 0);
  expect(comes).toBeGreaterThan(intake?.deliveryFlow ?? 0);
  expect(answer.emptying?.meanDelivery).toBe(comes);
  // A trickle less than the ram takes at the intake, and it starves as before.
  const dry = { ...source, inflow: 0.9 * (intake?.supplyFlow ?? 0) };
  const starved = earlyAnswer({ ...high, source: dry }, { changes: false, startUp: false });
  expect(starved.answer.verdict.kind).toBe('starves');
});
