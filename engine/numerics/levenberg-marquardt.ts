/**
 * Least squares for a model that is not linear in its parameters, within bounds, and not carried away by one bad reading.
 *
 * Levenberg and Marquardt's way: a step of Gauss and Newton, held back by a damping that shrinks while steps succeed and
 * grows when they fail. A step that leaves the bounds is cut at them, and a parameter that pushes against its bound stands
 * still. A model that has no value somewhere (a ram that does not beat) gives none there, and the step counts as failed.
 *
 * Sources: Levenberg (1944), Marquardt (1963); damping as Nielsen (1999), IMM-REP-1999-05; Huber's weights: Huber (1964),
 * tuning 1.345 for 95 % of the efficiency with normal errors. All from memory; checks/ holds it against certified data sets.
 */
import { gram, invertedSymmetric, type Matrix, solvedSymmetric } from './symmetric-matrix.ts';

export interface LeastSquaresProblem {
  /** Residuals over their spreads, at these parameters; undefined where the model has no value. */
  readonly residuals: (parameters: readonly number[]) => readonly number[] | undefined;
  readonly start: readonly number[];
  readonly lower?: readonly number[];
  readonly upper?: readonly number[];
  /** Half-width of the central differences for the slopes, in each parameter; one ten-thousandth of its size when absent. */
  readonly steps?: readonly number[];
  /** Slopes at the start where they are known: a row for each residual. */
  readonly startSlopes?: Matrix;
}

export interface LeastSquaresOptions {
  /** Residuals beyond this count by their size and not by its square; all by the square when absent. */
  readonly huber?: number;
  /** Spread that residuals have; 1 when they were divided by theirs. */
  readonly scale?: number;
  /** A step that promises less than this share of the sum is not worth taking. */
  readonly leastShare?: number;
  /** Nor is one that promises less than this of the sum itself: what a model that ripples cannot tell. */
  readonly leastGain?: number;
  /**
   * Such a model may also raise the sum by this much where it should fall: the step is taken all the same. And where no step brings a
   * gain, but none promises more than this, the search has come as near as the ripple lets it.
   */
  readonly slack?: number;
  readonly mostSteps?: number;
  /** Slopes stay as they are while steps bring half of what they promise: for a model that is dear and bends little. */
  readonly keepSlopes?: boolean;
}

/** How a search ended. All but the first are no convergence. */
export type FitEnd =
  /** Nothing that a step could do would lower the sum by what counts. */
  | 'converged'
  /** Steps were promised a gain and did not bring it, however short they were made. */
  | 'stuck'
  | 'tooManySteps'
  /** It came to where some parameter moves nothing any more. */
  | 'flat'
  /** The model has no value at the start, or none beside it. */
  | 'noValue';

export interface LeastSquaresFit {
  readonly end: FitEnd;
  readonly parameters: readonly number[];
  /** At the parameters; empty when the model has no value at the start. */
  readonly residuals: readonly number[];
  /** Slope of each residual along each parameter: a row for each residual. */
  readonly jacobian: Matrix;
  /** What each residual counts, 1 for those that are not doubted. */
  readonly weights: readonly number[];
  /** Plain sum of the squares of all residuals. */
  readonly sumOfSquares: number;
  /** Parameters that stand at a bound and push against it. */
  readonly atBound: readonly number[];
  readonly steps: number;
  readonly evaluations: number;
}

/** Huber's tuning for 95 % efficiency. */
export const HUBER = 1.345;
/** Steps that bring more than this share of what they promised keep the slopes. */
const KEPT_ABOVE = 0.5;
const FIRST_DAMPING = 1e-3;
/** Damping beyond which a step is shorter than rounding. */
const MOST_DAMPING = 1e12;

export function levenbergMarquardt(
  problem: LeastSquaresProblem,
  options: LeastSquaresOptions = {},
): LeastSquaresFit {
  const { huber, scale = 1, leastShare = 1e-12, leastGain = 0, slack = 0 } = options;
  const { mostSteps = 200, keepSlopes = false } = options;
  const counter = { evaluations: 0 };
  const residualsAt = (at: readonly number[]): readonly number[] | undefined => {
    counter.evaluations += 1;
    const found = problem.residuals(at);
    return found?.every(Number.isFinite) ? found : undefined;
  };
  const size = problem.start.length;
  let parameters = clipped(problem.start, problem);
  let residuals = residualsAt(parameters);
  const nothing = (end: FitEnd): LeastSquaresFit => ({
    end,
    parameters,
    residuals: residuals ?? [],
    jacobian: [],
    weights: [],
    sumOfSquares: residuals ? plainSum(residuals) : Number.NaN,
    atBound: [],
    steps: 0,
    evaluations: counter.evaluations,
  });
  if (!residuals) return nothing('noValue');
  let cost = robustSum(residuals, huber, scale);
  let damping = FIRST_DAMPING;
  let growth = 2;
  const first = problem.startSlopes ?? slopes(problem, parameters, residualsAt);
  if (!first) return nothing('noValue');
  let jacobian: Matrix = first;
  let areFresh = true;
  let end: FitEnd = 'tooManySteps';
  let steps = 0;
  let worth = Number.POSITIVE_INFINITY;
  while (steps < mostSteps) {
    const weights = residuals.map((one) => weightOf(one, huber, scale));
    const gradient = gradientOf(jacobian, residuals, weights);
    const free = freeOf(parameters, gradient, problem);
    if (free.length === 0) {
      end = 'converged';
      break;
    }
    const normal = gram(
      jacobian.map((row, i) =>
        free.map((j) => (row[j] as number) * Math.sqrt(weights[i] as number)),
      ),
      free.length,
    );
    const down = free.map((j) => -(gradient[j] as number));
    // What an undamped step would gain decides whether it is worth going on: a damped one is short and gains little anyway.
    worth = gainOf(normal, down);
    if (worth <= Math.max(leastShare * cost, leastGain) || cost === 0) {
      end = 'converged';
      break;
    }
    const damped = normal.map((row, i) =>
      row.map((entry, j) => (i === j ? entry * (1 + damping) + Number.MIN_VALUE : entry)),
    );
    const move = solvedSymmetric(damped, down);
    const next = [...parameters];
    if (move)
      for (const [i, j] of free.entries()) next[j] = (next[j] as number) + (move[i] as number);
    const tried = clipped(next, problem);
    const moved = move && tried.some((value, i) => value !== parameters[i]);
    const there = moved ? residualsAt(tried) : undefined;
    const sum = there ? robustSum(there, huber, scale) : Number.POSITIVE_INFINITY;
    const promised = promisedGain(normal, down, free, parameters, tried);
    const ratio = promised > 0 ? (cost - sum) / promised : 1;
    const keeps = keepSlopes && ratio > KEPT_ABOVE;
    const slopesThere: Matrix | undefined =
      there && sum < cost + slack
        ? keeps
          ? jacobian
          : slopes(problem, tried, residualsAt)
        : undefined;
    if (there && slopesThere) {
      damping = Math.max(1e-15, damping * Math.max(1 / 3, 1 - (2 * ratio - 1) ** 3));
      growth = 2;
      steps += 1;
      parameters = tried;
      residuals = there;
      cost = sum;
      jacobian = slopesThere;
      areFresh = !keeps;
      continue;
    }
    if (!areFresh) {
      // Perhaps only the slopes are out of date.
      jacobian = slopes(problem, parameters, residualsAt) ?? jacobian;
      areFresh = true;
      continue;
    }
    if (worth <= slack) {
      end = 'converged';
      break;
    }
    damping *= growth;
    growth *= 2;
    if (!(damping < MOST_DAMPING)) {
      end = 'stuck';
      break;
    }
  }
  if (end === 'tooManySteps' && worth <= slack) end = 'converged';
  if (
    end === 'converged' &&
    cost > 0 &&
    parameters.some((_, j) => jacobian.every((row) => row[j] === 0))
  )
    end = 'flat';
  const weights = residuals.map((one) => weightOf(one, huber, scale));
  const free = freeOf(parameters, gradientOf(jacobian, residuals, weights), problem);
  return {
    end,
    parameters,
    residuals,
    jacobian,
    weights,
    sumOfSquares: plainSum(residuals),
    atBound: parameters.flatMap((_, i) => (free.includes(i) || size === 0 ? [] : [i])),
    steps,
    evaluations: counter.evaluations,
  };
}

/**
 * Covariance of the parameters, (Jᵀ J)⁻¹, for residuals over their spreads; undefined when the residuals do not tell some
 * combination of them at all. Multiply by the residual variance when the spreads are not known.
 *
 * Source: any text on regression.
 */
export function covarianceOf(jacobian: Matrix): Matrix | undefined {
  const size = jacobian[0]?.length ?? 0;
  return invertedSymmetric(gram(jacobian, size));
}

function plainSum(residuals: readonly number[]): number {
  return residuals.reduce((sum, one) => sum + one ** 2, 0);
}

/** Huber's loss, twice over, so that it is the square for small residuals. */
function robustSum(residuals: readonly number[], huber: number | undefined, scale: number): number {
  if (huber === undefined) return plainSum(residuals);
  const bend = huber * scale;
  return residuals.reduce((sum, one) => {
    const size = Math.abs(one);
    return sum + (size <= bend ? size ** 2 : bend * (2 * size - bend));
  }, 0);
}

function weightOf(residual: number, huber: number | undefined, scale: number): number {
  if (huber === undefined) return 1;
  return Math.min(1, (huber * scale) / Math.max(Math.abs(residual), Number.MIN_VALUE));
}

function gradientOf(
  jacobian: Matrix,
  residuals: readonly number[],
  weights: readonly number[],
): readonly number[] {
  const size = jacobian[0]?.length ?? 0;
  const gradient = new Array<number>(size).fill(0);
  for (const [i, row] of jacobian.entries()) {
    const pull = (residuals[i] as number) * (weights[i] as number);
    for (let j = 0; j < size; j++)
      gradient[j] = (gradient[j] as number) + (row[j] as number) * pull;
  }
  return gradient;
}

/** Parameters that may move: those that are not held at a bound by their own gradient, and that move anything at all. */
function freeOf(
  parameters: readonly number[],
  gradient: readonly number[],
  { lower, upper }: LeastSquaresProblem,
): readonly number[] {
  return parameters.flatMap((value, i) => {
    const slope = gradient[i] as number;
    const isHeld =
      (value <= (lower?.[i] ?? Number.NEGATIVE_INFINITY) && slope > 0) ||
      (value >= (upper?.[i] ?? Number.POSITIVE_INFINITY) && slope < 0);
    return isHeld || slope === 0 ? [] : [i];
  });
}

/** What the sum of squares would fall by at the full step, were the model linear. */
function gainOf(normal: Matrix, down: readonly number[]): number {
  const damped = normal.map((row, i) =>
    row.map((entry, j) => (i === j ? entry * (1 + 1e-12) : entry)),
  );
  const step = solvedSymmetric(damped, down);
  // Without a step the directions are dependent: as much as each alone would bring.
  if (!step) return down.reduce((sum, one, i) => sum + one ** 2 / (normal[i]?.[i] as number), 0);
  return step.reduce((sum, one, i) => sum + one * (down[i] as number), 0);
}

function promisedGain(
  normal: Matrix,
  down: readonly number[],
  free: readonly number[],
  from: readonly number[],
  to: readonly number[],
): number {
  const step = free.map((j) => (to[j] as number) - (from[j] as number));
  return step.reduce((sum, one, i) => {
    const curved = step.reduce((all, other, j) => all + (normal[i]?.[j] as number) * other, 0);
    return sum + one * (2 * (down[i] as number) - curved);
  }, 0);
}

function clipped(
  parameters: readonly number[],
  { lower, upper }: LeastSquaresProblem,
): readonly number[] {
  return parameters.map((value, i) =>
    Math.min(
      Math.max(value, lower?.[i] ?? Number.NEGATIVE_INFINITY),
      upper?.[i] ?? Number.POSITIVE_INFINITY,
    ),
  );
}

/** Central differences, or one-sided where one side has no value. Undefined when neither has. */
function slopes(
  { steps, start }: LeastSquaresProblem,
  at: readonly number[],
  residualsAt: (parameters: readonly number[]) => readonly number[] | undefined,
): Matrix | undefined {
  const columns: (readonly number[])[] = [];
  let middle: readonly number[] | undefined;
  for (const [i, value] of at.entries()) {
    const step = steps?.[i] ?? 1e-4 * (Math.abs(value) || Math.abs(start[i] as number) || 1);
    const beside = (sign: number): readonly number[] | undefined =>
      residualsAt(at.map((one, j) => (i === j ? one + sign * step : one)));
    const [above, below] = [beside(1), beside(-1)];
    if (!above || !below) middle ??= residualsAt(at);
    const [high, low] = [above ?? middle, below ?? middle];
    if (!high || !low || (!above && !below)) return undefined;
    const width = above && below ? 2 * step : step;
    columns.push(high.map((one, k) => (one - (low[k] as number)) / width));
  }
  return (columns[0] ?? []).map((_, k) => columns.map((column) => column[k] as number));
}
