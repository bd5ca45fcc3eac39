/** Drawing samples and reading them: streams, Latin hypercubes, normal deviates, quantiles and shares of variance. */
import { describe, expect, test } from 'vitest';
import { inverseNormal } from './inverse-normal.ts';
import { latinColumn } from './latin-hypercube.ts';
import { quantile } from './quantile.ts';
import { mixedBits, seededStream } from './seeded-stream.ts';
import { varianceShares } from './variance-shares.ts';

const mean = (x: readonly number[]): number => x.reduce((sum, a) => sum + a, 0) / x.length;
const variance = (x: readonly number[]): number => {
  const middle = mean(x);
  return mean(x.map((a) => (a - middle) ** 2));
};
const correlation = (x: readonly number[], y: readonly number[]): number =>
  (mean(x.map((a, i) => a * (y[i] as number))) - mean(x) * mean(y)) /
  Math.sqrt(variance(x) * variance(y));

describe('a seeded stream', () => {
  const drawn = (seed: number, name: string, count: number): readonly number[] => {
    const next = seededStream(seed, name);
    return Array.from({ length: count }, next);
  };

  test('is the same for the same seed and name on every machine', () => {
    // Worked out once by this very code; what counts is that they never change.
    expect(drawn(1, 'fall', 3)).toEqual([
      0.0007038565818220377, 0.1564791181590408, 0.5727771772071719,
    ]);
    expect(drawn(1, 'fall', 5)).toEqual(drawn(1, 'fall', 5));
  });

  test('differs with the seed, also beyond 32 bits, and with the name', () => {
    const firsts = [
      drawn(0, 'fall', 1),
      drawn(1, 'fall', 1),
      drawn(-1, 'fall', 1),
      drawn(1 + 2 ** 32, 'fall', 1),
      drawn(1, 'lift', 1),
      drawn(1, 'lfit', 1),
      drawn(1, '', 1),
    ];
    expect(new Set(firsts.flat()).size).toBe(firsts.length);
  });

  test('is even, and neighbours in seed or place have nothing in common', () => {
    const count = 20_000;
    const one = drawn(7, 'fall', count);
    const parts = new Array<number>(20).fill(0);
    for (const u of one) parts[Math.floor(20 * u)] = (parts[Math.floor(20 * u)] ?? 0) + 1;
    // Chi squared with 19 degrees of freedom lies under 43.8 in 999 of 1000 cases. Source: any table of it.
    const expected = count / 20;
    const chiSquared = parts.reduce((sum, n) => sum + (n - expected) ** 2 / expected, 0);
    expect(chiSquared).toBeLessThan(43.8);
    // Four standard errors, 4/√n.
    const bound = 4 / Math.sqrt(count);
    expect(Math.abs(correlation(one.slice(1), one.slice(0, -1)))).toBeLessThan(bound);
    for (const other of [drawn(8, 'fall', count), drawn(7, 'lift', count)]) {
      expect(Math.abs(correlation(one, other))).toBeLessThan(bound);
    }
  });

  test('one bit changed moves half of the bits', () => {
    let moved = 0;
    let looks = 0;
    for (let number = 1; number < 500; number += 3) {
      for (let bit = 0; bit < 32; bit++) {
        const changed = mixedBits(number) ^ mixedBits(number ^ (1 << bit));
        moved += (changed >>> 0).toString(2).replaceAll('0', '').length;
        looks += 1;
      }
    }
    expect(moved / looks).toBeGreaterThan(15.5);
    expect(moved / looks).toBeLessThan(16.5);
  });

  test('refuses a seed that is no whole number', () => {
    for (const seed of [0.5, Number.NaN, Infinity, 2 ** 60]) {
      expect(() => seededStream(seed, 'fall')).toThrow(RangeError);
    }
  });
});

describe('a Latin column', () => {
  test('has one number in each part, in no order', () => {
    for (const samples of [1, 2, 7, 300]) {
      const column = latinColumn('fall', { samples, seed: 3 });
      const parts = column.map((u) => Math.floor(u * samples)).sort((a, b) => a - b);
      expect(parts).toEqual(Array.from({ length: samples }, (_, i) => i));
      expect(Math.min(...column)).toBeGreaterThan(0);
      expect(Math.max(...column)).toBeLessThan(1);
    }
    const column = latinColumn('fall', { samples: 300, seed: 3 });
    const steps = column.map((_, i) => i);
    expect(Math.abs(correlation(column, steps))).toBeLessThan(4 / Math.sqrt(300));
  });

  test('the mean of a sum scatters far less than over plain samples', () => {
    const plan = (seed: number) => ({ samples: 50, seed });
    const means = Array.from({ length: 100 }, (_, seed) => mean(latinColumn('fall', plan(seed))));
    // Plain samples: 1/√(12·50) = 0.041. A Latin column: jitter within its parts alone, 1/√(12·50)/50.
    expect(Math.sqrt(variance(means))).toBeLessThan(2 * 0.00082);
    expect(mean(means)).toBeCloseTo(0.5, 3);
  });

  test('refuses what is no number of samples', () => {
    for (const samples of [0, -1, 1.5, Number.NaN]) {
      expect(() => latinColumn('fall', { samples, seed: 1 })).toThrow(RangeError);
    }
  });
});

describe('the inverse normal', () => {
  /** Normal distribution below nought by its continued fraction or series; good to 1e-14 for |x| ≤ 8. */
  function normalBelow(x: number): number {
    if (x > 0) return 1 - normalBelow(-x);
    const density = Math.exp(-(x ** 2) / 2) / Math.sqrt(2 * Math.PI);
    if (x > -3) {
      // Series Φ(x) = ½ + φ(x) Σ x^(2k+1)/(1·3·…·(2k+1)). Source: Marsaglia (2004) (memory).
      let term = x;
      let sum = x;
      for (let k = 1; k < 200; k++) {
        term *= x ** 2 / (2 * k + 1);
        sum += term;
      }
      return 0.5 + density * sum;
    }
    // Laplace's continued fraction for the tail (memory).
    let fraction = -x;
    for (let k = 200; k > 0; k--) fraction = -x + k / fraction;
    return density / fraction;
  }

  test('undoes the distribution to 1.2e-9 of the deviate', () => {
    let worst = 0;
    for (let x = -6; x <= -0.01; x += 0.013) {
      worst = Math.max(worst, Math.abs(inverseNormal(normalBelow(x)) / x - 1));
    }
    expect(worst).toBeLessThan(1.2e-9);
    // A test that cannot see an error sees nothing: the approximation is not exact.
    expect(worst).toBeGreaterThan(1e-11);
  });

  test('is odd about one half, where it is nought, and has the printed quantiles', () => {
    expect(inverseNormal(0.5)).toBe(0);
    for (const p of [0.01, 0.1, 0.3]) {
      expect(inverseNormal(1 - p)).toBeCloseTo(-inverseNormal(p), 9);
    }
    // Source: any table of the normal distribution.
    expect(inverseNormal(0.9)).toBeCloseTo(1.281552, 6);
    expect(inverseNormal(0.975)).toBeCloseTo(1.959964, 6);
    expect(inverseNormal(0.999)).toBeCloseTo(3.090232, 6);
  });

  test('refuses what is no probability', () => {
    for (const p of [0, 1, -0.1, 1.1, Number.NaN])
      expect(() => inverseNormal(p)).toThrow(RangeError);
  });
});

describe('a quantile', () => {
  test('lies straight between neighbours, whatever the order', () => {
    expect(quantile([3, 1, 2], 0)).toBe(1);
    expect(quantile([3, 1, 2], 1)).toBe(3);
    expect(quantile([3, 1, 2], 0.5)).toBe(2);
    expect(quantile([4, 1, 2, 3], 0.5)).toBe(2.5);
    expect(quantile([10, 0], 0.1)).toBeCloseTo(1, 12);
    expect(quantile([0.1, 0.1, 0.1], 0.37)).toBe(0.1);
  });

  test('refuses an empty list and a share beyond its ends', () => {
    expect(() => quantile([], 0.5)).toThrow(RangeError);
    expect(() => quantile([1], 1.1)).toThrow(RangeError);
    expect(() => quantile([1], Number.NaN)).toThrow(RangeError);
  });
});

describe('shares of the variance', () => {
  const samples = 2000;
  const column = (name: string): readonly number[] =>
    latinColumn(name, { samples, seed: 5 }).map(inverseNormal);
  const a = column('a');
  const b = column('b');
  const c = column('c');
  const result = a.map((x, i) => 3 * x - 2 * (b[i] as number));

  test('of a sum are those of its parts', () => {
    // Exact: 9/13, 4/13, 0. Ranks of normal quantities lose up to a twentieth of the whole.
    const [x = 0, y = 0, z = 0] = varianceShares([a, b, c], result);
    expect(x).toBeCloseTo(9 / 13, 1);
    expect(y).toBeCloseTo(4 / 13, 1);
    expect(x / y).toBeGreaterThan(2);
    expect(x / y).toBeLessThan(2.6);
    expect(z).toBeLessThan(0.01);
    expect(x + y + z).toBeLessThanOrEqual(1 + 1e-12);
    expect(x + y + z).toBeGreaterThan(0.93);
  });

  test('a rising or falling law of any form counts whole', () => {
    const [one = 0] = varianceShares(
      [a, b],
      a.map((x) => -Math.exp(3 * x)),
    );
    expect(one).toBeCloseTo(1, 6);
  });

  test('noise explains nothing, though many inputs fit a little by chance', () => {
    const noise = Array.from({ length: 15 }, (_, i) =>
      latinColumn(`noise ${i}`, { samples: 100, seed: 2 }),
    );
    const shares = varianceShares(noise, latinColumn('result', { samples: 100, seed: 2 }));
    // Without the correction fifteen inputs would explain 15/99 of a hundred samples.
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeLessThan(0.1);
  });

  test('what does not move has no share, a copy shares with its like, too few samples say nothing', () => {
    const still = a.map(() => 2);
    expect(varianceShares([still, a], a)).toEqual([0, expect.closeTo(1, 9)]);
    expect(varianceShares([a, b], still)).toEqual([0, 0]);
    const both = varianceShares([a, a], a);
    expect(both.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    expect(
      varianceShares(
        [
          [1, 2, 3],
          [2, 1, 3],
        ],
        [1, 2, 3],
      ),
    ).toEqual([0, 0]);
  });

  test('refuses columns of another length', () => {
    expect(() => varianceShares([[1, 2]], [1, 2, 3])).toThrow(RangeError);
  });
});
