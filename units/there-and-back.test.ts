/** METHOD: turning units there and back changes nothing. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  fromLitresPerDay,
  fromLitresPerMinute,
  toLitresPerDay,
  toLitresPerMinute,
} from './conversions.ts';
import { formatQuantity } from './format-quantity.ts';
import { PURPOSES, type Purpose, purposeRow } from './purposes.ts';
import { readQuantity } from './read-quantity.ts';
import { unitCalled } from './unit-words.ts';

const SEED = 20260101;
const purposes = Object.keys(PURPOSES) as Purpose[];
const systems = ['metric', 'us'] as const;

/** A number from a thousandth to a hundred thousand in the unit that is shown. */
const size = fc.double({ min: -3, max: 5, noNaN: true }).map((exponent) => 10 ** exponent);

for (const purpose of purposes) {
  for (const system of systems) {
    test(`${purpose}, ${system}: what is written can be read again`, () => {
      const unit = unitCalled(purposeRow(purpose).shown[system]);
      if (!unit) throw new Error('no unit');
      fc.assert(
        fc.property(size, (amount) => {
          const value = amount * unit.factor + unit.offset;
          const read = readQuantity(
            formatQuantity(value, purpose, system, { figures: 6 }),
            purpose,
          );
          if (!read.ok) throw new Error(read.problems[0]?.message);
          expect(Math.abs(read.value.value - value)).toBeLessThanOrEqual(
            1e-5 * Math.abs(amount * unit.factor),
          );
        }),
        { seed: SEED },
      );
    });
  }
}

test('named conversions undo each other', () => {
  fc.assert(
    fc.property(size, (amount) => {
      expect(toLitresPerMinute(fromLitresPerMinute(amount)) / amount).toBeCloseTo(1, 12);
      expect(toLitresPerDay(fromLitresPerDay(amount)) / amount).toBeCloseTo(1, 12);
    }),
    { seed: SEED },
  );
});

test('no text makes the reader throw, and none gives a number that is not finite', () => {
  const pieces = fc.constantFrom(
    '1',
    '2,5',
    '±',
    ' ',
    'm',
    'L/min',
    '/',
    '½',
    'ft',
    "'",
    '"',
    '-',
    '%',
    'e',
    '9e99',
    '\u0000',
  );
  const anyText = fc.oneof(
    fc.string(),
    fc.array(pieces).map((parts) => parts.join('')),
  );
  fc.assert(
    fc.property(anyText, fc.constantFrom(...purposes), (text, purpose) => {
      const read = readQuantity(text, purpose);
      if (read.ok) expect(Number.isFinite(read.value.value)).toBe(true);
      else expect(read.problems.length).toBeGreaterThan(0);
    }),
    { seed: SEED, numRuns: 2000 },
  );
});
