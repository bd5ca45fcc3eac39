/** Where the delivered water and the need stand on an axis from nought. */
import { roundStep } from './scale.ts';

export interface DeliveryAxisLayout {
  /** The axis's end, a round amount in the unit given. */
  readonly end: number;
  /** Shares of the axis, 0 to 1. */
  readonly delivered: number;
  readonly needed?: number;
  readonly band?: { readonly low: number; readonly high: number };
}

/** `unit` is the size of one unit of the axis, in whatever the amounts are in: a round end must be round to the reader. */
export function layOutDeliveryAxis({
  delivered,
  needed,
  band,
  unit,
}: {
  readonly delivered: number;
  readonly needed?: number | undefined;
  readonly band?: { readonly low: number; readonly high: number } | undefined;
  readonly unit: number;
}): DeliveryAxisLayout {
  const most = Math.max(delivered, needed ?? 0, band?.high ?? 0) / unit || 1;
  const step = roundStep(most * 1.12, 6);
  const end = Math.ceil((most * 1.12) / step - 1e-9) * step;
  return {
    end: end * unit,
    delivered: delivered / (end * unit),
    ...(needed === undefined ? {} : { needed: needed / (end * unit) }),
    ...(band === undefined
      ? {}
      : { band: { low: band.low / (end * unit), high: band.high / (end * unit) } }),
  };
}
