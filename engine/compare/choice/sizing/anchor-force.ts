/** What has to hold a ram and the bends of its drive line against the hammer. */
import type { Metre, Newton, Pascal } from '../../../quantities.ts';

/**
 * Push on the ram's footing along its drive pipe at the peak.
 *
 *   F = p A
 *
 * The momentum of the water that runs before the stop is left out: at 2 m/s it is under a hundredth of the peak.
 * Source: balance of forces on a closed end, any text on fluid mechanics.
 * @throws RangeError when a value is below zero.
 */
export function anchorForce({
  peakPressure,
  innerDiameter,
}: {
  readonly peakPressure: Pascal;
  readonly innerDiameter: Metre;
}): Newton {
  for (const [name, value] of Object.entries({ peakPressure, innerDiameter })) {
    if (!(value >= 0)) throw new RangeError(`${name} must not be below zero, got ${value}`);
  }
  return peakPressure * (Math.PI / 4) * innerDiameter ** 2;
}

/**
 * Push outward on a bend, from the inside of the turn.
 *
 *   F = 2 p A sin(θ/2)
 *
 * `angle` is how far the pipe turns, in radians: 0 is straight on. Source: as above.
 * @throws RangeError when a value is below zero.
 */
export function bendForce({
  peakPressure,
  innerDiameter,
  angle,
}: {
  readonly peakPressure: Pascal;
  readonly innerDiameter: Metre;
  readonly angle: number;
}): Newton {
  if (!(angle >= 0)) throw new RangeError(`angle must not be below zero, got ${angle} rad`);
  return 2 * anchorForce({ peakPressure, innerDiameter }) * Math.sin(angle / 2);
}
