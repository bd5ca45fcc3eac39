/** Where air would collect in a line, and so where a vent belongs. */
import type { ProfilePoint } from '../../../cycle/installation.ts';

/**
 * Every crest of a profile: a point, or the head of a level stretch, that stands above the ground on both sides.
 *
 * On a drive line a crest is better laid away: a vent there is one more thing to leak under hammer. The ends are no crests.
 * Source: common practice, no source (checks: RT49): no high points.
 */
export function ventPoints(profile: readonly ProfilePoint[]): ProfilePoint[] {
  const crests: ProfilePoint[] = [];
  for (let i = 1; i < profile.length - 1; i++) {
    const point = profile[i] as ProfilePoint;
    const before = profile[i - 1] as ProfilePoint;
    // A level stretch is a crest when the ground falls behind it.
    const behind = profile.slice(i + 1).find((p) => p.elevation !== point.elevation);
    if (point.elevation > before.elevation && behind && behind.elevation < point.elevation) {
      crests.push(point);
    }
  }
  return crests;
}
