/** One published number, and the same number by the engine. Tests and the validation report both read these rows. */
import type { KnownBy } from '@fallwright/engine';

/** How far apart the two may be: a share of the published number, an amount, or the range that sources give. */
export type Tolerance =
  | { readonly toleranceRelative: number }
  | { readonly toleranceAbsolute: number }
  | { readonly low: number; readonly high: number };

export type CheckRow = Tolerance & {
  /** The id of the table's row; with `/quantity` after it where one row gives several numbers. */
  readonly id: string;
  /** The table the row stands in, as its file is named. */
  readonly table: string;
  /** Rows of a table that the report counts apart: one of a handbook's several tables, one kind of number. */
  readonly series?: string;
  readonly quantity: string;
  /** Unit of `published`, `ours` and an absolute tolerance. `-` for a ratio. */
  readonly unit: string;
  /** The number as the source prints it, in `unit`. NaN only in a skipped row whose source prints no single number. */
  readonly published: number;
  readonly ours: () => number;
  /** Key of the source in the `sources.csv` of `data/hydraulics` or `data/ram`. */
  readonly source: string;
  readonly knownBy: KnownBy;
  /** Why the row is not run. It stays in every list and report. */
  readonly skip?: string;
  /** Why a row that runs does not agree; from `data/known-misses.csv`. It is tested that it still does not. */
  readonly miss?: string;
  readonly note?: string;
};

export interface Comparison {
  readonly got: number;
  /** `got − published`, in the row's unit. */
  readonly gap: number;
  /** The gap as a share of the published number; NaN when that is nought. */
  readonly relativeGap: number;
  readonly isWithin: boolean;
  /** The tolerance in words, such as `within 0.1 %`. */
  readonly allowed: string;
}

/** Sets a number of ours beside a published one. */
export function compare(published: number, got: number, tolerance: Tolerance): Comparison {
  const gap = got - published;
  return {
    got,
    gap,
    relativeGap: published === 0 ? Number.NaN : gap / Math.abs(published),
    ...judged(),
  };

  function judged(): { isWithin: boolean; allowed: string } {
    if ('toleranceRelative' in tolerance) {
      const { toleranceRelative } = tolerance;
      return {
        isWithin: Math.abs(gap) <= toleranceRelative * Math.abs(published),
        allowed: `within ${Number((100 * toleranceRelative).toPrecision(3))} %`,
      };
    }
    if ('toleranceAbsolute' in tolerance) {
      const { toleranceAbsolute } = tolerance;
      return {
        isWithin: Math.abs(gap) <= toleranceAbsolute,
        allowed: `within ±${toleranceAbsolute}`,
      };
    }
    const { low, high } = tolerance;
    return { isWithin: got >= low && got <= high, allowed: `from ${low} to ${high}` };
  }
}
