import { expect, test } from 'vitest';
import { GRAVITY } from '../quantities.ts';
import { finalVelocity, growthTime, timeToVelocity, velocityAfter } from './rigid-column.ts';

const LINE = { head: 1.5, length: 10, innerDiameter: 0.0266, darcyFriction: 0.028 };
const FINAL = finalVelocity({ ...LINE, lossCoefficient: 1.8 });
const GROWTH = growthTime({ head: LINE.head, length: LINE.length, finalVelocity: FINAL });

test('water starts with the fall over the length of gravity, and never passes its final velocity', () => {
  const early = velocityAfter({ time: 1e-4, growthTime: GROWTH, finalVelocity: FINAL });
  expect(early / 1e-4).toBeCloseTo((GRAVITY * LINE.head) / LINE.length, 6);
  for (const time of [0, 0.5, 1, 2, 5]) {
    expect(velocityAfter({ time, growthTime: GROWTH, finalVelocity: FINAL })).toBeLessThan(FINAL);
  }
});

test('the growth obeys its equation of motion', () => {
  const at = (time: number) => velocityAfter({ time, growthTime: GROWTH, finalVelocity: FINAL });
  for (const time of [0.2, 0.8, 1.9]) {
    const acceleration = (at(time + 1e-5) - at(time - 1e-5)) / 2e-5;
    const driving = ((GRAVITY * LINE.head) / LINE.length) * (1 - (at(time) / FINAL) ** 2);
    expect(acceleration).toBeCloseTo(driving, 6);
  }
});

test('the time to a velocity is that at which it is reached, and times add up', () => {
  const time = (startVelocity: number, velocity: number) =>
    timeToVelocity({ startVelocity, velocity, growthTime: GROWTH, finalVelocity: FINAL });
  const reached = velocityAfter({ time: time(0, 1), growthTime: GROWTH, finalVelocity: FINAL });
  expect(reached).toBeCloseTo(1, 12);
  expect(time(0, 0.6) + time(0.6, 1.2)).toBeCloseTo(time(0, 1.2), 12);
});

test('a velocity beyond the final one is refused, not waited for', () => {
  const beyond = { startVelocity: 0, velocity: FINAL, growthTime: GROWTH, finalVelocity: FINAL };
  expect(() => timeToVelocity(beyond)).toThrow(/below the final velocity/);
  expect(() => finalVelocity({ ...LINE, lossCoefficient: -10 })).not.toThrow();
  expect(() => finalVelocity({ ...LINE, lossCoefficient: -11 })).toThrow(/losses/);
  expect(() => growthTime({ head: 0, length: 1, finalVelocity: 1 })).toThrow(/head/);
});
