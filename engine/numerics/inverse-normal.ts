/**
 * The number of standard deviations below which a normal quantity lies with a probability.
 *
 * A ratio of polynomials in the middle, and one in √(−2 ln p) in the tails.
 *
 * Source: Acklam (2003), rational approximation of the inverse normal distribution; relative error below 1.15·10⁻⁹
 * (coefficients from memory; the test measures 1.2·10⁻⁹ at most against the distribution itself).
 * @throws RangeError when the probability does not lie between 0 and 1, both left out.
 */
export function inverseNormal(probability: number): number {
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(`probability must lie between 0 and 1, got ${probability}`);
  }
  if (probability < TAIL) return tail(probability);
  if (probability > 1 - TAIL) return -tail(1 - probability);
  const q = probability - 0.5;
  const r = q * q;
  return (q * polynomial(MIDDLE_TOP, r)) / polynomial(MIDDLE_BOTTOM, r);
}

const TAIL = 0.02425;

const MIDDLE_TOP = [
  -3.969683028665376e1, 2.209460984245205e2, -2.759285104469687e2, 1.38357751867269e2,
  -3.066479806614716e1, 2.506628277459239,
];
const MIDDLE_BOTTOM = [
  -5.447609879822406e1, 1.615858368580409e2, -1.556989798598866e2, 6.680131188771972e1,
  -1.328068155288572e1, 1,
];
const TAIL_TOP = [
  -7.784894002430293e-3, -3.223964580411365e-1, -2.400758277161838, -2.549732539343734,
  4.374664141464968, 2.938163982698783,
];
const TAIL_BOTTOM = [
  7.784695709041462e-3, 3.224671290700398e-1, 2.445134137142996, 3.754408661907416, 1,
];

function tail(probability: number): number {
  const q = Math.sqrt(-2 * Math.log(probability));
  return polynomial(TAIL_TOP, q) / polynomial(TAIL_BOTTOM, q);
}

/** Coefficients from the highest power down. */
function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduce((sum, coefficient) => sum * x + coefficient, 0);
}
