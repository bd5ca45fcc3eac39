import type { Answer, DrawName, WaterPlan } from '@fallwright/engine';
import { isGiven, type Site } from '@fallwright/records';
import { formatNumber, plainFigures, type System } from '@fallwright/units';
import { type Answered, answered, duration } from './answered.ts';
import { monthName } from './month-words.ts';
import { hasSeasons, waterPlanOf } from './water-plan-of.ts';

const DRAW_WORDS = {
  evenly: 'evenly over the day',
  house: 'as in a house, most in the morning and the evening',
  stock: 'as animals drink, by daylight',
  evening: 'in the evening, from six to nine',
} as const satisfies Record<DrawName, string>;

const DAY = 86_400;

/** What the tank must hold and how far it goes. Empty when no need was given. */
export function tankInWords(answer: Answer, site: Site, system: System): readonly string[] {
  const plan = waterPlanOf(answer, site);
  if (!plan) return [];
  const about = answered(answer, site, system);
  const ofStandstill = [...reserveInWords(plan, about), ...lastsInWords(plan, about)];
  if (plan.months.every(({ delivered }) => delivered === 0)) return ofStandstill;
  return [
    dayInWords(plan, about),
    ...onceADayInWords(answer, about),
    ...ofStandstill,
    ...(site.tank || hasSeasons(plan) ? [yearInWords(plan, about)] : []),
    `Drawn ${drawInWords(site)}; a judgement, that decides only what a day asks of the tank.`,
  ];
}

function drawInWords({ tank, demand }: Site): string {
  if (tank?.draw) return DRAW_WORDS[tank.draw];
  if (isGiven(demand)) return DRAW_WORDS.house;
  return 'by people as in a house, by animals in daylight, for plants in the evening';
}

function dayInWords({ daily, volume, isVolumeGiven }: WaterPlan, { show }: Answered): string {
  if (daily.kind === 'carries' && daily.volume === 0) {
    return 'The ram brings more at every hour than is drawn then: the day asks for no tank.';
  }
  const size = show(daily.volume, 'volume', 2);
  const does = {
    carries: 'carries what a day draws',
    both: 'carries what a day draws while the ram brings enough, and keeps all that it brings while it does not',
    short: 'keeps all that the ram brings; none makes up for what it does not bring',
  }[daily.kind];
  // What is shown alike counts as alike: a tank a drop too small is none.
  const isEnough = volume >= 0.995 * daily.volume;
  const given = !isVolumeGiven
    ? ''
    : isEnough
      ? ` This one holds ${show(volume, 'volume')}.`
      : ` This one holds only ${show(volume, 'volume')}.`;
  return `A tank of ${size} ${does}.${given}`;
}

/** The balance takes the delivery as even; a store that is used up once a day gives it in one stretch. */
function onceADayInWords({ emptying }: Answer, { show }: Answered): readonly string[] {
  if (!emptying || emptying.end === 'keepsUp') return [];
  return [
    `That is for water that comes evenly. Started once a day, the ram brings it in one stretch: a tank for all of it, ${show(emptying.dailyVolume, 'volume')}, is on the safe side.`,
  ];
}

function reserveInWords(
  { reserve, daily, volume, isVolumeGiven }: WaterPlan,
  { show }: Answered,
): readonly string[] {
  if (!reserve) return [];
  const days = plainFigures(reserve.standstill / DAY, 3);
  const size = show(reserve.volume, 'volume');
  const word = days === '1' ? 'A day’s' : `${days} days’`;
  const sum = show(reserve.volume + daily.volume, 'volume');
  const verdict = !isVolumeGiven
    ? `; with what a day draws the tank is ${sum}`
    : volume < reserve.volume
      ? ', and the tank holds less'
      : ', and the tank holds it when it is full';
  return [`${word} reserve is ${size}${verdict}.`];
}

function lastsInWords(plan: WaterPlan, { show }: Answered): readonly string[] {
  if (plan.lasts === undefined || !(plan.isVolumeGiven || plan.reserve)) return [];
  const most = plan.months[plan.largestMonth];
  if (!most) return [];
  const when = hasSeasons(plan) ? ` in ${monthName(plan.largestMonth)}` : '';
  return [
    `Full, ${show(plan.volume, 'volume')} last ${duration(plan.lasts)} with the ram stopped${when}.`,
  ];
}

function yearInWords({ year, volume }: WaterPlan, { show, system }: Answered): string {
  const { overflow, shortfall } = year.total;
  const missing =
    year.metCount === 365 ? '' : `; ${formatNumber(shortfall, 'volume', system)} are missing`;
  return `Over a year with ${show(volume, 'volume')}, the need is met on ${year.metCount} of 365 days; ${show(overflow, 'volume')} run over${missing}.`;
}
