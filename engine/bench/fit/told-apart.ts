/**
 * Which parameters a set of readings can tell from one another, from the slopes of the readings along each.
 *
 * Columns of the slopes are scaled by what each parameter is known to before any test, so that a column's length is how far that
 * much moves the readings, in their spreads. Taken are, one after the other, those with the longest part that none of the taken
 * ones can imitate; when that part is shorter than one beyond what ripple alone would make of it, the readings know the parameter no better than it was known before.
 */
import { gram, type Matrix, principalDirections } from '../../numerics/symmetric-matrix.ts';
import type { Ratio } from '../../quantities.ts';
import type { FitParameter } from './fit-parameters.ts';

/** Why the readings do not tell a parameter. */
export type Untold =
  /** As sure as it is now, it moves the readings by less than their spreads. `moves` is by how many spreads in all. */
  | { readonly what: FitParameter; readonly kind: 'noEffect'; readonly moves: number }
  /** Others move the readings in the same way: `share` of each, the largest first, does what it does. */
  | {
      readonly what: FitParameter;
      readonly kind: 'looksLike';
      readonly moves: number;
      /** Part of its effect that the others cannot imitate, in spreads. */
      readonly own: number;
      readonly others: readonly { readonly what: FitParameter; readonly share: number }[];
    }
  /** There are not more readings than parameters that are taken already. */
  | { readonly what: FitParameter; readonly kind: 'tooFewReadings'; readonly moves: number };

/** A direction in which all parameters move together, as shares of what each is known to. */
export interface Combination {
  /** Spread along it that the readings leave; over 1 they say nothing about it. */
  readonly spread: Ratio;
  readonly parts: readonly { readonly what: FitParameter; readonly share: number }[];
}

export interface ToldApart {
  readonly told: readonly FitParameter[];
  readonly untold: readonly Untold[];
  /** From the best told to the worst. */
  readonly combinations: readonly Combination[];
}

/** A partner is named when it does this much of what the untold one does. Judgement. */
const NAMED = 0.25;

/** `slopes` has a row for each reading and a column for each of `parameters`, in readings' spreads and logarithms. */
export function toldApart(
  slopes: Matrix,
  parameters: readonly FitParameter[],
  usual: Readonly<Record<FitParameter, number>>,
  blur: readonly number[] = parameters.map(() => 0),
): ToldApart {
  const scaled = parameters.map((what, j) => slopes.map((row) => (row[j] as number) * usual[what]));
  const taken: number[] = [];
  const rest = scaled.map((column) => [...column]);
  // Ripple makes a column longer than it is, as noise does: by squares, and less of it with every direction that is taken.
  const clear = (j: number): number => {
    const spare = Math.max(0, 1 - taken.length / slopes.length);
    return lengthOf(rest[j] as number[]) ** 2 - spare * (blur[j] as number) ** 2;
  };
  const isTold = (j: number): boolean => clear(j) >= 1;
  const most = slopes.length;
  while (taken.length < Math.min(most, parameters.length)) {
    const next = parameters
      .map((_, j) => j)
      .filter((j) => !taken.includes(j))
      .sort((a, b) => clear(b) - clear(a))[0];
    if (next === undefined || !isTold(next)) break;
    const axis = unit(rest[next] as number[]);
    taken.push(next);
    for (const [j, column] of rest.entries()) {
      if (taken.includes(j)) continue;
      const along = dot(column, axis);
      for (const [i, entry] of axis.entries()) column[i] = (column[i] as number) - along * entry;
    }
  }
  const name = (j: number): FitParameter => parameters[j] as FitParameter;
  const untold = parameters.flatMap((what, j): Untold[] => {
    if (taken.includes(j)) return [];
    const moves = lengthOf(scaled[j] as number[]);
    if (moves < 1) return [{ what, kind: 'noEffect', moves }];
    const own = lengthOf(rest[j] as number[]);
    if (isTold(j)) return [{ what, kind: 'tooFewReadings', moves }];
    const shares = imitation(
      scaled[j] as number[],
      taken.map((k) => scaled[k] as number[]),
    );
    const others = taken
      .map((k, i) => ({
        what: name(k),
        share: (shares[i] as number) * (lengthOf(scaled[k] as number[]) / moves),
      }))
      .filter(({ share }) => Math.abs(share) >= NAMED)
      .sort((a, b) => Math.abs(b.share) - Math.abs(a.share));
    return [{ what, kind: 'looksLike', moves, own, others }];
  });
  const directions = principalDirections(
    gram(
      slopes.map((_, i) => scaled.map((column) => column[i] as number)),
      parameters.length,
    ),
  );
  return {
    told: taken.map(name).sort((a, b) => parameters.indexOf(a) - parameters.indexOf(b)),
    untold,
    combinations: directions.map(({ value, vector }) => ({
      spread: value > 0 ? 1 / Math.sqrt(value) : Number.POSITIVE_INFINITY,
      parts: vector
        .map((share, j) => ({ what: name(j), share }))
        .filter(({ share }) => Math.abs(share) >= NAMED)
        .sort((a, b) => Math.abs(b.share) - Math.abs(a.share)),
    })),
  };
}

/** Shares of the columns that together come nearest to a target, by Gram and Schmidt's way. */
function imitation(
  target: readonly number[],
  columns: readonly (readonly number[])[],
): readonly number[] {
  const axes: number[][] = [];
  const factors: number[][] = [];
  for (const column of columns) {
    const left = [...column];
    const along = axes.map((axis) => {
      const share = dot(left, axis);
      for (const [i, entry] of axis.entries()) left[i] = (left[i] as number) - share * entry;
      return share;
    });
    factors.push([...along, lengthOf(left)]);
    axes.push(unit(left));
  }
  const shares = axes.map((axis) => dot(target, axis));
  for (let k = shares.length - 1; k >= 0; k--) {
    shares[k] = (shares[k] as number) / (factors[k]?.[k] as number);
    for (let i = 0; i < k; i++) {
      shares[i] = (shares[i] as number) - (factors[k]?.[i] as number) * (shares[k] as number);
    }
  }
  return shares;
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, one, i) => sum + one * (b[i] as number), 0);
}

function lengthOf(column: readonly number[]): number {
  return Math.sqrt(dot(column, column));
}

function unit(column: readonly number[]): number[] {
  const length = lengthOf(column);
  return column.map((one) => one / length);
}
