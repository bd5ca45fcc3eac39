/** The drive line developed along its length: the head along it at one instant, how far it has swung, and the water in the pipe. */
import type { System } from '@fallwright/units';
import { formatQuantity } from '@fallwright/units';
import type { Point } from '../drawing/points.ts';
import { outline, pathThrough } from '../drawing/points.ts';
import { ticksBetween } from './axis.ts';
import type { Extent, Reel } from './reel.ts';
import { shownUnit } from './shown-units.ts';

export interface StripFrame {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly pipe: { readonly y: number; readonly bore: number; readonly wall: number };
  readonly zero: number;
  readonly fall: number;
  readonly title: string;
  /** What the thin lines are; empty where there is no room, and the notes alone say it. */
  readonly note: string;
  readonly levels: readonly { readonly at: number; readonly label: string }[];
  readonly length: string;
}

export interface StripInstant {
  readonly head: string;
  readonly ground: string;
  /** Between the lowest and the highest head so far. */
  readonly envelope: string;
  readonly highest: string;
  readonly lowest: string;
  /** Stretches of water with the depth of blue of their head. */
  readonly cells: readonly { readonly x: number; readonly width: number; readonly blue: number }[];
  readonly arrows: readonly FlowArrow[];
}

export interface FlowArrow {
  readonly x: number;
  /** Length in pixels, below nought towards the source. */
  readonly reach: number;
}

export function layOutStrip(reel: Reel, width: number, system: System): StripFrame {
  const isNarrow = width < 600;
  const { installation, film } = reel;
  const left = isNarrow ? 36 : 46;
  const right = width - (isNarrow ? 6 : 14);
  const top = 30;
  const bottom = top + (isNarrow ? 96 : 104);
  const { low, high } = stripExtent(reel);
  const toY = heightOf(top, bottom, { low, high });
  const unit = shownUnit('head', system);
  const bore = isNarrow ? 18 : 20;
  const pipeY = bottom + 16 + bore / 2 + 3;
  return {
    width,
    height: pipeY + bore / 2 + 26,
    left,
    right,
    top,
    bottom,
    pipe: { y: pipeY, bore, wall: bore + 6 },
    zero: toY(0),
    fall: toY(installation.fall),
    note: isNarrow ? '' : 'dotted: the fall; broken: highest and lowest so far',
    title: `Head along the drive line, ${unit.word}`,
    levels: ticksBetween({ low, high, most: 4, unitInSi: unit.inSi }).map(({ value, label }) => ({
      at: toY(value),
      label,
    })),
    length: `${formatQuantity(film.distance[film.nodes - 1] ?? 0, 'pipeLength', system)} of drive line`,
  };
}

export function stripAt(reel: Reel, frame: number, strip: StripFrame): StripInstant {
  const { film } = reel;
  const { left, right, top, bottom } = strip;
  const { low, high } = stripExtent(reel);
  const toY = heightOf(top, bottom, { low, high });
  const length = film.distance[film.nodes - 1] || 1;
  const toX = (distance: number): number => left + (distance / length) * (right - left);
  const heads = headAlong(reel, frame);
  const points = (values: ArrayLike<number>): Point[] =>
    film.distance.map((distance, node) => ({ x: toX(distance), y: toY(values[node] ?? 0) }));
  const line = points(heads);
  const { highest, lowest } = envelopeSoFar(reel, frame);
  const over = points(highest);
  const under = points(lowest);
  return {
    head: pathThrough(line),
    ground: outline([...line, { x: right, y: strip.zero }, { x: left, y: strip.zero }]),
    envelope: outline([...over, ...under.toReversed()]),
    highest: pathThrough(over),
    lowest: pathThrough(under),
    cells: cellEdges(film.distance).map(({ from, to }, node) => ({
      x: toX(from),
      width: toX(to) - toX(from),
      blue: depthOfBlue(heads[node] ?? 0, reel.highestHead),
    })),
    arrows: arrowsAlong(reel, frame, left, right),
  };
}

/** Heads of all nodes at one frame. */
export function headAlong({ film }: Pick<Reel, 'film'>, frame: number): Float32Array {
  return film.lineHead.subarray(frame * film.nodes, (frame + 1) * film.nodes);
}

/** Highest and lowest head that each node has seen from the first frame to this one. */
export function envelopeSoFar(
  { film }: Pick<Reel, 'film'>,
  frame: number,
): { readonly highest: Float32Array; readonly lowest: Float32Array } {
  const { nodes, lineHead } = film;
  const highest = lineHead.slice(0, nodes);
  const lowest = lineHead.slice(0, nodes);
  for (let f = 1; f <= frame; f++) {
    for (let node = 0; node < nodes; node++) {
      const head = lineHead[f * nodes + node] as number;
      if (head > (highest[node] as number)) highest[node] = head;
      if (head < (lowest[node] as number)) lowest[node] = head;
    }
  }
  return { highest, lowest };
}

/** How blue water of a head is, from 0 at no head to 0.62 at the highest: one scale for the whole screen. */
export function depthOfBlue(head: number, highest: number): number {
  return 0.62 * Math.min(1, Math.max(0, head / Math.max(highest, 1e-9)));
}

function stripExtent({ installation, lineHead }: Reel): Extent {
  return { low: Math.min(0, lineHead.low), high: Math.max(lineHead.high, installation.fall) };
}

function heightOf(top: number, bottom: number, { low, high }: Extent): (head: number) => number {
  const perHead = (bottom - top) / Math.max(high - low, 0.1);
  return (head) => top + (high - head) * perHead;
}

/** Each node stands for the water half way to its neighbours. */
function cellEdges(distance: readonly number[]): { from: number; to: number }[] {
  return distance.map((at, node) => ({
    from: node === 0 ? at : (at + (distance[node - 1] ?? at)) / 2,
    to: (at + (distance[node + 1] ?? at)) / 2,
  }));
}

/** A few arrows in the pipe, as long as the water there is fast. */
function arrowsAlong(
  { film, greatestFlow }: Reel,
  frame: number,
  left: number,
  right: number,
): FlowArrow[] {
  const count = right - left < 600 ? 5 : 9;
  const room = (right - left) / count;
  const length = film.distance[film.nodes - 1] ?? 0;
  return Array.from({ length: count }, (_, i) => {
    const share = (i + 0.5) / count;
    const node = nearestNode(film.distance, share * length);
    const flow = film.lineFlow[frame * film.nodes + node] ?? 0;
    return {
      x: left + share * (right - left),
      reach: (flow / Math.max(greatestFlow, 1e-12)) * 0.6 * room,
    };
  });
}

function nearestNode(distance: readonly number[], at: number): number {
  let best = 0;
  distance.forEach((d, node) => {
    if (Math.abs(d - at) < Math.abs((distance[best] ?? 0) - at)) best = node;
  });
  return best;
}
