import type { Metre, Ratio } from '../quantities.ts';

/**
 * Loss coefficient of a sudden widening, on the velocity head of the smaller bore.
 *
 *   K = ( 1 − (d/D)² )²
 *
 * Source: Borda–Carnot, as in any fluid mechanics text (formula seen in a reference sheet quoting Crane TP-410).
 * @throws RangeError when a bore is not above zero or `smallBore` is the larger.
 */
export function suddenExpansionLoss(bores: Bores): Ratio {
  return (1 - areaRatio(bores)) ** 2;
}

/**
 * Loss coefficient of a sudden narrowing, on the velocity head of the smaller bore.
 *
 *   K ≈ 0.5 ( 1 − (d/D)² )
 *
 * An approximation for sharp edges; rounding takes most of it away.
 *
 * Source: as for the widening.
 * @throws RangeError when a bore is not above zero or `smallBore` is the larger.
 */
export function suddenContractionLoss(bores: Bores): Ratio {
  return 0.5 * (1 - areaRatio(bores));
}

/**
 * Drop of head at the pipe's side where one bore joins another, on the velocity head of the pipe behind the joint.
 *
 *   (H₁ − H₂) / (V₂²/2g) = 1 − (D₂/D₁)⁴ + K (V_small/V₂)²
 *
 * What pipes feel as head is pressure and level, so the change of the velocity head counts beside the loss: a widening
 * gives some head back and the result is then below nought.
 *
 * Source: energy equation with the two losses above.
 * @throws RangeError when a bore is not above zero.
 */
export function boreChangeDrop({
  upstreamBore,
  downstreamBore,
}: {
  readonly upstreamBore: Metre;
  readonly downstreamBore: Metre;
}): Ratio {
  const velocityRatioSquared = (downstreamBore / upstreamBore) ** 4;
  if (downstreamBore <= upstreamBore) {
    const loss = suddenContractionLoss({ smallBore: downstreamBore, largeBore: upstreamBore });
    return 1 - velocityRatioSquared + loss;
  }
  const loss = suddenExpansionLoss({ smallBore: upstreamBore, largeBore: downstreamBore });
  return 1 - velocityRatioSquared + loss * velocityRatioSquared;
}

interface Bores {
  readonly smallBore: Metre;
  readonly largeBore: Metre;
}

function areaRatio({ smallBore, largeBore }: Bores): Ratio {
  if (!(smallBore > 0)) throw new RangeError(`smallBore must be above zero, got ${smallBore} m`);
  if (!(largeBore >= smallBore)) {
    throw new RangeError(`largeBore must not be below smallBore, got ${largeBore} m`);
  }
  return (smallBore / largeBore) ** 2;
}
