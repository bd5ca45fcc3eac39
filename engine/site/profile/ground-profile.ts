/** From places on the ground, as a satellite recorder writes them, to a profile along it. */
import type { ProfilePoint } from '../../cycle/installation.ts';
import type { Metre } from '../../quantities.ts';
import { COARSE_SPREAD } from '../levels/coarse-height.ts';
import { type GroundPlace, groundDistance } from './ground-distance.ts';
import { type SmoothedHeights, smoothHeights } from './smooth-heights.ts';

export interface GroundPoint extends GroundPlace {
  /** Height above the sea, or above whatever the survey counts from. */
  readonly height: Metre;
}

/** How far a satellite height may be out. Common practice, no source: 3 to 10 m under open sky, worse by trees and cliffs. */
export const SATELLITE_HEIGHT_SPREAD: Metre = COARSE_SPREAD.satellite;

/**
 * How far satellite heights of one walk may be out against one another, once the ends are held at known heights.
 *
 * Judgement: half of the above; the other half drifts slowly enough for a whole walk to share it.
 */
export const SATELLITE_SPREAD_ALONG: Metre = SATELLITE_HEIGHT_SPREAD / 2;

/** Judgement: some fifteen seconds of walking, over which jitter evens out and a crest that matters does not. */
const USUAL_WINDOW: Metre = 20;
/** Judgement: a window over more than a tenth of a line would flatten the line itself. */
const LARGEST_WINDOW_SHARE = 0.1;

/** Level distances along the ground with the heights as they were read. Points in one place become one of mean height. */
export function levelProfile(points: readonly GroundPoint[]): readonly ProfilePoint[] {
  const profile: ProfilePoint[] = [];
  let distance = 0;
  let standing = 0;
  let place: GroundPoint | undefined;
  for (const point of points) {
    const step = place ? groundDistance(place, point) : 0;
    const last = profile.at(-1);
    if (last && step < LEAST_STEP) {
      standing += 1;
      const elevation = last.elevation + (point.height - last.elevation) / standing;
      profile[profile.length - 1] = { distance: last.distance, elevation };
      continue;
    }
    distance += step;
    standing = 1;
    place = point;
    profile.push({ distance, elevation: point.height });
  }
  return profile;
}

/** Judgement: no recorder or tape tells places apart that are a millimetre from one another. */
const LEAST_STEP: Metre = 1e-3;

/** The window over which the heights of a walked line are filtered when nobody chose one. */
export function usualWindow(length: Metre): Metre {
  return Math.min(USUAL_WINDOW, LARGEST_WINDOW_SHARE * length);
}

/**
 * Profile along the ground: level distances, heights filtered over `window`, then distances along the slope between the
 * filtered heights (unfiltered ones would add their jitter to the length).
 *
 * @throws RangeError when all points lie in one place or there are fewer than two.
 */
export function groundProfile(
  points: readonly GroundPoint[],
  window?: Metre,
): SmoothedHeights & { readonly levelLength: Metre } {
  const level = levelProfile(points);
  const levelLength = level.at(-1)?.distance ?? 0;
  if (!(level.length >= 2)) throw new RangeError('points must lie in two places at least');
  const smoothed = smoothHeights(level, window ?? usualWindow(levelLength));
  return { ...smoothed, profile: alongTheSlope(smoothed.profile), levelLength };
}

/** Level distances turned into distances along the slope. */
export function alongTheSlope(level: readonly ProfilePoint[]): readonly ProfilePoint[] {
  let distance = 0;
  return level.map((point, index) => {
    const before = level[index - 1];
    if (before) {
      distance += Math.hypot(point.distance - before.distance, point.elevation - before.elevation);
    }
    return { distance, elevation: point.elevation };
  });
}
