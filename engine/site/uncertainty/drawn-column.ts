import { inverseNormal } from '../../numerics/inverse-normal.ts';
import { latinColumn } from '../../numerics/latin-hypercube.ts';
import type { UncertainInput } from './uncertain-input.ts';

/**
 * Judgement: nothing is drawn below a twentieth of its middle. A height, a width or a flow below nought is no place, and a
 * spread as wide as that says that nobody knows.
 */
const LEAST_SHARE = 0.05;

/** Drawn values of one input, one for each sample. They follow from its name, its spread and the seed alone. */
export function drawnColumn(
  { what, spread, shape }: UncertainInput,
  middle: number,
  plan: { readonly samples: number; readonly seed: number },
): readonly number[] {
  const least = LEAST_SHARE * middle;
  const valueAt = (probability: number): number => {
    switch (shape) {
      case 'normal':
        return Math.max(least, middle + spread * inverseNormal(probability));
      case 'uniform':
        return Math.max(least, middle + spread * Math.sqrt(3) * (2 * probability - 1));
      case 'logNormal':
        return middle * Math.exp(spread * inverseNormal(probability));
    }
  };
  return latinColumn(what, plan).map(valueAt);
}
