import type { Installation, StoredSource } from '../cycle/installation.ts';
import { delivers, operatingPoint } from '../cycle/operating-point.ts';
import type { CubicMetre, CubicMetrePerSecond, Metre, Second } from '../quantities.ts';

/** Levels at which the ram's draw is found. Judgement: the draw changes smoothly with the fall, and four intervals follow it. */
const LEVELS = 5;
const DAY: Second = 86_400;
/** Mornings that are followed until two are alike. Judgement: a store refills or it does not; some ten settle all tried. */
const MOST_MORNINGS = 100;

/** What becomes of a store while a ram draws on it. */
export interface Emptying {
  /**
   * `intakeUncovers`: the surface comes down to the intake; `ramStops`: the ram stops of itself before, as the fall has become too
   * small; `keepsUp`: at some level the inflow is all that the ram takes, and the surface stays there.
   */
  readonly end: 'intakeUncovers' | 'ramStops' | 'keepsUp';
  /** From the brim to the end; Infinity when the inflow keeps up. */
  readonly time: Second;
  /** How far below the brim the surface stands at the end. */
  readonly drop: Metre;
  /** What reaches the tank from the brim to the end; what a whole day brings when the inflow keeps up. */
  readonly delivered: CubicMetre;
  /**
   * What reaches the tank in a day when the ram is started once each day and the store refills after it has stopped. A store
   * without inflow is taken as filled once a day.
   */
  readonly dailyVolume: CubicMetre;
  /** The same as a mean flow over the day. */
  readonly meanDelivery: CubicMetrePerSecond;
}

/** A slice of the store: what the ram takes and delivers while the surface stands in it. */
interface Slice {
  readonly draw: CubicMetrePerSecond;
  readonly delivery: CubicMetrePerSecond;
}

/**
 * How a store empties from the brim, and what it gives over a day.
 *
 *   t = ∫ A dz / (Q_drive(z) − Q_in)        V = ∫ q dt
 *
 * The beat is taken as settled at every level (a beat is short against the emptying). The day's mean is that of the same day
 * over and over: start, run until it stops, refill for the rest of the day, but not over the brim.
 * Source: water balance of the store (METHOD §3); the steps are Judgement.
 */
export function emptying(installation: Installation, source: StoredSource): Emptying {
  const { inflow, surfaceArea } = source;
  const slice = source.depthOverIntake / LEVELS;
  const slices: Slice[] = [];
  for (let k = 0; k < LEVELS; k++) {
    const lower = atFall(installation, installation.fall - (k + 0.5) * slice);
    const point = lower.fall > 0 ? operatingPoint(lower) : undefined;
    if (point === undefined || !delivers(point)) break;
    slices.push({ draw: point.supplyFlow, delivery: point.deliveryFlow });
    // Below the level at which the inflow keeps up the surface never comes.
    if (point.supplyFlow <= inflow) break;
  }
  const runFrom = (start: Metre, longest: Second) => {
    let [time, drop, delivered] = [0, start, 0];
    for (const [k, { draw, delivery }] of slices.entries()) {
      const left = (k + 1) * slice - drop;
      if (left <= 0) continue;
      const toSliceEnd = draw > inflow ? (surfaceArea * left) / (draw - inflow) : Infinity;
      const here = Math.min(toSliceEnd, longest - time);
      if (Number.isFinite(here)) delivered += here * delivery;
      time += here;
      if (draw > inflow) drop += (here * (draw - inflow)) / surfaceArea;
      if (here < toSliceEnd || toSliceEnd === Infinity) break;
    }
    return { time, drop, delivered };
  };

  const whole = runFrom(0, Infinity);
  const end = !Number.isFinite(whole.time)
    ? 'keepsUp'
    : slices.length === LEVELS
      ? 'intakeUncovers'
      : 'ramStops';
  let start = 0;
  let run = runFrom(start, DAY);
  for (let morning = 0; morning < MOST_MORNINGS && inflow > 0; morning++) {
    const refilled = (inflow * (DAY - run.time)) / surfaceArea;
    const next = Math.max(0, run.drop - refilled);
    if (Math.abs(next - start) < 1e-9) break;
    start = next;
    run = runFrom(start, DAY);
  }
  return {
    end,
    time: whole.time,
    drop: whole.drop,
    delivered: end === 'keepsUp' ? run.delivered : whole.delivered,
    dailyVolume: run.delivered,
    meanDelivery: run.delivered / DAY,
  };
}

/**
 * How long a ram runs from a full store until the intake comes out of the water; Infinity when the inflow keeps up; the time to
 * the level at which the ram stops of itself when it stops before. See `emptying`.
 */
export function drainTime(installation: Installation, source: StoredSource): Second {
  return emptying(installation, source).time;
}

/** The installation as if its source stood still at a level. */
export function atFall(installation: Installation, fall: Metre): Installation {
  return { ...installation, fall, source: { kind: 'steady' } };
}
