/** A share as people say it: `a fifth`, `a third`, `half`; in per cent where no such word is near. */
import { perCent } from '../answered.ts';

const WORDS: readonly (readonly [share: number, words: string])[] = [
  [1 / 10, 'a tenth'],
  [1 / 8, 'an eighth'],
  [1 / 6, 'a sixth'],
  [1 / 5, 'a fifth'],
  [1 / 4, 'a quarter'],
  [1 / 3, 'a third'],
  [1 / 2, 'half'],
  [2 / 3, 'two thirds'],
  [3 / 4, 'three quarters'],
];
/** Judgement: a word stands for what lies this near to it. */
const NEAR = 0.08;

export function shareInWords(share: number): string {
  const size = Math.abs(share);
  const nearest = WORDS.reduce((best, row) =>
    Math.abs(Math.log(row[0] / size)) < Math.abs(Math.log(best[0] / size)) ? row : best,
  );
  return Math.abs(size / nearest[0] - 1) <= NEAR ? nearest[1] : perCent(size);
}

/** How a comparison is worded: `less`, `more` and `as much as` for flows, `lower`, `higher` and `as high as` for heads. */
export interface Comparison {
  readonly less: string;
  readonly more: string;
  readonly asMuch: string;
}

/** `a fifth less than`, `3 % more than`, `twice as much as`. */
export function gapInWords(share: number, { less, more, asMuch }: Comparison): string {
  if (share < 0.9) return `${shareInWords(share)} ${share < 0 ? less : more} than`;
  const times = 1 + share;
  const isTwice = Math.abs(times - 2) <= 0.1;
  return `${isTwice ? 'twice' : `${Number(times.toPrecision(2))} times`} as ${asMuch} as`;
}

/** A share in per cent, to a tenth where it is small. */
export function finePerCent(share: number): string {
  const value = 100 * share;
  return `${value.toFixed(Math.abs(value) < 9.95 ? 1 : 0)}\u00a0%`;
}
