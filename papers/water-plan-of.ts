import {
  type Answer,
  DRAW_PATTERNS,
  eachMonth,
  seasonalDelivery,
  type WaterPlan,
  waterPlan,
} from '@fallwright/engine';
import { installationOf, isGiven, type Site } from '@fallwright/records';
import { isRunning } from './verdict-words.ts';

/** Judgement: nobody says what a plain amount is for; a house's two peaks ask more of a tank than an even draw. */
const USUAL_DRAW = 'house';
const DAY = 86_400;

/** Need, delivery and tank of a site, or nothing when no need was given. A ram that does not run delivers nothing. */
export function waterPlanOf(answer: Answer, site: Site): WaterPlan | undefined {
  const { monthlyDemand, yields } = installationOf(site);
  if (!monthlyDemand) return undefined;
  const { kind } = answer.verdict;
  const point = isRunning(kind) || kind === 'starves' ? answer.operatingPoint : undefined;
  const delivery = point
    ? seasonalDelivery({ delivered: point.deliveryFlow, supply: point.supplyFlow, yields })
    : eachMonth(() => 0);
  const draw = site.tank?.draw ?? (isGiven(site.demand) ? USUAL_DRAW : undefined);
  return waterPlan({
    demand: monthlyDemand,
    delivery,
    ...(site.tank?.volume && { volume: site.tank.volume.value }),
    ...(site.tank?.days !== undefined && { standstill: site.tank.days * DAY }),
    ...(draw && { pattern: DRAW_PATTERNS[draw] }),
  });
}

/** Whether the months differ, in what is needed or in what comes. */
export function hasSeasons({ months }: WaterPlan): boolean {
  const [first] = months;
  return months.some(
    ({ needed, delivered }) => needed !== first?.needed || delivered !== first.delivered,
  );
}
