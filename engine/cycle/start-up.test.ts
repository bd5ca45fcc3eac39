/** Cold starts. */
import { expect, test } from 'vitest';
import { typicalRam } from '../machine/typical-ram.ts';
import type { WeightedValve } from '../machine/waste-valve.ts';
import { driveOf, plainPlace } from './fixtures/made-installation.ts';
import { startUp } from './start-up.ts';

test('with the stop valve shut a good ram goes on after one push', () => {
  const start = startUp(plainPlace(), { stopValve: 'shut' });
  expect(start.outcome).toBe('goesOn');
  expect(start.handStrokes).toBe(1);
  expect(start.stopValveShut).toBe(true);
  // It beat a dozen times alone, and that squeezed the vessel's air.
  expect(start.vesselHeadAtStart).toBeGreaterThan(2 * plainPlace().fall);
});

test('into an open, empty delivery line it takes more pushes, and builds back pressure as the line fills', () => {
  const shut = startUp(plainPlace(), { stopValve: 'shut' });
  const open = startUp(plainPlace(), { stopValve: 'open' });
  expect(open.outcome).toBe('goesOn');
  expect(open.handStrokes).toBeGreaterThan(shut.handStrokes);
  expect(open.vesselHeadAtStart).toBeLessThan(shut.vesselHeadAtStart);
});

test('a soft hose with a high fall takes several pushes, and each builds pressure', () => {
  const place = plainPlace({ fall: 4, lift: 12, driveLine: driveOf('garden hose 3/4 in', 16) });
  const start = startUp(place, { stopValve: 'shut' });
  expect(start.outcome).toBe('goesOn');
  expect(start.handStrokes).toBeGreaterThan(1);
  expect(start.handStrokes).toBeLessThanOrEqual(30);
});

test('no number of pushes starts a ram whose line cannot shut its valve', () => {
  const place = plainPlace({
    fall: 1.2,
    lift: 6,
    ram: typicalRam('DN15'),
    driveLine: driveOf('garden hose 1/2 in', 30),
  });
  for (const stopValve of ['shut', 'open'] as const) {
    const start = startUp(place, { stopValve });
    expect(start.outcome).toBe('never');
    // After the first push the valve hangs open, and there is nothing left to push.
    expect(start.handStrokes).toBe(1);
  }
});

test('a start that does not come to an end is given up', () => {
  const start = startUp(plainPlace(), { stopValve: 'open', longest: 3 });
  expect(start.outcome).toBe('never');
  expect(start.simulatedTime).toBeLessThan(5);
});

test('a valve heavier than the head on its seat hangs open of itself and needs no push', () => {
  const { ram } = plainPlace();
  const valve = ram.wasteValve as WeightedValve;
  // 1.5 times the force of 2 m of water on the seat; a wide, short line still reaches its closing flow.
  const submergedWeight = 1.5 * 1000 * 9.80665 * 2 * (Math.PI / 4) * valve.seatDiameter ** 2;
  const wasteValve = { ...valve, submergedWeight, movingMass: 1, stroke: 1e-3 };
  const place = plainPlace({
    ram: { ...ram, wasteValve },
    driveLine: driveOf('steel sch 40 1-1/2 in', 6),
  });
  const start = startUp(place, { stopValve: 'shut' });
  expect(start.handStrokes).toBe(0);
});

test('the lift does not matter while the stop valve is shut', () => {
  const starts = [8, 30].map((lift) => startUp(plainPlace({ lift }), { stopValve: 'shut' }));
  expect(starts[1]).toEqual(starts[0]);
});

test('the same start takes the same pushes', () => {
  const [first, second] = [0, 1].map(() => startUp(plainPlace(), { stopValve: 'open' }));
  expect(second).toEqual(first);
});
