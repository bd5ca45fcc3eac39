/** Need, delivery and tank in words, rows and numbers. The ram of the fixture brings 1,063 L a day and takes 11.1 L/min. */
import { eachMonth } from '@fallwright/engine';
import { describe, expect, test } from 'vitest';
import { answerRecord } from './answer-record.ts';
import { demandInWords } from './demand-words.ts';
import { answerOf, siteWith } from './fixtures/answers.ts';
import { monthsInWords } from './month-words.ts';
import { hourRows, monthRows } from './plan-rows.ts';
import { tankInWords } from './tank-words.ts';
import { hasSeasons, waterPlanOf } from './water-plan-of.ts';

const NEEDS =
  'demand: { people: 6, perPerson: 100 L/day, garden: { area: 200 m2, perArea: 5 mm/day, season: apr to sep }, losses: 10 % }';
const farm = siteWith('demand: 900 L/day', NEEDS);
const tanked = siteWith('demand: 900 L/day', `${NEEDS}\ntank: { volume: 2000 L, days: 2 }`);
const dry = siteWith('flow: 14 L/min', 'flow: 14 L/min, months: { jul: 5.55 L/min }');
const answer = answerOf('runs');

function plain(texts: readonly string[]): string {
  return texts.join(' ').replaceAll('\u00a0', ' ');
}

function only(...months: readonly number[]): readonly boolean[] {
  return eachMonth((month) => months.includes(month));
}

test.each([
  [only(0), 'in January'],
  [only(3, 4, 5), 'from April to June'],
  [only(9, 10, 11, 0, 1, 2), 'from October to March'],
  [only(0, 5, 11), 'in June and from December to January'],
  [only(1, 5, 9), 'in February, in June and in October'],
  [only(), ''],
])('months in words: %#', (months, words) => {
  expect(monthsInWords(months)).toBe(words);
});

describe('a need by its uses', () => {
  test('tells what makes it up, how much of it comes, and when it is enough', () => {
    const words = plain(demandInWords(answer, farm, 'metric'));
    // (600 + 1000)/0.9 in summer and 600/0.9 in winter.
    expect(words).toContain('In April, when most is needed, 1,780 L a day are needed: people 600');
    expect(words).toContain('garden 1,000 L a day, losses 178 L a day.');
    expect(words).toContain(
      'In April 1,060 L a day reach the tank and 1,780 L a day are needed: 60 %',
    );
    expect(words).toContain('enough from October to March; from April to September it is not');
    expect(words).not.toMatch(/undefined|NaN/);
  });

  test('a month in which the source gives half brings half, and says what that takes', () => {
    const plan = waterPlanOf(answer, dry);
    expect(plan && hasSeasons(plan)).toBe(true);
    const [january, july] = [plan?.months[0]?.delivered ?? 0, plan?.months[6]?.delivered ?? 0];
    expect(july / january).toBeCloseTo(0.5, 3);
    const words = plain(demandInWords(answer, dry, 'metric'));
    expect(words).toContain('In July the source gives less than the 11.1 L/min that the ram takes');
    expect(words).toContain('Unattended it draws air');
  });

  test('one amount and an even source leave nothing more to say than the reasons do', () => {
    expect(demandInWords(answer, siteWith(), 'metric')).toEqual([]);
  });

  test('a ram that does not run brings nothing', () => {
    const still = answerOf('staysOpen');
    expect(waterPlanOf(still, farm)?.months.every(({ delivered }) => delivered === 0)).toBe(true);
    const words = plain(demandInWords(still, farm, 'metric'));
    expect(words).toContain('reaches the tank');
    expect(words).toContain('not enough in any month');
    expect(tankInWords(still, siteWith(), 'metric')).toEqual([]);
  });

  test('no need, no plan', () => {
    const without = siteWith('demand: 900 L/day\n', '');
    expect(waterPlanOf(answer, without)).toBeUndefined();
    expect(tankInWords(answer, without, 'metric')).toEqual([]);
    expect(answerRecord(answer, without, 'metric').waterPlan).toBeNull();
  });
});

describe('the tank', () => {
  test('is told with its reserve, how long it lasts and its year', () => {
    const words = plain(tankInWords(answer, tanked, 'metric'));
    // Two days of 1,778 L.
    expect(words).toContain('2 days’ reserve is 3,560 L, and the tank holds less.');
    expect(words).toMatch(
      /the need is met on \d+ of 365 days; [\d,]+ L run over; [\d,]+ are missing/,
    );
    expect(words).toContain('judgement');
  });

  test('of a store that is used up once a day is told for water in one stretch too', () => {
    const emptying = {
      end: 'intakeUncovers',
      time: 50_000,
      drop: 1,
      delivered: 0.26,
      dailyVolume: 0.26,
      meanDelivery: 0.26 / 86_400,
      fromFull: [],
      overADay: [],
    } as const;
    const store = siteWith(
      'source: { flow: 14 L/min }',
      'source: { store: tank, volume: 1200 L, inflow: 2 L/min, months: { aug: 1 L/min } }',
    );
    const starving = answerOf('starves', { emptying });
    const plan = waterPlanOf(starving, store);
    // The day's mean of the engine, and half of it in the month with half the inflow.
    expect(plan?.months[0]?.delivered).toBe(emptying.meanDelivery);
    expect(plan?.months[7]?.delivered).toBeCloseTo(emptying.meanDelivery / 2, 15);
    expect(plain(tankInWords(starving, store, 'metric'))).toContain('for all of it, 260 L,');
    expect(plain(demandInWords(starving, store, 'metric'))).toContain(
      'In August less than usual runs into the tank.',
    );
  });
});

describe('rows and numbers', () => {
  const plan = waterPlanOf(answer, tanked);
  if (!plan) throw new Error('the site has a demand');

  test('twelve months and twenty-four hours, and a bar that never leaves its scale', () => {
    const [months, hours] = [monthRows(plan, 'metric'), hourRows(plan, 'metric')];
    expect(months).toHaveLength(12);
    expect(hours).toHaveLength(24);
    expect(hours[0]?.hour).toBe('00–01');
    expect(months[0]).toMatchObject({ month: 'January', needed: '667', daysMet: '31 of 31' });
    for (const { full } of [...months, ...hours]) {
      expect(full).toBeGreaterThanOrEqual(0);
      expect(full).toBeLessThanOrEqual(1);
    }
  });

  test('the record conserves water to its six figures, month by month', () => {
    const { waterPlan } = answerRecord(answer, tanked, 'us');
    if (!waterPlan) throw new Error('the site has a demand');
    expect(waterPlan).toMatchObject({ tankLitres: 2000, isTankGiven: true, reserveDays: 2 });
    let stored = waterPlan.months.at(-1)?.storedLitres ?? Number.NaN;
    for (const month of waterPlan.months) {
      const { deliveredLitres, drawnLitres, overflowLitres, storedLitres } = month;
      // Six figures of some 30,000 L are good to a tenth of a litre.
      expect(
        Math.abs(deliveredLitres - drawnLitres - overflowLitres - (storedLitres - stored)),
      ).toBeLessThan(0.2);
      stored = storedLitres;
    }
    expect(waterPlan.day.hours).toHaveLength(24);
    expect(JSON.parse(JSON.stringify(waterPlan))).toEqual(waterPlan);
  });
});
