import type { Ratio } from '../quantities.ts';

/**
 * Darcy friction factor of smooth, laminar flow. The roughness of the wall does not matter.
 *
 *   f = 64 / Re
 *
 * Holds below Re of about 2000; above it flow turns turbulent and this is too low.
 *
 * Source: Hagen (1839) and Poiseuille (1840), as in any fluid mechanics text (memory).
 * @throws RangeError when `reynolds` is not above zero.
 */
export function laminarFriction(reynolds: Ratio): Ratio {
  if (!(reynolds > 0)) throw new RangeError(`reynolds must be above zero, got ${reynolds}`);
  return 64 / reynolds;
}
