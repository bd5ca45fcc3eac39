import type { Metre } from '../../../quantities.ts';

/** DN numbers in metres. Source: ISO 6708 and the sizes of EN 10255, as everybody prints them. */
const NOMINAL_SIZES: readonly Metre[] = [
  0.006, 0.008, 0.01, 0.015, 0.02, 0.025, 0.032, 0.04, 0.05, 0.065, 0.08, 0.1, 0.125, 0.15, 0.2,
  0.25, 0.3,
];

function nearestIndex(bore: Metre): number {
  let nearest = 0;
  NOMINAL_SIZES.forEach((size, index) => {
    const best = NOMINAL_SIZES[nearest] as Metre;
    if (Math.abs(Math.log(size / bore)) < Math.abs(Math.log(best / bore))) nearest = index;
  });
  return nearest;
}

/**
 * The nominal size that a bore goes by: the nearest by ratio.
 *
 * A 1-inch steel pipe of 26.6 mm and a PE pipe of 26.2 mm are both DN 25. Judgement: thread and clamp go by it; what a fitting
 * clamps on to outside is told by the materials that it is for.
 * @throws RangeError when `bore` is not above zero.
 */
export function nominalSize(bore: Metre): Metre {
  if (!(bore > 0)) throw new RangeError(`bore must be above zero, got ${bore} m`);
  return NOMINAL_SIZES[nearestIndex(bore)] as Metre;
}

/** The nominal size some steps above that of a bore; the largest when there are no more. */
export function sizesAbove(bore: Metre, steps: number): Metre {
  const index = Math.min(nearestIndex(bore) + steps, NOMINAL_SIZES.length - 1);
  return NOMINAL_SIZES[index] as Metre;
}
