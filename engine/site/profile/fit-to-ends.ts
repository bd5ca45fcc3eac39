import type { ProfilePoint } from '../../cycle/installation.ts';
import type { Metre } from '../../quantities.ts';

export interface FittedProfile {
  readonly profile: readonly ProfilePoint[];
  /** By how much all heights were moved. */
  readonly shift: Metre;
  /** What the survey's own difference between the ends was out by, spread along the line; nought when one end was known. */
  readonly closingError: Metre;
}

/**
 * A profile moved so that its ends lie at the heights that are known: the fall and nought for a drive line, nought and the
 * lift for a delivery line.
 *
 * One known end moves all heights alike. With both, what the survey is out by is spread along the line in proportion to the
 * distance, as a levelling loop is closed (common practice, no source). With none, nothing moves.
 *
 * @throws RangeError when there are fewer than two points.
 */
export function fitToEnds(
  profile: readonly ProfilePoint[],
  { start, end }: { readonly start?: Metre; readonly end?: Metre },
): FittedProfile {
  const first = profile[0];
  const last = profile.at(-1);
  if (!first || !last || profile.length < 2) {
    throw new RangeError(`profile must have two points, got ${profile.length}`);
  }
  const atStart = start === undefined ? undefined : start - first.elevation;
  const atEnd = end === undefined ? undefined : end - last.elevation;
  const shift = atStart ?? atEnd ?? 0;
  const closingError = atStart === undefined || atEnd === undefined ? 0 : atEnd - atStart;
  const length = last.distance - first.distance;
  return {
    profile: profile.map(({ distance, elevation }) => ({
      distance,
      elevation: elevation + shift + (closingError * (distance - first.distance)) / length,
    })),
    shift,
    closingError,
  };
}

/** The same line walked the other way. */
export function reversedProfile(profile: readonly ProfilePoint[]): readonly ProfilePoint[] {
  const length = profile.at(-1)?.distance ?? 0;
  return profile
    .map(({ distance, elevation }) => ({ distance: length - distance, elevation }))
    .reverse();
}
