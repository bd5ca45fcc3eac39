/**
 * Which test would teach most: settings of fall, lift or tuning within a rig's means, by how much each would narrow what the fit leaves open.
 *
 * What is known so far is the information of the readings and of what was known before. A setting adds the information of the readings that
 * would be made at it, by its slopes along every parameter: no reading has to be made for that. Two things are told of each: the gain of
 * information about all parameters, and how much narrower the band of delivered water becomes at the settings that were tested.
 *
 * Source: Bayesian experiment design for a linear model, D-optimal and by the variance of a prediction (memory).
 */
import type { Installation } from '../../cycle/installation.ts';
import type { RunOptions } from '../../cycle/operating-point.ts';
import { invertedSymmetric, type Matrix } from '../../numerics/symmetric-matrix.ts';
import type { Metre, Ratio } from '../../quantities.ts';
import type { BenchCase } from '../answer-reading.ts';
import { type BenchQuantity, type Measured, USUAL_SPREADS } from '../bench-reading.ts';
import type { FitParameter } from './fit-parameters.ts';
import { type FitDone, NINETY, slopeStep } from './fit-ram.ts';
import { FIT_RESOLUTION, predictedOf, RIPPLE } from './fit-readings.ts';

/** A setting that the rig can be put to. */
export interface NextSetting {
  /** How a person knows it again. */
  readonly name: string;
  /** The rig and the ram as it was before the fit, tuned as it would be. */
  readonly installation: Installation;
  readonly fall: Metre;
  readonly lift: Metre;
}

export interface NextTest {
  readonly setting: NextSetting;
  /** Whether the fitted ram runs there; where it does not, the rest is nought and 1. */
  readonly runs: boolean;
  /** Logarithm of how many times smaller the room for all parameters becomes. */
  readonly information: number;
  /** Half-width of the 90 % band of delivered water now, and after: shares of it, mean over the tested settings. */
  readonly bandNow: Ratio;
  readonly bandAfter: Ratio;
  /** What each parameter would be good to, as the spread of its logarithm. */
  readonly spreads: Partial<Readonly<Record<FitParameter, number>>>;
}

/** What is read at a setting. Judgement: the peak is seldom read well enough to count on. */
const READ: readonly BenchQuantity[] = ['beatFrequency', 'deliveryFlow', 'wasteFlow'];

/** The settings in order of what they teach: that which narrows the band of delivered water most comes first. */
export function nextTests(
  fit: FitDone,
  settings: readonly NextSetting[],
  options: RunOptions = FIT_RESOLUTION,
): readonly NextTest[] {
  const { knowledge, misfit, factors } = fit;
  const { candidates, usual, data, slopes } = knowledge;
  const known = informationOf(slopes, misfit, candidates.length);
  for (const [i, what] of candidates.entries()) {
    const row = known[i] as number[];
    row[i] = (row[i] as number) + usual[what] ** -2;
  }
  // Slopes of the logarithm of the delivered water where it was read.
  const delivered = slopes.flatMap((row, i) => {
    const datum = data[i];
    return datum?.quantity === 'deliveryFlow' ? [row.map((slope) => slope * datum.spread)] : [];
  });
  const bandNow = bandOf(known, delivered);
  return settings
    .map((setting): NextTest => {
      const rows = rowsAt(setting);
      const nothing = {
        setting,
        runs: false,
        information: 0,
        bandNow,
        bandAfter: bandNow,
        spreads: {},
      };
      if (!rows) return nothing;
      const added = informationOf(rows, misfit, candidates.length);
      const after = known.map((row, i) => row.map((one, j) => one + (added[i]?.[j] as number)));
      const inverse = invertedSymmetric(after);
      return {
        setting,
        runs: true,
        information: (logDeterminant(after) - logDeterminant(known)) / 2,
        bandNow,
        bandAfter: bandOf(after, delivered),
        spreads: Object.fromEntries(
          candidates.map((what, i) => [what, Math.sqrt(inverse?.[i]?.[i] ?? usual[what] ** 2)]),
        ),
      };
    })
    .sort((a, b) => a.bandAfter - b.bandAfter || b.information - a.information);

  function rowsAt({ installation, fall, lift }: NextSetting): Matrix | undefined {
    const exact = (value: number): Measured => ({ value, spread: 0, count: 1, range: 0 });
    const one: BenchCase = {
      installation,
      head: 'atVessel',
      reading: { fall: exact(fall), lift: exact(lift) },
    };
    const logs = (what: FitParameter, sign: number): readonly number[] | undefined => {
      const of = predictedOf(
        one,
        { ...factors, [what]: (factors[what] ?? 1) * Math.exp(sign * slopeStep(what, usual)) },
        options,
      );
      const values = READ.map((quantity) => of(quantity));
      return values.every((value) => value !== undefined) ? values.map(Math.log) : undefined;
    };
    const columns: number[][] = [];
    for (const what of candidates) {
      const [above, below] = [logs(what, 1), logs(what, -1)];
      if (!above || !below) return undefined;
      columns.push(
        READ.map((quantity, i) => {
          const spread = Math.hypot(USUAL_SPREADS[quantity], RIPPLE[quantity]);
          return (
            ((above[i] as number) - (below[i] as number)) / (2 * slopeStep(what, usual) * spread)
          );
        }),
      );
    }
    return READ.map((_quantity, i) => columns.map((column) => column[i] as number));
  }
}

function informationOf(slopes: Matrix, misfit: Ratio, size: number): number[][] {
  return Array.from({ length: size }, (_, i) =>
    Array.from(
      { length: size },
      (__, j) =>
        slopes.reduce((sum, row) => sum + (row[i] as number) * (row[j] as number), 0) / misfit ** 2,
    ),
  );
}

/** Half-width of the 90 % band, root mean square over the settings. */
function bandOf(information: Matrix, delivered: Matrix): Ratio {
  const covariance = invertedSymmetric(information);
  if (!covariance || delivered.length === 0) return Number.NaN;
  const variances = delivered.map((slope) =>
    slope.reduce(
      (sum, one, i) =>
        sum +
        one * slope.reduce((all, other, j) => all + (covariance[i]?.[j] as number) * other, 0),
      0,
    ),
  );
  return NINETY * Math.sqrt(variances.reduce((sum, one) => sum + one, 0) / variances.length);
}

/** Of a positive definite matrix, by elimination. */
function logDeterminant(matrix: Matrix): number {
  const rows = matrix.map((row) => [...row]);
  let log = 0;
  for (let i = 0; i < rows.length; i++) {
    const row = rows[i] as number[];
    const pivot = row[i] as number;
    log += Math.log(pivot);
    for (const lower of rows.slice(i + 1)) {
      const share = (lower[i] as number) / pivot;
      for (let k = i; k < row.length; k++)
        lower[k] = (lower[k] as number) - share * (row[k] as number);
    }
  }
  return log;
}
