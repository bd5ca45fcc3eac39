/**
 * A quantity as a person writes it, with or without its spread: `1.9 m ± 0.1 m`, `1.9 ± 0.1 m`, `1.9 m +/- 5 %`.
 * What cannot be read becomes a problem that says what to write instead. Nothing here throws on a person's words.
 */
import { plainFigures } from './figures.ts';
import { KIND_IN_WORDS } from './kinds.ts';
import { type Purpose, type PurposeRow, purposeRow } from './purposes.ts';
import { type Measure, type MeasureRead, readMeasure } from './read-measure.ts';
import { unitCalled } from './unit-words.ts';

export interface Quantity {
  /** In SI; degrees Celsius for temperatures. */
  readonly value: number;
  /** The ± in the same unit. */
  readonly spread?: number;
  /** What was written, tidied at the ends. */
  readonly text: string;
}

export type QuantityFault =
  | 'empty'
  | 'notANumber'
  | 'noUnit'
  | 'unknownUnit'
  | 'wrongKind'
  | 'negative'
  | 'tooLarge'
  | 'badSpread'
  | 'range';

export interface QuantityProblem {
  readonly kind: QuantityFault;
  readonly message: string;
}

export type QuantityRead =
  | { readonly ok: true; readonly value: Quantity }
  | { readonly ok: false; readonly problems: readonly QuantityProblem[] };

/** Judgement: nothing at a ram comes near this in SI, whatever its kind; a slip of the keyboard does. */
const LARGEST = 1e15;
/** Judgement: the longest sensible quantity is about 40 characters. */
const LONGEST_TEXT = 120;

const SPREAD_SIGN = /\s*\(?\s*(?:±|\+\s*\/\s*[-−]|\+[-−])\s*/;
const RANGE = /^([\d.,/½¼¾ ]+?)\s*(\p{L}*)\s*(?:-|–|\bto\b)\s*([\d.,/½¼¾ ]+?)\s*(\p{L}.*)$/u;

/**
 * The quantity that `text` states, or every problem with it.
 * `called` names it in messages, such as `the fall`.
 */
export function readQuantity(text: string, purpose: Purpose, called = 'this'): QuantityRead {
  const row = purposeRow(purpose);
  const written = text.trim();
  if (written === '') {
    return problem('empty', `Nothing is written here. Write ${called} like ${likeThis(row)}.`);
  }
  if (written.length > LONGEST_TEXT) {
    return problem(
      'notANumber',
      `${quoted(written)} is too long for one quantity. Write ${called} like ${likeThis(row)}.`,
    );
  }
  const [valueText = '', spreadText, ...extra] = written.split(SPREAD_SIGN);
  if (extra.length > 0) {
    return problem(
      'badSpread',
      `${quoted(written)} has more than one ±. Write it like ${spreadExample(row)}.`,
    );
  }
  // In `1.9 ± 0.1 m` the unit stands once, at the end, for both.
  const spreadRead =
    spreadText === undefined ? undefined : readMeasure(spreadText.replace(/\)$/, ''));
  const sharedUnit =
    spreadRead?.ok && spreadRead.measure.unit.kind !== 'share'
      ? spreadRead.measure.unit
      : undefined;
  const bareUnit = row.isBareAllowed ? { ...BARE, factor: row.bareFactor ?? 1 } : undefined;
  const read = readMeasure(valueText, sharedUnit ?? bareUnit);
  if (!read.ok) return unreadable(read, { written, row, called });

  const value = valueFor(row, read.measure);
  if (value === undefined)
    return problem('wrongKind', wrongKind(valueText.trim(), row, called, read.measure));
  if (!(Math.abs(value) < LARGEST)) {
    return problem(
      'tooLarge',
      `${quoted(written)} is larger than anything at a ram. Check the number and its unit.`,
    );
  }
  if (value < 0 && !row.isSigned) {
    return problem(
      'negative',
      `${written} is below nought. ${startOfSentence(called)} is ${row.inWords} above nought, like ${row.examples[0]}.`,
    );
  }
  if (spreadText === undefined) return { ok: true, value: { value, text: written } };

  const spread = spreadOf(spreadRead, spreadText, { row, value, measure: read.measure });
  if (spread === undefined) {
    return problem(
      'badSpread',
      `The ± in ${quoted(written)} cannot be read. Write it like ${spreadExample(row)}.`,
    );
  }
  return { ok: true, value: { value, spread, text: written } };
}

/** A number with no unit, where one may stand: a share. */
const BARE = { kind: 'share', system: 'both', factor: 1, offset: 0 } as const;

function valueFor(row: PurposeRow, measure: Measure): number | undefined {
  const { kind } = measure.unit;
  if (kind === row.kind) return measure.value;
  const factor = row.alsoFrom?.[kind];
  return factor === undefined ? undefined : measure.value * factor;
}

function spreadOf(
  read: MeasureRead | undefined,
  text: string,
  of: { readonly row: PurposeRow; readonly value: number; readonly measure: Measure },
): number | undefined {
  if (!read) return undefined;
  const unit = of.measure.unit;
  const stated = read.ok ? read : readMeasure(text.replace(/\)$/, ''), unit);
  if (!stated.ok) return undefined;
  const { measure } = stated;
  if (measure.unit.kind === 'share' && of.row.kind !== 'share') {
    return measure.value >= 0 ? Math.abs(of.value) * measure.value : undefined;
  }
  // A spread is a difference: a degree Fahrenheit is 5/9 of a degree Celsius, without the offset.
  const spread = valueFor(of.row, { ...measure, value: measure.value - measure.unit.offset });
  return spread !== undefined && spread >= 0 && spread < LARGEST ? spread : undefined;
}

function unreadable(
  read: Exclude<MeasureRead, { ok: true }>,
  about: { readonly written: string; readonly row: PurposeRow; readonly called: string },
): QuantityRead {
  const { written, row, called } = about;
  const [, low, firstUnit, high, unit] = RANGE.exec(written) ?? [];
  if (low !== undefined && high !== undefined && unit !== undefined) {
    const middle = asRange(`${low} ${firstUnit || unit}`, `${high} ${unit}`);
    if (middle)
      return problem(
        'range',
        `${quoted(written)} is a range. Write the middle and the spread: ${middle(unit)}.`,
      );
  }
  if (read.fault === 'notANumber') {
    return problem(
      'notANumber',
      `${quoted(written)} does not begin with a number we can read. Write ${called} like ${likeThis(row)}.`,
    );
  }
  if (read.fault === 'noUnit')
    return problem('noUnit', bareNumberMessage(written, read.amount, row));
  return problem(
    'unknownUnit',
    `In ${quoted(written)} we know no unit ${quoted(read.unitText)}. Write ${called} like ${likeThis(row)}.`,
  );
}

function asRange(lowText: string, highText: string): ((unit: string) => string) | undefined {
  const low = readMeasure(lowText);
  const high = readMeasure(highText);
  if (!low.ok || !high.ok || low.measure.unit !== high.measure.unit) return undefined;
  const [from, to] = [low.measure.amount, high.measure.amount];
  if (!(to > from)) return undefined;
  return (unit) =>
    `${plainFigures((from + to) / 2, 4)} ± ${plainFigures((to - from) / 2, 2)} ${unit}`;
}

/** What to say of a number without a unit: the same number with each unit that it may have meant. */
export function bareNumberMessage(written: string, amount: number, row: PurposeRow): string {
  // Some have one unit for metric and US readers alike.
  const [first = '', ...others] = new Set(row.offered);
  const value = inSi(amount, first, row);
  const same = others.map((word) => `${plainFigures(fromSi(value, word, row), 2)} ${word}`);
  const choices = [`${written} ${first}`, ...same];
  const last = choices.pop();
  const list = choices.length === 0 ? last : `${choices.join(', ')} or ${last}`;
  return `${written} what? Write the unit: ${list}.`;
}

function inSi(amount: number, word: string, row: PurposeRow): number {
  const unit = unitCalled(word);
  if (!unit) throw new RangeError(`${word} is offered for a quantity but is no unit`);
  return (
    (amount * unit.factor + unit.offset) *
    (unit.kind === row.kind ? 1 : (row.alsoFrom?.[unit.kind] ?? 1))
  );
}

function fromSi(value: number, word: string, row: PurposeRow): number {
  const unit = unitCalled(word);
  if (!unit) throw new RangeError(`${word} is offered for a quantity but is no unit`);
  const own = unit.kind === row.kind ? value : value / (row.alsoFrom?.[unit.kind] ?? 1);
  return (own - unit.offset) / unit.factor;
}

function wrongKind(written: string, row: PurposeRow, called: string, measure: Measure): string {
  return `${written} is ${KIND_IN_WORDS[measure.unit.kind]}; ${called} is ${row.inWords}. Write it like ${likeThis(row)}.`;
}

function spreadExample(row: PurposeRow): string {
  return `${row.examples[0]} ± 5 %`;
}

function likeThis(row: PurposeRow): string {
  return row.examples.join(' or ');
}

function startOfSentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Quoted, cut short, and without control characters: it may go to a terminal. */
export function quoted(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what it removes
  const clean = text.replace(/[\s\u0000-\u001f\u007f-\u009f]+/g, ' ');
  return `“${clean.length > 40 ? `${clean.slice(0, 39)}…` : clean}”`;
}

function problem(kind: QuantityFault, message: string): QuantityRead {
  return { ok: false, problems: [{ kind, message }] };
}
