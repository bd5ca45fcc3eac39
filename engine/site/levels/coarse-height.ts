import type { Reading } from '../../numerics/repeated.ts';
import type { Metre, Ratio } from '../../quantities.ts';

export type CoarseWay = 'barometric' | 'satellite';

/**
 * How well one height is known when nobody says. Judgement: a pressure sensor drifts with the weather by some 0.2 hPa in the time
 * of a walk, 2 m; a hand-held receiver's heights scatter by 5 m under open sky, and more under trees.
 */
export const COARSE_SPREAD: Readonly<Record<CoarseWay, Metre>> = { barometric: 2, satellite: 5 };

/** Judgement: litres a day move about as the height does; a tenth is the most that a choice of ram can bear. */
export const COARSE_SHARE: Ratio = 0.1;

/**
 * Height between two places from an altimeter or a satellite receiver, each read once.
 *
 *   H = z_upper − z_lower       u = √(u_upper² + u_lower²)
 *
 * Source: JCGM 100:2008, 5.1.2 (memory); spreads above.
 */
export function coarseHeight(
  way: CoarseWay,
  {
    upper,
    lower,
    each,
  }: {
    readonly upper: Reading;
    readonly lower: Reading;
    readonly each?: Metre | undefined;
  },
): { readonly height: Metre; readonly spread: Metre } {
  const one = each ?? COARSE_SPREAD[way];
  return {
    height: upper.value - lower.value,
    spread: Math.hypot(upper.spread ?? one, lower.spread ?? one),
  };
}

/** Whether a height is known too coarsely to choose a ram by it. */
export function isTooCoarse({
  height,
  spread,
}: {
  readonly height: Metre;
  readonly spread: Metre;
}): boolean {
  return spread > COARSE_SHARE * Math.abs(height);
}
