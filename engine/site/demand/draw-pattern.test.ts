import { expect, test } from 'vitest';
import { dailyDemand } from './daily-demand.ts';
import { DRAW_PATTERNS, drawOfUses, hourlyDraw, shares } from './draw-pattern.ts';
import { eachMonth, inMonth } from './months.ts';

const sum = (flows: readonly number[]): number => flows.reduce((total, flow) => total + flow, 0);

test.each(Object.entries(DRAW_PATTERNS))('%s: the shares of a day add up to one', (_, pattern) => {
  expect(pattern).toHaveLength(24);
  expect(sum(pattern)).toBeCloseTo(1, 12);
});

test('the hours of a day add up to its mean flow, whatever the pattern', () => {
  for (const pattern of Object.values(DRAW_PATTERNS)) {
    expect(sum(hourlyDraw(2e-5, pattern)) / 24).toBeCloseTo(2e-5, 15);
  }
});

test('uses are drawn by their own patterns, and losses with them', () => {
  const demand = dailyDemand({
    people: { count: 6, each: 6e-7 },
    garden: { flow: 9e-6, season: eachMonth((month) => month === 6) },
    losses: 0.2,
  });
  const january = drawOfUses(demand, 0);
  const july = drawOfUses(demand, 6);
  expect(sum(january) / 24).toBeCloseTo(inMonth(demand.total, 0), 15);
  expect(sum(july) / 24).toBeCloseTo(inMonth(demand.total, 6), 15);
  // The garden is watered from six to nine in the evening, so noon knows no season.
  expect(july[12]).toBeCloseTo(january[12] ?? Number.NaN, 15);
  expect(july[19]).toBeGreaterThan(5 * (january[19] ?? Number.NaN));
});

test('a need of nothing draws nothing', () => {
  expect(sum(drawOfUses(dailyDemand({}), 3))).toBe(0);
});

test('weights that make no day are refused', () => {
  expect(() => shares([1, 2])).toThrow('24');
  expect(() => shares(Array(24).fill(0))).toThrow('nought');
  expect(() => shares([-1, ...Array(23).fill(1)])).toThrow('nought');
});
