import { describe, expect, test } from 'vitest';
import { plainPlace } from '../cycle/fixtures/made-installation.ts';
import { beatAtHead, operatingPoint } from '../cycle/operating-point.ts';
import { seededStream } from '../numerics/seeded-stream.ts';
import { averaged, type BenchReading, flowsOf, type Measured } from './bench-reading.ts';
import { BENCH_RESOLUTION, predictedReading } from './measured-against-predicted.ts';
import { doubtsAboutReading, isImpossible } from './reading-doubts.ts';
import { efficienciesOf } from './reading-efficiencies.ts';

const read = (value: number, spread = 0.01 * value, count = 3): Measured => ({
  value,
  spread,
  count,
  range: 0,
});

/** 2 m of fall, 10 m of lift, 6 L/min wasted and 0.9 delivered. */
const READING: BenchReading = {
  fall: read(2),
  lift: read(10),
  wasteFlow: read(1e-4),
  deliveryFlow: read(1.5e-5),
};

describe('repeat readings', () => {
  test('are averaged, and the mean is surer than one of them', () => {
    const measured = averaged([{ value: 9 }, { value: 10 }, { value: 11 }], 0.001);
    // Standard deviation of 9, 10, 11 is 1; of the mean of three 1/√3.
    expect(measured).toMatchObject({ value: 10, count: 3, scatter: 1, range: 2 });
    expect(measured.spread).toBeCloseTo(1 / Math.sqrt(3), 12);
  });

  test('that agree by luck are no better than their instrument', () => {
    expect(averaged([{ value: 10 }, { value: 10 }], 0.02).spread).toBeCloseTo(0.2 / Math.SQRT2, 12);
    expect(averaged([{ value: 10, spread: 0.5 }], 0.02).spread).toBe(0.5);
  });
});

describe('the water', () => {
  test('that nobody read follows from the other two flows', () => {
    const flows = flowsOf(READING);
    expect(flows?.supply.value).toBeCloseTo(1.15e-4, 12);
    expect(flows?.supply).toMatchObject({ isWorkedOut: true });
    expect(flows?.supply.spread).toBeCloseTo(Math.hypot(1e-6, 1.5e-7), 15);
    const { wasteFlow: _, ...without } = { ...READING, supplyFlow: read(1.15e-4) };
    expect(flowsOf(without)?.waste.value).toBeCloseTo(1e-4, 12);
    expect(flowsOf({ fall: read(2), lift: read(10), wasteFlow: read(1e-4) })).toBeUndefined();
  });
});

describe('efficiencies', () => {
  test('by both definitions, as worked by hand', () => {
    // Rankine 1.5e-5 · 8/(1e-4 · 2) = 0.6; D'Aubuisson 1.5e-5 · 10/(1.15e-4 · 2) = 0.652.
    const found = efficienciesOf(READING);
    expect(found?.rankine.value).toBeCloseTo(0.6, 12);
    expect(found?.daubuisson.value).toBeCloseTo(0.65217, 5);
  });

  test('have the spread that scattered readings give them', () => {
    const next = seededStream(3, 'efficiency');
    const normal = () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
    const values = Array.from({ length: 4000 }, () => {
      const drawn = (one: Measured): Measured => ({
        ...one,
        value: one.value + normal() * one.spread,
      });
      const { fall, lift, wasteFlow, deliveryFlow } = READING;
      return efficienciesOf({
        fall: drawn(fall),
        lift: drawn(lift),
        wasteFlow: drawn(wasteFlow as Measured),
        deliveryFlow: drawn(deliveryFlow as Measured),
      })?.rankine.value as number;
    });
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const scatter = Math.sqrt(
      values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length,
    );
    const spread = efficienciesOf(READING)?.rankine.spread as number;
    // 4000 draws: the scatter itself is known to 1.1 %.
    expect(Math.abs(scatter / spread - 1)).toBeLessThan(0.05);
  });
});

describe('what cannot be is questioned', () => {
  const kinds = (reading: BenchReading, lineCapacity?: number) =>
    doubtsAboutReading(reading, lineCapacity === undefined ? {} : { lineCapacity }).map(
      ({ kind }) => kind,
    );

  test('a sound reading raises no doubt', () => {
    expect(
      kinds(
        { ...READING, supplyFlow: read(1.16e-4), vesselHead: read(10.3), peakHead: read(40) },
        3e-4,
      ),
    ).toEqual([]);
  });

  test('three flows that do not add up, once they differ by more than they are good to', () => {
    // 1 % of 1.15e-4 and of 1e-4 together: 1.53e-6, twice that is 3.06e-6.
    expect(kinds({ ...READING, supplyFlow: read(1.15e-4 + 2.9e-6) })).toEqual([]);
    expect(kinds({ ...READING, supplyFlow: read(1.15e-4 + 3.3e-6) })).toEqual(['waterBalance']);
    expect(kinds({ ...READING, supplyFlow: read(1.15e-4 - 3.3e-6) })).toEqual(['waterBalance']);
  });

  test('more delivered than was supplied', () => {
    expect(
      kinds({ fall: read(2), lift: read(10), supplyFlow: read(1e-5), deliveryFlow: read(1.5e-5) }),
    ).toContain('moreOutThanIn');
  });

  test('more energy out than in, but not by as much as chance', () => {
    // Energy breaks even at q = Q H/(h − H) = 2.5e-5.
    expect(kinds({ ...READING, deliveryFlow: read(2.52e-5) })).toEqual([]);
    expect(kinds({ ...READING, deliveryFlow: read(2.7e-5) })).toEqual(['energyFromNothing']);
  });

  test('heads in the wrong order', () => {
    expect(kinds({ ...READING, lift: read(1.8) })).toContain('liftBelowFall');
    expect(kinds({ ...READING, vesselHead: read(9) })).toEqual(['vesselBelowLift']);
    expect(kinds({ ...READING, vesselHead: read(11), peakHead: read(9, 0.5) })).toEqual([
      'peakBelowVessel',
    ]);
  });

  test('more through the drive line than it passes', () => {
    expect(kinds(READING, 1e-4)).toEqual(['moreThanLinePasses']);
  });

  test('repeats that lie far apart and single readings ask for more, and are not impossible', () => {
    const apart = { ...read(1e-4), range: 2e-5 };
    const doubts = doubtsAboutReading({
      ...READING,
      wasteFlow: apart,
      beatFrequency: read(1, 0.01, 1),
    });
    expect(doubts).toMatchObject([
      { kind: 'oneReading', quantity: 'beatFrequency' },
      { kind: 'repeatsDiffer', quantity: 'wasteFlow' },
    ]);
    expect(doubts.some(isImpossible)).toBe(false);
  });
});

describe('measured against predicted', () => {
  const installation = plainPlace();
  const point = beatAtHead(installation, installation.lift, BENCH_RESOLUTION);
  const made: BenchReading = {
    fall: read(installation.fall, 0.005 * installation.fall),
    lift: read(installation.lift, 0.01 * installation.lift),
    beatFrequency: read(point.beatFrequency),
    deliveryFlow: read(point.deliveryFlow),
    wasteFlow: read(point.wasteFlow),
    peakHead: read(point.peakHead),
  };

  test('a reading made by the cycle agrees with it in everything', () => {
    const { runs, residuals } = predictedReading(installation, made, 'atVessel');
    expect(runs).toBe(true);
    expect(residuals.map(({ quantity }) => quantity)).toEqual([
      'beatFrequency',
      'deliveryFlow',
      'wasteFlow',
      'peakHead',
    ]);
    for (const { gap, agrees, predicted } of residuals) {
      expect(Math.abs(gap / predicted)).toBeLessThan(1e-9);
      expect(agrees).toBe(true);
    }
  });

  test('a fifth less delivered is seen, with its sign, and nothing else is', () => {
    const less = { ...made, deliveryFlow: read(0.8 * point.deliveryFlow) };
    const { residuals } = predictedReading(installation, less, 'atVessel');
    const one = residuals.find(({ quantity }) => quantity === 'deliveryFlow');
    expect(one?.share).toBeCloseTo(-0.2, 9);
    expect(one?.agrees).toBe(false);
    expect(residuals.filter(({ agrees }) => !agrees)).toHaveLength(1);
  });

  test('a fall that is known badly makes the prediction wide, and a gap no finding', () => {
    const wide = {
      ...made,
      fall: read(installation.fall, 0.1 * installation.fall),
      deliveryFlow: read(0.85 * point.deliveryFlow),
    };
    const { residuals } = predictedReading(installation, wide, 'atVessel');
    const one = residuals.find(({ quantity }) => quantity === 'deliveryFlow');
    expect(one?.predictedSpread).toBeGreaterThan(0.05 * point.deliveryFlow);
    expect(one?.agrees).toBe(true);
  });

  test('through a delivery line the head in the vessel is predicted too', () => {
    const through = operatingPoint(installation, BENCH_RESOLUTION);
    const { residuals } = predictedReading(
      installation,
      { ...made, vesselHead: read(through.vesselHead) },
      'throughLine',
    );
    const one = residuals.find(({ quantity }) => quantity === 'vesselHead');
    expect(Math.abs(one?.share ?? 1)).toBeLessThan(0.01);
  });

  test('where the cycle does not run there is nothing to compare, and the outcome says why', () => {
    const low = { ...made, fall: read(0.02), lift: read(60) };
    const { runs, residuals, outcome } = predictedReading(installation, low, 'atVessel');
    expect(runs).toBe(false);
    expect(residuals).toEqual([]);
    expect(['staysOpen', 'staysShut', 'noDelivery']).toContain(outcome);
  });
});
