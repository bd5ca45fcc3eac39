import type { CubicMetrePerSecond, Metre, Ratio } from '../../../quantities.ts';
import { GRAVITY } from '../../../quantities.ts';

/** Diameter of a snifter's hole. Source: common practice, no source (checks: RT57). */
export const SNIFTER_DIAMETER: { readonly low: Metre; readonly high: Metre } = {
  low: 0.001,
  high: 0.0016,
};

/** Discharge coefficient of a small drilled hole, about 0.6. Source: sharp-edged orifice, any text on hydraulics. */
const HOLE_COEFFICIENT: Ratio = 0.6;

/**
 * Water that a snifter sprays while the body stands at a head: what the little air costs.
 *
 *   Q = C A √(2 g h)
 *
 * It lasts for the part of the beat in which the ram delivers. Source: orifice flow, any text on hydraulics.
 */
export function snifterSpray(diameter: Metre, head: Metre): CubicMetrePerSecond {
  return HOLE_COEFFICIENT * (Math.PI / 4) * diameter ** 2 * Math.sqrt(2 * GRAVITY * head);
}

/**
 * Widest hole, within what is usual, whose spray takes no more than a share of the delivery.
 *
 * Nothing when even the narrowest takes more: then air is better let in by hand, or the vessel drained now and then.
 * Judgement: the spray is counted as if it ran all the time, which errs towards the smaller hole.
 */
export function snifterSize({
  deliveryFlow,
  vesselHead,
  largestShare,
}: {
  readonly deliveryFlow: CubicMetrePerSecond;
  readonly vesselHead: Metre;
  readonly largestShare: Ratio;
}): Metre | undefined {
  const { low, high } = SNIFTER_DIAMETER;
  // The spray grows with the square of the hole.
  const widest = Math.sqrt((largestShare * deliveryFlow) / snifterSpray(1, vesselHead));
  return widest < low ? undefined : Math.min(high, widest);
}
