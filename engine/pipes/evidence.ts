/**
 * How a number is known. `seen`: read in the source named; `computed`: worked out from a stated formula; `memory`:
 * written from general knowledge of the source, no page opened; `common practice`: what the trade does, no source.
 */
export type KnownBy = 'seen' | 'computed' | 'memory' | 'common practice';

/** A number with the range that sources give for it, and where it comes from. SI, like everything here. */
export interface SourcedValue {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly source: string;
  readonly knownBy: KnownBy;
}
