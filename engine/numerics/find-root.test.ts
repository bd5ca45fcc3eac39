import { expect, test } from 'vitest';
import { findRoot } from './find-root.ts';

test('finds the square root of two to the tolerance asked', () => {
  const { root, isConverged } = findRoot({
    f: (x) => x * x - 2,
    low: 0,
    high: 2,
    tolerance: 1e-12,
  });
  expect(isConverged).toBe(true);
  expect(Math.abs(root - Math.SQRT2)).toBeLessThan(1e-12);
});

test('lands in the bracket on a function that is almost flat, and on one with a jump', () => {
  const flat = findRoot({ f: (x) => (x - 0.3) ** 9, low: -1, high: 4, tolerance: 1e-9 });
  expect(flat.isConverged).toBe(true);
  expect(flat.root).toBeCloseTo(0.3, 2);
  const jump = findRoot({ f: (x) => (x < 0.7 ? -1 : 1), low: 0, high: 1, tolerance: 1e-9 });
  expect(Math.abs(jump.root - 0.7)).toBeLessThan(1e-9);
});

test('takes far fewer steps than halving on a smooth function', () => {
  let calls = 0;
  const f = (x: number) => {
    calls += 1;
    return Math.exp(x) - 5;
  };
  expect(findRoot({ f, low: -10, high: 10, tolerance: 1e-12 }).root).toBeCloseTo(Math.log(5), 12);
  expect(calls).toBeLessThan(25);
});

test('a root on the edge of the bracket is a root', () => {
  expect(findRoot({ f: (x) => x, low: 0, high: 1, tolerance: 1e-9 }).root).toBe(0);
  expect(findRoot({ f: (x) => x - 1, low: 0, high: 1, tolerance: 1e-9 }).root).toBe(1);
});

test('says when the steps ran out', () => {
  const result = findRoot({
    f: (x) => x ** 3 - 0.1,
    low: -5,
    high: 9,
    tolerance: 1e-14,
    maxIterations: 2,
  });
  expect(result.isConverged).toBe(false);
});

test('refuses a bracket without a sign change, an empty one, and a function that gives no number', () => {
  const f = (x: number) => x * x + 1;
  expect(() => findRoot({ f, low: -1, high: 1, tolerance: 1e-9 })).toThrow(/change sign/);
  expect(() => findRoot({ f, low: 1, high: 1, tolerance: 1e-9 })).toThrow(/low must be below high/);
  expect(() => findRoot({ f: Math.log, low: -1, high: 1, tolerance: 1e-9 })).toThrow(/finite/);
  expect(() => findRoot({ f: (x) => x, low: -1, high: 1, tolerance: 0 })).toThrow(/tolerance/);
});
