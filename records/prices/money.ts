/**
 * Sums of money: a whole number of the currency's smallest units (pence, cents), so that sums are exact and the same everywhere.
 *
 * Which currencies there are, and how many digits each has behind the point, is what the platform knows of ISO 4217.
 */
import type { Money } from '@fallwright/engine';
import { quoted, readNumber } from '@fallwright/units';
import * as z from 'zod/mini';
import { didYouMean } from '../did-you-mean.ts';
import { type About, addProblem, startOfSentence } from '../site/fields.ts';

/** A price that a person gave. */
export interface Price {
  readonly money: Money;
  /** Three letters: `EUR`. */
  readonly currency: string;
  readonly text: string;
}

export function isPrice(data: unknown): data is Price {
  return (
    typeof data === 'object' &&
    data !== null &&
    'money' in data &&
    'currency' in data &&
    'text' in data
  );
}

export type MoneyRead =
  | { readonly ok: true; readonly money: Money }
  | { readonly ok: false; readonly message: string };

/** Judgement: nothing for a ram costs more, and sums of such prices are still exact. */
const MOST_MONEY: Money = 1e12;

/** Signs that mean one currency wherever they are written; a dollar sign does not. */
const SIGNS: Readonly<Record<string, string>> = { '€': 'EUR', '£': 'GBP', '₹': 'INR' };

export function isCurrency(code: string): boolean {
  return Intl.supportedValuesOf('currency').includes(code);
}

/** Why a word names no currency, and what to write. */
export function notACurrency(word: string): string {
  if (word === '$') {
    return 'Many currencies have a dollar sign. Write the one that is meant: USD, CAD, AUD or NZD.';
  }
  const near = didYouMean(word, Intl.supportedValuesOf('currency'));
  return `${quoted(word)} is no currency. ${near === undefined ? 'Write its three letters, like EUR or GBP.' : `Did you mean ${near}?`}`;
}

/** The currency that a code or a sign stands for. */
export function currencyCalled(word: string): string | undefined {
  const code = SIGNS[word] ?? word.toUpperCase();
  return isCurrency(code) ? code : undefined;
}

/** How many digits a currency has behind the point: 2 for EUR, 0 for JPY. */
export function minorDigits(currency: string): number {
  const format = new Intl.NumberFormat('en', { style: 'currency', currency });
  return format.resolvedOptions().maximumFractionDigits ?? 2;
}

/** An amount of a currency's units as a whole number of its smallest: 12.5 EUR are 1250 cents. */
export function moneyOf(amount: number, currency: string): MoneyRead {
  const digits = minorDigits(currency);
  const smallest = amount * 10 ** digits;
  const money = Math.round(smallest);
  if (!(amount >= 0)) {
    return {
      ok: false,
      message: 'A price is never below nought. Write what it costs, or leave it empty.',
    };
  }
  if (!(money <= MOST_MONEY)) {
    return { ok: false, message: 'This price is far too high. Check its points and commas.' };
  }
  // Binary fractions of so small a number are off by far less than this.
  if (Math.abs(smallest - money) > 1e-6 * Math.max(1, money)) {
    const most = digits === 0 ? 'no digits' : `${digits} digits at most`;
    return { ok: false, message: `${currency} has ${most} behind the point. Round the price.` };
  }
  return { ok: true, money };
}

/** `12.50`: a sum as plain digits, without its currency. */
export function moneyDigits(money: Money, currency: string): string {
  const digits = minorDigits(currency);
  return (money / 10 ** digits).toFixed(digits);
}

export type PriceRead =
  | { readonly ok: true; readonly price: Price }
  | { readonly ok: false; readonly message: string };

/** `320 GBP`, `GBP 320`, `£320`, `1,250.00 EUR`. */
export function readPrice(text: string): PriceRead {
  const [, before = '', rest = ''] = /^\s*([A-Za-z]{3}|[€£₹$¥])?\s*(.*)$/s.exec(text) ?? [];
  const number = readNumber(rest);
  const word = before || (number?.rest ?? '');
  const write = 'Write it like 320 GBP or 45.50 EUR.';
  if (!number || (before !== '' && number.rest !== '')) {
    return { ok: false, message: `${quoted(text)} is no price. ${write}` };
  }
  if (word === '') {
    return { ok: false, message: `${text.trim()} of which currency? ${write}` };
  }
  const currency = currencyCalled(word);
  if (currency === undefined) return { ok: false, message: notACurrency(word) };
  const read = moneyOf(number.value, currency);
  if (!read.ok) return read;
  return { ok: true, price: { money: read.money, currency, text } };
}

/** A price with its currency. */
export function priceField(about: About) {
  const { called, is } = about;
  const write = 'Write it like 320 GBP or 45.50 EUR';
  const text = z
    .string({
      error: ({ input }) =>
        typeof input === 'number'
          ? `${input} of which currency? Write it like ${input} GBP or ${input} EUR.`
          : `${startOfSentence(called)} must be an amount and its currency. ${write}.`,
    })
    .register(z.globalRegistry, { description: `${startOfSentence(is)}. ${write}.` });
  return z.pipe(
    text,
    z.transform((written, payload): Price => {
      const read = readPrice(written);
      if (read.ok) return read.price;
      addProblem(payload, 'wrongForm', read.message, written);
      return z.NEVER;
    }),
  );
}
