/** The cost–water front: what no other combination beats in both. */
import type { CubicMetrePerSecond, Ratio } from '../../quantities.ts';
import type { Money } from './offers.ts';

export interface Point {
  readonly key: string;
  /** Nought for all where prices are missing, so that water alone decides. */
  readonly cost: Money;
  readonly water: CubicMetrePerSecond;
}

/** By cost, then key: the order in which everything is gone through, so that ties fall the same way everywhere. */
export function byCostThenKey(
  a: Pick<Point, 'cost' | 'key'>,
  b: Pick<Point, 'cost' | 'key'>,
): number {
  return a.cost - b.cost || (a.key < b.key ? -1 : a.key > b.key ? 1 : 0);
}

/** Points that no other beats, the cheapest first; more money always buys more water on it. Of points alike, the first by key. */
export function frontOf<P extends Point>(points: readonly P[]): P[] {
  const ordered = [...points].sort(
    (a, b) => a.cost - b.cost || b.water - a.water || byCostThenKey(a, b),
  );
  const front: P[] = [];
  for (const point of ordered) {
    const last = front.at(-1);
    if (!last || point.water > last.water) front.push(point);
  }
  return front;
}

/**
 * Judgement: a tenth more money, or a tenth less water, is what a safer machine may be worth. What lies this near to the front is
 * kept beside it, for the forgiving pick to be found in.
 */
export const NEARNESS: Ratio = 0.1;

/** A growing set of points with increasing cost, that tells at once what would be beaten clearly. */
export class Staircase {
  readonly #front: Point[] = [];

  /** Takes in a point; those that it beats go. */
  add(point: Point): void {
    const index = this.#indexAbove(point.cost);
    const below = this.#front[index - 1];
    if (below && below.water >= point.water) return;
    let start = index;
    while (start > 0 && (this.#front[start - 1] as Point).cost === point.cost) start--;
    let end = index;
    while (end < this.#front.length && (this.#front[end] as Point).water <= point.water) end++;
    this.#front.splice(start, end - start, point);
  }

  /** The point with most water among those that cost no more. */
  bestUpTo(cost: Money): Point | undefined {
    return this.#front[this.#indexAbove(cost) - 1];
  }

  /**
   * Whether something beats clearly any combination of this cost that gives no more than `water`: it costs no more and gives a
   * tenth more, or it costs a tenth less and gives more.
   */
  beatsClearly(cost: Money, water: CubicMetrePerSecond): boolean {
    const same = this.bestUpTo(cost);
    if (same && same.water > water * (1 + NEARNESS)) return true;
    if (!(cost > 0)) return false;
    const cheaper = this.bestUpTo(cost / (1 + NEARNESS));
    return cheaper !== undefined && cheaper.water > water;
  }

  /** Number of points that cost no more than this. */
  #indexAbove(cost: Money): number {
    let low = 0;
    let high = this.#front.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#front[middle] as Point).cost <= cost) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}
