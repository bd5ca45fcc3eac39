/**
 * Measured against predicted, drawn. A test: what is delivered over the lift, the prediction as a line with its band. A ram over
 * all its tests, on whatever rigs: each reading at what was predicted for it, over the line on which both are the same.
 */
import {
  formatQuantity,
  type Purpose,
  readQuantity,
  type System,
  unitShown,
} from '@fallwright/units';
import type { Drawing, Point, Shape, Tone } from '../drawing/shapes.ts';
import { area, line } from '../drawing/shapes.ts';
import { roundTicks } from '../drawing/ticks.ts';

export interface AgainstPoint {
  /** Written beside it: the number of its reading or test. */
  readonly label: string;
  readonly lift: number;
  readonly measured: number;
  /** Standard uncertainty of the measured. */
  readonly spread: number;
  /** Absent until it is known, or when the simulation does not run there. */
  readonly predicted?: number | undefined;
  /** Standard uncertainty of the predicted. */
  readonly predictedSpread?: number | undefined;
  readonly agrees: boolean;
}

export interface AgainstCurve {
  /** What tells it from others, such as a tuning; empty when there is one. */
  readonly label: string;
  /** By rising lift; where the ram does not run there is none. */
  readonly points: readonly {
    readonly lift: number;
    readonly delivered: number;
    readonly spread: number;
  }[];
}

interface Sheet {
  readonly width: number;
  readonly system: System;
}

const LEFT = 44;
const RIGHT = 14;
const TOP = 26;
const BOTTOM = 44;
/** Judgement: a little lower than wide, and never so low that marks run together. */
const HEIGHT_PER_WIDTH = 0.6;
const HEIGHTS = { least: 250, most: 400 } as const;
const MARK = 5;
const CAP = 4;
const LETTER = 7;
/** From the tenth to the ninetieth of a hundred, in standard uncertainties. Source: the normal distribution (memory). */
const TENTH = 1.2816;

/** Judgement: nine lifts draw the bend of the line, and the simulation runs them in a second or two. */
const CURVE_POINTS = 9;

/** Lifts at which the line of a test is worked out: from under the lowest reading to over the highest. */
export function curveLifts(lifts: readonly number[], fall: number): readonly number[] {
  if (lifts.length === 0) return [];
  const [least, most] = [Math.min(...lifts), Math.max(...lifts)];
  const margin = Math.max(0.12 * (most - least), 0.2 * least);
  const from = Math.max(1.1 * fall, least - margin);
  const to = most + margin;
  // In equal shares: the line bends where the lift is small.
  return Array.from(
    { length: CURVE_POINTS },
    (_, i) => from * (to / from) ** (i / (CURVE_POINTS - 1)),
  );
}

/** Delivered over lift. */
export function testPicture(
  {
    points,
    curves,
  }: { readonly points: readonly AgainstPoint[]; readonly curves: readonly AgainstCurve[] },
  sheet: Sheet,
): Drawing {
  const onCurves = curves.flatMap((curve) => curve.points);
  const lifts = [...points, ...onCurves].map(({ lift }) => lift);
  const highest = Math.max(
    0,
    ...points.map(({ measured, spread }) => measured + 2 * spread),
    ...onCurves.map(({ delivered, spread }) => delivered + TENTH * spread),
  );
  const frame = frameOf(sheet);
  const x = axis('height', { from: leastOf(lifts), to: Math.max(...lifts) }, sheet, frame.across);
  const y = axis('sourceFlow', { from: 0, to: 1.08 * highest }, sheet, frame.up);
  const at = (lift: number, flow: number): Point => ({ x: x.at(lift), y: y.at(flow) });
  return {
    width: sheet.width,
    height: frame.height,
    shapes: [
      ...curves.map((curve) => band(curve, at)),
      ...axes(x, y, frame, {
        up: `delivered, ${unitShown('sourceFlow', sheet.system)}`,
        across: `lift, ${unitShown('height', sheet.system)}`,
      }),
      ...curves.flatMap((curve) => curveLine(curve, at, frame)),
      ...points.flatMap((point) => mark(at(point.lift, point.measured), point, y)),
      ...labels(
        points.map((point) => ({ point, at: at(point.lift, point.measured) })),
        frame,
        'falls',
      ),
    ],
  };
}

/** What was measured over what was predicted for it. */
export function ramPicture(points: readonly AgainstPoint[], sheet: Sheet): Drawing {
  const shown = points.filter((point) => point.predicted !== undefined);
  const most = Math.max(
    0,
    ...shown.map(({ measured, spread, predicted = 0 }) =>
      Math.max(measured + 2 * spread, predicted),
    ),
  );
  const frame = frameOf(sheet);
  const reach = { from: 0, to: 1.08 * most };
  const x = axis('sourceFlow', reach, sheet, frame.across);
  const y = axis('sourceFlow', reach, sheet, frame.up);
  const unit = unitShown('sourceFlow', sheet.system);
  const end = reach.to;
  return {
    width: sheet.width,
    height: frame.height,
    shapes: [
      ...axes(x, y, frame, { up: `measured, ${unit}`, across: `predicted, ${unit}` }),
      line('front', { x: x.at(0), y: y.at(0) }, { x: x.at(end), y: y.at(end) }),
      words('ofWater', 'end', { x: x.at(0.93 * end), y: y.at(0.93 * end) - 12 }, 'as predicted'),
      ...shown.flatMap((point) =>
        mark({ x: x.at(point.predicted ?? 0), y: y.at(point.measured) }, point, y),
      ),
      ...labels(
        shown.map((point) => ({
          point,
          at: { x: x.at(point.predicted ?? 0), y: y.at(point.measured) },
        })),
        frame,
        'rises',
      ),
    ],
  };
}

/** The picture for those who do not see it. */
export function againstInWords(points: readonly AgainstPoint[], system: System): string {
  if (points.length === 0) return 'Nothing is measured yet.';
  const said = points.map(({ label, lift, measured, predicted, agrees }) => {
    const flow = (value: number): string => formatQuantity(value, 'sourceFlow', system);
    const beside =
      predicted === undefined
        ? 'no prediction'
        : `${flow(predicted)} predicted${agrees ? '' : ', off'}`;
    return `${label}: at ${formatQuantity(lift, 'height', system)} ${flow(measured)} delivered, ${beside}`;
  });
  return `Delivered flow, measured against predicted. ${said.join('; ')}.`;
}

interface Frame {
  readonly height: number;
  readonly across: readonly [from: number, to: number];
  readonly up: readonly [from: number, to: number];
}

function frameOf({ width }: Sheet): Frame {
  const height = Math.min(HEIGHTS.most, Math.max(HEIGHTS.least, HEIGHT_PER_WIDTH * width));
  return { height, across: [LEFT, width - RIGHT], up: [height - BOTTOM, TOP] };
}

interface Axis {
  readonly at: (value: number) => number;
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
}

function axis(
  purpose: Purpose,
  { from, to }: { readonly from: number; readonly to: number },
  { system, width }: Sheet,
  [first, last]: readonly [number, number],
): Axis {
  const unit = perShownUnit(purpose, system);
  const reach = to > from ? to - from : Math.max(to, unit);
  const at = (value: number): number => first + ((value - from) / reach) * (last - first);
  const steps = roundTicks(to / unit, Math.max(3, Math.min(6, Math.round(width / 90))));
  const step = (steps[1] ?? 1) - (steps[0] ?? 0);
  const decimals = decimalsOf(step);
  return {
    at,
    ticks: steps
      .filter((value) => value * unit >= from - 1e-12)
      .map((value) => ({ at: at(value * unit), text: value.toFixed(decimals) })),
  };
}

/** As many as tell one step from the next. */
function decimalsOf(step: number): number {
  const isWhole = (decimals: number): boolean =>
    Math.abs(step * 10 ** decimals - Math.round(step * 10 ** decimals)) < 1e-6;
  return [0, 1, 2, 3].find(isWhole) ?? 4;
}

/** From nought where that wastes little room. */
function leastOf(lifts: readonly number[]): number {
  const [least, most] = [Math.min(...lifts), Math.max(...lifts)];
  return least < 0.4 * most ? 0 : Math.max(0, least - 0.1 * (most - least || most));
}

function axes(
  x: Axis,
  y: Axis,
  { height, across, up }: Frame,
  titles: { readonly up: string; readonly across: string },
): readonly Shape[] {
  const [left, right] = across;
  const [bottom, top] = up;
  return [
    ...y.ticks.flatMap(({ at, text }): Shape[] => [
      line('grid', { x: left, y: at }, { x: right, y: at }),
      words('tick', 'end', { x: left - 7, y: at + 4 }, text),
    ]),
    ...x.ticks.flatMap(({ at, text }): Shape[] => [
      line('grid', { x: at, y: top }, { x: at, y: bottom }),
      words('tick', 'middle', { x: at, y: bottom + 17 }, text),
    ]),
    line('axis', { x: left, y: top }, { x: left, y: bottom }, { x: right, y: bottom }),
    words('strong', 'start', { x: 2, y: 14 }, titles.up),
    words('strong', 'end', { x: right, y: height - 6 }, titles.across),
  ];
}

type Place = (lift: number, flow: number) => Point;

function band({ points }: AgainstCurve, at: Place): Shape {
  const edge = (sign: number): Point[] =>
    points.map(({ lift, delivered, spread }) =>
      at(lift, Math.max(0, delivered + sign * TENTH * spread)),
    );
  return area('band', [...edge(1), ...edge(-1).reverse()]);
}

function curveLine(curve: AgainstCurve, at: Place, { across }: Frame): readonly Shape[] {
  const { points, label } = curve;
  const shown = points.map(({ lift, delivered }) => at(lift, delivered));
  const first = shown[0];
  if (first === undefined) return [];
  const middle = shown[1] ?? first;
  const said = label === '' ? 'predicted' : label;
  // Over the falling line there is room to its right.
  const x = Math.min(middle.x + 10, across[1] - LETTER * said.length);
  return [line('front', ...shown), words('ofWater', 'start', { x, y: middle.y - 8 }, said)];
}

/** A ring with the bar of its spread. */
function mark(at: Point, { spread, measured, agrees }: AgainstPoint, y: Axis): readonly Shape[] {
  const [high, low] = [y.at(measured + TENTH * spread), y.at(measured - TENTH * spread)];
  const isSeen = low - high > 2 * MARK;
  const cap = (level: number): Shape =>
    line('spread', { x: at.x - CAP, y: level }, { x: at.x + CAP, y: level });
  return [
    ...(isSeen
      ? [line('spread', { x: at.x, y: high }, { x: at.x, y: low }), cap(high), cap(low)]
      : []),
    area(agrees ? 'measured' : 'measuredOff', ring(at, agrees ? MARK : MARK + 1)),
  ];
}

/** Judgement: 24 sides look round at this size. */
function ring({ x, y }: Point, radius: number): readonly Point[] {
  return Array.from({ length: 24 }, (_, i) => {
    const angle = (i * Math.PI) / 12;
    return { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) };
  });
}

interface Placed {
  readonly point: AgainstPoint;
  readonly at: Point;
}

/**
 * Names of the marks on the side that the line leaves free: a mark under the line has its name on the far side of it. `falls` says
 * which way the line goes.
 */
function labels(
  placed: readonly Placed[],
  { up: [bottom], across: [left, right] }: Frame,
  line: 'falls' | 'rises',
): readonly Shape[] {
  return placed.map(({ point, at }) => {
    const { label, agrees, measured, predicted = measured } = point;
    const said = agrees ? label : `${label}, off`;
    const isUnder = measured <= predicted;
    const isLeft = (line === 'falls') === isUnder;
    const room = LETTER * said.length + MARK + 4;
    const goesLeft = isLeft ? at.x - room > left : at.x + room > right;
    const x = goesLeft ? at.x - MARK - 4 : at.x + MARK + 4;
    const y = isUnder ? Math.min(at.y + 16, bottom - 4) : at.y - 8;
    return words(agrees ? 'plain' : 'ofAlarm', goesLeft ? 'end' : 'start', { x, y }, said);
  });
}

function words(tone: Tone, anchor: 'start' | 'middle' | 'end', at: Point, text: string): Shape {
  return { kind: 'words', tone, anchor, at, lines: [text] };
}

function perShownUnit(purpose: Purpose, system: System): number {
  const read = readQuantity(`1 ${unitShown(purpose, system)}`, purpose);
  if (!read.ok) throw new RangeError(`1 ${unitShown(purpose, system)} should be readable`);
  return read.value.value;
}
