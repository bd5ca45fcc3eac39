import { compare, type Tolerance } from './check-row.ts';

/** Fails when a number is not as near to the expected one as it should be, and says by how much and why it should. */
export function expectWithin(
  got: number,
  expected: number,
  tolerance: Tolerance,
  reason: string,
): void {
  const { gap, relativeGap, isWithin, allowed } = compare(expected, got, tolerance);
  if (isWithin) return;
  const share = Number.isNaN(relativeGap) ? '' : ` (${(100 * relativeGap).toPrecision(3)} %)`;
  throw new Error(
    `expected ${expected}, ${allowed}\n     got ${got}\n     gap ${gap.toPrecision(4)}${share}\n  reason ${reason}`,
  );
}
