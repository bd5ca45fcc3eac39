import { expect, test } from 'vitest';
import { GRAVITY } from '../quantities.ts';
import { waterAt } from '../water/water.ts';
import { boreChangeDrop } from './bore-change.ts';
import { findPipe } from './find-pipe.ts';
import type { PipeSegment } from './pipe.ts';
import { lineHeadLoss, steadyFlow } from './steady-flow.ts';

const WATER = waterAt({ temperature: 10, altitude: 0 });
const segmentOf = (name: string, length: number, fittingsLoss = 0): PipeSegment => {
  const result = findPipe(name);
  if (!result.ok) throw new Error(name);
  return {
    pipe: result.pipe,
    length,
    fittingsLoss,
    restraint: 'expansionJoints',
    freeAirFraction: 0,
  };
};
const FREE_END = { entrance: 1.5, outlet: 0 };
const flowOf = (segments: readonly PipeSegment[], fall: number, extraLosses = FREE_END) =>
  steadyFlow({ segments, fall, extraLosses, water: WATER });

test('at the terminal flow the losses use up the fall', () => {
  const segments = [segmentOf('PE100 SDR11 32', 20, 1), segmentOf('steel sch 40 1 in', 6)];
  const { flow, isConverged } = flowOf(segments, 2);
  expect(isConverged).toBe(true);
  expect(lineHeadLoss({ segments, entranceLoss: 1.5, water: WATER, flow })).toBeCloseTo(2, 6);
});

test('a larger fall never slows the terminal flow, even through the transition', () => {
  const segments = [segmentOf('garden hose 1/2 in', 30)];
  let before = 0;
  for (let fall = 0.01; fall < 3; fall += 0.01) {
    const { flow } = flowOf(segments, fall);
    expect(flow).toBeGreaterThan(before);
    before = flow;
  }
});

test('a longer line, a fitting, a smaller pipe or a valve at the end passes less', () => {
  const plain = flowOf([segmentOf('PE100 SDR11 32', 20)], 1.5).flow;
  expect(flowOf([segmentOf('PE100 SDR11 32', 25)], 1.5).flow).toBeLessThan(plain);
  expect(flowOf([segmentOf('PE100 SDR11 32', 20, 2)], 1.5).flow).toBeLessThan(plain);
  expect(flowOf([segmentOf('PE100 SDR11 25', 20)], 1.5).flow).toBeLessThan(plain);
  const valve = { entrance: 1.5, outlet: 4 };
  expect(flowOf([segmentOf('PE100 SDR11 32', 20)], 1.5, valve).flow).toBeLessThan(plain);
});

test('two lengths of one pipe are one length', () => {
  const halves = [segmentOf('PVC sch 40 1 in', 7), segmentOf('PVC sch 40 1 in', 13)];
  const whole = [segmentOf('PVC sch 40 1 in', 20)];
  expect(flowOf(halves, 1.2).flow).toBeCloseTo(flowOf(whole, 1.2).flow, 12);
});

test('a short wide pipe without entrance loss flows as fast as water falls', () => {
  const { velocities } = flowOf([segmentOf('steel sch 40 4 in', 0)], 3, { entrance: 1, outlet: 0 });
  expect(velocities[0]).toBeCloseTo(Math.sqrt(2 * GRAVITY * 3), 6);
});

test('no fall, no flow', () => {
  expect(flowOf([segmentOf('steel sch 40 1 in', 5)], 0).flow).toBe(0);
});

test('a widening gives back some head but never all that the narrow pipe held', () => {
  // In head of the wide pipe, the narrow one holds (D/d)⁴ − 1 more velocity head than the wide one.
  const given = -boreChangeDrop({ upstreamBore: 0.02, downstreamBore: 0.03 });
  expect(given).toBeGreaterThan(0);
  expect(given).toBeLessThan(1.5 ** 4 - 1);
  expect(boreChangeDrop({ upstreamBore: 0.03, downstreamBore: 0.02 })).toBeGreaterThan(0);
  expect(boreChangeDrop({ upstreamBore: 0.03, downstreamBore: 0.03 })).toBe(0);
});

test('nonsense is refused by name', () => {
  expect(() => flowOf([], 1)).toThrow(/segments/);
  expect(() => flowOf([segmentOf('steel sch 40 1 in', 5)], -1)).toThrow(/fall/);
  expect(() => flowOf([segmentOf('steel sch 40 1 in', 5, -1)], 1)).toThrow(/fittingsLoss/);
  const nothing = { entrance: 0, outlet: 0 };
  expect(() => flowOf([segmentOf('steel sch 40 1 in', 0)], 1, nothing)).toThrow(/lose some head/);
});
