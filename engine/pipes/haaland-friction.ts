import type { Ratio } from '../quantities.ts';

/**
 * Darcy friction factor of turbulent flow in a rough pipe, without iteration. For comparison; the engine solves
 * Colebrook–White exactly.
 *
 *   1/√f = −1.8 log₁₀[ 6.9/Re + (ε/3.7D)^1.11 ]
 *
 * Within 1.5 % of Colebrook–White for 4·10³ ≤ Re ≤ 10⁸ and 10⁻⁶ ≤ ε/D ≤ 0.05 (a test measures this).
 *
 * Source: Haaland (1983), J. Fluids Eng. 105(1), 89–90, doi:10.1115/1.3240948 (memory).
 * @throws RangeError when `reynolds` is not above zero or `relativeRoughness` is below zero.
 */
export function haalandFriction({
  reynolds,
  relativeRoughness,
}: {
  readonly reynolds: Ratio;
  readonly relativeRoughness: Ratio;
}): Ratio {
  if (!(reynolds > 0)) throw new RangeError(`reynolds must be above zero, got ${reynolds}`);
  if (!(relativeRoughness >= 0)) {
    throw new RangeError(`relativeRoughness must not be below zero, got ${relativeRoughness}`);
  }
  const roughTerm = (relativeRoughness / 3.7) ** 1.11;
  return (-1.8 * Math.log10(6.9 / reynolds + roughTerm)) ** -2;
}
