import type { CubicMetre, CubicMetrePerMetre, Metre, Pascal, Ratio } from '../quantities.ts';
import type { DeliveryValve } from './delivery-valve.ts';
import type { WasteValve } from './waste-valve.ts';

/** The closed vessel of air that turns the ram's pulses into a steady flow. */
export interface AirVessel {
  /** Volume of the vessel. */
  readonly volume: CubicMetre;
  /**
   * Share of the volume that is air when the vessel stands at atmospheric pressure: 1 for a vessel freshly drained,
   * 0 for a drowned one.
   */
  readonly airShare: Ratio;
  /** n in p Vⁿ = constant: 1.0 for slow changes, 1.4 for fast ones. */
  readonly polytropicIndex: Ratio;
}

/** The small hole under the delivery valve that draws a little air at each recoil. */
export interface Snifter {
  readonly diameter: Metre;
}

/** A hydraulic ram: its parts, as the simulation needs them. */
export interface Ram {
  /** How a person names it, such as `DN20`. */
  readonly name: string;
  /** Nominal size of its drive connection. */
  readonly bore: Metre;
  readonly wasteValve: WasteValve;
  readonly deliveryValve: DeliveryValve;
  readonly airVessel: AirVessel;
  readonly snifter?: Snifter;
  /** Volume that the body, and the air always caught in it, takes up for each metre of head. */
  readonly bodyElasticity: CubicMetrePerMetre;
  /** Gauge pressure that the body may carry; absent when its maker states none. */
  readonly rating?: Pascal;
}
