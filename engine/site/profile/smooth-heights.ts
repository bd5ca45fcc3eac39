/**
 * Heights of a walked track without their jitter.
 *
 * Each height becomes the mean of the surveyed line over a window of ground centred on it, taken twice, so that near ground
 * counts for more. The mean is of the line and not of the points, because a recorder writes many points where a person
 * stands still. It takes the jitter from point to point away; a drift that lasts for minutes stays.
 */
import type { ProfilePoint } from '../../cycle/installation.ts';
import type { Metre } from '../../quantities.ts';

export interface SmoothedHeights {
  readonly profile: readonly ProfilePoint[];
  /** Length of ground over which each pass takes the mean. */
  readonly window: Metre;
  readonly largestChange: Metre;
  /** Root of the mean square of all changes. */
  readonly typicalChange: Metre;
}

/**
 * A profile with its heights filtered, and by how much that changed them.
 *
 * Towards the ends the window shrinks, so that the end heights stay as they are. Distances must rise from point to point.
 *
 * @throws RangeError when `window` is below zero.
 */
export function smoothHeights(profile: readonly ProfilePoint[], window: Metre): SmoothedHeights {
  if (!(window >= 0)) throw new RangeError(`window must not be below zero, got ${window} m`);
  const smoothed = windowMeans(windowMeans(profile, window), window);
  const changes = smoothed.map((point, index) =>
    Math.abs(point.elevation - (profile[index] as ProfilePoint).elevation),
  );
  const squares = changes.reduce((sum, change) => sum + change ** 2, 0);
  return {
    profile: smoothed,
    window,
    largestChange: changes.reduce((most, change) => Math.max(most, change), 0),
    typicalChange: Math.sqrt(squares / Math.max(1, changes.length)),
  };
}

function windowMeans(profile: readonly ProfilePoint[], window: Metre): readonly ProfilePoint[] {
  const first = profile[0];
  const last = profile.at(-1);
  if (!first || !last || window === 0) return profile;
  const distances = profile.map(({ distance }) => distance);
  const areas = runningAreas(profile);
  // Both edges of the window only ever move forward, so one pass over the points is enough for each.
  const areaUpTo = (edge: Edge, at: Metre): number => {
    while (edge.index < distances.length - 2 && (distances[edge.index + 1] as number) <= at) {
      edge.index += 1;
    }
    const here = profile[edge.index] as ProfilePoint;
    const next = profile[edge.index + 1] as ProfilePoint;
    const part = at - here.distance;
    const slope = (next.elevation - here.elevation) / (next.distance - here.distance);
    return (areas[edge.index] as number) + part * (here.elevation + (slope * part) / 2);
  };
  const left: Edge = { index: 0 };
  const right: Edge = { index: 0 };
  return profile.map((point) => {
    const { distance } = point;
    const half = Math.min(window / 2, distance - first.distance, last.distance - distance);
    if (!(half > 0)) return point;
    const area = areaUpTo(right, distance + half) - areaUpTo(left, distance - half);
    return { distance, elevation: area / (2 * half) };
  });
}

interface Edge {
  index: number;
}

/** Area under the line from its start up to each point. */
function runningAreas(profile: readonly ProfilePoint[]): readonly number[] {
  let sum = 0;
  return profile.map((point, index) => {
    const before = profile[index - 1];
    if (before) {
      sum += ((point.distance - before.distance) * (point.elevation + before.elevation)) / 2;
    }
    return sum;
  });
}
