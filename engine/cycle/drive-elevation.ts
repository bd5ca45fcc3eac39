import { interpolate } from '../numerics/interpolate.ts';
import type { Metre } from '../quantities.ts';
import type { DriveLine, ProfilePoint } from './installation.ts';

/**
 * Height of the drive line above the waste valve's outlet, at a distance along it from the source.
 *
 * Along its profile where there is one; otherwise the pipe runs straight from just under the source's surface to the ram.
 */
export function driveElevation(line: DriveLine, fall: Metre, distance: Metre): Metre {
  const { profile } = line;
  if (!profile || profile.length < 2) {
    const total = line.segments.reduce((sum, s) => sum + s.length, 0);
    return fall * (1 - distance / total);
  }
  const first = profile[0] as ProfilePoint;
  const last = profile.at(-1) as ProfilePoint;
  // A profile may stop a little short of the pipe it was paced out for.
  const within = Math.min(last.distance, Math.max(first.distance, distance));
  return interpolate(
    profile.map((point) => [point.distance, point.elevation]),
    within,
  );
}
