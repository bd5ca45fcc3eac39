import type { CubicMetrePerSecond, Ratio } from '../../quantities.ts';

export interface Supply {
  /** What a ram may be fed with; absent when nothing limits it. */
  readonly flow?: CubicMetrePerSecond;
  /** Which figure of the source counts. */
  readonly from: 'flow' | 'drySeason' | 'nothing';
  /** The share that may be taken, one when nobody limits it. */
  readonly share: Ratio;
}

/**
 * What of a source a ram may be fed with.
 *
 *   Q = s · min(Q_measured, Q_dry)
 *
 * The dry-season figure counts when it is the lower one. The share is what the owner or the local authority allows to be taken.
 * Source: common practice, no source.
 * @throws RangeError when the share is not above zero or is above one.
 */
export function supplyFrom({
  flow,
  drySeason,
  share = 1,
}: {
  readonly flow?: CubicMetrePerSecond | undefined;
  readonly drySeason?: CubicMetrePerSecond | undefined;
  readonly share?: Ratio | undefined;
}): Supply {
  if (!(share > 0 && share <= 1)) throw new RangeError(`share must be above 0 to 1, got ${share}`);
  if (drySeason !== undefined && (flow === undefined || drySeason < flow)) {
    return { flow: share * drySeason, from: 'drySeason', share };
  }
  return flow === undefined
    ? { from: 'nothing', share }
    : { flow: share * flow, from: 'flow', share };
}
