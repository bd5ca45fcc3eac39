/** Choosing round scales: the step of a grid, and how much heights are stretched against lengths. */

/** The smallest of 1, 2, 5, 10, 20, 50 … that divides `range` into at most `most` steps. */
export function roundStep(range: number, most: number): number {
  if (!(range > 0)) return 1;
  const rough = range / most;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].find((factor) => factor * power >= rough * (1 - 1e-9)) ?? 10;
  return step * power;
}

/** As `roundStep`, but never less than one whole unit: the grid of a drawing is in whole metres. */
export function wholeStep(range: number, most: number): number {
  return Math.max(1, roundStep(range, most));
}

/** Every multiple of `step` from `low` to `high`, both ends included when they fall on one. */
export function multiples(low: number, high: number, step: number): number[] {
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step);
}

/** How much heights may be stretched: round numbers that a person can say. */
const STRETCHES = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100];

export interface Scales {
  /** Pixels a metre along the line. */
  readonly along: number;
  /** Pixels a metre of height. */
  readonly up: number;
  /** Heights over lengths: `up / along`. 1 when nothing is stretched. */
  readonly stretch: number;
}

/**
 * The two scales of a drawing `length` metres long and `height` metres high in a frame of pixels.
 *
 * Lengths fill the width, and heights are stretched by the largest round number that still fits. A place that is
 * higher than it is long is drawn to one scale and leaves part of the width free.
 */
export function fitScales({
  length,
  height,
  frameWidth,
  frameHeight,
}: {
  readonly length: number;
  readonly height: number;
  readonly frameWidth: number;
  readonly frameHeight: number;
}): Scales {
  const along = frameWidth / Math.max(length, 1e-6);
  const up = frameHeight / Math.max(height, 1e-6);
  if (up <= along) return { along: up, up, stretch: 1 };
  const fitting = STRETCHES.filter((stretch) => stretch * along <= up);
  const stretch = fitting[fitting.length - 1] ?? 1;
  return { along, up: stretch * along, stretch };
}
