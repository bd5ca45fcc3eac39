import {
  type Answer,
  inMonth,
  MONTHS,
  type MonthlyDemand,
  USES,
  type Use,
} from '@fallwright/engine';
import { installationOf, isGiven, type Site } from '@fallwright/records';
import { plainFigures, type System } from '@fallwright/units';
import { type Answered, answered, perCent } from './answered.ts';
import { monthName, monthsInWords } from './month-words.ts';
import { isRunning } from './verdict-words.ts';
import { hasSeasons, waterPlanOf } from './water-plan-of.ts';

const USE_WORDS = {
  people: 'people',
  animals: 'animals',
  garden: 'garden',
  drip: 'drip line',
  other: 'other',
} as const satisfies Record<Use, string>;

/** What is needed and what comes of it, month by month. Empty when one amount is needed and the ram brings the same all year. */
export function demandInWords(answer: Answer, site: Site, system: System): readonly string[] {
  const plan = waterPlanOf(answer, site);
  const { monthlyDemand } = installationOf(site);
  if (!plan || !monthlyDemand) return [];
  const about = answered(answer, site, system);
  const isDetailed = !isGiven(site.demand);
  const lowSource = lowSourceInWords(about);
  if (!isDetailed && !hasSeasons(plan) && lowSource.length === 0) return [];
  return [
    ...(isDetailed ? [usesInWords(monthlyDemand, plan.largestMonth, about)] : []),
    shareInWords(plan, about),
    ...monthsMetInWords(plan),
    ...lowSource,
  ];
}

type Plan = NonNullable<ReturnType<typeof waterPlanOf>>;

function usesInWords(demand: MonthlyDemand, month: number, { show, site }: Answered): string {
  const parts = USES.filter((use) => inMonth(demand.uses[use], month) > 0).map(
    (use) => `${USE_WORDS[use]} ${show(inMonth(demand.uses[use], month), 'daily')}`,
  );
  const lost = inMonth(demand.losses, month);
  const all = [...parts, ...(lost > 0 ? [`losses ${show(lost, 'daily')}`] : [])];
  const isSame = demand.total.every((flow) => flow === inMonth(demand.total, month));
  const years = isGiven(site.demand) ? undefined : site.demand?.years;
  const when = years === undefined ? '' : ` in ${plainFigures(years, 3)} years`;
  const needed = `${show(inMonth(demand.total, month), 'daily')} are needed${when}`;
  const sum = `${all.join(', ')}.`;
  return isSame
    ? `${needed}: ${sum}`
    : `In ${monthName(month)}, when most is needed, ${needed}: ${sum}`;
}

/** For the month whose need is least met. */
function shareInWords(plan: Plan, { show }: Answered): string {
  const { needed, delivered, share } = inMonth(plan.months, plan.hardestMonth);
  const when = hasSeasons(plan) ? `In ${monthName(plan.hardestMonth)} ` : '';
  const come = delivered > 0 ? show(delivered, 'daily') : 'none';
  const part = share === undefined ? '' : `: ${perCent(share)} of it`;
  return delivered > 0
    ? `${when}${come} reach the tank and ${show(needed, 'daily')} are needed${part}.`
    : `${when}${come} of the ${show(needed, 'daily')} needed reaches the tank.`;
}

function monthsMetInWords({ months }: Plan): readonly string[] {
  const met = months.map(({ isMet }) => isMet);
  if (met.every((isMet) => isMet)) return ['It is enough in every month.'];
  if (!met.some((isMet) => isMet)) return ['It is not enough in any month.'];
  const short = monthsInWords(met.map((isMet) => !isMet));
  return [`It is enough ${monthsInWords(met)}; ${short} it is not.`];
}

/** Months in which the source gives less than the ram takes. */
function lowSourceInWords({ answer, site, show }: Answered): readonly string[] {
  const supply = answer.operatingPoint?.supplyFlow;
  const { yields } = installationOf(site);
  const isTold = answer.verdict.kind === 'starves' || isRunning(answer.verdict.kind);
  if (supply === undefined || !isTold) return [];
  if (answer.emptying) return lowInflowInWords(site);
  const isLow = yields.map((given) => given !== 'plenty' && given < supply);
  if (!isLow.some((low) => low)) return [];
  const when = isLow.every((low) => low) ? '' : `${startOfSentence(monthsInWords(isLow))} `;
  const source = when === '' ? 'The source' : 'the source';
  return [
    `${when}${source} gives less than the ${show(supply, 'sourceFlow')} that the ram takes. What is counted then is the same share of its delivery: the most that can be had, by a shorter stroke or by running part of the time. Unattended it draws air and stops.`,
  ];
}

/** A store evens out its inflow, so only a month that has less than usual is told. */
function lowInflowInWords({ source }: Site): readonly string[] {
  const usual = source.inflow?.value ?? 0;
  const isLow = MONTHS.map((month) => (source.months?.[month]?.value ?? usual) < usual);
  if (!isLow.some((low) => low)) return [];
  return [
    `${startOfSentence(monthsInWords(isLow))} less than usual runs into the ${source.store ?? 'store'}. What is counted then is the same share of what the ram brings in a day.`,
  ];
}

function startOfSentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
