/** How large the tank must be: to carry a day's draw, and to stand in for the ram while it is stopped. */
import type { CubicMetre, CubicMetrePerSecond, Second } from '../../quantities.ts';
import { HOUR } from './draw-pattern.ts';

/**
 * `carries`: the ram brings what a day needs, and the volume is the smallest tank with which no hour goes short.
 * `short`: no tank is enough; the volume is the smallest with which nothing that the ram brings runs over.
 */
export interface DailyTank {
  readonly kind: 'carries' | 'short';
  readonly volume: CubicMetre;
}

/**
 * The smallest tank that evens out a day between a steady delivery and an uneven draw.
 *
 *   V = max over any run of hours, round the clock, of Σ (draw − delivery)
 *
 * For a ram that brings less than is drawn the signs turn: the volume then keeps every drop that it brings. Flows are constant
 * within an hour, so the extremes lie at its ends and the sum is exact.
 *
 * Source: the mass curve of storage (common practice, no source).
 */
export function dailyTank({
  delivery,
  draw,
}: {
  readonly delivery: CubicMetrePerSecond;
  readonly draw: readonly CubicMetrePerSecond[];
}): DailyTank {
  const wanted = draw.reduce((sum, flow) => sum + flow, 0);
  // A hair of slack: 24 hours of a need that is just met may add up to a rounding more.
  const isShort = wanted > draw.length * delivery * (1 + 1e-12);
  const sign = isShort ? -1 : 1;
  // Twice round the clock, so that a run of hours may cross midnight.
  let run = 0;
  let largest = 0;
  for (const flow of [...draw, ...draw]) {
    run = Math.max(0, run + sign * (flow - delivery) * HOUR);
    largest = Math.max(largest, run);
  }
  return { kind: isShort ? 'short' : 'carries', volume: largest };
}

/** What a tank must hold so that the ram can stand still for some time. */
export function reserveVolume(needed: CubicMetrePerSecond, standstill: Second): CubicMetre {
  return needed * standstill;
}
