import type { Celsius, Pascal } from '../quantities.ts';
import { deratingFactor } from './materials.ts';
import type { Pipe } from './pipe.ts';

/**
 * Gauge pressure that a pipe may carry for years at a temperature, or nothing when the pipe has no rating.
 *
 *   p(T) = rating · derating(T)
 *
 * It is the rating of the pipe itself. Threads, clamps and fittings may carry less (threaded PVC half of it, by the
 * standard's own note), and local codes decide what may be used.
 *
 * Source: the derating stands with each material in `MATERIALS`.
 * @throws RangeError when `temperature` is above the last published point of the material.
 */
export function deratedRating(pipe: Pipe, temperature: Celsius): Pascal | undefined {
  if (pipe.rating === undefined) return undefined;
  return pipe.rating * deratingFactor(pipe.material, temperature);
}
