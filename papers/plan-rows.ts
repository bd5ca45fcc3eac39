/** The plan of a place's water as rows of text: a year by months, a day by hours. */
import { inMonth, type WaterPlan } from '@fallwright/engine';
import { formatNumber, type System } from '@fallwright/units';
import { perCent } from './answered.ts';
import { monthName } from './month-words.ts';

export interface MonthRow {
  readonly month: string;
  /** For each day. */
  readonly needed: string;
  readonly comes: string;
  /** Of the need, in per cent; empty when nothing is needed. */
  readonly share: string;
  /** `31 of 31`. */
  readonly daysMet: string;
  /** In the whole month. */
  readonly runsOver: string;
  readonly missing: string;
  /** In the tank as the month ends. */
  readonly inTank: string;
  /** The same as a share of the full tank, for a drawing. */
  readonly full: number;
}

export function monthRows(plan: WaterPlan, system: System): readonly MonthRow[] {
  const volume = (value: number): string => formatNumber(value, 'volume', system);
  return plan.year.months.map((balance, month) => {
    const { needed, delivered, share } = inMonth(plan.months, month);
    return {
      month: monthName(month),
      needed: formatNumber(needed, 'daily', system),
      comes: formatNumber(delivered, 'daily', system),
      share: share === undefined ? '' : perCent(share),
      daysMet: `${balance.metCount} of ${balance.dayCount}`,
      runsOver: volume(balance.overflow),
      missing: volume(balance.shortfall),
      inTank: volume(balance.stored),
      full: fullness(balance.stored, plan.volume),
    };
  });
}

export interface HourRow {
  /** `18–19`. */
  readonly hour: string;
  readonly comes: string;
  readonly drawn: string;
  readonly runsOver: string;
  readonly missing: string;
  /** In the tank as the hour ends. */
  readonly inTank: string;
  readonly full: number;
}

/** A day of the month whose need is least met, as a long row of them would be. */
export function hourRows(plan: WaterPlan, system: System): readonly HourRow[] {
  const volume = (value: number): string => formatNumber(value, 'volume', system);
  return plan.day.steps.map((step, hour) => ({
    hour: `${twoFigures(hour)}–${twoFigures(hour + 1)}`,
    comes: volume(step.delivered),
    drawn: volume(step.drawn),
    runsOver: volume(step.overflow),
    missing: volume(step.shortfall),
    inTank: volume(step.stored),
    full: fullness(step.stored, plan.volume),
  }));
}

function fullness(stored: number, volume: number): number {
  return volume > 0 ? stored / volume : 0;
}

function twoFigures(hour: number): string {
  return String(hour).padStart(2, '0');
}
