import { type Reading, relativeSpread, repeated, together } from '../../numerics/repeated.ts';
import { doubtsAbout, type Gauged, mustBeAboveZero } from './gauged.ts';

/** Judgement: a thumb on a stopwatch at the start and the end of a filling. */
export const STOPWATCH_SPREAD = 0.3;
/** Judgement: the mark on a bucket, and the water that is still coming when the watch stops. */
const CONTAINER_SPREAD = 0.02;

/**
 * Flow from the time in which a container fills.
 *
 *   Q = V/t̄
 *
 * Holds when all the water goes into the container. The surest way for small flows, when the filling takes long against the
 * hand on the watch.
 * Source: FAO (1981), Simple methods for aquaculture: Water, ch. 3, which rates it the most accurate for very
 * small flows. Spreads: Judgement, above.
 * @throws RangeError when volume or a time is not above zero.
 */
export function bucketFlow({
  volume,
  times,
}: {
  readonly volume: Reading;
  readonly times: readonly Reading[];
}): Gauged {
  mustBeAboveZero({ volume: volume.value, time: Math.min(...times.map(({ value }) => value)) });
  const time = repeated(times, STOPWATCH_SPREAD);
  const flow = volume.value / time.mean;
  const share = together(relativeSpread(volume, CONTAINER_SPREAD), time.spread / time.mean);
  return {
    flow,
    spread: flow * share,
    readings: time,
    outside: [],
    doubts: doubtsAbout(time, 1),
  };
}
