import { describe, expect, test } from 'vitest';
import { dailyDemand, steadyDemand } from './daily-demand.ts';
import { DRAW_PATTERNS } from './draw-pattern.ts';
import { eachMonth, inMonth } from './months.ts';
import { needMet } from './need-met.ts';
import { seasonalDelivery } from './seasonal-delivery.ts';
import { waterPlan } from './water-plan.ts';

/** A litre a day. */
const DAY = 86_400;
const L = 1e-3 / DAY;

describe('days met', () => {
  test('a ram that brings half of 900 L lets a full tank of 1,800 L last four days', () => {
    const met = needMet({ volume: 1.8, needed: 900 * L, delivered: 450 * L });
    expect(met).toMatchObject({ isMet: false, share: 0.5 });
    expect(met.lasts).toBeCloseTo(4 * 86_400, 3);
  });

  test('a need that is met has no end to tell, and none at all has no share', () => {
    expect(needMet({ volume: 1, needed: L, delivered: 2 * L })).toEqual({ share: 2, isMet: true });
    expect(needMet({ volume: 1, needed: 0, delivered: L })).toEqual({ isMet: true });
  });
});

describe('a source that yields less in some months', () => {
  const ram = { delivered: 400 * L, supply: 2e-4 };

  test('cuts what is delivered by the share it yields, and never adds to it', () => {
    const yields = eachMonth((month) => (month === 6 ? 1e-4 : month === 0 ? 1 : 'plenty'));
    const delivered = seasonalDelivery({ ...ram, yields });
    expect(inMonth(delivered, 6)).toBeCloseTo(200 * L, 15);
    expect(inMonth(delivered, 0)).toBe(400 * L);
    expect(inMonth(delivered, 3)).toBe(400 * L);
  });

  test('a ram that takes nothing delivers what it did', () => {
    const yields = eachMonth(() => 0);
    expect(inMonth(seasonalDelivery({ delivered: 0, supply: 0, yields }), 0)).toBe(0);
  });
});

describe('the plan', () => {
  const demand = dailyDemand({
    people: { count: 6, each: 50 * L },
    garden: { flow: 600 * L, season: eachMonth((month) => month >= 4 && month <= 8) },
  });

  test('tells the months in which it is enough', () => {
    const plan = waterPlan({ demand, delivery: eachMonth(() => 441 * L), standstill: 2 * DAY });
    expect(plan.months.map(({ isMet }) => isMet)).toEqual(
      eachMonth((month) => month < 4 || month > 8),
    );
    expect(plan.months[6]?.share).toBeCloseTo(0.49, 9);
    expect(plan.hardestMonth).toBe(4);
    expect(plan.reserve?.volume).toBeCloseTo(1.8, 9);
    expect(plan.year.metCount).toBeLessThan(365);
    expect(plan.daily.kind).toBe('both');
  });

  test('proposes a tank that carries every day it can, with the reserve on top', () => {
    const plan = waterPlan({ demand, delivery: eachMonth(() => 950 * L), standstill: 2 * DAY });
    expect(plan.isVolumeGiven).toBe(false);
    expect(plan.daily.kind).toBe('carries');
    expect(plan.volume).toBeCloseTo(plan.daily.volume + 1.8, 9);
    expect(plan.year.metCount).toBe(365);
    expect(plan.day.total.shortfall).toBeLessThan(1e-12);
  });

  test('the dry month is the hardest, though another needs more', () => {
    const delivery = eachMonth((month) => (month === 10 ? 100 * L : 950 * L));
    const plan = waterPlan({ demand, delivery, volume: 1 });
    expect(plan).toMatchObject({ hardestMonth: 10, largestMonth: 4, isVolumeGiven: true });
    expect(plan.day.total.shortfall).toBeCloseTo(0.2, 6);
  });

  test('a ram that stands still leaves the tank for as long as it lasts', () => {
    const plan = waterPlan({
      demand: steadyDemand(500 * L),
      delivery: eachMonth(() => 0),
      volume: 1,
      pattern: DRAW_PATTERNS.stock,
    });
    expect(plan.daily).toEqual({ kind: 'short', volume: 0 });
    expect(plan.lasts).toBeCloseTo(2 * DAY, 3);
    expect(plan.year.total.drawn).toBe(0);
  });
});
