/** Numbers with a few significant figures: a comma between thousands, a true minus sign, no trailing noughts. */
const FORMATS = new Map<number, Intl.NumberFormat>();

/** @throws RangeError when `value` is not a finite number: a page must never show one. */
export function plainFigures(value: number, figures: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`value must be a finite number, got ${value}`);
  let format = FORMATS.get(figures);
  if (!format) {
    format = new Intl.NumberFormat('en', { maximumSignificantDigits: figures });
    FORMATS.set(figures, format);
  }
  const text = format.format(Math.abs(value));
  return value < 0 && text !== '0' ? `−${text}` : text;
}
