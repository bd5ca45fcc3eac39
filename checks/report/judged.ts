/** A row with what came out of it. */
import { type CheckRow, type Comparison, compare } from '../check-row.ts';

export type Judged = { readonly row: CheckRow } & (
  | { readonly outcome: 'met' | 'missed'; readonly comparison: Comparison }
  | { readonly outcome: 'skipped'; readonly reason: string }
);

export function judged(row: CheckRow): Judged {
  if (row.skip !== undefined) return { row, outcome: 'skipped', reason: row.skip };
  const comparison = compare(row.published, row.ours(), row);
  return { row, outcome: comparison.isWithin ? 'met' : 'missed', comparison };
}

/** How far a row is from the published number, as a share of what it is allowed; 1 is the edge. */
export function shareOfAllowed(row: CheckRow, { gap, got }: Comparison): number {
  if ('toleranceRelative' in row) return ratio(gap, row.toleranceRelative * row.published);
  if ('toleranceAbsolute' in row) return ratio(gap, row.toleranceAbsolute);
  return ratio(got - (row.low + row.high) / 2, (row.high - row.low) / 2);
}

/**
 * Whether a row that is listed as a miss agrees so well that it has to be taken off the list. Beats that never come to agree move a
 * mean by a per cent or two at the least change of the engine, so a row at the very edge may be on either side of it.
 */
export function isMended(row: CheckRow, comparison: Comparison): boolean {
  return shareOfAllowed(row, comparison) < 0.9;
}

function ratio(gap: number, allowed: number): number {
  return gap === 0 ? 0 : Math.abs(gap / allowed);
}
