import {
  type Answer,
  type ByMonth,
  DRAW_PATTERNS,
  eachMonth,
  inMonth,
  MONTHS,
  seasonalDelivery,
  type WaterPlan,
  waterPlan,
} from '@fallwright/engine';
import { installationOf, isGiven, type Site } from '@fallwright/records';
import { isRunning } from './verdict-words.ts';

/** Judgement: nobody says what a plain amount is for; a house's two peaks ask more of a tank than an even draw. */
const USUAL_DRAW = 'house';
const DAY = 86_400;

interface Planned {
  readonly site: Site;
  readonly plan: WaterPlan | undefined;
}

/** A year is followed hour by hour, and words, records and charts of one answer all ask for it. */
const planned = new WeakMap<Answer, Planned>();

/** Need, delivery and tank of a site, or nothing when no need was given. A ram that does not run delivers nothing. */
export function waterPlanOf(answer: Answer, site: Site): WaterPlan | undefined {
  const known = planned.get(answer);
  if (known?.site === site) return known.plan;
  const plan = newPlan(answer, site);
  planned.set(answer, { site, plan });
  return plan;
}

function newPlan(answer: Answer, site: Site): WaterPlan | undefined {
  const { monthlyDemand, yields } = installationOf(site);
  if (!monthlyDemand) return undefined;
  const draw = site.tank?.draw ?? (isGiven(site.demand) ? USUAL_DRAW : undefined);
  return waterPlan({
    demand: monthlyDemand,
    delivery: deliveryByMonth(answer, site, yields),
    ...(site.tank?.volume && { volume: site.tank.volume.value }),
    ...(site.tank?.days !== undefined && { standstill: site.tank.days * DAY }),
    ...(draw && { pattern: DRAW_PATTERNS[draw] }),
  });
}

function deliveryByMonth(
  { verdict, operatingPoint, emptying }: Answer,
  site: Site,
  yields: ByMonth<number | 'plenty'>,
): ByMonth<number> {
  if (!operatingPoint || !(isRunning(verdict.kind) || verdict.kind === 'starves')) {
    return eachMonth(() => 0);
  }
  if (!emptying) {
    const { deliveryFlow, supplyFlow } = operatingPoint;
    return seasonalDelivery({ delivered: deliveryFlow, supply: supplyFlow, yields });
  }
  // A store that sinks brings what its day brings; in a month with less inflow than usual the same share of that. Judgement.
  const usual = site.source.inflow?.value ?? 0;
  return MONTHS.map((month, index) => {
    const given = inMonth(yields, index);
    const isLess = site.source.months?.[month] && given !== 'plenty' && given < usual;
    return emptying.meanDelivery * (isLess ? given / usual : 1);
  });
}

/** Whether the months differ, in what is needed or in what comes. */
export function hasSeasons({ months }: WaterPlan): boolean {
  const [first] = months;
  return months.some(
    ({ needed, delivered }) => needed !== first?.needed || delivered !== first.delivered,
  );
}
