/** Round values on an axis, in the units of the page, with as many decimals as their step needs. */
import { multiples, roundStep } from '../drawing/scale.ts';
import { fixedFigure } from './shown-units.ts';

export interface Tick {
  /** In SI. */
  readonly value: number;
  readonly label: string;
}

export function ticksBetween({
  low,
  high,
  most,
  unitInSi,
}: {
  readonly low: number;
  readonly high: number;
  readonly most: number;
  readonly unitInSi: number;
}): Tick[] {
  const step = roundStep((high - low) / unitInSi, most);
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return multiples(low / unitInSi, high / unitInSi, step).map((shown) => ({
    value: shown * unitInSi,
    label: fixedFigure(shown, decimals),
  }));
}
