import type { Ratio } from '../quantities.ts';

/**
 * Darcy friction factor over all regimes in one formula. For comparison; see `friction.ts` for the one in use.
 *
 *   f = 8 [ (8/Re)¹² + (A + B)^(−3/2) ]^(1/12)
 *   A = { 2.457 ln( 1 / [ (7/Re)^0.9 + 0.27 ε/D ] ) }¹⁶,   B = (37530/Re)¹⁶
 *
 * Joins laminar and turbulent flow smoothly with a dip near Re 2000. Within 3.2 % of Colebrook–White above Re 4000
 * for ε/D up to 0.03 (a test measures this).
 *
 * Source: Churchill (1977), Chem. Eng. 84(24), 91–92 (memory).
 * @throws RangeError when `reynolds` is not above zero or `relativeRoughness` is below zero.
 */
export function churchillFriction({
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
  const A = (2.457 * Math.log(1 / ((7 / reynolds) ** 0.9 + 0.27 * relativeRoughness))) ** 16;
  const B = (37_530 / reynolds) ** 16;
  return 8 * ((8 / reynolds) ** 12 + (A + B) ** -1.5) ** (1 / 12);
}
