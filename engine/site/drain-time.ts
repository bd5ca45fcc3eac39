import type { Installation, StoredSource } from '../cycle/installation.ts';
import { delivers, operatingPoint } from '../cycle/operating-point.ts';
import type { CubicMetre, CubicMetrePerSecond, Metre, Second } from '../quantities.ts';

/** Levels at which the ram's draw is found. Judgement: the draw changes smoothly with the fall, and four intervals follow it. */
const LEVELS = 5;
const DAY: Second = 86_400;
/** Mornings that are followed until two are alike. Judgement: a store refills or it does not; some ten settle all tried. */
const MOST_MORNINGS = 100;

/** Where the surface stands at a time: what a drawing of the level needs. Between two of these it sinks or rises evenly. */
export interface SurfaceAt {
  readonly time: Second;
  /** How far below the brim. */
  readonly drop: Metre;
}

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
  /** The surface from the brim to the end, or to the level at which the inflow keeps up. */
  readonly fromFull: readonly SurfaceAt[];
  /** The surface over such a day, from the start of the ram: down while it runs, and up again while the store refills. */
  readonly overADay: readonly SurfaceAt[];
}

export interface EmptyingOptions {
  /** Levels at which the draw is found. */
  readonly levels?: number;
  /** Beats in each block behind the draw of one level; the usual ones when left out. */
  readonly block?: number;
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
export function emptying(
  installation: Installation,
  source: StoredSource,
  { levels = LEVELS, block }: EmptyingOptions = {},
): Emptying {
  const { inflow, surfaceArea } = source;
  const slice = source.depthOverIntake / levels;
  const slices: Slice[] = [];
  for (let k = 0; k < levels; k++) {
    const lower = atFall(installation, installation.fall - (k + 0.5) * slice);
    const point =
      lower.fall > 0 ? operatingPoint(lower, block === undefined ? {} : { block }) : undefined;
    if (point === undefined || !delivers(point)) break;
    slices.push({ draw: point.supplyFlow, delivery: point.deliveryFlow });
    // Below the level at which the inflow keeps up the surface never comes.
    if (point.supplyFlow <= inflow) break;
  }
  const runFrom = (start: Metre, longest: Second) => {
    let [time, drop, delivered] = [0, start, 0];
    const course: SurfaceAt[] = [{ time, drop }];
    for (const [k, { draw, delivery }] of slices.entries()) {
      const left = (k + 1) * slice - drop;
      if (left <= 0) continue;
      const toSliceEnd = draw > inflow ? (surfaceArea * left) / (draw - inflow) : Infinity;
      const here = Math.min(toSliceEnd, longest - time);
      if (Number.isFinite(here)) delivered += here * delivery;
      time += here;
      if (draw > inflow) drop += (here * (draw - inflow)) / surfaceArea;
      if (Number.isFinite(here)) course.push({ time, drop });
      if (here < toSliceEnd || toSliceEnd === Infinity) break;
    }
    return { time, drop, delivered, course };
  };

  const whole = runFrom(0, Infinity);
  const end = !Number.isFinite(whole.time)
    ? 'keepsUp'
    : slices.length === levels
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
    fromFull: whole.course,
    overADay: [...run.course, ...refilling(run, source)],
  };
}

/** How the surface comes up again after the ram has stopped, to the end of the day; it stays low where nothing runs in. */
function refilling(
  { time, drop }: SurfaceAt,
  { inflow, surfaceArea }: StoredSource,
): readonly SurfaceAt[] {
  if (!(time < DAY)) return [];
  const toBrim = inflow > 0 ? (drop * surfaceArea) / inflow : Infinity;
  if (time + toBrim < DAY) {
    return [
      { time: time + toBrim, drop: 0 },
      { time: DAY, drop: 0 },
    ];
  }
  return [{ time: DAY, drop: drop - (inflow * (DAY - time)) / surfaceArea }];
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
