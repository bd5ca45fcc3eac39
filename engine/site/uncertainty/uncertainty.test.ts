/** From what is not known exactly to the chance that a ram runs, and what it may give. */
import { describe, expect, test } from 'vitest';
import { driveOf, lengthOf, plainPlace } from '../../cycle/fixtures/made-installation.ts';
import type { Installation } from '../../cycle/installation.ts';
import { operatingPoint } from '../../cycle/operating-point.ts';
import { waveSpeed } from '../../pipes/wave-speed.ts';
import { emptying } from '../drain-time.ts';
import { varied } from '../varied.ts';
import { kindOf } from '../verdict.ts';
import { drawnColumn } from './drawn-column.ts';
import { sampleAnswer, sampledAnswer } from './sample-answer.ts';
import { isFactor, UNSURE_FACTORS, UNSURE_VALUES, type UncertainInput } from './uncertain-input.ts';
import { middleOf, withInputs } from './with-inputs.ts';

const place = plainPlace({ source: { kind: 'steady', yield: 4e-4 } });
const FALL: UncertainInput = { what: 'fall', spread: 0.1, shape: 'normal' };
const LIFT: UncertainInput = { what: 'lift', spread: 0.5, shape: 'normal' };
const BACK: UncertainInput = { what: 'backFlow', spread: 0.25, shape: 'logNormal' };
const PLAN = { samples: 80, seed: 4 };

const mean = (x: readonly number[]): number => x.reduce((sum, a) => sum + a, 0) / x.length;
const deviation = (x: readonly number[]): number => {
  const middle = mean(x);
  return Math.sqrt(mean(x.map((a) => (a - middle) ** 2)));
};

test('a wall half as stiff gives twice as much to a wave, thick or thin', () => {
  for (const name of ['garden hose 1/2 in', 'steel sch 40 3/4 in']) {
    const line = plainPlace({ driveLine: driveOf(name, 12) });
    const [before, softer] = [1, 0.5].map((wallStiffness) => {
      const segment = withInputs(line, { wallStiffness }).driveLine.segments[0];
      if (!segment) throw new Error('a pipe');
      return waveSpeed(segment, line.water);
    }) as [number, number];
    // Exact: 1/a² = ρ/K + wall, and the wall's part is as the inverse of its modulus.
    const water = line.water.density / line.water.bulkModulus;
    expect((1 / softer ** 2 - water) / (1 / before ** 2 - water)).toBeCloseTo(2, 9);
  }
});

describe('drawn values', () => {
  const many = { samples: 20_000, seed: 1 };

  test('the spread of a sum of independent readings is the root of the sum of squares', () => {
    const readings: readonly UncertainInput[] = [
      { what: 'fall', spread: 0.3, shape: 'normal' },
      { what: 'lift', spread: 0.4, shape: 'normal' },
      { what: 'driveLength', spread: 1.2, shape: 'uniform' },
    ];
    const columns = readings.map((input) => drawnColumn(input, 20, many));
    const sums = (columns[0] ?? []).map((_, i) =>
      columns.reduce((sum, column) => sum + (column[i] as number), 0),
    );
    expect(mean(sums)).toBeCloseTo(60, 3);
    // Exact: √(0.3² + 0.4² + 1.2²) = 1.3. Chance of order leaves some 1/√20,000 between columns.
    expect(deviation(sums) / 1.3).toBeGreaterThan(0.99);
    expect(deviation(sums) / 1.3).toBeLessThan(1.01);
  });

  test('each shape has the spread that it was asked for, and its own form', () => {
    for (const shape of ['normal', 'uniform'] as const) {
      const column = drawnColumn({ what: 'fall', spread: 0.2, shape }, 3, many);
      expect(mean(column)).toBeCloseTo(3, 3);
      expect(deviation(column)).toBeCloseTo(0.2, 3);
    }
    const even = drawnColumn({ what: 'fall', spread: 0.2, shape: 'uniform' }, 3, many);
    expect(Math.max(...even)).toBeLessThan(3 + 0.2 * Math.sqrt(3) + 1e-12);
    const ratios = drawnColumn({ what: 'backFlow', spread: 0.4, shape: 'logNormal' }, 1, many);
    expect(mean(ratios.map(Math.log))).toBeCloseTo(0, 3);
    expect(deviation(ratios.map(Math.log))).toBeCloseTo(0.4, 3);
  });

  test('nothing is drawn at or below nought, however wide the spread', () => {
    for (const shape of ['normal', 'uniform', 'logNormal'] as const) {
      const column = drawnColumn({ what: 'fall', spread: 2, shape }, 1, many);
      expect(Math.min(...column)).toBeGreaterThan(0);
    }
  });
});

describe('an installation with drawn values', () => {
  const withAir: Installation = {
    ...place,
    driveLine: driveOf('steel sch 40 3/4 in', 12, {
      pockets: [
        { distance: 3, volume: 1e-4 },
        { distance: 9, volume: 3e-4 },
      ],
    }),
    deliveryLine: {
      segments: [lengthOf('PE100 SDR11 20', 60), lengthOf('PE100 SDR11 25', 40)],
      profile: [
        { distance: 0, elevation: 0 },
        { distance: 100, elevation: 12 },
      ],
    },
  };
  const all = [...UNSURE_VALUES, ...UNSURE_FACTORS];

  test('at the middle of everything it is the place itself', () => {
    const middles = Object.fromEntries(
      all.map((what) => [what, isFactor(what) ? 1 : (middleOf(withAir, what) as number)]),
    );
    expect(withInputs(withAir, middles)).toEqual(withAir);
  });

  test.each(all)('%s drawn is that value, and changes the place', (what) => {
    const value = isFactor(what) ? 1.1 : 1.1 * (middleOf(withAir, what) as number);
    const other = withInputs(withAir, { [what]: value });
    expect(other).not.toEqual(withAir);
    if (!isFactor(what)) expect(middleOf(other, what)).toBeCloseTo(value, 12);
    for (const unlike of UNSURE_VALUES) {
      if (unlike !== what) expect(middleOf(other, unlike)).toBe(middleOf(withAir, unlike));
    }
  });

  test('caught air stays where it is', () => {
    const { pockets } = withInputs(withAir, { trappedAir: 2e-4 }).driveLine;
    expect(pockets.map(({ distance }) => distance)).toEqual([3, 9]);
    expect(pockets[1]?.volume).toBeCloseTo(1.5e-4, 12);
  });

  test('a lift is drawn no lower than just above the fall', () => {
    expect(withInputs(place, { fall: 5, lift: 1 }).lift).toBeCloseTo(5.1, 12);
  });
});

describe('a sampled answer', () => {
  const base = sampledAnswer(place, [FALL, LIFT, BACK], PLAN);

  test('tells its progress after each sample', () => {
    const run = sampleAnswer(place, [FALL], { samples: 3, seed: 1 });
    expect([run.next(), run.next(), run.next()].map(({ value }) => value)).toEqual([
      { done: 1, of: 3 },
      { done: 2, of: 3 },
      { done: 3, of: 3 },
    ]);
    expect(run.next()).toMatchObject({ done: true, value: { samples: 3, seed: 1 } });
  });

  test('is the same for the same seed, in whatever order the inputs stand', () => {
    expect(sampledAnswer(place, [FALL, LIFT, BACK], PLAN)).toEqual(base);
    expect(sampledAnswer(place, [BACK, FALL, LIFT], PLAN)).toEqual(base);
  });

  test('another seed draws others, and an input without spread changes nothing', () => {
    expect(sampledAnswer(place, [FALL, LIFT, BACK], { ...PLAN, seed: 5 })).not.toEqual(base);
    const still = { what: 'stroke', spread: 0, shape: 'normal' } as const;
    const { shares, ...rest } = sampledAnswer(place, [FALL, still, LIFT, BACK], PLAN);
    expect({ ...rest, shares: base.shares }).toEqual(base);
    expect(shares.find(({ what }) => what === 'stroke')?.share).toBe(0);
  });

  test('without any spread the band is one flow, and the chance one or nought', () => {
    const sure = [FALL, LIFT, BACK].map((input) => ({ ...input, spread: 0 }));
    const one = sampledAnswer(place, sure, { samples: 5, seed: 1 });
    const { deliveryFlow } = operatingPoint(place, { block: 4 });
    expect(one.chanceItRuns).toBe(1);
    // Exact: 7 of 9 with the two and two counted in. Five that run make nobody certain.
    expect(one.standardErrorOfChance).toBeCloseTo(Math.sqrt(14 / 81 / 9), 12);
    expect(one.deliveryBand.low).toBeCloseTo(deliveryFlow, 12);
    expect(one.deliveryBand.high).toBe(one.deliveryBand.low);
    expect(one.shares.every(({ share }) => share === 0)).toBe(true);
    const weak = plainPlace({ driveLine: driveOf('garden hose 1/2 in', 60) });
    const none = sampledAnswer(weak, sure, { samples: 5, seed: 1 });
    expect(none).toMatchObject({ chanceItRuns: 0, deliveryBand: { low: 0, middle: 0, high: 0 } });
    expect(none.bandWhenItRuns).toBeUndefined();
  });

  test('the band holds the middle, is wider for wider spreads, and shares sum to one at most', () => {
    const { low, middle, high } = base.deliveryBand;
    expect(low).toBeLessThan(middle);
    expect(middle).toBeLessThan(high);
    const wider = sampledAnswer(place, [FALL, LIFT, { ...BACK, spread: 0.5 }], PLAN);
    expect(wider.deliveryBand.high - wider.deliveryBand.low).toBeGreaterThan(1.2 * (high - low));
    const sum = base.shares.reduce((total, { share }) => total + share, 0);
    expect(sum).toBeGreaterThan(0.5);
    expect(sum).toBeLessThanOrEqual(1 + 1e-12);
    expect(base.shares.map(({ share }) => share)).toEqual(
      base.shares.map(({ share }) => share).sort((a, b) => b - a),
    );
    const counted = Object.values(base.counts).reduce((total, n) => total + n, 0);
    expect(counted).toBe(PLAN.samples);
  });

  test('one thing alone unsure carries all of the spread', () => {
    const { shares } = sampledAnswer(place, [BACK, { ...FALL, spread: 0 }], PLAN);
    expect(shares[0]).toMatchObject({ what: 'backFlow' });
    expect(shares[0]?.share).toBeGreaterThan(0.95);
  });

  test('a source that gives just what the ram takes keeps it running in one try of two', () => {
    const { supplyFlow } = operatingPoint(place, { block: 4 });
    const tight = plainPlace({ source: { kind: 'steady', yield: supplyFlow } });
    const flow: UncertainInput = {
      what: 'sourceFlow',
      spread: 0.1 * supplyFlow,
      shape: 'normal',
    };
    const { chanceItRuns, counts, deliveryBand } = sampledAnswer(tight, [flow], PLAN);
    expect(chanceItRuns).toBeCloseTo(0.5, 2);
    expect(counts.starves).toBe(PLAN.samples / 2);
    // Tries that starve give nothing.
    expect(deliveryBand.low).toBe(0);
  });

  test('at the edge of its fall a ram runs in about one try of two', () => {
    const runsAt = (fall: number): boolean => {
      const other = varied(place, 'fall', fall);
      return kindOf(other, operatingPoint(other, { block: 4 })) === 'runs';
    };
    let stands = 0.2;
    let runs = place.fall;
    expect([runsAt(stands), runsAt(runs)]).toEqual([false, true]);
    for (let i = 0; i < 12; i++) {
      const middle = (stands + runs) / 2;
      if (runsAt(middle)) runs = middle;
      else stands = middle;
    }
    const edge = varied(place, 'fall', runs);
    const input: UncertainInput = { what: 'fall', spread: 0.05 * runs, shape: 'normal' };
    const { chanceItRuns } = sampledAnswer(edge, [input], PLAN);
    expect(chanceItRuns).toBeGreaterThan(0.35);
    expect(chanceItRuns).toBeLessThan(0.65);
  });

  test('a need is met the less often the more it is, and never when it does not run', () => {
    const chance = (demand: number): number =>
      sampledAnswer(place, [FALL, LIFT, BACK], { ...PLAN, demand }).chanceOfNeed as number;
    const { low, middle, high } = base.deliveryBand;
    expect(chance(0)).toBe(base.chanceItRuns);
    expect(chance(low)).toBeCloseTo(0.9, 1);
    expect(chance(middle)).toBeCloseTo(0.5, 1);
    expect(chance(high)).toBeCloseTo(0.1, 1);
    expect(base.chanceOfNeed).toBeUndefined();
  });

  test('refuses what cannot be drawn', () => {
    const draw =
      (inputs: readonly UncertainInput[], at = place) =>
      () =>
        sampledAnswer(at, inputs, { samples: 2, seed: 1 });
    expect(draw([FALL, FALL])).toThrow(/fall twice/);
    expect(draw([{ ...FALL, spread: -1 }])).toThrow(RangeError);
    expect(draw([{ ...FALL, spread: Number.NaN }])).toThrow(RangeError);
    const plenty = plainPlace();
    expect(draw([{ what: 'sourceFlow', spread: 1e-5, shape: 'normal' }], plenty)).toThrow(
      /no sourceFlow/,
    );
  });

  test('the place that was given is not touched', () => {
    const copy = structuredClone(place);
    sampledAnswer(place, [FALL, LIFT, BACK], { samples: 2, seed: 1 });
    expect(place).toEqual(copy);
  });
});

test('a store that empties counts with what a day of it gives, and is still no try that runs', () => {
  const source = { kind: 'store', surfaceArea: 0.5, inflow: 2e-5, depthOverIntake: 0.3 } as const;
  const store = { ...place, source };
  const { meanDelivery } = emptying(store, source);
  const sampled = sampledAnswer(store, [{ ...FALL, spread: 0.01 }], {
    samples: 12,
    seed: 2,
    demand: 0.5 * meanDelivery,
  });
  expect(sampled.chanceItRuns).toBe(0);
  expect(sampled.chanceOfNeed).toBe(1);
  expect(sampled.bandWhenItRuns).toBeUndefined();
  // Quick grid, two levels: some per cent.
  expect(sampled.deliveryBand.middle / meanDelivery).toBeGreaterThan(0.85);
  expect(sampled.deliveryBand.middle / meanDelivery).toBeLessThan(1.15);
});
