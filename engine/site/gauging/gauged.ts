/** A flow that was measured, and what speaks against it. */

import type { Repeated } from '../../numerics/repeated.ts';
import type { CubicMetrePerSecond, Ratio } from '../../quantities.ts';

/** A condition under which a formula was tested. Each compares what there is with the bound. */
export type ConditionKind =
  /** Head over the crest or the point of the notch, m. */
  | 'headTooSmall'
  | 'headTooLarge'
  /** Head as a share of the crest's height over the bed. */
  | 'headOverCrest'
  /** Head as a share of the width of the channel. */
  | 'headOverChannel'
  /** Height of the crest or the point of the notch over the bed, m. */
  | 'crestTooNearBed'
  /** Width of the channel before the weir, m. */
  | 'channelTooNarrow'
  /** Width of the crest, m. */
  | 'crestTooNarrow'
  /** From the end of the crest to the side of the channel, m. */
  | 'sideTooNear'
  /** Angle of the notch, rad. */
  | 'angleTooSmall'
  | 'angleTooLarge'
  /** How far the water below the weir stands under its crest, m. */
  | 'drowned'
  /** Crest height or channel width were not given, so contraction could not be checked; nought against one. */
  | 'approachUnknown'
  /** Time that a float takes, s. */
  | 'floatTooQuick'
  /** Number of readings. */
  | 'oneReading'
  /** Largest less smallest reading, as a share of the flow. */
  | 'readingsDiffer';

export interface Condition {
  readonly kind: ConditionKind;
  readonly has: number;
  /** The least or the most that is allowed, in the same unit. */
  readonly bound: number;
}

export interface Gauged {
  readonly flow: CubicMetrePerSecond;
  /** Standard uncertainty: two times in three the true flow lies this near. */
  readonly spread: CubicMetrePerSecond;
  /** The readings that were repeated: times, or heads. */
  readonly readings: Repeated;
  /** Conditions of the formula that are broken: the flow is computed all the same, and is less sure than its spread. */
  readonly outside: readonly Condition[];
  /** What is wrong with the readings themselves: too few, or too far apart. */
  readonly doubts: readonly Condition[];
}

/** Readings that stand by themselves say nothing of how the flow or the hand varies. Common practice, no source: three. */
export const WANTED_READINGS = 3;
/** Judgement: readings of one flow that lie further apart than this are of two flows, or one of them is a slip. */
export const WIDEST_READINGS: Ratio = 0.2;

/** Doubts about repeat readings. The flow goes with this power of the reading: 2.5 for the head on a V-notch. */
export function doubtsAbout(readings: Repeated, power: Ratio): readonly Condition[] {
  if (readings.count === 1) return [{ kind: 'oneReading', has: 1, bound: WANTED_READINGS }];
  const apart = (power * readings.range) / readings.mean;
  return apart > WIDEST_READINGS
    ? [{ kind: 'readingsDiffer', has: apart, bound: WIDEST_READINGS }]
    : [];
}

/** The conditions that do not hold, from pairs of what there is and what is asked. */
export function broken(
  conditions: readonly (Condition & { readonly asks: 'least' | 'most' })[],
): readonly Condition[] {
  return conditions
    .filter(({ has, bound, asks }) => (asks === 'least' ? has < bound : has > bound))
    .map(({ kind, has, bound }) => ({ kind, has, bound }));
}

/** @throws RangeError when a measure is not above nought. */
export function mustBeAboveZero(measures: Readonly<Record<string, number | undefined>>): void {
  for (const [name, value] of Object.entries(measures)) {
    if (value !== undefined && !(value > 0)) {
      throw new RangeError(`${name} must be above zero, got ${value}`);
    }
  }
}
