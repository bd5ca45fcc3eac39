/** Laws of the tank, on random days and years. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DRAW_PATTERNS, hourlyDraw } from './draw-pattern.ts';
import { eachMonth } from './months.ts';
import { dayBalance, type TankFlows, tankStep, yearBalance } from './tank-balance.ts';
import { dailyTank, reserveVolume } from './tank-size.ts';

const SEEDED = { seed: 20_240_611, numRuns: 300 };
const FEW = { seed: 20_240_611, numRuns: 12 };

/** Flows up to some 4 m³ a day, volumes up to 5 m³: nought among them. */
const flow = fc.oneof(fc.constant(0), fc.double({ min: 0, max: 5e-5, noNaN: true }));
const volume = fc.oneof(fc.constant(0), fc.double({ min: 0, max: 5, noNaN: true }));
const draw = fc.array(flow, { minLength: 24, maxLength: 24 });
const day = fc.record({ volume, delivery: flow, draw });
const year = fc.record({
  volume,
  delivery: fc.array(flow, { minLength: 12, maxLength: 12 }),
  draw: fc.array(draw, { minLength: 12, maxLength: 12 }),
});

/** Sums of some thousand volumes of at most 5 m³ round to far less than this. */
const ROUNDING = 1e-9;

function expectConserved(total: TankFlows, start: number): void {
  expect(
    Math.abs(total.delivered - total.drawn - total.overflow - (total.stored - start)),
  ).toBeLessThan(ROUNDING);
  expect(Math.abs(total.wanted - total.drawn - total.shortfall)).toBeLessThan(ROUNDING);
}

function expectPossible(step: TankFlows, most: number): void {
  for (const amount of [step.drawn, step.overflow, step.shortfall, step.stored]) {
    expect(amount).toBeGreaterThanOrEqual(0);
  }
  expect(step.stored).toBeLessThanOrEqual(most);
  // A tank that runs over is full, and one that falls short is empty.
  if (step.overflow > 0) expect(step.stored).toBe(most);
  if (step.shortfall > 0) expect(step.stored).toBe(0);
}

describe('a day', () => {
  test('water in is water drawn, run over and stored; hour by hour and in all', () => {
    fc.assert(
      fc.property(day, volume, (setup, part) => {
        const start = Math.min(part, setup.volume);
        const { steps, total } = dayBalance({ ...setup, start });
        expectConserved(total, start);
        let before = start;
        for (const hour of steps) {
          expectConserved(hour, before);
          expectPossible(hour, setup.volume);
          before = hour.stored;
        }
      }),
      SEEDED,
    );
  });

  test('left to itself it ends as it began', () => {
    fc.assert(
      fc.property(day, (setup) => {
        const { start, total } = dayBalance(setup);
        expect(Math.abs(total.stored - start)).toBeLessThan(ROUNDING);
      }),
      SEEDED,
    );
  });

  test('that beginning is what a long row of days from a full tank comes to', () => {
    const setup = { volume: 3, delivery: 1e-5, draw: hourlyDraw(1.1e-5, DRAW_PATTERNS.house) };
    let stored = setup.volume;
    for (let count = 0; count < 400; count += 1) {
      stored = dayBalance({ ...setup, start: stored }).total.stored;
    }
    expect(dayBalance(setup).start).toBeCloseTo(stored, 9);
  });

  test('a larger tank never leaves more short, and more water never does either', () => {
    fc.assert(
      fc.property(day, volume, flow, (setup, extraVolume, extraFlow) => {
        const { shortfall, overflow } = dayBalance(setup).total;
        const larger = dayBalance({ ...setup, volume: setup.volume + extraVolume }).total;
        expect(larger.shortfall).toBeLessThanOrEqual(shortfall + ROUNDING);
        expect(larger.overflow).toBeLessThanOrEqual(overflow + ROUNDING);
        const wetter = dayBalance({ ...setup, delivery: setup.delivery + extraFlow }).total;
        expect(wetter.shortfall).toBeLessThanOrEqual(shortfall + ROUNDING);
      }),
      SEEDED,
    );
  });

  test('cutting an hour in two changes nothing', () => {
    fc.assert(
      fc.property(volume, flow, flow, (size, delivery, wanted) => {
        const whole = tankStep(
          { volume: size, stored: size / 2 },
          { delivery, draw: wanted },
          3600,
        );
        const first = tankStep(
          { volume: size, stored: size / 2 },
          { delivery, draw: wanted },
          1000,
        );
        const rest = tankStep(
          { volume: size, stored: first.stored },
          { delivery, draw: wanted },
          2600,
        );
        expect(rest.stored).toBeCloseTo(whole.stored, 12);
        expect(first.overflow + rest.overflow).toBeCloseTo(whole.overflow, 12);
        expect(first.shortfall + rest.shortfall).toBeCloseTo(whole.shortfall, 12);
      }),
      SEEDED,
    );
  });

  test('what makes no tank is refused', () => {
    expect(() => dayBalance({ volume: -1, delivery: 0, draw: Array(24).fill(0) })).toThrow(
      'volume',
    );
    expect(() => dayBalance({ volume: 1, delivery: 0, draw: [0] })).toThrow('24');
  });
});

describe('the tank for a day', () => {
  test('is enough, and a hair less is not', () => {
    fc.assert(
      fc.property(draw, fc.double({ min: 1, max: 3, noNaN: true }), (wanted, plenty) => {
        const mean = wanted.reduce((sum, one) => sum + one, 0) / 24;
        const delivery = plenty * mean;
        const { kind, volume: size } = dailyTank({ delivery, draw: wanted });
        expect(kind).toBe('carries');
        expect(dayBalance({ volume: size, delivery, draw: wanted }).total.shortfall).toBeLessThan(
          ROUNDING,
        );
        if (size < 1e-3) return;
        const smaller = dayBalance({ volume: size - 1e-4, delivery, draw: wanted });
        expect(smaller.total.shortfall).toBeGreaterThan(1e-5);
      }),
      SEEDED,
    );
  });

  test('of a ram that brings too little keeps every drop of it', () => {
    fc.assert(
      fc.property(draw, fc.double({ min: 0, max: 0.99, noNaN: true }), (wanted, share) => {
        const mean = wanted.reduce((sum, one) => sum + one, 0) / 24;
        fc.pre(mean > 1e-9);
        const { kind, volume: size } = dailyTank({ delivery: share * mean, draw: wanted });
        expect(kind).toBe('short');
        const { total } = dayBalance({ volume: size, delivery: share * mean, draw: wanted });
        expect(total.overflow).toBeLessThan(ROUNDING);
        // What is missing is what the ram does not bring, and no more.
        expect(Math.abs(total.shortfall - (total.wanted - total.delivered))).toBeLessThan(ROUNDING);
      }),
      SEEDED,
    );
  });

  test('is nothing for an even draw, and three hours of watering need 21/24 of the day', () => {
    const even = hourlyDraw(1e-5, DRAW_PATTERNS.evenly);
    expect(dailyTank({ delivery: 1e-5, draw: even }).volume).toBeCloseTo(0, 12);
    const evening = hourlyDraw(1e-5, DRAW_PATTERNS.evening);
    expect(dailyTank({ delivery: 1e-5, draw: evening }).volume).toBeCloseTo(
      1e-5 * 86_400 * (21 / 24),
      9,
    );
  });

  test('two days of 900 L are 1,800 L', () => {
    expect(reserveVolume(0.9 / 86_400, 2 * 86_400)).toBeCloseTo(1.8, 12);
  });
});

describe('a year', () => {
  test('water in is water drawn, run over and stored; month by month and in all', () => {
    fc.assert(
      fc.property(year, (setup) => {
        const { months, total, start } = yearBalance(setup);
        expectConserved(total, start);
        expect(Math.abs(total.stored - start)).toBeLessThan(1e-8);
        let before = start;
        for (const month of months) {
          expectConserved(month, before);
          expect(month.lowest).toBeGreaterThanOrEqual(0);
          before = month.stored;
        }
      }),
      FEW,
    );
  });

  test('a larger tank never leaves more short over the year', () => {
    fc.assert(
      fc.property(year, volume, (setup, extra) => {
        const smaller = yearBalance(setup);
        const larger = yearBalance({ ...setup, volume: setup.volume + extra });
        expect(larger.total.shortfall).toBeLessThanOrEqual(smaller.total.shortfall + 1e-8);
      }),
      FEW,
    );
  });

  test('has 365 days, all met by a ram that brings more than is drawn', () => {
    const pattern = hourlyDraw(1e-5, DRAW_PATTERNS.evenly);
    const setup = { volume: 0.1, draw: eachMonth(() => pattern) };
    const enough = yearBalance({ ...setup, delivery: eachMonth(() => 1.01e-5) });
    expect(enough.months.reduce((sum, { dayCount }) => sum + dayCount, 0)).toBe(365);
    expect(enough.metCount).toBe(365);
    expect(yearBalance({ ...setup, delivery: eachMonth(() => 0.5e-5) }).metCount).toBe(0);
  });

  test('a tank can carry the end of a wet month into a dry one, for as many days as it holds', () => {
    // 864 L a day are drawn evenly; in June nothing comes, and 8.64 m³ last ten days of it.
    const pattern = hourlyDraw(1e-5, DRAW_PATTERNS.evenly);
    const { months } = yearBalance({
      volume: 8.64 + 1e-9,
      draw: eachMonth(() => pattern),
      delivery: eachMonth((month) => (month === 5 ? 0 : 2e-5)),
    });
    expect(months.map(({ dayCount, metCount }) => dayCount - metCount)).toEqual([
      0, 0, 0, 0, 0, 20, 0, 0, 0, 0, 0, 0,
    ]);
  });
});
