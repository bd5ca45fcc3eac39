/**
 * How much of a result's variance each input carries, from samples of both.
 *
 * Ranks are taken in place of values, so that any rising or falling law counts as well as a straight one. Then
 *
 *   share_j = β_j r_j,   Σ share_j = R² ≤ 1
 *
 * with β the standardised coefficients of the regression on all inputs and r the plain correlations. What is missing to one
 * is what no rising or falling law explains: inputs that work through one another, or both ways.
 * R² is lowered for the inputs that fit by chance, 1 − (1 − R²)(n − 1)/(n − d − 1), and the shares with it.
 *
 * Source: Pratt (1987), Dividing the indivisible, Proc. 2nd Tampere Conf. in Statistics (memory); ranks: Iman and Conover
 * (1979), Technometrics 21, 499–509 (memory); R² by Ezekiel (1930, memory). Judgement: shares below nought count as nought.
 *
 * @throws RangeError when columns differ in length.
 */
export function varianceShares(
  columns: readonly (readonly number[])[],
  result: readonly number[],
): readonly number[] {
  const count = result.length;
  for (const column of columns) {
    if (column.length !== count) {
      throw new RangeError(`every column must hold ${count} samples, got ${column.length}`);
    }
  }
  const y = standardisedRanks(result);
  const moving = columns.flatMap((column, index) => {
    const x = standardisedRanks(column);
    return x ? [{ index, x }] : [];
  });
  const shares = columns.map(() => 0);
  // With fewer samples than unknowns any result is explained, which says nothing.
  if (!y || count <= moving.length + 1) return shares;
  const correlations = moving.map(({ x }) => dot(x, y));
  const matrix = moving.map((a) => moving.map((b) => dot(a.x, b.x)));
  const coefficients = solved(matrix, correlations);
  const raw = coefficients.map((b, j) => Math.max(0, b * (correlations[j] as number)));
  const fit = coefficients.reduce((sum, b, j) => sum + b * (correlations[j] as number), 0);
  const explained = Math.max(0, 1 - ((1 - fit) * (count - 1)) / (count - moving.length - 1));
  const whole = raw.reduce((sum, share) => sum + share, 0);
  moving.forEach(({ index }, j) => {
    shares[index] = whole > 0 ? ((raw[j] as number) * explained) / whole : 0;
  });
  return shares;
}

/** Ranks, equal values sharing theirs, with mean 0 and length 1; undefined when all values are equal. */
function standardisedRanks(values: readonly number[]): readonly number[] | undefined {
  const order = values.map((_, i) => i).sort((a, b) => (values[a] ?? 0) - (values[b] ?? 0));
  const ranks = new Array<number>(values.length).fill(0);
  for (let from = 0; from < order.length; ) {
    let to = from;
    while (to + 1 < order.length && values[order[to + 1] ?? 0] === values[order[from] ?? 0]) to++;
    for (let i = from; i <= to; i++) ranks[order[i] as number] = (from + to) / 2;
    from = to + 1;
  }
  const middle = (values.length - 1) / 2;
  const centred = ranks.map((rank) => rank - middle);
  const length = Math.sqrt(dot(centred, centred));
  return length > 0 ? centred.map((rank) => rank / length) : undefined;
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, x, i) => sum + x * (b[i] as number), 0);
}

/** Judgement: a pivot this small means that a column repeats others; it then takes no part. */
const LEAST_PIVOT = 1e-9;

/** Solution of a symmetric positive system by elimination. */
function solved(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const size = right.length;
  const rows = matrix.map((row, i) => [...row, right[i] as number]);
  for (let i = 0; i < size; i++) {
    const pivotRow = rows[i] as number[];
    const pivot = pivotRow[i] as number;
    if (Math.abs(pivot) < LEAST_PIVOT) continue;
    for (let k = i + 1; k < size; k++) {
      const row = rows[k] as number[];
      const factor = (row[i] as number) / pivot;
      for (let j = i; j <= size; j++)
        row[j] = (row[j] as number) - factor * (pivotRow[j] as number);
    }
  }
  const solution = new Array<number>(size).fill(0);
  for (let i = size - 1; i >= 0; i--) {
    const row = rows[i] as number[];
    if (Math.abs(row[i] as number) < LEAST_PIVOT) continue;
    let rest = row[size] as number;
    for (let j = i + 1; j < size; j++) rest -= (row[j] as number) * (solution[j] as number);
    solution[i] = rest / (row[i] as number);
  }
  return solution;
}
