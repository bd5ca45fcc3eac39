import type { ProfilePoint } from '../../cycle/installation.ts';
import type { Metre } from '../../quantities.ts';

export interface StaticPlace extends ProfilePoint {
  /** Head of water in the pipe above the open air; below nought it sucks. */
  readonly pressureHead: Metre;
}

export interface StaticPressure {
  readonly lowest: StaticPlace;
  readonly highest: StaticPlace;
}

/**
 * Lowest and highest pressure along a line that is full and at rest.
 *
 *   p/(ρg) = surface − z
 *
 * `surface` is the level of the water that stands over the line: the source's surface for a drive line; for a delivery line
 * the outlet at the tank, or the full tank's surface where the pipe enters under water. Of equal places the first is given.
 *
 * @throws RangeError when the profile has no points.
 */
export function staticPressure(profile: readonly ProfilePoint[], surface: Metre): StaticPressure {
  const [first, ...others] = profile;
  if (!first) throw new RangeError('profile must have at least one point');
  let top = first;
  let bottom = first;
  for (const point of others) {
    if (point.elevation > top.elevation) top = point;
    if (point.elevation < bottom.elevation) bottom = point;
  }
  return {
    lowest: { ...top, pressureHead: surface - top.elevation },
    highest: { ...bottom, pressureHead: surface - bottom.elevation },
  };
}
