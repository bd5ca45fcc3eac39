/**
 * The high and low places of a line, where air and silt gather.
 *
 * A survey is never smooth, so a turn counts only when the line then goes the other way by more than a threshold. One pass
 * from end to end, as a hand follows the line: no window to choose, and crests and sags always take turns.
 */
import type { ProfilePoint } from '../../cycle/installation.ts';
import type { Metre } from '../../quantities.ts';

export interface ProfileTurn {
  readonly kind: 'crest' | 'sag';
  /** Place of its point in the profile; the first of several that lie level. */
  readonly index: number;
  readonly distance: Metre;
  readonly elevation: Metre;
  /** The smaller of the heights between it and the turns, or the line's ends, on its two sides. */
  readonly prominence: Metre;
}

/**
 * How far a line must rise and fall again before the rise is called a crest.
 *
 * Judgement: no less than the bore, because over a smaller rise water still passes under the air and carries it along; and
 * no less than the heights are known to, because a smaller rise may be the survey's own.
 */
export function crestThreshold({
  bore,
  heightSpread,
}: {
  readonly bore: Metre;
  readonly heightSpread: Metre;
}): Metre {
  return Math.max(bore, heightSpread);
}

/**
 * Crests and sags of a profile, from its first point to its last. An end is never one.
 *
 * @throws RangeError when `threshold` is not above zero.
 */
export function crestsAndSags(
  profile: readonly ProfilePoint[],
  { threshold }: { readonly threshold: Metre },
): readonly ProfileTurn[] {
  if (!(threshold > 0)) throw new RangeError(`threshold must be above zero, got ${threshold} m`);
  const height = (index: number): Metre => (profile[index] as ProfilePoint).elevation;
  const turns: number[] = [];
  let highest = 0;
  let lowest = 0;
  let heading: 'up' | 'down' | undefined;
  for (let i = 1; i < profile.length; i++) {
    if (height(i) > height(highest)) highest = i;
    if (height(i) < height(lowest)) lowest = i;
    // The first move away from the start only gives the heading: an end is no turn.
    if (heading !== 'up' && height(i) - height(lowest) >= threshold) {
      if (heading === 'down') turns.push(lowest);
      heading = 'up';
      highest = i;
    } else if (heading !== 'down' && height(highest) - height(i) >= threshold) {
      if (heading === 'up') turns.push(highest);
      heading = 'down';
      lowest = i;
    }
  }
  const around = [0, ...turns, profile.length - 1];
  return turns.map((index, place) => {
    const before = around[place] as number;
    const after = around[place + 2] as number;
    const rises = [height(index) - height(before), height(index) - height(after)];
    return {
      kind: (rises[0] as number) > 0 ? 'crest' : 'sag',
      index,
      distance: (profile[index] as ProfilePoint).distance,
      elevation: height(index),
      prominence: Math.min(...rises.map(Math.abs)),
    };
  });
}
