/**
 * A chart as plain shapes and words in pixels: whoever draws it, on a page or on paper, gives each matter its colour and dash.
 *
 * Several panels stand one over another and share the axis across. Each has its own scale from nought, with the quantity and
 * its unit as the title over it. What a line is stands beside its end, so that no key is needed.
 */
import {
  type Purpose,
  plainFigures,
  readQuantity,
  type System,
  unitShown,
} from '@fallwright/units';

/** What a shape is of: it decides how it is drawn. */
export type ChartMatter =
  /** Water that comes, or that stands in a tank. */
  | 'water'
  /** What is needed or drawn. */
  | 'need'
  /** Needed and not there. */
  | 'missing'
  /** A brim or an intake: a level that something is held against. */
  | 'limit'
  /** The least of a time. */
  | 'least';

export interface ChartPoint {
  readonly x: number;
  readonly y: number;
}

export interface ChartShape {
  readonly kind: 'area' | 'line';
  readonly matter: ChartMatter;
  readonly points: readonly ChartPoint[];
}

export interface ChartWord extends ChartPoint {
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly matter: ChartMatter | 'title' | 'axis' | 'strong';
}

export interface ChartLine {
  readonly from: ChartPoint;
  readonly to: ChartPoint;
}

export interface Chart {
  readonly width: number;
  readonly height: number;
  readonly grid: readonly ChartLine[];
  readonly axes: readonly ChartLine[];
  readonly shapes: readonly ChartShape[];
  readonly words: readonly ChartWord[];
}

/** A panel's place, and its scale from nought at the bottom. */
export interface Panel {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly y: (value: number) => number;
}

export function panel(
  frame: Pick<Panel, 'left' | 'right' | 'top' | 'bottom'>,
  most: number,
): Panel {
  const height = frame.bottom - frame.top;
  return { ...frame, y: (value) => frame.bottom - (most > 0 ? (value / most) * height : 0) };
}

/** Round values from nought to just over `most`, in the reader's unit: at most five of them above nought. */
export function roundTicks(
  most: number,
  purpose: Purpose,
  system: System,
): readonly { readonly value: number; readonly text: string }[] {
  const unit = unitInSi(purpose, system);
  const range = most / unit;
  if (!(range > 0)) return [{ value: 0, text: '0' }];
  const rough = range / 4;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5, 10].find((size) => size * power >= rough * (1 - 1e-9)) ?? 10) * power;
  const count = Math.ceil(range / step - 1e-9);
  return Array.from({ length: count + 1 }, (_, index) => ({
    value: index * step * unit,
    text: plainFigures(index * step, 6),
  }));
}

function unitInSi(purpose: Purpose, system: System): number {
  const read = readQuantity(`1 ${unitShown(purpose, system)}`, purpose);
  if (!read.ok) throw new RangeError(`1 ${unitShown(purpose, system)} should be readable`);
  return read.value.value;
}

/** The ticks of a panel: a grid line and a figure for each. */
export function withTicks(
  { left, right, y }: Panel,
  ticks: readonly { readonly value: number; readonly text: string }[],
): Pick<Chart, 'grid' | 'axes' | 'words'> {
  return {
    grid: ticks
      .slice(1)
      .map(({ value }) => ({ from: { x: left, y: y(value) }, to: { x: right, y: y(value) } })),
    axes: [{ from: { x: left, y: y(0) }, to: { x: right, y: y(0) } }],
    words: ticks.map(({ value, text }) => ({
      text,
      x: left - 6,
      y: y(value) + 4,
      anchor: 'end',
      matter: 'axis',
    })),
  };
}

/** A value that stays within each step and jumps between them. */
export function steps(
  values: readonly number[],
  xAt: (index: number) => number,
  y: (value: number) => number,
): readonly ChartPoint[] {
  return values.flatMap((value, index) => [
    { x: xAt(index), y: y(value) },
    { x: xAt(index + 1), y: y(value) },
  ]);
}

export function filledTo(points: readonly ChartPoint[], bottom: number): readonly ChartPoint[] {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return [];
  return [{ x: first.x, y: bottom }, ...points, { x: last.x, y: bottom }];
}

/** Judgement: two lines of small words stand clear of one another. */
const CLEAR = 14;

/** Words beside the ends of lines, moved apart where they would stand on one another, and kept inside. */
export function besideEnds(
  wanted: readonly ChartWord[],
  { top, bottom }: Pick<Panel, 'top' | 'bottom'>,
): readonly ChartWord[] {
  const sorted = [...wanted].sort((a, b) => a.y - b.y);
  const placed: ChartWord[] = [];
  for (const word of sorted) {
    const above = placed.at(-1);
    placed.push({ ...word, y: Math.max(word.y, top, above ? above.y + CLEAR : top) });
  }
  const over = (placed.at(-1)?.y ?? 0) - bottom;
  return over > 0 ? placed.map((word) => ({ ...word, y: word.y - over })) : placed;
}

export function joined(
  size: { readonly width: number; readonly height: number },
  parts: readonly Partial<Chart>[],
): Chart {
  return {
    ...size,
    grid: parts.flatMap(({ grid = [] }) => grid),
    axes: parts.flatMap(({ axes = [] }) => axes),
    shapes: parts.flatMap(({ shapes = [] }) => shapes),
    words: parts.flatMap(({ words = [] }) => words),
  };
}
