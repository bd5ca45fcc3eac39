import { type Reading, relativeSpread, repeated, together } from '../../numerics/repeated.ts';
import { STOPWATCH_SPREAD } from './bucket-flow.ts';
import { doubtsAbout, type Gauged, mustBeAboveZero } from './gauged.ts';

/** Judgement: two readings of a rule at a water surface, 1 mm each and a little more. */
const DROP_SPREAD = 1.5e-3;
/** Judgement: sides taped to a few per cent, walls seldom plumb. */
const AREA_SPREAD = 0.03;

/**
 * Flow that draws a stored volume down, or fills it, from how far its surface moves in a time.
 *
 *   Q = A Δz/t̄
 *
 * Holds when the sides are plumb over the drop and nothing else runs in or out. A store that fills with its outlet shut gives
 * the inflow in the same way.
 * Source: water balance of the store (common practice). Spreads: Judgement, above.
 * @throws RangeError when area, drop or a time is not above zero.
 */
export function dropFlow({
  area,
  drop,
  times,
}: {
  readonly area: Reading;
  readonly drop: Reading;
  readonly times: readonly Reading[];
}): Gauged {
  const shortest = Math.min(...times.map(({ value }) => value));
  mustBeAboveZero({ area: area.value, drop: drop.value, time: shortest });
  const time = repeated(times, STOPWATCH_SPREAD);
  const flow = (area.value * drop.value) / time.mean;
  const share = together(
    relativeSpread(area, AREA_SPREAD),
    (drop.spread ?? DROP_SPREAD) / drop.value,
    time.spread / time.mean,
  );
  return {
    flow,
    spread: flow * share,
    readings: time,
    outside: [],
    doubts: doubtsAbout(time, 1),
  };
}
