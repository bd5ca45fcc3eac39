/** Small symmetric matrices, as rows of numbers: solving, inverting, and their principal directions. */

export type Matrix = readonly (readonly number[])[];

/** A pivot below this share of its diagonal is rounding: the matrix has no inverse. */
const SINGULAR = 1e-14;

/** Jᵀ J of a matrix given by rows. */
export function gram(rows: Matrix, size: number): number[][] {
  const product = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (const row of rows) {
    for (let i = 0; i < size; i++) {
      const target = product[i] as number[];
      for (let j = 0; j < size; j++) {
        target[j] = (target[j] as number) + (row[i] as number) * (row[j] as number);
      }
    }
  }
  return product;
}

/** Solution of A x = b for a positive definite A by Cholesky's factors; undefined when A is not one. */
export function solvedSymmetric(matrix: Matrix, right: readonly number[]): number[] | undefined {
  const size = right.length;
  const lower: number[][] = [];
  for (let i = 0; i < size; i++) {
    const row: number[] = [];
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i]?.[j] as number;
      for (let k = 0; k < j; k++) sum -= (row[k] as number) * ((lower[j] ?? row)[k] as number);
      if (i !== j) {
        row.push(sum / (lower[j]?.[j] as number));
      } else {
        if (!(sum > SINGULAR * (matrix[i]?.[i] as number))) return undefined;
        row.push(Math.sqrt(sum));
      }
    }
    lower.push(row);
  }
  const x = [...right];
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++)
      x[i] = (x[i] as number) - (lower[i]?.[k] as number) * (x[k] as number);
    x[i] = (x[i] as number) / (lower[i]?.[i] as number);
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++)
      x[i] = (x[i] as number) - (lower[k]?.[i] as number) * (x[k] as number);
    x[i] = (x[i] as number) / (lower[i]?.[i] as number);
  }
  return x;
}

/** Inverse of a positive definite matrix; undefined when it is not one. */
export function invertedSymmetric(matrix: Matrix): number[][] | undefined {
  const size = matrix.length;
  // Brought to a diagonal of ones first, so that parameters of very different size do not pass for dependence.
  const scale = matrix.map((row, i) => 1 / Math.sqrt(row[i] as number));
  if (!scale.every(Number.isFinite)) return undefined;
  const scaled = matrix.map((row, i) =>
    row.map((entry, j) => entry * (scale[i] as number) * (scale[j] as number)),
  );
  const columns: number[][] = [];
  for (let i = 0; i < size; i++) {
    const unit = Array.from({ length: size }, (_, j) => (i === j ? 1 : 0));
    const column = solvedSymmetric(scaled, unit);
    if (!column) return undefined;
    columns.push(column);
  }
  return columns.map((column, i) =>
    column.map((entry, j) => entry * (scale[i] as number) * (scale[j] as number)),
  );
}

/** A principal direction of a symmetric matrix and what the matrix stretches it by. */
export interface PrincipalDirection {
  readonly value: number;
  /** Of length one. */
  readonly vector: readonly number[];
}

/**
 * Eigenvalues with their vectors, the largest first, by Jacobi's rotations: each turns one off-diagonal pair to nought, until
 * none is left that counts. Slow for large matrices, and as exact as can be for small ones.
 *
 * Source: Jacobi (1846), in any text on numerical methods (memory).
 */
export function principalDirections(matrix: Matrix): readonly PrincipalDirection[] {
  const size = matrix.length;
  const a = matrix.map((row) => [...row]);
  const v = a.map((_, i) => a.map((__, j) => (i === j ? 1 : 0)));
  const at = (rows: number[][], i: number, j: number): number => rows[i]?.[j] as number;
  for (let sweep = 0; sweep < 60; sweep++) {
    let off = 0;
    let whole = 0;
    for (let i = 0; i < size; i++) {
      for (let j = 0; j < size; j++) {
        whole += at(a, i, j) ** 2;
        if (i !== j) off += at(a, i, j) ** 2;
      }
    }
    if (off <= 1e-30 * whole) break;
    for (let p = 0; p < size; p++) {
      for (let q = p + 1; q < size; q++) {
        if (at(a, p, q) === 0) continue;
        const theta = (at(a, q, q) - at(a, p, p)) / (2 * at(a, p, q));
        const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1));
        const c = 1 / Math.hypot(t, 1);
        rotate(a, v, { p, q, c, s: t * c });
      }
    }
  }
  return a
    .map((_, i) => ({ value: at(a, i, i), vector: v.map((row) => row[i] as number) }))
    .sort((one, other) => other.value - one.value);
}

function rotate(
  a: number[][],
  v: number[][],
  {
    p,
    q,
    c,
    s,
  }: { readonly p: number; readonly q: number; readonly c: number; readonly s: number },
): void {
  const turn = (row: number[]): void => {
    const [x, y] = [row[p] as number, row[q] as number];
    row[p] = c * x - s * y;
    row[q] = s * x + c * y;
  };
  for (const row of a) turn(row);
  const [upper, lower] = [a[p] as number[], a[q] as number[]];
  for (let k = 0; k < a.length; k++) {
    const [x, y] = [upper[k] as number, lower[k] as number];
    upper[k] = c * x - s * y;
    lower[k] = s * x + c * y;
  }
  for (const row of v) turn(row);
}
