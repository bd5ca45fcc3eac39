import { dailyDemand, largestMonth } from '@fallwright/engine';
import { formatQuantity, type System } from '@fallwright/units';
import { isGiven } from '../given.ts';
import { Assumptions } from './assumption.ts';
import type { Report } from './check-site.ts';
import type { DemandForm, TankForm } from './demand-fields.ts';
import { needsOf } from './demand-of.ts';
import { LIMITS } from './limits.ts';

/** Judgement: nobody plans further, and growth without end fills any number. */
const MOST_YEARS = 100;
/** Judgement: a tank for more than a season's drought is a pond. */
const MOST_DAYS = 366;

export function checkDemand(demand: DemandForm, system: System, report: Report): void {
  if (isGiven(demand)) return;
  const at = (...fields: string[]): string[] => ['demand', ...fields];
  const { people, perPerson, service, garden, growth, years } = demand;
  if (people === undefined && (perPerson || service)) {
    report('missing', ['demand'], 'How many people there are is missing. Write people: 6.');
    return;
  }
  if (perPerson && service) {
    report(
      'contradiction',
      at('service'),
      'A person’s need is given twice, by perPerson and by service. Take one of them out.',
    );
  }
  if (garden?.perArea && (garden.evapotranspiration || garden.plants)) {
    report(
      'contradiction',
      at('garden', 'perArea'),
      'The garden’s need is given twice, by perArea and by evapotranspiration or plants. Take one of them out.',
    );
  }
  if (garden?.plants && !garden.evapotranspiration) {
    report(
      'missing',
      at('garden'),
      'What the plants need is told as a share of the evapotranspiration, which is missing. Write evapotranspiration: 5 mm/day, or perArea in place of plants.',
    );
  }
  if (growth && years === undefined) {
    report('missing', ['demand'], 'The growth of how many years is meant? Write years: 10.');
  }
  if (years !== undefined && !growth) {
    report('missing', ['demand'], 'The growth in a year is missing. Write growth: 2 %.');
  }
  if (years !== undefined && years > MOST_YEARS) {
    report('outOfRange', at('years'), `The years are ${years}. They must be 0 to ${MOST_YEARS}.`);
    return;
  }
  checkTotal(demand, system, report);
}

/** The sum has the limits of a plain amount. */
function checkTotal(demand: DemandForm, system: System, report: Report): void {
  const limit = LIMITS.demand;
  const needs = needsOf(demand, new Assumptions());
  const losses = needs.losses ?? 0;
  if (!limit || !(losses < 1)) return;
  const monthly = dailyDemand(needs);
  const most = monthly.total[largestMonth(monthly)] ?? 0;
  const show = (value: number): string => formatQuantity(value, 'daily', system);
  if (most < limit.least) {
    report(
      'missing',
      ['demand'],
      'The demand comes to nothing. Write who or what needs water, such as people: 6.',
    );
  } else if (most > limit.most) {
    report(
      'outOfRange',
      ['demand'],
      `The demand comes to ${show(most)}, and more than ${show(limit.most)} is beyond a ram. Check the numbers and their units.`,
    );
  }
}

export function checkTank({ days }: TankForm, hasDemand: boolean, report: Report): void {
  if (!hasDemand) {
    report(
      'unusual',
      ['tank'],
      'A tank can be judged only by what is drawn from it, and no demand is written. Write it like demand: 900 L/day.',
    );
  }
  if (days !== undefined && days > MOST_DAYS) {
    report('outOfRange', ['tank', 'days'], `The days are ${days}. They must be 0 to ${MOST_DAYS}.`);
  }
}
