import type { CubicMetrePerSecond, Metre, Ratio } from '../quantities.ts';

/**
 * Head lost per metre of pipe by the older formula of water-supply tables. For comparison with them only; the engine
 * never uses it, as it knows no viscosity and no small pipes.
 *
 *   h/L = 10.67 Q^1.852 / ( C^1.852 D^4.8704 )
 *
 * Made for cool water at 0.5–3 m/s in pipes of 50 mm and more. C is 140–150 for plastic, 100–120 for steel.
 *
 * Source: Williams and Hazen (1905), Hydraulic Tables; the SI form from memory, the US form seen.
 * @throws RangeError when the bore or the coefficient is not above zero, or `flow` is below zero.
 */
export function hazenWilliamsGradient({
  innerDiameter,
  coefficient,
  flow,
}: {
  readonly innerDiameter: Metre;
  readonly coefficient: Ratio;
  readonly flow: CubicMetrePerSecond;
}): Ratio {
  if (!(innerDiameter > 0)) {
    throw new RangeError(`innerDiameter must be above zero, got ${innerDiameter} m`);
  }
  if (!(coefficient > 0))
    throw new RangeError(`coefficient must be above zero, got ${coefficient}`);
  if (!(flow >= 0)) throw new RangeError(`flow must not be below zero, got ${flow} m³/s`);
  return (10.67 * (flow / coefficient) ** 1.852) / innerDiameter ** 4.8704;
}
