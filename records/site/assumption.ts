/** What was taken because nobody gave it: listed beside every answer, so that it can be put right. */
import type { Purpose } from '@fallwright/units';

export type Basis = 'commonPractice' | 'judgement' | 'table' | 'computed';

export interface Assumption {
  /** The field that would replace it. */
  readonly field: string;
  /** What it is, in words: `temperature of the water`. */
  readonly what: string;
  readonly value:
    | { readonly kind: 'quantity'; readonly value: number; readonly purpose: Purpose }
    | { readonly kind: 'words'; readonly words: string };
  readonly why: string;
  readonly basis: Basis;
}

/** Collects assumptions while an installation is put together. */
export class Assumptions {
  readonly list: Assumption[] = [];

  /** Notes an assumed quantity and gives it back. */
  quantity(
    field: string,
    what: string,
    value: number,
    purpose: Purpose,
    { why, basis }: { readonly why: string; readonly basis: Basis },
  ): number {
    this.list.push({ field, what, value: { kind: 'quantity', value, purpose }, why, basis });
    return value;
  }

  words(
    field: string,
    what: string,
    words: string,
    { why, basis }: { readonly why: string; readonly basis: Basis },
  ): void {
    this.list.push({ field, what, value: { kind: 'words', words }, why, basis });
  }
}
