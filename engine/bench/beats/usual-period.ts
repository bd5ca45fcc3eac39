/**
 * The period that a row of onsets keeps, if it keeps one.
 *
 * Every two onsets vote for the time between them, on a logarithmic axis so that a period may wander by the same share
 * whatever it is; a period is then judged with its double and its triple. This is the comb over an autocorrelation by
 * which the tempo of music is found, on onsets in place of a dense curve.
 *
 * Sources: Scheirer (1998), J. Acoust. Soc. Am. 103, 588–601, combs; Dixon (2001), J. New Music Research 30, 39–58,
 * intervals between onsets (both memory).
 */
import { seededStream } from '../../numerics/seeded-stream.ts';
import type { Ratio, Second } from '../../quantities.ts';
import type { Onset } from './onsets.ts';

/** 330 and 18 beats a minute: a little beyond the fastest and slowest ram that is counted. Judgement. */
export const SHORTEST_PERIOD: Second = 60 / 330;
export const LONGEST_PERIOD: Second = 60 / 18;

/** Steps of the logarithmic axis, and how far a period may wander to count for its neighbours. Judgement. */
const AXIS_STEP = 0.015;
const WANDER: Ratio = 0.07;
const REACH = Math.ceil((2.5 * WANDER) / AXIS_STEP);
const NEIGHBOURS = Array.from({ length: 2 * REACH + 1 }, (_, i) =>
  Math.exp(-0.5 * (((i - REACH) * AXIS_STEP) / WANDER) ** 2),
);
const MULTIPLES = [
  { multiple: 1, weight: 1 },
  { multiple: 2, weight: 0.5 },
  { multiple: 3, weight: 0.25 },
] as const;
/** Judgement: so many of the slowest ram's beats are clear ones. */
const FEWEST_HEARD: Ratio = 0.7;
/** Judgement: a shorter period wins over its multiples when it stands for this share of the best. */
const SHORTER_WINS: Ratio = 0.75;
/** Rows with the same onsets shaken out of step, against which a period must stand out. */
const SHAKEN_ROWS = 12;
/** Judgement: so much stronger than the strongest period of any shaken row. */
export const STANDS_OUT: Ratio = 1.25;
/** Judgement: the least share of beats in step; below it a row of onsets is speech or chance. */
const LEAST_STRENGTH: Ratio = 0.16;

export interface UsualPeriod {
  readonly period: Second;
  /** 1 for a row in perfect step, about 0 for chance. */
  readonly strength: Ratio;
}

export function usualPeriod(onsets: readonly Onset[], lasts: Second): UsualPeriod | undefined {
  if (onsets.length < 4) return undefined;
  return strongest(weighted(onsets, lasts), lasts);
}

/** Whether a period is stronger, by a factor, than the strongest that chance gives for as many onsets. */
export function standsOut(
  onsets: readonly Onset[],
  lasts: Second,
  { period, strength }: UsualPeriod,
  factor: Ratio = STANDS_OUT,
): boolean {
  return (
    strength > LEAST_STRENGTH &&
    strength > factor * byChance(weighted(onsets, lasts), lasts, period)
  );
}

interface Weighted {
  readonly time: Second;
  readonly weight: number;
}

/** Few very loud ones must not outvote the rest: none weighs more than the least of as many as the slowest ram has beats. */
function weighted(onsets: readonly Onset[], lasts: Second): readonly Weighted[] {
  const fewest = Math.max(4, Math.round(FEWEST_HEARD * (lasts / LONGEST_PERIOD)));
  const heights = onsets.map(({ height }) => height).sort((a, b) => b - a);
  const clear = heights[Math.min(fewest, heights.length) - 1] as number;
  return onsets.map(({ time, height }) => ({ time, weight: Math.min(1, height / clear) ** 2 }));
}

function strongest(
  row: readonly Weighted[],
  lasts: Second,
): { readonly period: Second; readonly strength: Ratio } | undefined {
  const votes = votesFor(row, lasts);
  const longest = Math.min(LONGEST_PERIOD, lasts / 2);
  const from = cellOf(SHORTEST_PERIOD);
  const to = cellOf(longest);
  if (to <= from) return undefined;
  const strengths = new Float64Array(to + 1);
  let best = 0;
  for (let cell = from; cell <= to; cell++) {
    strengths[cell] = combAt(votes, cell, lasts);
    best = Math.max(best, strengths[cell] as number);
  }
  if (!(best > 0)) return undefined;
  for (let cell = from; cell <= to; cell++) {
    const strength = strengths[cell] as number;
    const isPeak = strength >= (strengths[cell - 1] ?? 0) && strength >= (strengths[cell + 1] ?? 0);
    if (isPeak && strength >= SHORTER_WINS * best) return { period: lagOf(cell), strength };
  }
  return undefined;
}

/** Votes for each time between two onsets, less what onsets in no order would give. */
function votesFor(row: readonly Weighted[], lasts: Second): Float64Array {
  const reach = Math.min(3 * LONGEST_PERIOD, lasts);
  const votes = new Float64Array(cellOf(reach) + 1);
  const raw = new Float64Array(votes.length);
  let [sum, squares] = [0, 0];
  for (const [i, one] of row.entries()) {
    sum += one.weight;
    squares += one.weight ** 2;
    for (let j = i + 1; j < row.length; j++) {
      const other = row[j] as Weighted;
      const lag = other.time - one.time;
      if (lag > reach) break;
      if (lag < 0.5 * SHORTEST_PERIOD) continue;
      const cell = cellOf(lag);
      if (cell < raw.length) raw[cell] = (raw[cell] as number) + one.weight * other.weight;
    }
  }
  for (let cell = 0; cell < votes.length; cell++) {
    const vote = raw[cell] as number;
    if (vote === 0) continue;
    for (const [i, share] of NEIGHBOURS.entries()) {
      const other = cell + i - REACH;
      if (other >= 0 && other < votes.length) {
        votes[other] = (votes[other] as number) + vote * share;
      }
    }
  }
  const width = WANDER * Math.sqrt(2 * Math.PI);
  for (let cell = 0; cell < votes.length; cell++) {
    const lag = lagOf(cell);
    const overlap = Math.max(0.05, 1 - lag / lasts);
    const byChance = (sum ** 2 / lasts) * lag * width * overlap;
    votes[cell] = ((votes[cell] as number) - byChance) / (squares * overlap);
  }
  return votes;
}

/** A period with its double and triple, as far as the row is long enough for them. */
function combAt(votes: Float64Array, cell: number, lasts: Second): Ratio {
  let [sum, weights] = [0, 0];
  for (const { multiple, weight } of MULTIPLES) {
    const lag = multiple * lagOf(cell);
    if (multiple > 1 && lag > 0.5 * lasts) break;
    sum += weight * (votes[cellOf(lag)] ?? 0);
    weights += weight;
  }
  return sum / weights;
}

/** The strongest period of the same onsets, each shaken by up to half a period. */
function byChance(row: readonly Weighted[], lasts: Second, period: Second): Ratio {
  const next = seededStream(1, 'shaken onsets');
  let most = 0;
  for (let k = 0; k < SHAKEN_ROWS; k++) {
    const shaken = row
      .map(({ time, weight }) => ({ time: time + (next() - 0.5) * period, weight }))
      .sort((a, b) => a.time - b.time);
    most = Math.max(most, strongest(shaken, lasts)?.strength ?? 0);
  }
  return most;
}

const FIRST_LAG: Second = 0.5 * SHORTEST_PERIOD;

function cellOf(lag: Second): number {
  return Math.round(Math.log(lag / FIRST_LAG) / AXIS_STEP);
}

function lagOf(cell: number): Second {
  return FIRST_LAG * Math.exp(cell * AXIS_STEP);
}
