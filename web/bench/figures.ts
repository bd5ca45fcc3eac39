/** Medians, percentiles, and lines that fit a terminal of 80 columns. */

/** The value below which a share of them lies: the nearest rank. */
export function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const rank = Math.max(1, Math.ceil(share * sorted.length));
  return sorted[rank - 1] ?? Number.NaN;
}

export const median = (values: readonly number[]): number => percentile(values, 0.5);

export const milliseconds = (value: number): string =>
  `${value < 10 ? value.toFixed(1) : Math.round(value)} ms`;

/** One figure beside its target; a ratio below 1 keeps it. */
export function targetLine(what: string, value: string, target: string, ratio: number): string {
  return `${what.padEnd(46)}${value.padStart(10)}${target.padStart(12)}${ratio.toFixed(2).padStart(8)}`;
}

export function plainLine(what: string, value: string): string {
  return `  ${what.padEnd(44)}${value.padStart(10)}`;
}
