import {
  GRAVITY,
  type KilogramPerCubicMetre,
  type Metre,
  type MetrePerSecond,
  type Pascal,
} from '../quantities.ts';

/**
 * Head by which a sudden stop raises the pressure: the most that a first wave can do.
 *
 *   ΔH = a ΔV / g
 *
 * Holds for a stop within 2L/a and a change small against the wave speed. It does not matter which argument comes first.
 *
 * Source: Joukowsky (1898), On the hydraulic hammer in water supply pipes (memory).
 * @throws RangeError when `waveSpeed` is not above zero.
 */
export function joukowskyHead(waveSpeed: MetrePerSecond, velocityChange: MetrePerSecond): Metre {
  if (!(waveSpeed > 0)) throw new RangeError(`waveSpeed must be above zero, got ${waveSpeed} m/s`);
  return (waveSpeed * velocityChange) / GRAVITY;
}

/**
 * Pressure by which a sudden stop loads the pipe.
 *
 *   Δp = ρ a ΔV
 *
 * Source: Joukowsky (1898), as above.
 * @throws RangeError when `density` or `waveSpeed` is not above zero.
 */
export function joukowskyPressure({
  density,
  waveSpeed,
  velocityChange,
}: {
  readonly density: KilogramPerCubicMetre;
  readonly waveSpeed: MetrePerSecond;
  readonly velocityChange: MetrePerSecond;
}): Pascal {
  if (!(density > 0)) throw new RangeError(`density must be above zero, got ${density} kg/m³`);
  if (!(waveSpeed > 0)) throw new RangeError(`waveSpeed must be above zero, got ${waveSpeed} m/s`);
  return density * waveSpeed * velocityChange;
}
