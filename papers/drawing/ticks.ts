/** Round values on an axis from nought. */

/** Steps that people count in. */
const STEPS = [1, 2, 2.5, 5, 10] as const;

/** Round values from nought to `largest` and no farther, about `count` of them. */
export function roundTicks(largest: number, count: number): number[] {
  if (!(largest > 0)) return [0];
  const rough = largest / Math.max(1, count);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * (STEPS.find((one) => one * power >= rough * (1 - 1e-9)) ?? 10);
  const ticks = Math.floor(largest / step + 1e-9);
  return Array.from({ length: ticks + 1 }, (_, i) => i * step);
}
