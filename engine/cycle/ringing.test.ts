/** How a stopped line rings, and what makes it stop ringing. */
import { expect, test } from 'vitest';
import type { LineOptions } from './detailed-line.ts';
import { unsteadyFrictionCoefficient } from './detailed-line.ts';
import { driveOf, plainPlace, withoutSnifter } from './fixtures/made-installation.ts';
import { ramKernel } from './operating-point.ts';
import type { RamKernel } from './ram-kernel.ts';

const FALL = 6;

/** A line whose flow has just been stopped by a shut, tight, stiff ram; the blow is some 3–4 m, less than the fall. */
function ringing(pipe: string, options: LineOptions & { readonly reaches?: number }): RamKernel {
  const base = plainPlace();
  const place = plainPlace({
    fall: FALL,
    lift: 60,
    driveLine: driveOf(pipe, 30),
    ram: { ...withoutSnifter(base.ram), bodyElasticity: 0 },
  });
  const kernel = ramKernel(place, place.lift, options);
  kernel.rest(pipe.startsWith('PE') ? 4e-5 : 8e-6, FALL);
  return kernel;
}

/** Energy of the waves about the head at rest, in a line of one pipe: the sum of their squares. */
function energyOf(kernel: RamKernel): number {
  let sum = 0;
  for (let i = 0; i < kernel.grid.reaches; i++) {
    sum +=
      ((kernel.forward[i] as number) - FALL) ** 2 + ((kernel.backward[i] as number) - FALL) ** 2;
  }
  return sum;
}

/** Share of the first energy that is left after each period of 4L/a. */
function energyByPeriods(kernel: RamKernel, periods: number): number[] {
  const first = energyOf(kernel);
  return Array.from({ length: periods }, () => {
    const until = kernel.steps + 4 * kernel.grid.reaches;
    while (kernel.steps < until) kernel.run(until - kernel.steps);
    return energyOf(kernel) / first;
  });
}

test('the energy of a ringing line never grows, at any step', () => {
  for (const pipe of ['steel sch 40 3/4 in', 'PE100 SDR11 25']) {
    for (const reaches of [2, 8, 32]) {
      const kernel = ringing(pipe, { reaches });
      let before = energyOf(kernel);
      for (let step = 0; step < 3000; step++) {
        kernel.run(1);
        const now = energyOf(kernel);
        // Rounding of a sum of some tens of squares.
        expect(now).toBeLessThanOrEqual(before * (1 + 1e-13));
        before = now;
      }
      expect(kernel.opening).toBe(0);
    }
  }
});

test('unsteady friction takes energy out in every period, and more than steady friction does', () => {
  for (const pipe of ['steel sch 40 3/4 in', 'PE100 SDR11 25']) {
    const steady = energyByPeriods(ringing(pipe, {}), 40);
    const unsteady = energyByPeriods(ringing(pipe, { unsteadyFriction: true }), 40);
    let before = 1;
    unsteady.forEach((left, period) => {
      expect(left).toBeLessThan(before);
      expect(left).toBeLessThan(steady[period] as number);
      before = left;
    });
  }
});

test('what unsteady friction takes does not depend on how finely the line is cut', () => {
  const [coarse, fine] = [8, 32].map((reaches) =>
    energyByPeriods(ringing('PE100 SDR11 25', { unsteadyFriction: true, reaches }), 20),
  );
  // The law follows a square wave only as well as the grid does; 5 % of the energy at any time is what 8 reaches owe to 32.
  coarse?.forEach((left, period) => {
    expect(Math.abs(left - (fine?.[period] as number))).toBeLessThan(0.05);
  });
});

test('waves as short as the grid do not grow under unsteady friction', () => {
  // Neighbours that run up and down by turns: the law once took their flow from the step before and fed them.
  const kernel = ringing('steel sch 40 3/4 in', { unsteadyFriction: true });
  for (let i = 0; i < kernel.grid.reaches; i++) {
    const up = i % 2 === 0 ? 0.1 : -0.1;
    kernel.forward[i] = (kernel.forward[i] as number) + up;
    kernel.backward[i] = (kernel.backward[i] as number) - up;
  }
  const left = energyByPeriods(kernel, 300);
  expect(left.at(-1)).toBeLessThan(0.01);
});

test('a wall that creeps damps the ringing of polyethylene, and steel does not creep', () => {
  const plain = energyByPeriods(ringing('PE100 SDR11 25', {}), 20);
  const creeping = energyByPeriods(ringing('PE100 SDR11 25', { wallCreep: true }), 20);
  let before = 1;
  creeping.forEach((left, period) => {
    expect(left).toBeLessThan(before);
    expect(left).toBeLessThan(plain[period] as number);
    before = left;
  });
  const steel = 'steel sch 40 3/4 in';
  const asked = ringing(steel, { wallCreep: true });
  expect(asked.detail.modelOptions).toEqual([]);
  expect(energyByPeriods(asked, 5)).toEqual(energyByPeriods(ringing(steel, {}), 5));
});

test('a run names the options that were on', () => {
  const kernel = ringing('PE100 SDR11 25', { wallCreep: true, unsteadyFriction: true });
  expect(kernel.detail.modelOptions).toEqual(['unsteady friction', 'wall creep']);
});

test('highest and lowest heads along the line hold every head that was there', () => {
  const kernel = ringing('PE100 SDR11 25', { envelope: true, reaches: 16 });
  const middle = 8;
  let highest = -Infinity;
  let lowest = Infinity;
  for (let step = 0; step < 500; step++) {
    kernel.run(1);
    // What a node sends on after a step: forward wave of the reach behind it and backward wave of the one before.
    const head = ((kernel.forward[middle] as number) + (kernel.backward[middle - 1] as number)) / 2;
    highest = Math.max(highest, head);
    lowest = Math.min(lowest, head);
  }
  // A node's two sides differ by the loss that is lumped there, a few millimetres.
  expect(Math.abs((kernel.detail.highest[middle] as number) - highest)).toBeLessThan(0.02);
  expect(Math.abs((kernel.detail.lowest[middle] as number) - lowest)).toBeLessThan(0.02);
});

test('unsteady friction falls as flow grows faster, from its laminar value', () => {
  // √0.00476 / 2 = 0.03450.
  expect(unsteadyFrictionCoefficient(1000)).toBeCloseTo(0.0345, 4);
  const values = [1e4, 1e5, 1e6].map(unsteadyFrictionCoefficient);
  expect(values[0]).toBeLessThan(0.0345);
  expect(values[1]).toBeLessThan(values[0] as number);
  expect(values[2]).toBeLessThan(values[1] as number);
});
