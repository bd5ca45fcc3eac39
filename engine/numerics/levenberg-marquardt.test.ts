import { describe, expect, test } from 'vitest';
import { covarianceOf, HUBER, levenbergMarquardt } from './levenberg-marquardt.ts';
import { principalDirections } from './symmetric-matrix.ts';

const X = Array.from({ length: 12 }, (_, i) => i / 2);
const decay = (a: number, b: number) => X.map((x) => a * Math.exp(-b * x));

function fitted(read: readonly number[], options = {}, bounds = {}) {
  return levenbergMarquardt(
    {
      residuals: ([a = 0, b = 0]) => decay(a, b).map((y, i) => (y - (read[i] as number)) / 0.02),
      start: [1, 0.1],
      ...bounds,
    },
    options,
  );
}

describe('least squares of a curved model', () => {
  test('find again the parameters that exact readings were made with', () => {
    const { end, parameters } = fitted(decay(3, 0.7));
    expect(end).toBe('converged');
    expect(parameters[0]).toBeCloseTo(3, 7);
    expect(parameters[1]).toBeCloseTo(0.7, 7);
  });

  test('with Huber’s weights one wild reading moves them by less than a tenth of what it does by squares', () => {
    const read = decay(3, 0.7).map((y, i) => (i === 2 ? y + 1 : y));
    const plain = fitted(read);
    const robust = fitted(read, { huber: HUBER });
    const off = (fit: typeof plain) => Math.abs((fit.parameters[0] as number) - 3);
    expect(off(robust)).toBeLessThan(0.1 * off(plain));
    expect(robust.weights[2]).toBeLessThan(0.1);
  });

  test('stop at a bound and say so', () => {
    const { end, parameters, atBound } = fitted(decay(3, 0.7), {}, { upper: [2, 10] });
    expect(end).toBe('converged');
    expect(parameters[0]).toBe(2);
    expect(atBound).toEqual([0]);
  });

  test('say when there is no value, when steps run out, and when a parameter moves nothing', () => {
    expect(levenbergMarquardt({ residuals: () => undefined, start: [1] }).end).toBe('noValue');
    expect(fitted(decay(3, 0.7), { mostSteps: 1 }).end).toBe('tooManySteps');
    const flat = levenbergMarquardt({ residuals: ([a = 0]) => [a - 1, a - 2], start: [0, 5] });
    expect(flat.end).toBe('flat');
    expect(covarianceOf(flat.jacobian)).toBeUndefined();
  });
});

test('principal directions of a matrix turned by hand', () => {
  // Stretch 9 along (3, 4)/5 and 1 across it.
  const a = [
    [9 * 0.36 + 0.64, 8 * 0.48],
    [8 * 0.48, 9 * 0.64 + 0.36],
  ];
  const [long, short] = principalDirections(a);
  expect(long?.value).toBeCloseTo(9, 12);
  expect(short?.value).toBeCloseTo(1, 12);
  expect(Math.abs(long?.vector[0] ?? 0)).toBeCloseTo(0.6, 12);
});
