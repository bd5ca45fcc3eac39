/** For whom a choice is put into words: their units, their money. */
import type { Money } from '@fallwright/engine';
import { formatQuantity, type Purpose, plainFigures, type System } from '@fallwright/units';

export interface Reader {
  readonly system: System;
  /** Code of the currency that the price list is in. Source of codes and their digits: ISO 4217. */
  readonly currency: string;
  /** How numbers of money are written; English when absent. */
  readonly language?: string;
}

/**
 * An amount in the currency's smallest unit, written with the digits that the currency has: none in yen, three in dinars.
 *
 * @throws RangeError when the code is no code, or the amount is not whole.
 */
export function moneyInWords(amount: Money, { currency, language = 'en' }: Reader): string {
  if (!Number.isInteger(amount)) {
    throw new RangeError(`amount must be whole smallest units of ${currency}, got ${amount}`);
  }
  const format = new Intl.NumberFormat(language, { style: 'currency', currency });
  const digits = format.resolvedOptions().maximumFractionDigits ?? 0;
  return format.format(amount / 10 ** digits);
}

export function shown(value: number, purpose: Purpose, { system }: Reader, figures = 3): string {
  return formatQuantity(value, purpose, system, { figures });
}

/** Inches by which a nominal size goes. Source: the paired sizes of ISO 6708 and ASME B36.10M, as everybody prints them. */
const INCHES: Readonly<Record<number, string>> = {
  6: '1/8',
  8: '1/4',
  10: '3/8',
  15: '1/2',
  20: '3/4',
  25: '1',
  32: '1-1/4',
  40: '1-1/2',
  50: '2',
  65: '2-1/2',
  80: '3',
  100: '4',
  125: '5',
  150: '6',
  200: '8',
  250: '10',
  300: '12',
};

/** A nominal size, `DN 25` or `1 in`. */
export function sizeInWords(size: number, { system }: Reader): string {
  const millimetres = Math.round(size * 1000);
  const inches = INCHES[millimetres];
  return system === 'us' && inches !== undefined
    ? `${inches}\u00a0in`
    : `DN\u00a0${plainFigures(millimetres, 3)}`;
}
