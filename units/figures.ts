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

/**
 * With so many decimals, noughts and all: `1.900`. Below nought it is rounded to tens or hundreds: `12,340`.
 * @throws RangeError when `value` is not a finite number.
 */
export function plainDecimals(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`value must be a finite number, got ${value}`);
  const least = 10 ** -decimals;
  const places = Math.max(0, decimals);
  const text = new Intl.NumberFormat('en', {
    minimumFractionDigits: places,
    maximumFractionDigits: places,
  }).format(decimals < 0 ? Math.round(Math.abs(value) / least) * least : Math.abs(value));
  return value < 0 && /[1-9]/.test(text) ? `−${text}` : text;
}
