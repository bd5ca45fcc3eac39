/** Where a strength rises to a peak: the places at which a beat may stand. */
import { quantile } from '../../numerics/quantile.ts';
import type { Ratio, Second } from '../../quantities.ts';

/** How strongly something begins, at even steps of time. */
export interface OnsetStrength {
  readonly start: Second;
  readonly step: Second;
  readonly values: Float64Array;
}

export interface Onset {
  readonly time: Second;
  /** Standard deviations over what lies between beats. */
  readonly height: Ratio;
}

/** Judgement: two sounds nearer than this are one; at 300 beats a minute a period is 200 ms. */
const APART: Second = 0.04;
/** Below this a peak is looked at no more. */
const LEAST_HEIGHT: Ratio = 2.5;
/** Onsets with nothing at all between them stand this high. */
const HIGHEST: Ratio = 50;
/** The background is taken over stretches as long as this, so that a change of the water is followed. */
const STRETCH: Second = 12;
/** Turns a median absolute deviation into a standard deviation. Source: of a normal distribution, 1/0.6745. */
const MAD_TO_DEVIATION = 1.4826;

/** Peaks of a strength, each against the background of its stretch. */
export function onsetsIn({ start, step, values }: OnsetStrength): readonly Onset[] {
  const count = values.length;
  const half = Math.max(1, Math.round(APART / step));
  const stretch = Math.max(8 * half, Math.round(STRETCH / step));
  const onsets: Onset[] = [];
  for (let from = 0; from < count; ) {
    // A short rest goes with the stretch before it.
    const to = count - from < 1.5 * stretch ? count : from + stretch;
    const { middle, deviation } = background(values.subarray(from, to));
    if (deviation > 0) {
      for (let i = Math.max(from, 1); i < Math.min(to, count - 1); i++) {
        const value = values[i] as number;
        const height = (value - middle) / deviation;
        if (height < LEAST_HEIGHT || !isHighest(values, i, half)) continue;
        onsets.push({ time: start + step * (i + vertex(values, i)), height });
      }
    }
    from = to;
  }
  return onsets;
}

function background(values: Float64Array): { readonly middle: number; readonly deviation: number } {
  const list = [...values];
  const middle = quantile(list, 0.5);
  const spread =
    MAD_TO_DEVIATION *
    quantile(
      list.map((value) => Math.abs(value - middle)),
      0.5,
    );
  if (spread > 0) return { middle, deviation: spread };
  // More than half of it is quite even: what little moves is then the measure, unless only beats move.
  const moves = list.map((value) => Math.abs(value - middle)).filter((value) => value > 0);
  if (moves.length === 0) return { middle, deviation: 0 };
  return { middle, deviation: Math.min(quantile(moves, 0.5) / 3, quantile(moves, 1) / HIGHEST) };
}

function isHighest(values: Float64Array, at: number, half: number): boolean {
  const value = values[at] as number;
  const to = Math.min(values.length - 1, at + half);
  for (let i = Math.max(0, at - half); i <= to; i++) {
    const other = values[i] as number;
    if (other > value || (other === value && i < at)) return false;
  }
  return true;
}

/** Where between its neighbours a peak stands, by a parabola, in steps. */
function vertex(values: Float64Array, at: number): number {
  const [before, here, after] = [
    values[at - 1] as number,
    values[at] as number,
    values[at + 1] as number,
  ];
  const bend = before - 2 * here + after;
  return bend < 0 ? Math.max(-0.5, Math.min(0.5, (before - after) / (2 * bend))) : 0;
}
