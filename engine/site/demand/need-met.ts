/** How far a tank and a ram go against a need. */
import type { CubicMetre, CubicMetrePerSecond, Ratio, Second } from '../../quantities.ts';

export interface Met {
  /** Delivered over needed; absent when nothing is needed. */
  readonly share?: Ratio;
  readonly isMet: boolean;
  /** How long a full tank makes up for what the ram lacks; absent when it lacks nothing. */
  readonly lasts?: Second;
}

/**
 * What a ram meets of a need, and how long a full tank makes up for the rest.
 *
 *   t = V/(needed − delivered)
 *
 * Means over whole days; with `delivered` nought it is how long the tank lasts when the ram stands still.
 */
export function needMet({
  volume,
  needed,
  delivered,
}: {
  readonly volume: CubicMetre;
  readonly needed: CubicMetrePerSecond;
  readonly delivered: CubicMetrePerSecond;
}): Met {
  const isMet = delivered >= needed;
  return {
    ...(needed > 0 && { share: delivered / needed }),
    isMet,
    ...(!isMet && { lasts: volume / (needed - delivered) }),
  };
}
