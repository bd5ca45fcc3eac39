/** A quantity on a page: two or three figures, in the reader's units, never broken between number and unit. */
import { plainFigures } from './figures.ts';
import { type Purpose, purposeRow } from './purposes.ts';
import { type System, unitCalled } from './unit-words.ts';

const NO_BREAK_SPACE = '\u00a0';

export interface FormatOptions {
  /** Significant figures; three unless the number is known less well. */
  readonly figures?: number;
  /** The ±, in SI, shown in the same unit with two figures. */
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
  const number = plainFigures((value - unit.offset) / unit.factor, figures);
  const plusMinus =
    spread === undefined
      ? ''
      : `${NO_BREAK_SPACE}±${NO_BREAK_SPACE}${plainFigures(spread / unit.factor, 2)}`;
  const gap = word === '°' ? '' : NO_BREAK_SPACE;
  return number + plusMinus + gap + wordShown(word).replaceAll(' ', NO_BREAK_SPACE);
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
