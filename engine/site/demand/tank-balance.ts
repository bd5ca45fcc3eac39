/**
 * The balance of the tank: what the ram brings, what is drawn, what runs over, what is missing.
 *
 *   in = drawn + over + Δstored,   wanted = drawn + missing
 *
 * Flows are constant within a step, so the tank only rises or only falls in it, and the step is exact whatever its length.
 */
import type { CubicMetre, CubicMetrePerSecond, Second } from '../../quantities.ts';
import { DRAW_STEPS, HOUR } from './draw-pattern.ts';
import { type ByMonth, eachMonth, inMonth, MONTH_LENGTHS } from './months.ts';

/** Volumes that passed in some time, and what the tank holds at its end. */
export interface TankFlows {
  readonly delivered: CubicMetre;
  readonly wanted: CubicMetre;
  readonly drawn: CubicMetre;
  /** Ran over the brim. */
  readonly overflow: CubicMetre;
  /** Wanted and not there. */
  readonly shortfall: CubicMetre;
  readonly stored: CubicMetre;
}

/** One step with constant flows. */
export function tankStep(
  { volume, stored }: { readonly volume: CubicMetre; readonly stored: CubicMetre },
  flows: { readonly delivery: CubicMetrePerSecond; readonly draw: CubicMetrePerSecond },
  time: Second,
): TankFlows {
  const delivered = flows.delivery * time;
  const wanted = flows.draw * time;
  const unbounded = stored + delivered - wanted;
  const overflow = Math.max(0, unbounded - volume);
  const shortfall = Math.max(0, -unbounded);
  return {
    delivered,
    wanted,
    drawn: wanted - shortfall,
    overflow,
    shortfall,
    stored: Math.min(volume, Math.max(0, unbounded)),
  };
}

export interface DayBalance {
  /** One for each hour, from midnight. */
  readonly steps: readonly TankFlows[];
  /** Stored at midnight, before the first hour. */
  readonly start: CubicMetre;
  readonly total: TankFlows;
}

export interface DaySetup {
  readonly volume: CubicMetre;
  readonly delivery: CubicMetrePerSecond;
  /** Flow wanted in each of the 24 hours. */
  readonly draw: readonly CubicMetrePerSecond[];
  /** Stored at midnight; when left out, what a long row of such days comes to. */
  readonly start?: CubicMetre;
}

/**
 * One day, hour by hour, with the ram delivering all the time.
 * @throws RangeError when the volume is below nought, or the draw is not that of 24 hours.
 */
export function dayBalance({ volume, delivery, draw, start }: DaySetup): DayBalance {
  checkVolume(volume);
  if (draw.length !== DRAW_STEPS) throw new RangeError(`draw must be 24, got ${draw.length}`);
  const followed = (from: CubicMetre): TankFlows[] => {
    let stored = from;
    return draw.map((wanted) => {
      const step = tankStep({ volume, stored }, { delivery, draw: wanted }, HOUR);
      stored = step.stored;
      return step;
    });
  };
  const begins = start ?? returningStart(volume, followed);
  const steps = followed(begins);
  return { steps, start: begins, total: sumOf(steps, begins) };
}

export interface MonthBalance extends TankFlows {
  readonly dayCount: number;
  /** How many of its days were without a shortfall. */
  readonly metCount: number;
  /** The least that the tank held at the end of any hour. */
  readonly lowest: CubicMetre;
}

export interface YearBalance {
  readonly months: ByMonth<MonthBalance>;
  /** Stored as the year begins. */
  readonly start: CubicMetre;
  readonly total: TankFlows;
  /** How many days of the year were without a shortfall. */
  readonly metCount: number;
}

export interface YearSetup {
  readonly volume: CubicMetre;
  /** What the ram delivers in each month. */
  readonly delivery: ByMonth<CubicMetrePerSecond>;
  /** Flow wanted in each of the 24 hours of a day, for each month. */
  readonly draw: ByMonth<readonly CubicMetrePerSecond[]>;
  /** Stored as the year begins; when left out, what a long row of such years comes to. */
  readonly start?: CubicMetre;
}

/** Rounding: a day on which less than this share of the draw is missing is met. */
const ROUNDING = 1e-9;

/**
 * A year of 365 days, month by month; each hour of each day is followed, because a tank that carries a month's mean may
 * still run dry every evening.
 * @throws RangeError when the volume is below nought, or a month has not 24 hours.
 */
export function yearBalance({ volume, delivery, draw, start }: YearSetup): YearBalance {
  checkVolume(volume);
  const year = (from: CubicMetre): MonthBalance[] => {
    let stored = from;
    return eachMonth((month) => {
      const found = monthBalance(
        { volume, delivery: inMonth(delivery, month), draw: inMonth(draw, month), start: stored },
        inMonth(MONTH_LENGTHS, month),
      );
      stored = found.stored;
      return found;
    }).slice();
  };
  const begins = start ?? returningStart(volume, year);
  const months = year(begins);
  return {
    months,
    start: begins,
    total: sumOf(months, begins),
    metCount: months.reduce((sum, { metCount }) => sum + metCount, 0),
  };
}

function monthBalance(
  setup: DaySetup & { readonly start: CubicMetre },
  dayCount: number,
): MonthBalance {
  const daily: TankFlows[] = [];
  let stored = setup.start;
  let lowest = stored;
  let metCount = 0;
  let found: DayBalance | undefined;
  for (let day = 0; day < dayCount; day += 1) {
    // A day that begins as the last one did goes as it went.
    if (found?.start !== stored) found = dayBalance({ ...setup, start: stored });
    const { total, steps } = found;
    daily.push(total);
    stored = total.stored;
    lowest = Math.min(lowest, ...steps.map((step) => step.stored));
    if (total.shortfall <= ROUNDING * total.wanted) metCount += 1;
  }
  return { ...sumOf(daily, setup.start), dayCount, metCount, lowest };
}

function sumOf(steps: readonly TankFlows[], start: CubicMetre): TankFlows {
  const sum = (of: (step: TankFlows) => CubicMetre): CubicMetre =>
    steps.reduce((total, step) => total + of(step), 0);
  return {
    delivered: sum((step) => step.delivered),
    wanted: sum((step) => step.wanted),
    drawn: sum((step) => step.drawn),
    overflow: sum((step) => step.overflow),
    shortfall: sum((step) => step.shortfall),
    stored: steps.at(-1)?.stored ?? start,
  };
}

/**
 * The level from which a round of steps comes back to itself: the one that a long row of rounds from a full tank reaches.
 *
 * A round moves any level x to min(high, max(low, x + gain)), where high and low are where a full and an empty tank end. With a
 * gain the row of rounds climbs to `high`, with a loss it sinks to `low`, and without either it stays where it was.
 */
function returningStart(
  volume: CubicMetre,
  round: (from: CubicMetre) => readonly TankFlows[],
): CubicMetre {
  const fromFull = round(volume);
  const gain = fromFull.reduce((sum, { delivered, wanted }) => sum + delivered - wanted, 0);
  const steps = gain >= 0 ? fromFull : round(0);
  return steps.at(-1)?.stored ?? volume;
}

function checkVolume(volume: CubicMetre): void {
  if (!(volume >= 0)) throw new RangeError(`volume must not be below nought, got ${volume} m³`);
}
