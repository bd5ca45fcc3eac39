/** From who and what needs water to the flow that must leave the tank, month by month. */
import type { CubicMetrePerSecond, Ratio } from '../../quantities.ts';
import { type ByMonth, eachMonth, inMonth } from './months.ts';

export const USES = ['people', 'animals', 'garden', 'drip', 'other'] as const;
export type Use = (typeof USES)[number];

/** Some takers with one need each. */
export interface Takers {
  readonly count: number;
  readonly each: CubicMetrePerSecond;
}

/** A need of part of the year: true in the months in which it is there. */
export type Season = ByMonth<boolean>;

export interface Needs {
  readonly people?: Takers;
  readonly animals?: readonly Takers[];
  /** Flow at the tap while it is watered. */
  readonly garden?: { readonly flow: CubicMetrePerSecond; readonly season: Season };
  readonly drip?: Takers & { readonly season: Season };
  readonly other?: CubicMetrePerSecond;
  /** Share of what leaves the tank that leaks or is spilled before it is used: 0 to below 1. */
  readonly losses?: Ratio;
  /** Growth of people and animals in a year. */
  readonly growth?: Ratio;
  /** Years from now for which the need is told. */
  readonly years?: number;
  /** What each month asks, as a share of the usual: 1.3 in a hot July. */
  readonly monthFactors?: ByMonth<Ratio>;
}

export interface MonthlyDemand {
  /** All that must leave the tank, with losses. */
  readonly total: ByMonth<CubicMetrePerSecond>;
  /** What each use takes, without losses. */
  readonly uses: Readonly<Record<Use, ByMonth<CubicMetrePerSecond>>>;
  readonly losses: ByMonth<CubicMetrePerSecond>;
}

/**
 * Flow needed in each month: the mean over a day.
 *
 *   total = factor · (people · (1 + r)ⁿ + animals · (1 + r)ⁿ + garden + drip + other)/(1 − losses)
 *
 * Growth counts people and animals only: a garden's area and its plants are what they are. Judgement.
 * @throws RangeError when the losses are not from nought to below 1.
 */
export function dailyDemand(needs: Needs): MonthlyDemand {
  const losses = needs.losses ?? 0;
  if (!(losses >= 0 && losses < 1)) {
    throw new RangeError(`losses must be from nought to below 1, got ${losses}`);
  }
  const grown = (1 + (needs.growth ?? 0)) ** (needs.years ?? 0);
  const animals = (needs.animals ?? []).reduce((sum, { count, each }) => sum + count * each, 0);
  const people = needs.people ? needs.people.count * needs.people.each : 0;
  const { garden, drip } = needs;
  const useIn: Readonly<Record<Use, (month: number) => CubicMetrePerSecond>> = {
    people: () => grown * people,
    animals: () => grown * animals,
    garden: (month) => (garden && inMonth(garden.season, month) ? garden.flow : 0),
    drip: (month) => (drip && inMonth(drip.season, month) ? drip.count * drip.each : 0),
    other: () => needs.other ?? 0,
  };
  const factorIn = (month: number): Ratio =>
    needs.monthFactors ? inMonth(needs.monthFactors, month) : 1;
  const uses = {
    people: eachMonth((month) => factorIn(month) * useIn.people(month)),
    animals: eachMonth((month) => factorIn(month) * useIn.animals(month)),
    garden: eachMonth((month) => factorIn(month) * useIn.garden(month)),
    drip: eachMonth((month) => factorIn(month) * useIn.drip(month)),
    other: eachMonth((month) => factorIn(month) * useIn.other(month)),
  };
  const used = eachMonth((month) => USES.reduce((sum, use) => sum + inMonth(uses[use], month), 0));
  const total = used.map((flow) => flow / (1 - losses));
  return { total, uses, losses: eachMonth((month) => losses * inMonth(total, month)) };
}

/** A need that is the same in every month and is not told apart by use. */
export function steadyDemand(flow: CubicMetrePerSecond): MonthlyDemand {
  return dailyDemand({ other: flow });
}

/** The month that needs most: 0 for January, the first of several that are equal. */
export function largestMonth({ total }: MonthlyDemand): number {
  return total.indexOf(Math.max(...total));
}
