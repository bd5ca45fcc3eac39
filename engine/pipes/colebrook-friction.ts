import type { Ratio } from '../quantities.ts';

/** Roughness over bore beyond which no source carries the equation: half-blocked, not rough. */
const ROUGHEST: Ratio = 0.1;

/**
 * Darcy friction factor of turbulent flow in a pipe, smooth to rough, solved to the last digit.
 *
 *   1/√f = −2 log₁₀[ ε/3.7D + 2.51/(Re √f) ]
 *
 * Holds for Re above 4000. Below that it still answers, down to Re 1000, as an upper bound of the transition.
 * The unknown x = 1/√f makes the equation concave, so Newton's method from below cannot overshoot.
 *
 * Source: Colebrook (1939), J. Inst. Civ. Eng. 11, 133–156 (memory).
 * @throws RangeError when `reynolds` is below 1000 or `relativeRoughness` is outside 0–0.1.
 */
export function colebrookFriction({
  reynolds,
  relativeRoughness,
}: {
  readonly reynolds: Ratio;
  readonly relativeRoughness: Ratio;
}): Ratio {
  return colebrook(reynolds, relativeRoughness).friction;
}

/**
 * Slope of the Colebrook–White law on a chart with two logarithmic axes: between −0.4 at the smooth end and 0.
 *
 *   d ln f / d ln Re = −2 / x · dx / d ln Re,   x = 1/√f
 *
 * Source: differentiated from the equation above.
 * @throws RangeError as `colebrookFriction` does.
 */
export function colebrookSlope({
  reynolds,
  relativeRoughness,
}: {
  readonly reynolds: Ratio;
  readonly relativeRoughness: Ratio;
}): Ratio {
  return colebrook(reynolds, relativeRoughness).slope;
}

function colebrook(reynolds: Ratio, relativeRoughness: Ratio): { friction: Ratio; slope: Ratio } {
  if (!(reynolds >= 1000)) throw new RangeError(`reynolds must be at least 1000, got ${reynolds}`);
  if (!(relativeRoughness >= 0 && relativeRoughness <= ROUGHEST)) {
    throw new RangeError(
      `relativeRoughness must lie between 0 and ${ROUGHEST}, got ${relativeRoughness}`,
    );
  }
  const rough = relativeRoughness / 3.7;
  const smooth = 2.51 / reynolds;
  // A friction factor of one: rougher than any pipe, so x starts below the root.
  let x = 1;
  let viscousShare = 0;
  let change = Number.POSITIVE_INFINITY;
  while (Math.abs(change) > 1e-14 * x) {
    const argument = rough + smooth * x;
    viscousShare = (2 * smooth) / (Math.LN10 * argument);
    const next = x - (x + 2 * Math.log10(argument)) / (1 + viscousShare);
    // Near the root the steps end in the rounding of the numbers and stop shrinking.
    if (Math.abs(next - x) >= Math.abs(change)) break;
    change = next - x;
    x = next;
  }
  return { friction: x ** -2, slope: (-2 * viscousShare) / (1 + viscousShare) };
}
