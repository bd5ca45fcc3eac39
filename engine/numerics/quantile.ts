/**
 * The value below which a share of a list lies, straight between neighbours.
 *
 *   x at (n − 1) p, counted from the least
 *
 * Source: Hyndman and Fan (1996), The American Statistician 50, 361–365, definition 7 (memory).
 * @throws RangeError when the list is empty or the share is not between 0 and 1.
 */
export function quantile(values: readonly number[], share: number): number {
  if (values.length === 0) throw new RangeError('values must hold at least one number');
  if (!(share >= 0 && share <= 1)) {
    throw new RangeError(`share must lie between 0 and 1, got ${share}`);
  }
  const sorted = [...values].sort((a, b) => a - b);
  const place = (sorted.length - 1) * share;
  const low = sorted[Math.floor(place)] as number;
  const high = sorted[Math.ceil(place)] as number;
  // Two equal neighbours give themselves, to the last digit.
  return low === high ? low : low + (high - low) * (place - Math.floor(place));
}
