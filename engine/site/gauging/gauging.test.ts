/** Measured flows: the laws that every method keeps, and what is said when its conditions are broken. */
import { describe, expect, test } from 'vitest';
import { repeated } from '../../numerics/repeated.ts';
import { bucketFlow } from './bucket-flow.ts';
import { combinedFlow } from './combined.ts';
import { dropFlow } from './drop-flow.ts';
import { floatFlow } from './float-flow.ts';
import { rectangularWeirFlow } from './rectangular-weir-flow.ts';
import { supplyFrom } from './supply.ts';
import { vNotchFlow } from './v-notch-flow.ts';

const readings = (...values: readonly number[]) => values.map((value) => ({ value }));
const degrees = (angle: number): number => (angle / 180) * Math.PI;
const kinds = (list: readonly { readonly kind: string }[]) => list.map(({ kind }) => kind);

describe('repeat readings', () => {
  test('the mean of three is known as the root of three better than one', () => {
    // Exact: mean 43.1667, s = 1.25831 (squares 1.3611, 1.7778, 0.0278 over two).
    const { mean, scatter, spread, range } = repeated(readings(42, 44.5, 43), 0.3);
    expect(mean).toBeCloseTo(129.5 / 3, 10);
    expect(scatter).toBeCloseTo(Math.sqrt(3.1666666667 / 2), 8);
    expect(spread).toBeCloseTo(Math.sqrt(3.1666666667 / 6), 8);
    expect(range).toBe(2.5);
  });

  test('readings that agree by luck are no better than the instrument', () => {
    expect(repeated(readings(43, 43, 43), 0.3).spread).toBeCloseTo(0.3 / Math.sqrt(3), 10);
  });

  test('one reading has the spread of its instrument, or its own', () => {
    expect(repeated(readings(43), 0.3)).toMatchObject({ count: 1, spread: 0.3 });
    expect(repeated([{ value: 43, spread: 1 }], 0.3).spread).toBe(1);
  });

  test('without readings it throws', () => {
    expect(() => repeated([], 1)).toThrow('at least one reading');
  });
});

describe('a timed container', () => {
  test('gives its volume over the mean time', () => {
    const { flow, spread, doubts } = bucketFlow({
      volume: { value: 0.01 },
      times: readings(42, 44.5, 43),
    });
    expect(flow).toBeCloseTo(0.01 / (129.5 / 3), 12);
    // Exact: 2 % of the container, and 0.7265 s of 43.17 s.
    expect(spread / flow).toBeCloseTo(Math.hypot(0.02, 0.7264831573 / 43.1666666667), 8);
    expect(doubts).toEqual([]);
  });

  test('a stated ± of the container takes the place of the usual one', () => {
    const times = [{ value: 40, spread: 0 }];
    const { flow, spread } = bucketFlow({ volume: { value: 0.01, spread: 1e-4 }, times });
    expect(spread / flow).toBeCloseTo(0.01, 10);
  });

  test('one filling is doubted, and so are fillings a fifth apart', () => {
    const volume = { value: 0.01 };
    expect(kinds(bucketFlow({ volume, times: readings(43) }).doubts)).toEqual(['oneReading']);
    const apart = bucketFlow({ volume, times: readings(38, 43, 48) });
    expect(apart.doubts[0]).toMatchObject({ kind: 'readingsDiffer', has: 10 / 43, bound: 0.2 });
    expect(bucketFlow({ volume, times: readings(40, 43, 46) }).doubts).toEqual([]);
  });

  test('a time of nought throws', () => {
    expect(() => bucketFlow({ volume: { value: 1 }, times: readings(0) })).toThrow('above zero');
  });
});

describe('a stored volume that drops', () => {
  test('gives area times drop over time, and halves when it takes twice as long', () => {
    const of = (time: number) =>
      dropFlow({ area: { value: 2 }, drop: { value: 0.12 }, times: readings(time) }).flow;
    expect(of(300)).toBeCloseTo(0.24 / 300, 12);
    expect(of(600) / of(300)).toBeCloseTo(0.5, 12);
  });

  test('a small drop is known badly', () => {
    const of = (drop: number) =>
      dropFlow({ area: { value: 2, spread: 0 }, drop: { value: drop }, times: readings(3000) });
    // Exact: 1.5 mm of 10 mm.
    expect(of(0.01).spread / of(0.01).flow).toBeCloseTo(0.15, 4);
  });
});

describe('a V-notch', () => {
  const notch = {
    angle: { value: degrees(90) },
    heads: readings(0.1, 0.1, 0.1),
    crestHeight: 0.4,
    channelWidth: 1,
  };

  test('within its range nothing is named', () => {
    expect(vNotchFlow(notch)).toMatchObject({ outside: [], doubts: [] });
  });

  test('a wider notch passes more, and the angle acts by its half’s tangent', () => {
    const at = (angle: number) => vNotchFlow({ ...notch, angle: { value: degrees(angle) } }).flow;
    const angles = [20, 28, 45, 60, 75, 90, 100].map(at);
    expect(angles).toEqual([...angles].sort((a, b) => a - b));
    // The coefficients differ by a few per cent at most.
    expect(at(60) / at(90)).toBeCloseTo(Math.tan(degrees(30)), 1);
  });

  test('an error of the head counts two and a half times', () => {
    const { flow, spread } = vNotchFlow({ ...notch, heads: [{ value: 0.1, spread: 0.004 }] });
    // Exact: 1 % of the coefficient, 2.5 × 4 mm of 100.884 mm.
    expect(spread / flow).toBeCloseTo(Math.hypot(0.01, (2.5 * 0.004) / 0.100884), 8);
  });

  test('each condition that is broken is named with its numbers, and there is a figure all the same', () => {
    const bad = vNotchFlow({
      angle: { value: degrees(110) },
      heads: readings(0.04, 0.04, 0.04),
      crestHeight: 0.08,
      channelWidth: 0.15,
      freeDrop: 0.01,
    });
    expect(kinds(bad.outside).sort()).toEqual([
      'angleTooLarge',
      'channelTooNarrow',
      'crestTooNearBed',
      'drowned',
      'headOverChannel',
      'headOverCrest',
      'headTooSmall',
    ]);
    expect(bad.outside.find(({ kind }) => kind === 'headOverCrest')).toMatchObject({
      has: 0.5,
      bound: 0.4,
    });
    expect(bad.flow).toBeGreaterThan(0);
    expect(kinds(vNotchFlow({ ...notch, heads: readings(0.5) }).outside)).toContain('headTooLarge');
    const small = vNotchFlow({ ...notch, angle: { value: degrees(15) } });
    expect(kinds(small.outside)).toEqual(['angleTooSmall']);
  });

  test('without bed and channel it says that contraction was not checked', () => {
    const { angle, heads } = notch;
    expect(kinds(vNotchFlow({ angle, heads }).outside)).toEqual(['approachUnknown']);
  });

  test('heads 9 % apart are flows 22 % apart, and are doubted', () => {
    const { doubts } = vNotchFlow({ ...notch, heads: readings(0.096, 0.105) });
    expect(kinds(doubts)).toEqual(['readingsDiffer']);
  });

  test('an angle of half a turn is a caller’s mistake', () => {
    expect(() => vNotchFlow({ ...notch, angle: { value: Math.PI } })).toThrow('below π');
  });
});

describe('a rectangular weir', () => {
  const weir = {
    width: { value: 0.3 },
    heads: readings(0.06, 0.06),
    crestHeight: 0.3,
    channelWidth: 0.8,
  };

  test('within its range nothing is named, contracted or suppressed', () => {
    expect(rectangularWeirFlow(weir).outside).toEqual([]);
    expect(rectangularWeirFlow({ ...weir, channelWidth: 0.3 }).outside).toEqual([]);
  });

  test('a crest as wide as the channel passes more than the same crest contracted', () => {
    const contracted = rectangularWeirFlow(weir).flow;
    expect(rectangularWeirFlow({ ...weir, channelWidth: 0.3 }).flow).toBeGreaterThan(contracted);
  });

  test('each condition that is broken is named, and there is a figure all the same', () => {
    const bad = rectangularWeirFlow({
      width: { value: 0.1 },
      heads: readings(0.02, 0.02),
      crestHeight: 0.009,
      channelWidth: 0.2,
      freeDrop: 0,
    });
    expect(kinds(bad.outside).sort()).toEqual([
      'crestTooNarrow',
      'crestTooNearBed',
      'drowned',
      'headOverCrest',
      'headTooSmall',
      'sideTooNear',
    ]);
    expect(bad.flow).toBeGreaterThan(0);
  });

  test('a crest wider than its channel is a caller’s mistake', () => {
    expect(() => rectangularWeirFlow({ ...weir, channelWidth: 0.2 })).toThrow('channelWidth');
  });
});

describe('floats', () => {
  const run = { length: { value: 10 }, times: readings(50, 47, 51, 48, 54) };

  test('depths in equal strips are as good as the area they make', () => {
    const depths = readings(0.1, 0.15, 0.05);
    const byStrips = floatFlow({ ...run, section: { width: { value: 0.6 }, depths } }).flow;
    expect(byStrips).toBeCloseTo(
      floatFlow({ ...run, section: { area: { value: 0.06 } } }).flow,
      12,
    );
  });

  test('the coefficient alone leaves a tenth open', () => {
    const { flow, spread } = floatFlow({ ...run, section: { area: { value: 0.15 } } });
    expect(spread / flow).toBeGreaterThan(0.1);
  });

  test('floats that pass in a few seconds are named', () => {
    const quick = floatFlow({ ...run, times: readings(6, 6.2), section: { area: { value: 0.1 } } });
    expect(quick.outside[0]).toMatchObject({ kind: 'floatTooQuick', bound: 20 });
  });
});

describe('several methods', () => {
  test('equal spreads make a plain mean, known better by the root of their number', () => {
    const { flow, spread } = combinedFlow([
      { flow: 1.0e-4, spread: 1e-5 },
      { flow: 1.02e-4, spread: 1e-5 },
    ]);
    expect(flow).toBeCloseTo(1.01e-4, 12);
    expect(spread).toBeCloseTo(1e-5 / Math.SQRT2, 12);
  });

  test('the surer one counts more', () => {
    const { flow } = combinedFlow([
      { flow: 1e-4, spread: 1e-6 },
      { flow: 2e-4, spread: 1e-4 },
    ]);
    expect(flow).toBeLessThan(1.001e-4);
  });

  test('methods that contradict one another are named, and their mean is less sure', () => {
    const { spread, misfit, disagreements } = combinedFlow([
      { flow: 1e-4, spread: 2e-6 },
      { flow: 1.3e-4, spread: 4e-6 },
    ]);
    // Exact: weights 4 : 1, mean 1.06e-4, χ² = 9 + 36.
    expect(misfit).toBeCloseTo(Math.sqrt(45), 8);
    expect(spread).toBeCloseTo((Math.sqrt(45) * 4e-6) / Math.sqrt(5), 12);
    expect(disagreements).toHaveLength(1);
    expect(disagreements[0]).toMatchObject({ first: 0, second: 1 });
    expect(disagreements[0]?.apart).toBeCloseTo(3e-5, 12);
    expect(disagreements[0]?.allowed).toBeCloseTo(6e-6, 12);
  });

  test('one alone stays as it is', () => {
    const one = { flow: 1e-4, spread: 3e-6 };
    expect(combinedFlow([one])).toMatchObject({ ...one, misfit: 0, disagreements: [] });
  });
});

describe('what may be taken', () => {
  test('the dry season counts when it is lower, and the share on top', () => {
    expect(supplyFrom({ flow: 14, drySeason: 9, share: 0.5 })).toEqual({
      flow: 4.5,
      from: 'drySeason',
      share: 0.5,
    });
    expect(supplyFrom({ flow: 8, drySeason: 9 })).toEqual({ flow: 8, from: 'flow', share: 1 });
    expect(supplyFrom({ drySeason: 9 }).flow).toBe(9);
    expect(supplyFrom({ share: 0.5 })).toEqual({ from: 'nothing', share: 0.5 });
    expect(() => supplyFrom({ flow: 1, share: 0 })).toThrow('share');
  });
});
