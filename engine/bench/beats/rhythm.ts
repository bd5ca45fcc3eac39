/**
 * What a row of beats says: how fast, how sure, how even, which are missing and which are too many.
 *
 * The same for taps, sound and pressure. Times are told apart as Wing and Kristofferson did for tapping: the ram's own
 * periods wander (their error grows along the row), while the hand or the ear errs at each beat by itself (it does not).
 */
import { quantile } from '../../numerics/quantile.ts';
import type { Hertz, Ratio, Second } from '../../quantities.ts';

/** One beat that was heard, tapped or read, as sure as it is. */
export interface Beat {
  readonly time: Second;
  /** From 0 to 1: how clearly it is a beat. 1 when a person said so. */
  readonly confidence: Ratio;
}

/** What the step from one beat to the next is. */
export type GapKind = 'regular' | 'missed' | 'double' | 'long' | 'pause';

export interface Gap {
  /** Time of the beat before it. */
  readonly from: Second;
  readonly length: Second;
  readonly kind: GapKind;
  /** Whole periods in it: 1 for a regular or a long one, 3 for one with two beats missing, nought for a double. */
  readonly periods: number;
}

export interface Rhythm {
  readonly beats: number;
  /** Beats a second: one over the mean period, which missed beats do not lengthen and pauses do not count in. */
  readonly beatFrequency: Hertz;
  /** Standard uncertainty of it. */
  readonly spread: Hertz;
  /** Beats that were there from the first to the last, over that time: lower when some are missing. */
  readonly countedFrequency: Hertz;
  readonly period: Second;
  /** Standard deviation of the periods, gaps with missed beats left out, as a share of the period. */
  readonly periodSpread: Ratio;
  /** The periods differ so much that a beat missed cannot be told from a long one; no gap is then called missed. */
  readonly isUneven: boolean;
  /** The periods that a tenth, a half and nine tenths of them stay under. */
  readonly periods: { readonly low: Second; readonly middle: Second; readonly high: Second };
  readonly gaps: readonly Gap[];
  /** Beats that should have stood in the gaps. */
  readonly missed: number;
  /** Beats that came too soon after another. */
  readonly doubles: number;
}

/** Fewest beats of which anything can be said. Judgement: three periods. */
export const FEWEST_BEATS = 4;
/** Judgement: a period this far from a whole number of usual ones is none of them. */
const REGULAR: Ratio = 0.3;
/** Judgement: a gap of more periods is a pause and no row of missed beats. */
const MOST_PERIODS = 12;
/**
 * Judgement: rams repeat within some 2 % when all is well; with periods that spread over a tenth, a gap of nearly two of them is
 * as well one long beat (one log of a laboratory ram has beats of 0.21 s and of 0.38 s with nothing between).
 */
const UNEVEN: Ratio = 0.1;
const FEWEST_PAIRS = 8;

/**
 * The rhythm of a row of beats.
 *
 *   Var(T̄) = (σ_p² + 2 σ_e²/n)/n,   σ_e² = −cov(Tᵢ, Tᵢ₊₁),   σ_p² = var(T) − 2 σ_e²
 *
 * with σ_e what each time errs by itself and σ_p what the periods wander; σ_e is at least `timeSpread`.
 *
 * Source: Wing and Kristofferson (1973), Perception & Psychophysics 14, 5–12 (memory).
 * Nothing when there are fewer beats than `FEWEST_BEATS`, or no two gaps alike.
 * @throws RangeError when the times do not rise or `timeSpread` is below nought.
 */
export function rhythmOf(
  times: readonly Second[],
  { timeSpread }: { readonly timeSpread: Second },
): Rhythm | undefined {
  if (!(timeSpread >= 0))
    throw new RangeError(`timeSpread must not be below zero, got ${timeSpread} s`);
  const lengths = times.slice(1).map((time, i) => time - (times[i] as number));
  if (lengths.some((length) => !(length > 0))) {
    throw new RangeError('times must rise from each beat to the next');
  }
  if (times.length < FEWEST_BEATS) return undefined;
  const usual = usualLength(lengths);
  const perfect = gapsOf(times, lengths, usual, false);
  const long = perfect.filter(({ kind }) => kind === 'long').length;
  const isUneven = spreadOf(regularOf(perfect)) > UNEVEN || long > UNEVEN * perfect.length;
  const gaps = isUneven ? gapsOf(times, lengths, usual, true) : perfect;
  if (regularOf(gaps).length < 2) return undefined;
  const counted = gaps.filter(({ kind }) => kind !== 'double' && kind !== 'pause');
  const steps = counted.reduce((sum, { periods }) => sum + periods, 0);
  const period = counted.reduce((sum, { length }) => sum + length, 0) / steps;
  const { wander, error } = shares(counted, period, timeSpread);
  // Each whole run of gaps errs at its two ends.
  const runs = 1 + gaps.filter(({ kind }) => kind === 'pause').length;
  const periodError = Math.sqrt(wander / steps + (2 * runs * error) / steps ** 2);
  const single = counted.filter(({ periods }) => periods === 1).map(({ length }) => length);
  const doubles = gaps.filter(({ kind }) => kind === 'double').length;
  const lasts = (times.at(-1) as number) - (times[0] as number);
  return {
    beats: times.length - doubles,
    beatFrequency: 1 / period,
    spread: periodError / period ** 2,
    countedFrequency: (times.length - 1 - doubles) / lasts,
    period,
    periodSpread: spreadOf(single),
    isUneven,
    periods: {
      low: quantile(single, 0.1),
      middle: quantile(single, 0.5),
      high: quantile(single, 0.9),
    },
    gaps,
    missed: gaps.reduce((sum, gap) => sum + (gap.kind === 'missed' ? gap.periods - 1 : 0), 0),
    doubles,
  };
}

/** The middle gap, once gaps of several periods and halves are set aside. */
function usualLength(lengths: readonly Second[]): Second {
  const middle = quantile(lengths, 0.5);
  const near = lengths.filter((length) => Math.abs(length / middle - 1) < REGULAR);
  return near.length > 0 ? quantile(near, 0.5) : middle;
}

function regularOf(gaps: readonly Gap[]): readonly Second[] {
  return gaps.filter(({ kind }) => kind === 'regular').map(({ length }) => length);
}

/** Standard deviation over mean. */
function spreadOf(lengths: readonly Second[]): Ratio {
  if (lengths.length < 2) return 0;
  const mean = lengths.reduce((sum, length) => sum + length, 0) / lengths.length;
  const squares = lengths.reduce((sum, length) => sum + (length - mean) ** 2, 0);
  return Math.sqrt(squares / (lengths.length - 1)) / mean;
}

/**
 * A beat too soon and the rest of its period belong together: the first of the two gaps is the double, and the second is
 * measured from the beat before.
 */
function gapsOf(
  times: readonly Second[],
  lengths: readonly Second[],
  usual: Second,
  isUneven: boolean,
): readonly Gap[] {
  const gaps: Gap[] = [];
  let from = times[0] as number;
  for (const [i, step] of lengths.entries()) {
    const next = times[i + 1] as number;
    const length = next - from;
    const after = lengths[i + 1];
    // Too soon after the last beat, and the next one is nearer to where a beat was due.
    const isSoon = step < (1 - REGULAR) * usual && length < (1 - REGULAR) * usual;
    const isNextDue =
      after === undefined || Math.abs(length + after - usual) < Math.abs(length - usual);
    if (isSoon && isNextDue) {
      gaps.push({ from, length, kind: 'double', periods: 0 });
      continue;
    }
    gaps.push({ from, length, ...kindOf(length / usual, isUneven) });
    from = next;
  }
  return gaps;
}

function kindOf(
  length: Ratio,
  isUneven: boolean,
): { readonly kind: GapKind; readonly periods: number } {
  if (length > MOST_PERIODS) return { kind: 'pause', periods: 0 };
  if (Math.abs(length - 1) <= REGULAR) return { kind: 'regular', periods: 1 };
  const periods = Math.round(length);
  // What is left over a long gap is wandering that added up.
  const isWhole = Math.abs(length - periods) <= REGULAR * Math.sqrt(periods);
  if (isUneven || periods < 2 || !isWhole) return { kind: 'long', periods: 1 };
  return { kind: 'missed', periods };
}

/** Variance that wanders, for each period, and variance of each time by itself, from gaps that follow one another. */
function shares(
  gaps: readonly Gap[],
  period: Second,
  timeSpread: Second,
): { readonly wander: number; readonly error: number } {
  const off = gaps.map(({ length, periods }) => length - periods * period);
  const steps = gaps.reduce((sum, gap) => sum + gap.periods, 0);
  const variance = off.reduce((sum, one) => sum + one ** 2, 0) / Math.max(1, steps - 1);
  const pairs = off.slice(1).map((one, i) => one * (off[i] as number));
  const together = pairs.reduce((sum, one) => sum + one, 0) / Math.max(1, pairs.length);
  // Half of the variance at most can be the times' own. A product smaller than chance gives (one standard error, of a row with
  // no tie between neighbours) tells nothing, and all of it is then taken to wander: the wider answer.
  const isTold = pairs.length >= FEWEST_PAIRS && -together > variance / Math.sqrt(pairs.length);
  const found = isTold ? Math.min(variance / 2, -together) : 0;
  return { error: Math.max(found, timeSpread ** 2), wander: variance - 2 * found };
}
