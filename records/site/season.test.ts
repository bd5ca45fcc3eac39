import { MONTHS } from '@fallwright/engine';
import { expect, test } from 'vitest';
import { seasonOf } from './season.ts';

function monthsIn(text: string): readonly string[] | undefined {
  const season = seasonOf(text);
  return season && MONTHS.filter((_, month) => season[month]);
}

test.each([
  ['may to sep', ['may', 'jun', 'jul', 'aug', 'sep']],
  ['May - September', ['may', 'jun', 'jul', 'aug', 'sep']],
  ['jul', ['jul']],
  ['apr, sep to oct', ['apr', 'sep', 'oct']],
  // Across the new year: the list is in the order of the year.
  ['nov to feb', ['jan', 'feb', 'nov', 'dec']],
  ['all year', [...MONTHS]],
])('%s', (text, months) => {
  expect(monthsIn(text)).toEqual(months);
});

test.each(['', 'spring', 'may to', 'm', 'ma to sep', 'may, soon', 'mayor', '5 to 9'])(
  '"%s" names no months',
  (text) => {
    expect(seasonOf(text)).toBeUndefined();
  },
);
