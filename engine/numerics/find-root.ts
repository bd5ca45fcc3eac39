/**
 * A root of one function between two points where its sign differs.
 *
 * Brent's method: interpolation when it gains ground, halving when it does not, so it is quick on smooth functions
 * and can never leave the bracket. Newton's method was not taken: our functions have kinks and flat stretches.
 */

export interface Root {
  readonly root: number;
  readonly iterations: number;
  /** False when `maxIterations` ran out first; `root` is then the best point found. */
  readonly isConverged: boolean;
}

/**
 * The point between `low` and `high` where `f` crosses nought, to within `tolerance`.
 *
 * `f(low)` and `f(high)` must differ in sign, or one of them be nought. A jump across nought counts as a crossing.
 * Judgement: 200 steps at most by default; halving alone narrows any sensible bracket by 10⁶⁰ in them.
 *
 * Source: Brent (1973), Algorithms for Minimization without Derivatives, chapter 4 (from memory).
 * @throws RangeError when the bracket is empty, has no sign change, `tolerance` is not above zero, or `f` is not finite.
 */
export function findRoot({
  f,
  low,
  high,
  tolerance,
  maxIterations = 200,
}: {
  readonly f: (x: number) => number;
  readonly low: number;
  readonly high: number;
  readonly tolerance: number;
  readonly maxIterations?: number;
}): Root {
  if (!(low < high)) throw new RangeError(`low must be below high, got ${low} and ${high}`);
  if (!(tolerance > 0)) throw new RangeError(`tolerance must be above zero, got ${tolerance}`);
  const valueAt = (x: number): number => {
    const value = f(x);
    if (!Number.isFinite(value)) throw new RangeError(`f must be finite, got ${value} at ${x}`);
    return value;
  };

  // `best` has the smaller value, `opposite` lies on the other side of the root, `previous` is the last best.
  let previous = low;
  let previousValue = valueAt(low);
  let best = high;
  let bestValue = valueAt(high);
  if (previousValue === 0) return { root: low, iterations: 0, isConverged: true };
  if (bestValue === 0) return { root: high, iterations: 0, isConverged: true };
  if (previousValue > 0 === bestValue > 0) {
    throw new RangeError(
      `f must change sign between low and high, got f(${low}) = ${previousValue} and f(${high}) = ${bestValue}`,
    );
  }
  let opposite = previous;
  let oppositeValue = previousValue;
  let step = best - previous;
  let stepBefore = step;

  for (let iterations = 1; iterations <= maxIterations; iterations += 1) {
    if (bestValue > 0 === oppositeValue > 0) {
      opposite = previous;
      oppositeValue = previousValue;
      step = best - previous;
      stepBefore = step;
    }
    if (Math.abs(oppositeValue) < Math.abs(bestValue)) {
      [previous, best, opposite] = [best, opposite, best];
      [previousValue, bestValue, oppositeValue] = [bestValue, oppositeValue, bestValue];
    }

    const half = (opposite - best) / 2;
    // Below the spacing of the numbers themselves no tolerance can be met.
    const reach = 2 * Number.EPSILON * Math.abs(best) + tolerance / 2;
    if (Math.abs(half) <= reach || bestValue === 0) {
      return { root: best, iterations, isConverged: true };
    }

    const interpolated = interpolatedStep();
    if (interpolated === undefined) {
      step = half;
      stepBefore = half;
    } else {
      stepBefore = step;
      step = interpolated;
    }
    previous = best;
    previousValue = bestValue;
    best += Math.abs(step) > reach ? step : Math.sign(half) * reach;
    bestValue = valueAt(best);

    /** The secant or inverse-quadratic step, or nothing when halving is safer. */
    function interpolatedStep(): number | undefined {
      if (Math.abs(stepBefore) < reach || Math.abs(previousValue) <= Math.abs(bestValue)) {
        return undefined;
      }
      const s = bestValue / previousValue;
      let p = 2 * half * s;
      let q = 1 - s;
      if (previous !== opposite) {
        const r = bestValue / oppositeValue;
        const t = previousValue / oppositeValue;
        p = s * (2 * half * t * (t - r) - (best - previous) * (r - 1));
        q = (t - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      p = Math.abs(p);
      const isWithinBracket = 2 * p < 3 * half * q - Math.abs(reach * q);
      const isShrinking = 2 * p < Math.abs(stepBefore * q);
      return isWithinBracket && isShrinking ? p / q : undefined;
    }
  }
  return { root: best, iterations: maxIterations, isConverged: false };
}
