import type { CubicMetrePerSecond, Metre, Ratio } from '../quantities.ts';

interface Heads {
  /** Supply head above the ram. */
  readonly fall: Metre;
  /** Delivery head above the ram. */
  readonly lift: Metre;
}
interface Flows {
  readonly wasteFlow: CubicMetrePerSecond;
  readonly deliveryFlow: CubicMetrePerSecond;
}

/**
 * Efficiency after Rankine: what the delivered water gains over the source, against what the wasted water loses.
 *
 *   η = q (h − H) / (Q H)
 *
 * 0 when nothing is wasted.
 * Source: definition; worked example W04 of checks/ shows how the published definitions differ.
 */
export function rankineEfficiency(heads: Heads, flows: Flows): Ratio {
  const spent = flows.wasteFlow * heads.fall;
  return spent > 0 ? (flows.deliveryFlow * (heads.lift - heads.fall)) / spent : 0;
}

/**
 * Efficiency after D'Aubuisson: energy of the delivered water above the ram, against that of all water taken.
 *
 *   η = q h / ((Q + q) H)
 *
 * 0 when nothing is taken.
 * Source: definition; worked example W03 of checks/.
 */
export function daubuissonEfficiency(heads: Heads, flows: Flows): Ratio {
  const given = (flows.wasteFlow + flows.deliveryFlow) * heads.fall;
  return given > 0 ? (flows.deliveryFlow * heads.lift) / given : 0;
}
