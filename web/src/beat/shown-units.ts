/** The units of the screen, and figures with fixed places, so that a number that changes does not jump about. */
import type { Purpose, System } from '@fallwright/units';
import { readQuantity, unitShown } from '@fallwright/units';

export interface ShownUnit {
  readonly word: string;
  /** One of it in SI. */
  readonly inSi: number;
  readonly decimals: number;
}

type Shown = Extract<
  Purpose,
  'head' | 'sourceFlow' | 'stroke' | 'volume' | 'pipeLength' | 'velocity' | 'time'
>;

/** Judgement: as fine as the simulation can tell two frames apart, no finer. */
const DECIMALS: Readonly<Record<Shown, Readonly<Record<System, number>>>> = {
  head: { metric: 1, us: 1 },
  sourceFlow: { metric: 1, us: 2 },
  stroke: { metric: 2, us: 3 },
  volume: { metric: 3, us: 4 },
  pipeLength: { metric: 1, us: 1 },
  velocity: { metric: 2, us: 2 },
  time: { metric: 4, us: 4 },
};

export function shownUnit(purpose: Shown, system: System): ShownUnit {
  const word = unitShown(purpose, system);
  const read = readQuantity(`1 ${word}`, purpose);
  if (!read.ok) throw new RangeError(`${word} is shown for ${purpose} but cannot be read`);
  return { word, inSi: read.value.value, decimals: DECIMALS[purpose][system] };
}

/** A figure with a fixed number of decimals and a true minus sign; minus nought is nought. */
export function fixedFigure(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

export function fixedQuantity(value: number, purpose: Shown, system: System): string {
  const unit = shownUnit(purpose, system);
  return `${fixedFigure(value / unit.inSi, unit.decimals)}\u00a0${unit.word}`;
}
