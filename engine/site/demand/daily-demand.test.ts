import { describe, expect, test } from 'vitest';
import { dailyDemand, largestMonth, type Needs, steadyDemand } from './daily-demand.ts';
import { ANIMAL_FIGURES, PEOPLE_FIGURES, wateringNeed } from './demand-figures.ts';
import { eachMonth, inMonth, MONTHS } from './months.ts';

/** A litre a day. */
const L = 1e-3 / 86_400;
const JULY = MONTHS.indexOf('jul');
const SUMMER = eachMonth((month) => month >= 4 && month <= 8);

const FARM: Needs = {
  people: { count: 6, each: 50 * L },
  animals: [
    { count: 4, each: 38 * L },
    { count: 30, each: 10 * L },
  ],
  garden: { flow: 800 * L, season: SUMMER },
  drip: { count: 120, each: 2 * L, season: SUMMER },
  other: 100 * L,
};

describe('a need', () => {
  test('is the sum of its uses, and the garden drinks only in its season', () => {
    const { total } = dailyDemand(FARM);
    // 6·50 + 4·38 + 30·10 + 100, and 800 + 240 more from May to September.
    expect(inMonth(total, 0) / L).toBeCloseTo(852, 9);
    expect(inMonth(total, JULY) / L).toBeCloseTo(1892, 9);
    expect(total.filter((flow) => flow > 1000 * L)).toHaveLength(5);
  });

  test('with a tenth lost is a ninth more, and the losses are what is not used', () => {
    const { total, losses } = dailyDemand({ ...FARM, losses: 0.1 });
    expect(inMonth(total, 0) / L).toBeCloseTo(852 / 0.9, 9);
    expect(inMonth(losses, 0) / L).toBeCloseTo(852 / 9, 9);
  });

  test('grows with people and animals, not with the garden', () => {
    const { uses } = dailyDemand({ ...FARM, growth: 0.02, years: 10 });
    const grown = 1.02 ** 10;
    expect(inMonth(uses.people, JULY) / L).toBeCloseTo(300 * grown, 9);
    expect(inMonth(uses.animals, JULY) / L).toBeCloseTo(452 * grown, 9);
    expect(inMonth(uses.garden, JULY) / L).toBeCloseTo(800, 9);
    expect(inMonth(uses.other, JULY) / L).toBeCloseTo(100, 9);
  });

  test('rises in a month that asks more, and the largest month is found', () => {
    const monthFactors = eachMonth((month) => (month === JULY ? 1.3 : 1));
    const hot = dailyDemand({ ...FARM, monthFactors });
    expect(inMonth(hot.total, JULY) / L).toBeCloseTo(1.3 * 1892, 9);
    expect(largestMonth(hot)).toBe(JULY);
  });

  test('that is one amount is that amount in every month', () => {
    expect(steadyDemand(900 * L).total).toEqual(MONTHS.map(() => 900 * L));
  });

  test('refuses losses that leave nothing', () => {
    expect(() => dailyDemand({ ...FARM, losses: 1 })).toThrow('losses');
    expect(() => dailyDemand({ ...FARM, monthFactors: [1, 2] })).toThrow('twelve');
  });
});

test('every figure lies in the range its sources give', () => {
  for (const { value, low, high } of Object.values({ ...PEOPLE_FIGURES, ...ANIMAL_FIGURES })) {
    expect(value).toBeGreaterThanOrEqual(low);
    expect(value).toBeLessThanOrEqual(high);
  }
});

describe('watering', () => {
  const bed = { evapotranspiration: 5e-3 / 86_400, plantFactor: 1, area: 200, efficiency: 1 };

  test('5 mm a day on 200 m² is 1,000 L a day', () => {
    expect(wateringNeed(bed) / L).toBeCloseTo(1000, 9);
  });

  test('takes more by a sprinkler than by drip, and half for a plant that needs half', () => {
    expect(wateringNeed({ ...bed, efficiency: 0.75 })).toBeGreaterThan(
      wateringNeed({ ...bed, efficiency: 0.9 }),
    );
    expect(wateringNeed({ ...bed, plantFactor: 0.5 }) / wateringNeed(bed)).toBeCloseTo(0.5, 12);
    expect(() => wateringNeed({ ...bed, efficiency: 0 })).toThrow('efficiency');
  });
});
