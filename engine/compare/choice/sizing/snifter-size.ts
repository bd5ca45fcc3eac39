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
 * It lasts for the part of the beat in which the ram delivers (`deliveringShare`). Source: orifice flow, any text on hydraulics.
 */
export function snifterSpray(diameter: Metre, head: Metre): CubicMetrePerSecond {
  return HOLE_COEFFICIENT * (Math.PI / 4) * diameter ** 2 * Math.sqrt(2 * GRAVITY * head);
}

/** What passes the delivery valve on the average, and what shuts the waste valve. */
export interface DeliveryDuty {
  readonly deliveryFlow: CubicMetrePerSecond;
  /** What comes through besides and runs back before the delivery valve has shut. */
  readonly backFlow: CubicMetrePerSecond;
  /** Flow that shuts the waste valve. */
  readonly closingFlow: CubicMetrePerSecond;
}

/**
 * Share of the time in which a ram delivers.
 *
 *   t f = 2 (q + q_b)/Q_c
 *
 * The column comes with Q_c and is slowed evenly to rest, so what it brings a beat, v, lasts for 2 v/Q_c, f times a second;
 * v f is what is delivered, q, and what runs back, q_b.
 * Source: rigid column (pipes/rigid-column.ts), derived here; a test holds it against simulated rams.
 */
export function deliveringShare({ deliveryFlow, backFlow, closingFlow }: DeliveryDuty): Ratio {
  return Math.min(1, (2 * (deliveryFlow + backFlow)) / closingFlow);
}

/**
 * Widest hole, within what is usual, whose spray takes no more than a share of the delivery.
 *
 * Only what sprays while the ram delivers is lost to the tank; at other times the hole drips from water that runs to waste.
 * Nothing when even the narrowest takes more: then air is better let in by hand, or the vessel drained now and then.
 */
export function snifterSize({
  duty,
  vesselHead,
  largestShare,
}: {
  readonly duty: DeliveryDuty;
  readonly vesselHead: Metre;
  readonly largestShare: Ratio;
}): Metre | undefined {
  const { low, high } = SNIFTER_DIAMETER;
  const sprayed = deliveringShare(duty) * snifterSpray(1, vesselHead);
  // The spray grows with the square of the hole.
  const widest = Math.sqrt((largestShare * duty.deliveryFlow) / sprayed);
  return widest < low ? undefined : Math.min(high, widest);
}
