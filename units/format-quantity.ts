/** A quantity on a page: two or three figures, in the reader's units, never broken between number and unit. */
import { plainDecimals, plainFigures } from './figures.ts';
import { type Purpose, purposeRow } from './purposes.ts';
import { type System, unitCalled } from './unit-words.ts';

const NO_BREAK_SPACE = '\u00a0';

export interface FormatOptions {
  /** Significant figures; three unless the number is known less well. A spread takes their place. */
  readonly figures?: number;
  /** The ±, in SI, shown in the same unit with one or two figures; the number has the same decimals. */
  readonly spread?: number;
}

/**
 * `value` in SI as text such as `1.9 m`, `14 L/min`, `1,060 L a day`, `−3 m`.
 * @throws RangeError when `value` is not a finite number.
 */
export function formatQuantity(
  value: number,
  purpose: Purpose,
  system: System,
  { figures = 3, spread }: FormatOptions = {},
): string {
  const { word, unit } = shownUnit(purpose, system, value);
  const number = (value - unit.offset) / unit.factor;
  const shown =
    spread === undefined || !(spread > 0)
      ? plainFigures(number, figures)
      : besideSpread(number, spread / unit.factor);
  const gap = word === '°' ? '' : NO_BREAK_SPACE;
  return shown + gap + wordShown(word).replaceAll(' ', NO_BREAK_SPACE);
}

/** Judgement: a third decimal is a millimetre or a millilitre; finer than that a spread has one figure. */
const USUAL_DECIMALS = 3;

/** `13.88 ± 0.36`, `1.000 ± 0.003`, `12,340 ± 250`: what is less than the spread's last figure tells nothing. */
function besideSpread(number: number, spread: number): string {
  const decimals = Math.max(
    decimalsFor(spread, 1),
    Math.min(decimalsFor(spread, 2), USUAL_DECIMALS),
  );
  // A spread of 0.10 is written 0.1, and the number follows it.
  const wide = plainDecimals(spread, decimals).replace(/\.?0+$/, (end) =>
    decimals > 0 ? '' : end,
  );
  const places = decimals > 0 ? (wide.split('.')[1] ?? '').length : decimals;
  return `${plainDecimals(number, places)}${NO_BREAK_SPACE}±${NO_BREAK_SPACE}${wide}`;
}

/** Decimals in which a number has so many figures; below nought for tens and hundreds. */
function decimalsFor(number: number, figures: number): number {
  const exponent = Number(number.toExponential(figures - 1).split('e')[1]);
  return figures - 1 - exponent;
}

/** The bare number of `formatQuantity`, for a column whose unit stands in its head. */
export function formatNumber(value: number, purpose: Purpose, system: System, figures = 3): string {
  const { unit } = shownUnit(purpose, system);
  return plainFigures((value - unit.offset) / unit.factor, figures);
}

/** The unit that a purpose is shown in. */
export function unitShown(purpose: Purpose, system: System): string {
  return wordShown(shownUnit(purpose, system).word);
}

function shownUnit(purpose: Purpose, system: System, value = 0) {
  const { shown, larger } = purposeRow(purpose);
  const word = larger && Math.abs(value) >= larger.from ? larger.unit[system] : shown[system];
  const unit = unitCalled(word);
  if (!unit) throw new RangeError(`${word} is shown for ${purpose} but is no unit`);
  return { word, unit };
}

/** A weight is a force, but a scale says grams and ounces, and so do people. */
function wordShown(word: string): string {
  return word === 'gf' ? 'g' : word === 'ozf' ? 'oz' : word;
}
