import type { Reading } from '../../numerics/repeated.ts';
import type { Metre } from '../../quantities.ts';

/** Judgement: a clear hose with water in it, or a hand level against a staff, read to a centimetre or two. */
export const HOP_SPREAD: Metre = 0.02;

/**
 * Height from hops with a water level or a hand level, one above the other.
 *
 *   H = Σhᵢ       u = √(Σuᵢ²)
 *
 * A hop that goes the other way counts below nought. Holds when the hops err independently; an eye height that is wrong is
 * wrong in every hop, and then the spreads add up.
 * Source: JCGM 100:2008, 5.1.2 (memory); common practice.
 * @throws RangeError when there are no hops.
 */
export function heightByHops(
  hops: readonly Reading[],
  each: Metre = HOP_SPREAD,
): { readonly height: Metre; readonly spread: Metre } {
  if (hops.length === 0) throw new RangeError('hops must hold at least one hop');
  return {
    height: hops.reduce((sum, { value }) => sum + value, 0),
    spread: Math.hypot(...hops.map(({ spread = each }) => spread)),
  };
}
