/** Sources that can be drawn down. */
import { expect, test } from 'vitest';
import { plainPlace } from './fixtures/made-installation.ts';
import type { StoredSource } from './installation.ts';
import { operatingPoint, startedKernel } from './operating-point.ts';

function store(changes: Partial<StoredSource> = {}): StoredSource {
  return { kind: 'store', surfaceArea: 0.06, inflow: 0, depthOverIntake: 0.3, ...changes };
}

test('a large full store beats as a steady source does', () => {
  const steady = operatingPoint(plainPlace());
  const pond = operatingPoint(plainPlace({ source: store({ surfaceArea: 1e6 }) }));
  // A million square metres fall by some 10⁻⁸ m in these beats.
  expect(pond.end.outcome).toBe(steady.end.outcome);
  expect(Math.abs(pond.deliveryFlow / steady.deliveryFlow - 1)).toBeLessThan(0.01);
});

test('a bucket runs down, slower and slower as its level falls, and its ram is told to have no water', () => {
  const kernel = startedKernel(plainPlace({ source: store() }), 12, {});
  const draws: number[] = [];
  let before = 0;
  while (!kernel.isSourceEmpty) {
    const { time } = kernel;
    const until = time + 60;
    while (kernel.time < until && !kernel.isSourceEmpty) kernel.run(1000);
    if (!kernel.isSourceEmpty) {
      draws.push((kernel.volumes.supplied - before) / (kernel.time - time));
      before = kernel.volumes.supplied;
    }
  }
  expect(draws.length).toBeGreaterThan(3);
  expect(draws.at(-1)).toBeLessThan(draws[0] as number);
  // 18 litres are gone, to the level of the intake and a beat.
  expect(Math.abs(kernel.volumes.supplied / 0.018 - 1)).toBeLessThan(0.01);
});

test('a cup is empty before the beats can settle', () => {
  const source = store({ surfaceArea: 0.005, depthOverIntake: 0.1 });
  expect(operatingPoint(plainPlace({ source })).end.outcome).toBe('sourceEmpty');
});

test('a store that runs empty through a valve that stays open is empty, not merely open', () => {
  const base = plainPlace();
  const { wasteValve } = base.ram;
  if (wasteValve.kind !== 'weighted') throw new Error('typical rams have weighted valves');
  const heavy = { ...wasteValve, submergedWeight: 50 };
  const ram = { ...base.ram, wasteValve: heavy };
  const cup = store({ surfaceArea: 0.005, depthOverIntake: 0.1 });
  expect(operatingPoint(plainPlace({ ram })).end.outcome).toBe('staysOpen');
  expect(operatingPoint(plainPlace({ ram, source: cup })).end.outcome).toBe('sourceEmpty');
});

test('an inflow that exceeds the draw keeps a store at its brim and runs over', () => {
  const kernel = startedKernel(plainPlace({ source: store({ inflow: 1e-3 }) }), 12, {});
  while (kernel.time < 60) kernel.run(10_000);
  expect(kernel.sourceLevel).toBeGreaterThan(0.29);
  expect(kernel.volumes.spilled).toBeGreaterThan(0);
});

test('a lower level drives less water', () => {
  const draws = [2, 1.7, 1.4].map((fall) => operatingPoint(plainPlace({ fall })).deliveryFlow);
  expect(draws[1]).toBeLessThan(draws[0] as number);
  expect(draws[2]).toBeLessThan(draws[1] as number);
});
