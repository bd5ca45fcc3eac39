/**
 * The onsets that are the beats of one ram: the row that is both clear and in step.
 *
 * Best row by dynamic programming: each onset gains by its height, each step loses by how far it is from a whole number of
 * periods. A row may skip a beat, and may start anew out of step, at a price.
 *
 * Source: Ellis (2007), J. New Music Research 36, 51–60, for the method (memory). The prices are Judgement, by the made
 * recordings of hear-beats.test.ts.
 */
import { quantile } from '../../numerics/quantile.ts';
import type { Ratio, Second } from '../../quantities.ts';
import type { Onset } from './onsets.ts';
import type { Beat } from './rhythm.ts';

/** How far a step may be off, as a share of the period, before it costs much. */
const STEP_WANDER: Ratio = 0.18;
const MISSED_PRICE = 0.35;
const RESTART_PRICE = 1.2;
/** An onset below this share of a usual beat costs more than it gains, unless it keeps the step. */
const WORTH_TAKING: Ratio = 0.4;
const MOST_PERIODS = 6;
const SHORTEST_STEP: Ratio = 0.5;
/** A row of some three beats. */
const WORTH_A_ROW = 1.5;

export interface RowOfBeats {
  readonly beats: readonly Beat[];
  /** Clear onsets that stand between the beats: doubles, recoils, other noises. */
  readonly others: readonly Beat[];
  /** Middle height of the beats. */
  readonly height: Ratio;
}

export function rowOfBeats(onsets: readonly Onset[], period: Second): RowOfBeats {
  if (onsets.length === 0) return { beats: [], others: [], height: 0 };
  const usual = usualHeight(onsets, period);
  const count = onsets.length;
  const best = new Float64Array(count);
  const before = new Int32Array(count).fill(-1);
  for (let j = 0; j < count; j++) {
    const { time, height } = onsets[j] as Onset;
    let [most, from] = [0, -1];
    for (let i = j - 1; i >= 0; i--) {
      const gap = (time - (onsets[i] as Onset).time) / period;
      if (gap > MOST_PERIODS + 0.5) break;
      if (gap < SHORTEST_STEP) continue;
      const value = (best[i] as number) - stepPrice(gap);
      if (value > most) [most, from] = [value, i];
    }
    best[j] = most + Math.min(1.3, height / usual) - WORTH_TAKING;
    before[j] = from;
  }
  const chosen = trace(best, before, onsets, period);
  const isBeat = new Set(chosen);
  const heights = chosen.map((i) => (onsets[i] as Onset).height);
  const middle = heights.length > 0 ? quantile(heights, 0.5) : 0;
  return {
    beats: chosen.map((index, place) =>
      marked(onsets[index] as Onset, middle, offStep(chosen, place, onsets, period)),
    ),
    others: onsets
      .filter(({ height }, i) => !isBeat.has(i) && height > 0.5 * middle)
      .map((onset) => marked(onset, middle, 0)),
    height: middle,
  };
}

/** Middle height of as many onsets as there would be beats. */
function usualHeight(onsets: readonly Onset[], period: Second): number {
  const lasts = (onsets.at(-1)?.time ?? 0) - (onsets[0]?.time ?? 0);
  const wanted = Math.max(4, Math.round(lasts / period));
  const highest = onsets
    .map(({ height }) => height)
    .sort((a, b) => b - a)
    .slice(0, wanted);
  return quantile(highest, 0.5);
}

function stepPrice(gap: Ratio): number {
  const periods = Math.max(1, Math.round(gap));
  const off = Math.log(gap / periods) / (STEP_WANDER / Math.sqrt(periods));
  return Math.min(RESTART_PRICE, 0.25 * off ** 2) + MISSED_PRICE * (periods - 1);
}

/** The rows that are worth most, best first; one that runs into another in time is left. */
function trace(
  best: Float64Array,
  before: Int32Array,
  onsets: readonly Onset[],
  period: Second,
): readonly number[] {
  const ends = Array.from(best, (_, j) => j).sort(
    (a, b) => (best[b] as number) - (best[a] as number),
  );
  const spans: { readonly first: Second; readonly last: Second }[] = [];
  const chosen: number[] = [];
  for (const end of ends) {
    if ((best[end] as number) < WORTH_A_ROW) break;
    const last = (onsets[end] as Onset).time;
    const isTaken = (time: Second): boolean =>
      spans.some(
        (span) =>
          time > span.first - SHORTEST_STEP * period && time < span.last + SHORTEST_STEP * period,
      );
    if (isTaken(last)) continue;
    const row: number[] = [];
    for (let j = end; j >= 0; j = before[j] as number) row.push(j);
    const first = (onsets[row.at(-1) as number] as Onset).time;
    // A row that grew out of a taken one is only its tail of chance onsets.
    if (isTaken(first) || spans.some((span) => first < span.first && last > span.last)) continue;
    spans.push({ first, last });
    chosen.push(...row);
  }
  return chosen.sort((a, b) => a - b);
}

/** How far a beat is out of step with its nearer neighbours, in periods. */
function offStep(
  chosen: readonly number[],
  place: number,
  onsets: readonly Onset[],
  period: Second,
): Ratio {
  const time = (onsets[chosen[place] as number] as Onset).time;
  const steps = [chosen[place - 1], chosen[place + 1]].flatMap((other) =>
    other === undefined ? [] : [Math.abs((onsets[other] as Onset).time - time) / period],
  );
  if (steps.length === 0) return 0.5;
  return Math.min(...steps.map((gap) => Math.abs(gap - Math.max(1, Math.round(gap)))));
}

/** Confidence falls with the height under that of a usual beat, and with the time out of step. */
function marked({ time, height }: Onset, usual: Ratio, off: Ratio): Beat {
  const byHeight = usual > 0 ? Math.min(1, height / usual) : 0;
  const byStep = Math.exp(-0.5 * (off / STEP_WANDER) ** 2);
  return { time, confidence: Math.max(0.05, Math.min(1, byHeight * (0.3 + 0.7 * byStep))) };
}
