/** High and low points of a line: where air collects, and where water and silt stay. */

export interface Height {
  readonly station: number;
  readonly height: number;
}

export interface Turn {
  readonly kind: 'crest' | 'sag';
  /** Which of the points it is. */
  readonly index: number;
  /** How much the line rises or falls on the flatter side before it turns again, in metres. */
  readonly depth: number;
}

/**
 * Judgement: a survey read to a centimetre or two shows humps of that size where there are none; under 3 cm a hump of a pipe
 * is taken for one of those.
 */
export const LEAST_DEPTH = 0.03;

/**
 * Points at which a line turns from rising to falling (crest) or back (sag). Humps flatter than `leastDepth` are passed
 * over. The ends of the line are neither. Goes through the points once.
 */
export function turnsOf(points: readonly Height[], leastDepth = LEAST_DEPTH): readonly Turn[] {
  const turns: { kind: Turn['kind']; index: number }[] = [];
  let highest = 0;
  let lowest = 0;
  let way: 'up' | 'down' | undefined;
  for (const [i, { height }] of points.entries()) {
    const top = points[highest]?.height ?? height;
    const foot = points[lowest]?.height ?? height;
    if (height > top) highest = i;
    if (height < foot) lowest = i;
    if (way !== 'down' && top - height >= leastDepth) {
      if (way === 'up') turns.push({ kind: 'crest', index: highest });
      way = 'down';
      lowest = i;
    } else if (way !== 'up' && height - foot >= leastDepth) {
      if (way === 'down') turns.push({ kind: 'sag', index: lowest });
      way = 'up';
      highest = i;
    }
  }
  const heights = [0, ...turns.map(({ index }) => index), points.length - 1].map(
    (index) => points[index]?.height ?? 0,
  );
  return turns.map((turn, i) => {
    const [before = 0, here = 0, after = 0] = heights.slice(i, i + 3);
    return { ...turn, depth: Math.min(Math.abs(here - before), Math.abs(here - after)) };
  });
}
