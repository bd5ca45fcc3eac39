/** Need, delivery and tank of one place together: what a page, a form or a record shows. */
import type { CubicMetre, CubicMetrePerSecond, Second } from '../../quantities.ts';
import { largestMonth, type MonthlyDemand } from './daily-demand.ts';
import { type DrawPattern, drawOfUses, hourlyDraw } from './draw-pattern.ts';
import { type ByMonth, eachMonth, inMonth } from './months.ts';
import { type Met, needMet } from './need-met.ts';
import { type DayBalance, dayBalance, type YearBalance, yearBalance } from './tank-balance.ts';
import { type DailyTank, dailyTank, reserveVolume } from './tank-size.ts';

export interface WaterPlanOf {
  readonly demand: MonthlyDemand;
  /** What the ram delivers in each month. */
  readonly delivery: ByMonth<CubicMetrePerSecond>;
  /** The tank that is there or planned; the one that carries the day and its reserve when left out. */
  readonly volume?: CubicMetre;
  /** How long the tank should last with the ram stopped. */
  readonly standstill?: Second;
  /** How the draw falls on the hours; each use by its own pattern when left out. */
  readonly pattern?: DrawPattern;
}

export interface PlannedMonth extends Met {
  readonly needed: CubicMetrePerSecond;
  readonly delivered: CubicMetrePerSecond;
}

export interface WaterPlan {
  readonly months: ByMonth<PlannedMonth>;
  /** The month whose need is least met, 0 for January: the day and the sizes are told for it. */
  readonly hardestMonth: number;
  /** The month that needs most: its need sets the reserve. */
  readonly largestMonth: number;
  /** The tank that the balances are told for. */
  readonly volume: CubicMetre;
  readonly isVolumeGiven: boolean;
  /** The largest of the tanks that the months want: `both` when it carries the day in some months and falls short in others. */
  readonly daily: { readonly kind: DailyTank['kind'] | 'both'; readonly volume: CubicMetre };
  /** What lasts for the standstill asked for, in the month that needs most. */
  readonly reserve?: { readonly standstill: Second; readonly volume: CubicMetre };
  /** How long a full tank lasts in the month that needs most, with the ram stopped; absent when nothing is needed. */
  readonly lasts?: Second;
  /** A day of the hardest month, as a long row of them would be. */
  readonly day: DayBalance;
  readonly year: YearBalance;
}

/**
 * The plan of a place's water.
 *
 * The tank for a day is that of the month which wants the largest: to carry its draw where the ram brings enough, to keep all
 * that it brings where it does not.
 * @throws RangeError when a list has not twelve months.
 */
export function waterPlan(about: WaterPlanOf): WaterPlan {
  const { demand, delivery, standstill, pattern } = about;
  const draw = eachMonth((month) =>
    pattern ? hourlyDraw(inMonth(demand.total, month), pattern) : drawOfUses(demand, month),
  );
  const dailyTanks = eachMonth((month) =>
    dailyTank({ delivery: inMonth(delivery, month), draw: inMonth(draw, month) }),
  );
  const [first] = dailyTanks;
  const isAlike = dailyTanks.every(({ kind }) => kind === first?.kind);
  const daily = {
    kind: first && isAlike ? first.kind : ('both' as const),
    volume: Math.max(...dailyTanks.map(({ volume }) => volume)),
  };
  const largest = largestMonth(demand);
  const most = inMonth(demand.total, largest);
  const reserve =
    standstill === undefined ? undefined : { standstill, volume: reserveVolume(most, standstill) };
  const volume = about.volume ?? daily.volume + (reserve?.volume ?? 0);
  const months = eachMonth((month) => {
    const needed = inMonth(demand.total, month);
    const delivered = inMonth(delivery, month);
    return { needed, delivered, ...needMet({ volume, needed, delivered }) };
  });
  const hardestMonth = hardestOf(months);
  const { lasts } = needMet({ volume, needed: most, delivered: 0 });
  return {
    months,
    hardestMonth,
    largestMonth: largest,
    volume,
    isVolumeGiven: about.volume !== undefined,
    daily,
    ...(reserve && { reserve }),
    ...(lasts !== undefined && { lasts }),
    day: dayBalance({
      volume,
      delivery: inMonth(delivery, hardestMonth),
      draw: inMonth(draw, hardestMonth),
    }),
    year: yearBalance({ volume, delivery, draw }),
  };
}

/** The month with the least share met; of equal ones the one that needs most. */
function hardestOf(months: ByMonth<PlannedMonth>): number {
  let hardest = 0;
  for (const [month, { share = Infinity, needed }] of months.entries()) {
    const so = inMonth(months, hardest);
    const least = so.share ?? Infinity;
    if (share < least || (share === least && needed > so.needed)) hardest = month;
  }
  return hardest;
}
