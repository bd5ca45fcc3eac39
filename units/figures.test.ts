import fc from 'fast-check';
import { expect, test } from 'vitest';
import { plainFigures } from './figures.ts';

test('numbers are written as the platform writes them in English, with a true minus sign', () => {
  const numbers = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e12, max: 1e12 }),
    fc.double({ noNaN: true, noDefaultInfinity: true, min: -10, max: 10 }),
    fc.integer({ min: -1_000_000, max: 1_000_000 }).map((whole) => whole / 1000),
  );
  fc.assert(
    fc.property(numbers, fc.integer({ min: 1, max: 15 }), (value, figures) => {
      const written = new Intl.NumberFormat('en', { maximumSignificantDigits: figures })
        .format(value)
        .replace(/^-0$/, '0')
        .replace('-', '−');
      expect(plainFigures(value, figures)).toBe(written);
    }),
    { numRuns: 2000 },
  );
});

test('the ends of what is written', () => {
  expect(plainFigures(0, 3)).toBe('0');
  expect(plainFigures(-0, 3)).toBe('0');
  expect(plainFigures(999.96, 4)).toBe('1,000');
  expect(plainFigures(2.675, 3)).toBe('2.68');
  expect(plainFigures(0.00012345, 2)).toBe('0.00012');
  expect(plainFigures(1e22, 2)).toBe('10,000,000,000,000,000,000,000');
  expect(() => plainFigures(Number.NaN, 3)).toThrow('finite');
});
