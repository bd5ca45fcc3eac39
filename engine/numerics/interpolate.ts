/** A point of a table: where, and what stands there. */
export type TablePoint = readonly [at: number, value: number];

/**
 * Value between the points of a table, on straight lines from one to the next.
 *
 * Points must rise in their first number. At either end the table stops: there is no guess beyond it.
 * @throws RangeError when `at` lies outside the table or is not a number.
 */
export function interpolate(table: readonly TablePoint[], at: number): number {
  const first = table[0];
  const last = table.at(-1);
  if (!first || !last) throw new RangeError('table must have at least one point');
  if (!(at >= first[0] && at <= last[0])) {
    throw new RangeError(`at must lie between ${first[0]} and ${last[0]}, got ${at}`);
  }
  let below = first;
  for (const above of table) {
    if (at <= above[0]) {
      const span = above[0] - below[0];
      return span === 0 ? above[1] : below[1] + ((at - below[0]) / span) * (above[1] - below[1]);
    }
    below = above;
  }
  return last[1];
}
