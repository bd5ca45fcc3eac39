/**
 * Levenberg and Marquardt's search against certified data sets for nonlinear regression.
 *
 * Source: NIST Statistical Reference Datasets, nonlinear regression (memory): data, certified parameters, their standard deviations
 * and residual sums of squares are all from memory. What proves the memory: the certified sum comes out of the data at the certified
 * parameters to nine figures, which no slip in either would let it.
 */
import { covarianceOf, levenbergMarquardt } from '@fallwright/engine';
import { describe, expect, test } from 'vitest';

type Model = (x: number, parameters: readonly number[]) => number;
interface CertifiedSet {
  readonly name: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly model: Model;
  readonly certified: readonly number[];
  readonly deviations: readonly number[];
  readonly sum: number;
  readonly starts: readonly (readonly number[])[];
}

const MISRA_X = [
  77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760,
];
const MISRA_Y = [
  10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78,
];
const MISRA = { x: MISRA_X, y: MISRA_Y };

const SETS: readonly CertifiedSet[] = [
  {
    name: 'Misra1a',
    ...MISRA,
    model: (x, [a = 0, b = 0]) => a * (1 - Math.exp(-b * x)),
    certified: [238.94212918, 5.5015643181e-4],
    deviations: [2.7070075241, 7.2668688436e-6],
    sum: 0.12455138894,
    starts: [
      [500, 1e-4],
      [250, 5e-4],
    ],
  },
  {
    name: 'Misra1b',
    ...MISRA,
    model: (x, [a = 0, b = 0]) => a * (1 - (1 + (b * x) / 2) ** -2),
    certified: [337.99746163, 3.9039091287e-4],
    deviations: [3.1643950207, 4.2547321834e-6],
    sum: 7.5464681533e-2,
    starts: [
      [500, 1e-4],
      [300, 2e-4],
    ],
  },
  {
    name: 'Misra1c',
    ...MISRA,
    model: (x, [a = 0, b = 0]) => a * (1 - (1 + 2 * b * x) ** -0.5),
    certified: [636.42725809, 2.0813627256e-4],
    deviations: [4.6638326572, 1.7728423155e-6],
    sum: 4.0966836971e-2,
    starts: [
      [500, 1e-4],
      [600, 2e-4],
    ],
  },
  {
    name: 'Misra1d',
    ...MISRA,
    model: (x, [a = 0, b = 0]) => (a * b * x) / (1 + b * x),
    certified: [437.36970754, 3.0227324449e-4],
    deviations: [3.6489174345, 2.9334354479e-6],
    sum: 5.6419295283e-2,
    starts: [
      [500, 1e-4],
      [450, 3e-4],
    ],
  },
  {
    name: 'DanWood',
    x: [1.309, 1.471, 1.49, 1.565, 1.611, 1.68],
    y: [2.138, 3.421, 3.597, 4.34, 4.882, 5.66],
    model: (x, [a = 0, b = 0]) => a * x ** b,
    certified: [0.76886226176, 3.8604055871],
    deviations: [1.828197386e-2, 5.1726610913e-2],
    sum: 4.3173084083e-3,
    starts: [
      [1, 5],
      [0.7, 4],
    ],
  },
  {
    name: 'BoxBOD',
    x: [1, 2, 3, 5, 7, 10],
    y: [109, 149, 149, 191, 213, 224],
    model: (x, [a = 0, b = 0]) => a * (1 - Math.exp(-b * x)),
    certified: [213.80940889, 0.54723748542],
    deviations: [12.354515176, 0.10455993237],
    sum: 1168.0088766,
    // From the far start, (1, 1), the search runs to where the second parameter moves nothing; see below.
    starts: [[100, 0.75]],
  },
  {
    name: 'Rat42',
    x: [9, 14, 21, 28, 42, 57, 63, 70, 79],
    y: [8.93, 10.8, 18.59, 22.33, 39.35, 56.11, 61.73, 64.62, 67.08],
    model: (x, [a = 0, b = 0, c = 0]) => a / (1 + Math.exp(b - c * x)),
    certified: [72.462237576, 2.6180768402, 6.7359200066e-2],
    deviations: [1.7340283401, 8.8295217536e-2, 3.4465663377e-3],
    sum: 8.0565229338,
    starts: [
      [100, 1, 0.1],
      [75, 2.5, 0.07],
    ],
  },
  {
    name: 'MGH09',
    x: [4, 2, 1, 0.5, 0.25, 0.167, 0.125, 0.1, 0.0833, 0.0714, 0.0625],
    y: [0.1957, 0.1947, 0.1735, 0.16, 0.0844, 0.0627, 0.0456, 0.0342, 0.0323, 0.0235, 0.0246],
    model: (x, [a = 0, b = 0, c = 0, d = 0]) => (a * (x * x + x * b)) / (x * x + x * c + d),
    certified: [0.19280693458, 0.19128232873, 0.12305650693, 0.13606233068],
    deviations: [1.1435312227e-2, 0.19633220911, 8.0842031232e-2, 9.0025542308e-2],
    sum: 3.0750560385e-4,
    starts: [
      [25, 39, 41.5, 39],
      [0.25, 0.39, 0.415, 0.39],
    ],
  },
];

const residualsOf =
  ({ x, y, model }: CertifiedSet) =>
  (at: readonly number[]) =>
    x.map((one, i) => (y[i] as number) - model(one, at));
const sumOf = (residuals: readonly number[]) => residuals.reduce((sum, one) => sum + one ** 2, 0);

describe.each(SETS)('NIST StRD $name (memory)', (set) => {
  test('the remembered data give the certified sum of squares', () => {
    const sum = sumOf(residualsOf(set)(set.certified));
    expect(Math.abs(sum / set.sum - 1)).toBeLessThan(1e-9);
  });

  test.each(set.starts.map((start) => [start]))('is found from %j', (start) => {
    const fit = levenbergMarquardt({ residuals: residualsOf(set), start });
    expect(fit.end).toBe('converged');
    // Differences in place of exact slopes leave six to eight figures.
    for (const [i, value] of set.certified.entries()) {
      expect(Math.abs((fit.parameters[i] as number) / value - 1)).toBeLessThan(2e-6);
    }
    expect(Math.abs(fit.sumOfSquares / set.sum - 1)).toBeLessThan(1e-9);
    const variance = fit.sumOfSquares / (set.x.length - set.certified.length);
    const covariance = covarianceOf(fit.jacobian);
    for (const [i, deviation] of set.deviations.entries()) {
      const ours = Math.sqrt((covariance?.[i]?.[i] as number) * variance);
      expect(Math.abs(ours / deviation - 1)).toBeLessThan(2e-6);
    }
  });
});

test('a search that runs off to where a parameter moves nothing does not say that it converged', () => {
  const set = SETS.find(({ name }) => name === 'BoxBOD') as CertifiedSet;
  expect(levenbergMarquardt({ residuals: residualsOf(set), start: [1, 1] }).end).toBe('flat');
});
