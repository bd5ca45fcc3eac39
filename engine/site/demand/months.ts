/** The twelve months, and values that go with them: always an array of twelve, January first. */

export const MONTHS = [
  'jan',
  'feb',
  'mar',
  'apr',
  'may',
  'jun',
  'jul',
  'aug',
  'sep',
  'oct',
  'nov',
  'dec',
] as const;
export type Month = (typeof MONTHS)[number];

/** Days in each month of a year that is no leap year. */
export const MONTH_LENGTHS: readonly number[] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** One value for each month, January first. */
export type ByMonth<Value> = readonly Value[];

/** What a function gives for each month: 0 for January. */
export function eachMonth<Value>(valueIn: (month: number) => Value): ByMonth<Value> {
  return MONTHS.map((_, month) => valueIn(month));
}

/** @throws RangeError when there are not twelve values. */
export function inMonth<Value>(values: ByMonth<Value>, month: number): Value {
  if (values.length !== MONTHS.length) {
    throw new RangeError(`values must be twelve, one for each month, got ${values.length}`);
  }
  const value = values[month];
  if (value === undefined) throw new RangeError(`month must be from 0 to 11, got ${month}`);
  return value;
}
