/**
 * Numbers with a few significant figures: a comma between thousands, a true minus sign, no trailing noughts. A half is rounded
 * away from nought, as the number is written: 2.675 to three figures is 2.68.
 *
 * Written out here and not by `Intl`, which takes some 25 ms to wake in each page and each worker, before the first answer.
 *
 * @throws RangeError when `value` is not a finite number: a page must never show one.
 */
export function plainFigures(value: number, figures: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`value must be a finite number, got ${value}`);
  const [mantissa = '', power = ''] = Math.abs(value).toExponential().split('e');
  const written = mantissa.replace('.', '');
  const kept = written.slice(0, figures);
  const isUp = Number(written[figures] ?? 0) >= 5;
  const digits = String(Number(kept) + (isUp ? 1 : 0));
  // How many of the digits stand before the point; below nought, how many noughts stand after it. 9.99 may become 10.0.
  const before = Number(power) + 1 + digits.length - kept.length;
  const whole = before > 0 ? digits.slice(0, before).padEnd(before, '0') : '0';
  const part = (before > 0 ? digits.slice(before) : '0'.repeat(-before) + digits).replace(
    /0+$/,
    '',
  );
  const text = whole.replace(/\B(?=(\d{3})+$)/g, ',') + (part === '' ? '' : `.${part}`);
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
