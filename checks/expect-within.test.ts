import { expect, test } from 'vitest';
import { expectWithin } from './expect-within.ts';

test('a number inside its tolerance passes, on the edge too', () => {
  expectWithin(1.01, 1, { toleranceRelative: 0.0101 }, 'rounding');
  expectWithin(-2.5, -2, { toleranceAbsolute: 0.5 }, 'rounding');
  expectWithin(3, 2, { low: 1, high: 3 }, 'range');
});

test('a number outside fails, and the message says expected, got, gap and reason', () => {
  expect(() => expectWithin(1.1, 1, { toleranceRelative: 0.05 }, 'read off a chart')).toThrow(
    /expected 1, within 5 %\s+got 1.1\s+gap 0.1000 \(10.0 %\)\s+reason read off a chart/,
  );
  expect(() => expectWithin(0.2, 0, { toleranceAbsolute: 0.1 }, 'x')).toThrow(/within ±0.1/);
  expect(() => expectWithin(4, 2, { low: 1, high: 3 }, 'x')).toThrow(/from 1 to 3/);
});

test('what is not a number never passes', () => {
  expect(() => expectWithin(Number.NaN, 1, { toleranceRelative: 1 }, 'x')).toThrow();
  expect(() => expectWithin(1, Number.NaN, { toleranceAbsolute: 9 }, 'x')).toThrow();
});
