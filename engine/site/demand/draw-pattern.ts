/**
 * How the draw of a day falls on its hours.
 *
 * Judgement, all of them: no published pattern was read. They follow how people live and animals drink, and they matter only
 * for the size of a tank that carries one day. Whoever knows better gives other shares.
 */
import type { CubicMetrePerSecond, Ratio, Second } from '../../quantities.ts';
import { type MonthlyDemand, USES, type Use } from './daily-demand.ts';
import { inMonth } from './months.ts';

export const DRAW_STEPS = 24;
export const HOUR: Second = 3600;

/** The share of a day's draw in each hour from midnight: 24 of them, which add up to 1. */
export type DrawPattern = readonly Ratio[];

export const DRAW_PATTERNS = {
  evenly: shares(Array.from({ length: DRAW_STEPS }, () => 1)),
  /** Two peaks, before and after the day's work, and nearly nothing at night. */
  house: shares([0.5, 0.5, 0.5, 0.5, 1, 3, 7, 8, 7, 5, 4, 4, 5, 4, 3, 3, 4, 6, 8, 8, 6, 4, 2, 1]),
  /** Animals drink by daylight, mostly between the morning's and the evening's grazing. */
  stock: shares([1, 1, 1, 1, 1, 2, 4, 6, 6, 6, 6, 6, 6, 5, 5, 6, 7, 7, 6, 4, 2, 1, 1, 1]),
  /** Watering from six to nine in the evening, when the sun takes least of it. */
  evening: shares([0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 0, 0, 0]),
} as const satisfies Readonly<Record<string, DrawPattern>>;

export type DrawName = keyof typeof DRAW_PATTERNS;

/** The pattern that each use has when nobody says. Judgement. */
export const PATTERN_OF_USE: Readonly<Record<Use, DrawName>> = {
  people: 'house',
  animals: 'stock',
  garden: 'evening',
  drip: 'evening',
  other: 'house',
};

/**
 * Shares that add up to 1, from any 24 weights.
 * @throws RangeError when there are not 24, when one is below nought, or when all are nought.
 */
export function shares(weights: readonly number[]): DrawPattern {
  const sum = weights.reduce((total, weight) => total + weight, 0);
  if (weights.length !== DRAW_STEPS || !weights.every((weight) => weight >= 0) || !(sum > 0)) {
    throw new RangeError('weights must be 24, none below nought and not all nought');
  }
  return weights.map((weight) => weight / sum);
}

/** Flow wanted in each hour of a day, from the day's mean flow. */
export function hourlyDraw(
  mean: CubicMetrePerSecond,
  pattern: DrawPattern,
): readonly CubicMetrePerSecond[] {
  return pattern.map((share) => mean * share * DRAW_STEPS);
}

/** Flow wanted in each hour of a day of one month; each use by its own pattern, and the losses along with the uses. */
export function drawOfUses(demand: MonthlyDemand, month: number): readonly CubicMetrePerSecond[] {
  const total = inMonth(demand.total, month);
  const used = total - inMonth(demand.losses, month);
  const withLosses = used > 0 ? total / used : 1;
  const draw = new Array<CubicMetrePerSecond>(DRAW_STEPS).fill(0);
  for (const use of USES) {
    const flow = inMonth(demand.uses[use], month) * withLosses;
    const hourly = hourlyDraw(flow, DRAW_PATTERNS[PATTERN_OF_USE[use]]);
    for (const [hour, wanted] of hourly.entries()) draw[hour] = (draw[hour] ?? 0) + wanted;
  }
  return draw;
}
