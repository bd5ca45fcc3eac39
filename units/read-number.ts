/**
 * The number at the start of what a person wrote: `12`, `12.5`, `12,5`, `1,000`, `12 000`, `1/2`, `1 1/2`, `1½`, `−3`.
 *
 * Commas: a single comma followed by exactly three digits groups thousands (`1,000`), unless a nought stands before it
 * (`0,500`); any other single comma is a decimal one (`12,5`). With both signs the last one is the decimal one.
 */

export interface NumberRead {
  readonly value: number;
  /** What stands after the number, without spaces round it. */
  readonly rest: string;
}

const FRACTIONS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

const MIXED = /^([+-]?)(?:(\d+)[ -])?(\d+)\s*[/⁄]\s*(\d+)(?![\d.,])/;
const PLAIN = /^([+-]?)(\d{1,3}(?: \d{3})+(?:[.,]\d+)?(?!\d)|\d[\d.,]*|[.,]\d+)(e[+-]?\d+)?/i;

/** Undefined when no number stands there, or when its points and commas make no sense. */
export function readNumber(text: string): NumberRead | undefined {
  const plainText = text
    .replace(/[\u00a0\u2007\u2009\u202f]/g, ' ')
    .replace(/[−–]/g, '-')
    .replace(/[½¼¾⅓⅔⅛⅜⅝⅞]/g, (sign) => ` ${FRACTIONS[sign]}`)
    .replace(/\s+/g, ' ')
    .trim();
  const mixed = MIXED.exec(plainText);
  if (mixed) {
    const [all, sign, whole = '0', over, under] = mixed;
    if (Number(under) === 0) return undefined;
    const size = Number(whole) + Number(over) / Number(under);
    return { value: sign === '-' ? -size : size, rest: plainText.slice(all.length).trim() };
  }
  const plain = PLAIN.exec(plainText);
  if (!plain) return undefined;
  const [all, sign, digits = '', exponent = ''] = plain;
  // A number ends where a sentence would: "12," and "12." keep their value.
  const size = Number(plainDecimal(digits.replace(/ /g, '').replace(/[.,]$/, '')) + exponent);
  if (!Number.isFinite(size)) return undefined;
  return { value: sign === '-' ? -size : size, rest: plainText.slice(all.length).trim() };
}

/** The digits with a point as the only sign in them; text that is no number when the signs make no sense. */
function plainDecimal(digits: string): string {
  const commas = digits.split(',').length - 1;
  const points = digits.split('.').length - 1;
  if (commas === 0) return digits;
  if (points === 0) {
    if (commas === 1) {
      const groupsThousands = /^[1-9]\d{0,2},\d{3}$/.test(digits);
      return digits.replace(',', groupsThousands ? '' : '.');
    }
    return /^[1-9]\d{0,2}(,\d{3})+$/.test(digits) ? digits.replaceAll(',', '') : 'nonsense';
  }
  if (/^\d{1,3}(,\d{3})+\.\d*$/.test(digits)) return digits.replaceAll(',', '');
  if (/^\d{1,3}(\.\d{3})+,\d*$/.test(digits)) return digits.replaceAll('.', '').replace(',', '.');
  return 'nonsense';
}
