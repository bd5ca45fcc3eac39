/**
 * The same thing read several times: its mean, how far the readings scatter, and how well the mean is known.
 */

/** One reading, with the ± that the person gave it. */
export interface Reading {
  readonly value: number;
  /** Standard uncertainty of this one reading. */
  readonly spread?: number;
}

export interface Repeated {
  readonly count: number;
  readonly mean: number;
  /** Standard uncertainty of the mean. */
  readonly spread: number;
  /** Standard deviation of one reading about the mean; absent for a single reading. */
  readonly scatter?: number;
  /** Largest reading less the smallest. */
  readonly range: number;
}

/**
 * Mean of repeat readings, and its standard uncertainty.
 *
 *   s² = Σ(xᵢ − x̄)²/(n − 1)        u = √( max(s², r²)/n )
 *
 * `readingSpread` r is what one reading is good to by its instrument; a ± that stands with a reading takes its place. The
 * scatter of the readings already holds the instrument's own error, so the larger of the two counts and not their sum: two
 * readings that agree by luck are not taken as perfect.
 *
 * Source: JCGM 100:2008, 4.2.3, for s/√n (memory). Judgement: the larger of scatter and instrument.
 * @throws RangeError when there are no readings.
 */
export function repeated(readings: readonly Reading[], readingSpread: number): Repeated {
  const count = readings.length;
  if (count === 0) throw new RangeError('readings must hold at least one reading');
  const values = readings.map(({ value }) => value);
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  const instrument = Math.sqrt(
    readings.reduce((sum, { spread = readingSpread }) => sum + spread ** 2, 0) / count,
  );
  const scatter =
    count > 1
      ? Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (count - 1))
      : undefined;
  return {
    count,
    mean,
    spread: Math.max(scatter ?? 0, instrument) / Math.sqrt(count),
    ...(scatter !== undefined && { scatter }),
    range: Math.max(...values) - Math.min(...values),
  };
}

/** Independent shares of error together: the root of the sum of their squares. Source: JCGM 100:2008, 5.1.2 (memory). */
export function together(...shares: readonly number[]): number {
  return Math.hypot(...shares);
}

/** Spread of a value that was written with or without its ±, as a share of it. */
export function relativeSpread({ value, spread }: Reading, unstated: number): number {
  return spread === undefined ? unstated : spread / value;
}
