import type { ProfilePoint } from '../../cycle/installation.ts';
import { thinPolyline } from '../../numerics/thin-polyline.ts';
import type { Metre } from '../../quantities.ts';
import { crestsAndSags } from './crests-and-sags.ts';

export interface ThinnedProfile {
  readonly profile: readonly ProfilePoint[];
  /** Largest height between a point that was left out and the line that is left. */
  readonly largestError: Metre;
}

/**
 * A profile of no more than `count` points, with the largest error in height that this costs.
 *
 * Its ends stay, and so do its crests and sags, the largest first, as far as `count` reaches: a crest that is thinned away
 * is air that nobody is told of. The other points go where they bring the line nearest to the survey.
 *
 * @throws RangeError when there are fewer than two points or `count` is below two.
 */
export function thinProfile(
  profile: readonly ProfilePoint[],
  { count, threshold }: { readonly count: number; readonly threshold: Metre },
): ThinnedProfile {
  const turns = [...crestsAndSags(profile, { threshold })]
    .sort((a, b) => b.prominence - a.prominence)
    .slice(0, Math.max(0, count - 2))
    .map(({ index }) => index);
  const { kept, largestError } = thinPolyline(
    profile.map(({ distance, elevation }) => [distance, elevation]),
    { count, always: turns },
  );
  return { profile: kept.map((index) => profile[index] as ProfilePoint), largestError };
}
