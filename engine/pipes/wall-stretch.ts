/** How far a pipe's wall gives way to pressure: the other half, beside the water, of what slows a wave. */
import type { Metre, Pascal, Ratio } from '../quantities.ts';
import type { Restraint } from './pipe.ts';

/**
 * Restraint factor of a thin wall: how lengthwise restraint changes its stretch.
 *
 *   anchored at the source end:  c₁ = 1 − ν/2
 *   anchored throughout:         c₁ = 1 − ν²
 *   expansion joints:            c₁ = 1
 *
 * Holds for walls thinner than about 1/25 of the bore; thicker ones need `thickWallFactor`.
 *
 * Source: Wylie, Streeter and Suo (1993), Fluid Transients in Systems, chapter 1 (factors seen in two reprints).
 * @throws RangeError when `poissonRatio` is outside 0–0.5.
 */
export function thinWallFactor({
  restraint,
  poissonRatio,
}: {
  readonly restraint: Restraint;
  readonly poissonRatio: Ratio;
}): Ratio {
  if (!(poissonRatio >= 0 && poissonRatio <= 0.5)) {
    throw new RangeError(`poissonRatio must lie between 0 and 0.5, got ${poissonRatio}`);
  }
  switch (restraint) {
    case 'anchoredUpstream':
      return 1 - poissonRatio / 2;
    case 'anchoredThroughout':
      return 1 - poissonRatio ** 2;
    case 'expansionJoints':
      return 1;
  }
}

/**
 * Restraint factor of a wall of any thickness.
 *
 *   c₁ = (2e/D)(1 + ν) + D/(D + e) · c₁ of the thin wall
 *
 * Goes over into the thin-wall factor as e/D vanishes, so the engine uses it for every pipe.
 *
 * Source: Wylie, Streeter and Suo (1993), Fluid Transients in Systems, chapter 1 (memory).
 * @throws RangeError when `poissonRatio` is outside 0–0.5 or a dimension is not above zero.
 */
export function thickWallFactor({
  restraint,
  poissonRatio,
  innerDiameter: D,
  wallThickness: e,
}: {
  readonly restraint: Restraint;
  readonly poissonRatio: Ratio;
  readonly innerDiameter: Metre;
  readonly wallThickness: Metre;
}): Ratio {
  requireWall(D, e);
  const thin = thinWallFactor({ restraint, poissonRatio });
  return ((2 * e) / D) * (1 + poissonRatio) + (D / (D + e)) * thin;
}

/**
 * Share by which the bore's area grows per pascal, in 1/Pa. Nought for a rigid pipe (infinite modulus).
 *
 *   (1/A) dA/dp = c₁ D / (E e)
 *
 * Source: Wylie, Streeter and Suo (1993), Fluid Transients in Systems, chapter 1 (memory).
 * @throws RangeError when a dimension or the modulus is not above zero, or the factor is below zero.
 */
export function wallCompliance({
  factor,
  innerDiameter,
  wallThickness,
  youngsModulus,
}: {
  readonly factor: Ratio;
  readonly innerDiameter: Metre;
  readonly wallThickness: Metre;
  readonly youngsModulus: Pascal;
}): number {
  requireWall(innerDiameter, wallThickness);
  if (!(youngsModulus > 0)) {
    throw new RangeError(`youngsModulus must be above zero, got ${youngsModulus} Pa`);
  }
  if (!(factor >= 0)) throw new RangeError(`factor must not be below zero, got ${factor}`);
  return (factor * innerDiameter) / (youngsModulus * wallThickness);
}

function requireWall(innerDiameter: Metre, wallThickness: Metre): void {
  if (!(innerDiameter > 0)) {
    throw new RangeError(`innerDiameter must be above zero, got ${innerDiameter} m`);
  }
  if (!(wallThickness > 0)) {
    throw new RangeError(`wallThickness must be above zero, got ${wallThickness} m`);
  }
}
