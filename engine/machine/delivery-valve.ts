/** The delivery valve: the check between the ram's body and its air vessel, with the short passage it sits in. */

import type { CubicMetre, Metre, Ratio, SquareMetre } from '../quantities.ts';
import { GRAVITY } from '../quantities.ts';

export interface DeliveryValve {
  /** Free area of the open valve. */
  readonly area: SquareMetre;
  /** Loss coefficient on the velocity in that area. A bench test fits it. */
  readonly lossCoefficient: Ratio;
  /** Head above the vessel's that it takes to open the valve. */
  readonly crackingHead: Metre;
  /** Length of the water column between body and vessel; with the area it gives the inertance that makes the first spike. */
  readonly passageLength: Metre;
  /** Water that runs back from the vessel before the valve has shut, each beat. A bench test fits it. */
  readonly backFlowPerBeat: CubicMetre;
}

/**
 * Inertance of the passage: head needed per unit of flow acceleration, in s²/m².
 *
 *   I = l / (g A)
 *
 * Source: Newton's law for a rigid column, any text on unsteady flow.
 */
export function passageInertance(valve: DeliveryValve): number {
  return valve.passageLength / (GRAVITY * valve.area);
}

/** Head lost across the open valve, divided by the flow squared, in s²/m⁵: K/(2 g A²). */
export function deliveryLossPerFlowSquared(valve: DeliveryValve): number {
  return valve.lossCoefficient / (2 * GRAVITY * valve.area ** 2);
}
