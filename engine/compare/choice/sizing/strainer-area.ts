import type { Metre, Ratio, SquareMetre } from '../../../quantities.ts';

/** Open area of a strainer over its pipe's area. Source: common practice, no source (checks: RT54). */
export const STRAINER_PER_PIPE: { readonly low: Ratio; readonly high: Ratio } = {
  low: 4,
  high: 10,
};

/** Open area, all holes together, that a strainer on a pipe of this bore should have: from the least to the ample. */
export function strainerArea(innerDiameter: Metre): {
  readonly low: SquareMetre;
  readonly high: SquareMetre;
} {
  const area = (Math.PI / 4) * innerDiameter ** 2;
  return { low: STRAINER_PER_PIPE.low * area, high: STRAINER_PER_PIPE.high * area };
}

/**
 * Least depth of water over an intake, so that it draws no air.
 * Source: common practice, no source: 0.15–0.3 m and at least 4 bores (checks: RT53).
 */
export function intakeDepth(innerDiameter: Metre): Metre {
  return Math.max(0.15, 4 * innerDiameter);
}
