/**
 * Fewer points for a line of many, with the largest error said.
 *
 * Points are taken back one at a time where the thinned line is furthest off, as Douglas and Peucker split a line, but
 * across it in the second number only and with a count to stop at. A count is what a file and a picture can hold; the
 * error it costs is known exactly, because every point left out is compared.
 */

import type { TablePoint } from './interpolate.ts';

export interface Thinned {
  /** Places of the points that are kept, in order; the first and the last always are. */
  readonly kept: readonly number[];
  /** Largest distance in the second number between a point left out and the thinned line. */
  readonly largestError: number;
}

interface Stretch {
  readonly from: number;
  readonly to: number;
  /** The point between them that is furthest off, and by how much. */
  readonly worst: number;
  readonly error: number;
}

/**
 * The points to keep so that no more than `count` are left.
 *
 * `always` names points that must stay, such as the turning points; they count too, and stay even when they alone are
 * more than `count`.
 *
 * Source: Douglas and Peucker (1973), Cartographica 10(2), 112–122 (memory), for the splitting.
 * @throws RangeError when there are fewer than two points or `count` is below two.
 */
export function thinPolyline(
  line: readonly TablePoint[],
  { count, always = [] }: { readonly count: number; readonly always?: readonly number[] },
): Thinned {
  if (line.length < 2) throw new RangeError(`line must have two points, got ${line.length}`);
  if (!(count >= 2)) throw new RangeError(`count must be at least 2, got ${count}`);
  const last = line.length - 1;
  const corners = [...new Set([0, ...always, last])].sort((a, b) => a - b);
  const stretches: Stretch[] = [];
  for (const [index, to] of corners.entries()) {
    const from = corners[index - 1];
    if (from !== undefined) stretches.push(stretchBetween(line, from, to));
  }
  const kept = new Set(corners);
  while (kept.size < count) {
    // A few hundred stretches at most: looking through them all is quicker than keeping a heap.
    let next = 0;
    for (let i = 1; i < stretches.length; i++) {
      if ((stretches[i] as Stretch).error > (stretches[next] as Stretch).error) next = i;
    }
    const { from, to, worst, error } = stretches[next] as Stretch;
    if (error === 0) break;
    kept.add(worst);
    stretches[next] = stretchBetween(line, from, worst);
    stretches.push(stretchBetween(line, worst, to));
  }
  return {
    kept: [...kept].sort((a, b) => a - b),
    largestError: stretches.reduce((most, { error }) => Math.max(most, error), 0),
  };
}

function stretchBetween(line: readonly TablePoint[], from: number, to: number): Stretch {
  const [startAt, startValue] = line[from] as TablePoint;
  const [endAt, endValue] = line[to] as TablePoint;
  const slope = endAt === startAt ? 0 : (endValue - startValue) / (endAt - startAt);
  let worst = from;
  let error = 0;
  for (let i = from + 1; i < to; i++) {
    const [at, value] = line[i] as TablePoint;
    const off = Math.abs(value - startValue - slope * (at - startAt));
    if (off > error) {
      error = off;
      worst = i;
    }
  }
  return { from, to, worst, error };
}
