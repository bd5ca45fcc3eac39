import { expect, test } from 'vitest';
import { interpolate, type TablePoint } from './interpolate.ts';

const TABLE: readonly TablePoint[] = [
  [1, 10],
  [2, 20],
  [4, 0],
];

test('gives the table at its points and straight lines between', () => {
  expect(TABLE.map(([at]) => interpolate(TABLE, at))).toEqual([10, 20, 0]);
  expect(interpolate(TABLE, 1.5)).toBe(15);
  expect(interpolate(TABLE, 3)).toBe(10);
});

test('does not guess beyond its ends', () => {
  expect(() => interpolate(TABLE, 0.99)).toThrow(/between 1 and 4/);
  expect(() => interpolate(TABLE, 4.01)).toThrow(RangeError);
  expect(() => interpolate(TABLE, Number.NaN)).toThrow(RangeError);
  expect(() => interpolate([], 1)).toThrow(RangeError);
});
