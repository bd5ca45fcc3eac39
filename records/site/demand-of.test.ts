/** What a person writes of a need, as the engine takes it; and what is wrong with it, in words. */
import { ANIMAL_FIGURES, inMonth, MONTHS } from '@fallwright/engine';
import { describe, expect, test } from 'vitest';
import { installationOf } from './installation-of.ts';
import { readSite } from './read-site.ts';

const L = 1e-3 / 86_400;
const JULY = MONTHS.indexOf('jul');

function place(demand: string, more = '', source = '{ flow: 14 L/min }'): string {
  return `fallwright: site@1
source: ${source}
fall: 1.9 m
drive: [ { pipe: PE100 SDR11 25, length: 14 m } ]
lift: 12 m
demand: ${demand}
${more}`;
}

function assembled(demand: string, more = '', source?: string) {
  const read = readSite(place(demand, more, source));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return installationOf(read.site);
}

function totalIn(demand: string, month: number): number {
  const { monthlyDemand } = assembled(demand);
  return monthlyDemand ? inMonth(monthlyDemand.total, month) / L : Number.NaN;
}

describe('a need', () => {
  test('of one amount is that amount, exactly, in every month', () => {
    const { demand, monthlyDemand } = assembled('900 L/day');
    expect(demand).toBe(900 * L);
    expect(new Set(monthlyDemand?.total)).toEqual(new Set([demand]));
  });

  test('of people takes the published figure, and says so, until a local one is given', () => {
    const published = assembled('{ people: 6 }');
    expect(published.demand).toBeCloseTo(300 * L, 15);
    expect(published.assumptions.find(({ field }) => field === 'demand.perPerson')).toMatchObject({
      basis: 'table',
      why: expect.stringContaining('a local figure is better'),
    });
    const local = assembled('{ people: 6, perPerson: 70 L/day }');
    expect(local.demand).toBeCloseTo(420 * L, 15);
    expect(local.assumptions.filter(({ field }) => field.startsWith('demand'))).toEqual([]);
    expect(totalIn('{ people: 6, service: carried }', 0)).toBeCloseTo(120, 9);
  });

  test('of animals adds them up, each by the table or by a local figure', () => {
    expect(totalIn('{ animals: { cow: 4, hen: 100 } }', 0)).toBeCloseTo(4 * 38 + 25, 9);
    expect(totalIn('{ animals: { cow: { count: 4, each: 60 L/day }, sheep: 10 } }', 0)).toBeCloseTo(
      340,
      9,
    );
    for (const name of Object.keys(ANIMAL_FIGURES)) {
      expect(totalIn(`{ animals: { ${name}: 3 } }`, 0)).toBeGreaterThan(0);
    }
  });

  test('of a garden is there in its season only, by area, plants and way of watering', () => {
    const garden = '{ garden: { area: 90 m2, by: drip, season: may to sep }, other: 10 L/day }';
    expect(totalIn(garden, 0)).toBeCloseTo(10, 9);
    // 5 mm a day from the table, nine tenths of which reach the roots.
    expect(totalIn(garden, JULY)).toBeCloseTo(510, 9);
    const lawn = 'area: 90 m2, evapotranspiration: 4 mm/day, plants: shrubs, by: sprinkler';
    expect(totalIn(`{ garden: { ${lawn} } }`, JULY)).toBeCloseTo((90 * 4 * 0.5) / 0.75, 9);
  });

  test('holds the answer against the month that needs most', () => {
    const { demand } = assembled('{ people: 2, losses: 20 %, months: { jul: 1.5 } }');
    expect(demand).toBeCloseTo((100 * 1.5 * L) / 0.8, 15);
  });
});

describe('a source', () => {
  test('may yield less in some months, and the share that may be taken holds for those too', () => {
    const source = '{ flow: 14 L/min, share: 50 %, months: { jul: 6 L/min } }';
    const { yields } = assembled('900 L/day', '', source);
    expect(inMonth(yields, JULY)).toBeCloseTo(3e-3 / 60, 15);
    expect(inMonth(yields, 0)).toBeCloseTo(7e-3 / 60, 15);
  });

  test('of plenty has plenty, but for the months that are named', () => {
    const { yields } = assembled('900 L/day', '', '{ flow: plenty, months: { aug: 2 L/min } }');
    expect(yields.filter((given) => given === 'plenty')).toHaveLength(11);
  });
});

/** What stands there, the field that is named, and words of the message. */
const FAULTS: readonly (readonly [string, string, string])[] = [
  ['{}', 'demand', 'comes to nothing'],
  ['{ people: 0 }', 'demand', 'comes to nothing'],
  ['{ people: six }', 'demand.people', 'plain number'],
  ['{ persons: 6 }', 'demand.persons', 'no field called persons'],
  ['{ perPerson: 60 L/day }', 'demand', 'Write people: 6'],
  ['{ people: 6, perPerson: 60 L/day, service: carried }', 'demand.service', 'given twice'],
  ['{ people: 6, value: 3 }', 'demand.value', 'one amount'],
  ['{ value: 900 L, origin: measured }', 'demand.value', 'is a volume'],
  ['{ animals: { cows: 4 } }', 'demand.animals.cows', 'Did you mean cow?'],
  ['{ animals: { cow: many } }', 'demand.animals.cow', '{ count: 4, each: 60 L/day }'],
  ['{ animals: { cow: { count: 4, each: 60 L } } }', 'demand.animals.cow.each', 'is a volume'],
  ['{ garden: { area: 200 } }', 'demand.garden.area', '200 what?'],
  ['{ garden: { area: 9 m2, season: spring } }', 'demand.garden.season', 'may to sep'],
  ['{ garden: { area: 9 m2, perArea: 4 L/min } }', 'demand.garden.perArea', '4 mm/day'],
  ['{ garden: { area: 9 m2, plants: lawn } }', 'demand.garden', 'evapotranspiration: 5 mm/day'],
  ['{ people: 6, losses: 100 % }', 'demand.losses', 'outside 0'],
  ['{ people: 6, growth: 2 % }', 'demand', 'Write years: 10'],
  ['{ people: 6, years: 10 }', 'demand', 'Write growth: 2 %'],
  ['{ people: 6, growth: 2 %, years: 1000 }', 'demand.years', '0 to 100'],
  ['{ people: 900000 }', 'demand', 'beyond a ram'],
  ['{ people: 6, months: { july: 1.3 } }', 'demand.months.july', 'Did you mean jul?'],
  ['900', 'demand', '900 what?'],
  ['[ 900 L/day ]', 'demand', 'is a list'],
];

describe('one fault gives one problem, with its field and what to write', () => {
  test.each(FAULTS)('%s', (demand, field, words) => {
    const read = readSite(place(demand));
    const problems = read.ok ? [] : read.problems;
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ field, message: expect.stringContaining(words) });
  });

  test.each([
    ['tank: 12 m', 'tank', 'how high it stands is the lift'],
    ['tank: { volume: 2000 }', 'tank.volume', '2000 what?'],
    ['tank: { volume: 2000 L, draw: nightly }', 'tank.draw', 'house'],
    ['tank: { days: 9000 }', 'tank.days', '0 to 366'],
  ])('%s', (tank, field, words) => {
    const read = readSite(place('900 L/day', tank));
    const problems = read.ok ? [] : read.problems;
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ field, message: expect.stringContaining(words) });
  });

  test('a tank without a demand is answered, with a warning', () => {
    const read = readSite(place('900 L/day', 'tank: { days: 2 }').replace(/demand: .*\n/, ''));
    expect(read).toMatchObject({ ok: true, warnings: [{ field: 'tank', kind: 'unusual' }] });
  });
});
