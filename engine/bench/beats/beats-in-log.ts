/**
 * Beats in a pressure log: times and heads, the times at any steps.
 *
 * The valve shuts and the head leaps. A beat begins where the head rises above all that it was just before; the ringing
 * that follows rises less each time and so begins none. Heads count up to a level that the log itself reaches often, so that
 * one high spike is not worth more than the others.
 */
import { quantile } from '../../numerics/quantile.ts';
import type { Metre, Second } from '../../quantities.ts';
import type { BeatsHeard } from './hear-beats.ts';
import { type Onset, type OnsetStrength, onsetsIn } from './onsets.ts';
import { type Beat, FEWEST_BEATS, rhythmOf } from './rhythm.ts';
import { type RowOfBeats, rowOfBeats } from './row-of-beats.ts';
import { LONGEST_PERIOD, standsOut, usualPeriod } from './usual-period.ts';

export interface PressureLog {
  /** Rising; two readings may bear the same time. */
  readonly times: readonly Second[];
  readonly heads: readonly Metre[];
}

/** What a log shows of a ram besides its rhythm. */
export interface LogSummary {
  readonly readings: number;
  readonly lasts: Second;
  readonly highest: Metre;
  readonly lowest: Metre;
  /** Middle of the highest heads of the beats; absent when no beats were found. */
  readonly middlePeak?: Metre;
  /** The mean head, weighed by time. */
  readonly mean: Metre;
  /** Usual and longest time from one reading to the next. */
  readonly step: Second;
  readonly longestStep: Second;
}

/** Judgement: ringing is over, or has come lower, within this. */
const LOOK_BACK: Second = 0.07;
/** Heads count up to the level that this share of the readings stays under. */
const COUNTS_TO = 0.96;
/** Judgement: steps finer than this show nothing more of a beat. */
const FINEST: Second = 0.002;
/** A log that scatters less than this share of its mean, and less than a centimetre, is a straight line. */
const FLAT: Metre = 0.01;
/** Judgement: an hour at 2 ms. */
export const MOST_READINGS = 2_000_000;
/** Judgement: leaps as high as this over the rest, in its standard deviations, are hammer and nothing else. */
const CLEAR = 20;
/** Judgement: a leap of this share of a usual one is a beat; one between the two may be either. */
const LEAST_LEAP = 0.45;
const DOUBTFUL_LEAP = 0.25;
/** Judgement: with more doubtful ones than this the step must decide. */
const MOST_DOUBTFUL = 0.2;
/** Judgement: with fewer readings to a period than this, its beats cannot be told. */
const READINGS_TO_A_PERIOD = 4;

/**
 * @throws RangeError when there are not as many heads as times, one is not finite, times fall, or there are too many.
 */
export function beatsInLog({ times, heads }: PressureLog): BeatsHeard {
  check(times, heads);
  const first = times[0];
  const last = times.at(-1);
  if (first === undefined || last === undefined || times.length < 16) {
    return { kind: 'none', why: 'tooShort' };
  }
  const some = everyNth(heads, 20_000);
  if (quantile(some, 0.99) - quantile(some, 0.01) < FLAT) return { kind: 'none', why: 'silent' };
  const step = stepOf(times);
  if (!(last - first > 8 * step)) return { kind: 'none', why: 'tooShort' };
  const strength = leaps({ times, heads }, step);
  const onsets = onsetsIn(strength);
  const lasts = last - first;
  const usual = usualPeriod(onsets, lasts);
  if (!usual || !standsOut(onsets, lasts, usual) || usual.period < READINGS_TO_A_PERIOD * step) {
    return { kind: 'none', why: 'noBeat' };
  }
  // Even between two readings. Source: a rectangular distribution, JCGM 100:2008, 4.3.7 (memory).
  const timeSpread = step / Math.sqrt(12);
  const inStep = rowOfBeats(onsets, usual.period);
  const clear = everyClearLeap(onsets);
  // An even ram shows its weak beats by their step, an uneven one only by their height.
  const row = clear && rhythmOf(timesOf(clear), { timeSpread })?.isUneven ? clear : inStep;
  const rhythm = rhythmOf(timesOf(row), { timeSpread });
  if (!rhythm) return { kind: 'none', why: 'noBeat' };
  // Readings fall on a spike as they will, so heights vary more than beats do: half a usual leap is as sure as a whole one.
  const beats = row.beats.map(({ time, confidence }) => ({
    time,
    confidence: row.height > CLEAR ? Math.min(1, 2 * confidence) : confidence,
  }));
  return { kind: 'heard', beats, others: row.others, rhythm, clearness: row.height };
}

function timesOf({ beats }: RowOfBeats): readonly Second[] {
  return beats.map(({ time }) => time);
}

/**
 * Where the leaps stand far above all else, each is a beat, in step or not: an uneven ram is counted as it beats. Nothing when
 * they do not.
 */
function everyClearLeap(onsets: readonly Onset[]): RowOfBeats | undefined {
  const strong = onsets.filter(({ height }) => height > CLEAR);
  if (strong.length < FEWEST_BEATS) return undefined;
  const usual = quantile(
    strong.map(({ height }) => height),
    0.75,
  );
  const isBeat = ({ height }: Onset): boolean => height > LEAST_LEAP * usual;
  const doubtful = onsets.filter(
    ({ height }) => height > DOUBTFUL_LEAP * usual && height < LEAST_LEAP * usual,
  );
  if (doubtful.length > MOST_DOUBTFUL * strong.length) return undefined;
  const marked = ({ time, height }: Onset): Beat => ({
    time,
    confidence: Math.min(1, height / usual),
  });
  return {
    beats: onsets.filter(isBeat).map(marked),
    others: doubtful.map(marked),
    height: usual,
  };
}

export function logSummary({ times, heads }: PressureLog, beats: readonly Second[]): LogSummary {
  check(times, heads);
  let [highest, lowest, area, longestStep] = [-Infinity, Infinity, 0, 0];
  for (let i = 0; i < heads.length; i++) {
    const head = heads[i] as number;
    highest = Math.max(highest, head);
    lowest = Math.min(lowest, head);
    if (i === 0) continue;
    const gap = (times[i] as number) - (times[i - 1] as number);
    longestStep = Math.max(longestStep, gap);
    area += (gap * (head + (heads[i - 1] as number))) / 2;
  }
  const lasts = (times.at(-1) ?? 0) - (times[0] ?? 0);
  const peaks = peaksBetween({ times, heads }, beats);
  return {
    readings: times.length,
    lasts,
    highest,
    lowest,
    ...(peaks.length > 0 && { middlePeak: quantile(peaks, 0.5) }),
    mean: lasts > 0 ? area / lasts : (heads[0] ?? Number.NaN),
    step: times.length > 1 ? stepOf(times) : 0,
    longestStep,
  };
}

/** Highest head from each beat to the next. An onset is marked a step or two late, so each stretch begins a little before. */
function peaksBetween({ times, heads }: PressureLog, beats: readonly Second[]): readonly Metre[] {
  const peaks: Metre[] = [];
  let i = 0;
  for (let k = 0; k + 1 < beats.length; k++) {
    const from = (beats[k] as number) - LOOK_BACK / 2;
    const to = (beats[k + 1] as number) - LOOK_BACK / 2;
    while (i < times.length && (times[i] as number) < from) i++;
    let peak = -Infinity;
    for (; i < times.length && (times[i] as number) < to; i++)
      peak = Math.max(peak, heads[i] as number);
    if (peak > -Infinity) peaks.push(peak);
  }
  return peaks;
}

/** How far each head is above all heads just before it. */
function leaps({ times, heads }: PressureLog, usualStep: Second): OnsetStrength {
  const start = times[0] as number;
  const last = times.at(-1) as number;
  const step = Math.max(FINEST, usualStep);
  const count = Math.floor((last - start) / step) + 1;
  const even = onEvenSteps({ times, heads }, { start, step, count });
  const back = Math.max(1, Math.round(LOOK_BACK / step));
  const before = highestBefore(even, back);
  const some = everyNth(heads, 20_000);
  // Spikes of a slow ram fill less of the log than that share: then a quarter of its higher leaps.
  const whole = Float64Array.from(even, (head, i) => Math.max(0, head - (before[i] as number)));
  const beats = Math.max(1, Math.round((0.7 * (last - start)) / LONGEST_PERIOD));
  const high = whole.slice().sort()[Math.max(0, count - beats)] as number;
  const top = Math.max(quantile(some, COUNTS_TO), quantile(some, 0.5) + high / 4);
  const values = Float64Array.from(even, (head, i) =>
    Math.max(0, Math.min(top, head) - Math.min(top, before[i] as number)),
  );
  return { start, step, values };
}

/** The highest of some values before each; nothing stands before the first, so it is no leap. */
function highestBefore(values: Float64Array, back: number): Float64Array {
  const highest = new Float64Array(values.length);
  highest[0] = values[0] as number;
  for (let i = 1; i < values.length; i++) {
    let most = -Infinity;
    for (let k = Math.max(0, i - back); k < i; k++) most = Math.max(most, values[k] as number);
    highest[i] = most;
  }
  return highest;
}

/** The highest reading of each even step, so that no spike is lost; straight lines where there is none. */
function onEvenSteps(
  { times, heads }: PressureLog,
  { start, step, count }: { readonly start: Second; readonly step: Second; readonly count: number },
): Float64Array {
  const even = new Float64Array(count).fill(Number.NaN);
  for (const [i, time] of times.entries()) {
    const cell = Math.min(count - 1, Math.round((time - start) / step));
    const head = heads[i] as number;
    if (!((even[cell] as number) >= head)) even[cell] = head;
  }
  let last = 0;
  for (let i = 1; i < count; i++) {
    if (Number.isNaN(even[i] as number)) continue;
    for (let k = last + 1; k < i; k++) {
      const share = (k - last) / (i - last);
      even[k] = (even[last] as number) * (1 - share) + (even[i] as number) * share;
    }
    last = i;
  }
  return even.fill(even[last] as number, last + 1);
}

/** The middle step between readings that have times of their own. */
function stepOf(times: readonly Second[]): Second {
  const steps: number[] = [];
  const stride = Math.max(1, Math.floor(times.length / 20_000));
  for (let i = stride; i < times.length; i += stride) {
    const gap = (times[i] as number) - (times[i - 1] as number);
    if (gap > 0) steps.push(gap);
  }
  return steps.length > 0 ? quantile(steps, 0.5) : 0;
}

function everyNth(values: readonly number[], most: number): readonly number[] {
  const stride = Math.max(1, Math.ceil(values.length / most));
  return stride === 1 ? values : values.filter((_, i) => i % stride === 0);
}

function check(times: readonly Second[], heads: readonly Metre[]): void {
  if (times.length !== heads.length) {
    throw new RangeError(`heads must be as many as times, got ${heads.length} and ${times.length}`);
  }
  if (times.length > MOST_READINGS) {
    throw new RangeError(`a log must have at most ${MOST_READINGS} readings, got ${times.length}`);
  }
  for (let i = 0; i < times.length; i++) {
    if (!(Number.isFinite(times[i]) && Number.isFinite(heads[i]))) {
      throw new RangeError(
        `times and heads must be finite, got ${times[i]} s and ${heads[i]} m at ${i}`,
      );
    }
    if (i > 0 && (times[i] as number) < (times[i - 1] as number)) {
      throw new RangeError(`times must not fall, got ${times[i - 1]} s and then ${times[i]} s`);
    }
  }
}
