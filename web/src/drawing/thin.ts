/** Long lines made short for drawing: fewer corners in a path, fewer handles and labels on it. */
import type { Point } from './points.ts';

/**
 * The corners that matter: no left-out point lies further than `tolerance` pixels from the line that is drawn. Both ends
 * stay. (The rule of the farthest point: a leg is split where the line strays most from it.)
 */
export function thinned<Corner extends Point>(
  points: readonly Corner[],
  tolerance: number,
): readonly Corner[] {
  if (points.length < 3) return points;
  const kept = new Set([0, points.length - 1]);
  const legs: [number, number][] = [[0, points.length - 1]];
  for (let leg = legs.pop(); leg !== undefined; leg = legs.pop()) {
    const [from, to] = leg;
    const split = farthest(points, from, to, tolerance);
    if (split === undefined) continue;
    kept.add(split);
    legs.push([from, split], [split, to]);
  }
  return points.filter((_, i) => kept.has(i));
}

function farthest(
  points: readonly Point[],
  from: number,
  to: number,
  tolerance: number,
): number | undefined {
  const a = points[from];
  const b = points[to];
  if (a === undefined || b === undefined) return undefined;
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  let most = tolerance;
  let found: number | undefined;
  for (let i = from + 1; i < to; i++) {
    const p = points[i];
    if (p === undefined) continue;
    const away =
      length === 0
        ? Math.hypot(p.x - a.x, p.y - a.y)
        : Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / length;
    if (away > most) {
      most = away;
      found = i;
    }
  }
  return found;
}

/**
 * Which of many places along x are shown when each needs `gap` pixels. Those of the highest rank come first, in the order
 * of the line among equals; the answer is in the order of the line.
 */
export function spacedOut<Item>(
  items: readonly Item[],
  {
    xOf,
    rankOf,
    gap,
    most = items.length,
  }: {
    readonly xOf: (item: Item) => number;
    readonly rankOf: (item: Item) => number;
    readonly gap: number;
    readonly most?: number;
  },
): readonly Item[] {
  const taken: number[] = [];
  const shown = new Set<Item>();
  for (const item of items.toSorted((a, b) => rankOf(b) - rankOf(a))) {
    if (shown.size >= most) break;
    const x = xOf(item);
    if (taken.some((other) => Math.abs(other - x) < gap)) continue;
    taken.push(x);
    shown.add(item);
  }
  return items.filter((item) => shown.has(item));
}

export interface Rect {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export const overlaps = (a: Rect, b: Rect): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
