/** The order of the rows: as they were chosen, or by the best pair of each line. */
import { isRunning } from '@fallwright/papers';
import type { DriveRow } from './drive-rows.ts';
import type { PairResults } from './pairs.ts';
import { pairOf } from './pairs.ts';
import type { RamColumn } from './ram-columns.ts';

export type Order = 'listed' | 'delivered' | 'taken';

/** Lines on which nothing runs stand last, in the order in which they were chosen. */
export function rowsInOrder(
  rows: readonly DriveRow[],
  columns: readonly RamColumn[],
  results: PairResults,
  order: Order,
): readonly DriveRow[] {
  if (order === 'listed') return rows;
  const rank = (row: DriveRow): number => {
    const worths = columns.flatMap((column) => {
      const result = results.get(pairOf(row, column).key);
      if (result?.kind !== 'answered') return [];
      const { verdict, operatingPoint: point } = result.alternative;
      if (point === undefined || !isRunning(verdict.kind)) return [];
      return [order === 'delivered' ? -point.deliveryFlow : point.supplyFlow];
    });
    return Math.min(Number.POSITIVE_INFINITY, ...worths);
  };
  const ranks = new Map(rows.map((row) => [row.key, rank(row)]));
  return [...rows].sort((a, b) => {
    const [first = 0, second = 0] = [ranks.get(a.key), ranks.get(b.key)];
    return first === second ? 0 : first - second;
  });
}
