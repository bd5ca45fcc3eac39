/** The picture laid out: litres a day against water taken, every pair that delivers at its place, in pixels. */
import type { VerdictKind } from '@fallwright/engine';
import { isRunning } from '@fallwright/papers';
import type { System } from '@fallwright/units';
import { formatNumber, formatQuantity, readQuantity, unitShown } from '@fallwright/units';
import { multiples, roundStep } from '../drawing/scale.ts';
import type { Wishes } from './cells.ts';
import type { Pair, PairResults } from './pairs.ts';
import type { Box, Labelled, PlacedLabel } from './place-labels.ts';
import { boxOf, placeLabels } from './place-labels.ts';

export interface PicturePoint {
  readonly pair: Pair;
  readonly kind: VerdictKind;
  readonly x: number;
  readonly y: number;
  readonly isChosen: boolean;
  readonly isOnSheet: boolean;
}

export interface PictureTick {
  readonly at: number;
  readonly label: string;
}

/** A line of equal efficiency from the corner outward, with its figure at the end. */
export interface Ray {
  readonly x: number;
  readonly y: number;
  readonly words: PlacedLabel;
}

export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly markWidth: number;
  readonly frame: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  readonly points: readonly PicturePoint[];
  readonly labels: readonly PlacedLabel[];
  readonly across: readonly PictureTick[];
  readonly up: readonly PictureTick[];
  readonly rays: readonly Ray[];
  readonly need?: PictureTick;
  readonly source?: PictureTick;
  /** What the source gives, when that lies beyond the picture. */
  readonly sourceBeyond?: string;
  /** Pairs that are known and deliver nothing. */
  readonly notDrawn: number;
}

export interface PictureOf {
  readonly pairs: readonly Pair[];
  readonly results: PairResults;
  readonly wishes: Wishes;
  /** Fall over lift, for the rays. */
  readonly fallOverLift: number;
  readonly chosenKey: string | undefined;
  readonly system: System;
  readonly width: number;
}

/** D'Aubuisson efficiencies drawn as rays. Judgement: from poor to as good as a ram gets. */
const RAYS = [0.2, 0.4, 0.6, 0.8];
/** Judgement: beyond this multiple of what any pair takes, the source's line would squeeze the points together. */
const SOURCE_REACH = 1.6;
const ROOM_FOR_PEAK = 1.06;

export function layOutPicture(of: PictureOf): Picture {
  const { pairs, results, wishes, system, width, chosenKey } = of;
  const isNarrow = width < 440;
  const height = isNarrow ? 340 : Math.round(Math.min(430, Math.max(360, width * 0.8)));
  const frame = { left: 46, right: width - 10, top: 12, bottom: height - 44 };
  const markWidth = isNarrow ? 22 : 26;

  const delivering = pairs.flatMap((pair) => {
    const result = results.get(pair.key);
    if (result?.kind !== 'answered' || result.alternative.operatingPoint === undefined) return [];
    const { operatingPoint: point, verdict } = result.alternative;
    return [{ pair, kind: verdict.kind, taken: point.supplyFlow, delivered: point.deliveryFlow }];
  });
  const mostTaken = Math.max(0, ...delivering.map(({ taken }) => taken));
  const mostDelivered = Math.max(0, ...delivering.map(({ delivered }) => delivered));
  const { needed, given } = wishes;
  const isSourceInside = given !== undefined && given <= SOURCE_REACH * mostTaken;
  const taken = unitInSi('sourceFlow', system);
  const daily = unitInSi('daily', system);
  const across = axis(Math.max(mostTaken, isSourceInside ? given : 0), taken, isNarrow ? 5 : 7);
  const up = axis(Math.max(mostDelivered, needed ?? 0), daily, 5);
  const toX = (flow: number): number =>
    frame.left + (flow / across.end) * (frame.right - frame.left);
  const toY = (flow: number): number => frame.bottom - (flow / up.end) * (frame.bottom - frame.top);

  const points = delivering.map(({ pair, kind, taken: x, delivered: y }) => ({
    pair,
    kind,
    x: toX(x),
    y: toY(y),
    isChosen: pair.key === chosenKey,
    isOnSheet: pair.row.isOnSheet && pair.column.isOnSheet,
  }));
  const need =
    needed === undefined
      ? undefined
      : { at: toY(needed), label: `${formatNumber(needed, 'daily', system)} needed` };
  const source = isSourceInside
    ? { at: toX(given), label: `the source gives ${formatQuantity(given, 'sourceFlow', system)}` }
    : undefined;
  const fan = rays(of.fallOverLift, across.end, up.end, toX, toY, frame.right);
  const known = pairs.filter(({ key }) => results.has(key)).length;
  return {
    width,
    height,
    markWidth,
    frame,
    points,
    labels: placeLabels(
      [...points].sort(byImportance).map((point) => labelled(point, markWidth)),
      points.map(({ x, y }) => boxAround(x, y, markWidth)),
      frame,
      [
        ...fan.map(({ words }) => boxOf(words)),
        ...(need === undefined
          ? []
          : [
              boxOf({
                key: '',
                text: need.label,
                x: frame.right - 4,
                y: need.at - 5,
                anchor: 'end',
              }),
            ]),
        ...(source === undefined
          ? []
          : [{ left: source.at - 4, right: source.at + 18, top: frame.top, bottom: frame.bottom }]),
      ],
    ),
    across: across.values.map((value) => ({
      at: toX(value),
      label: formatNumber(value, 'sourceFlow', system),
    })),
    up: up.values.map((value) => ({ at: toY(value), label: formatNumber(value, 'daily', system) })),
    rays: fan,
    ...(need === undefined ? {} : { need }),
    ...(source === undefined ? {} : { source }),
    ...(given === undefined || isSourceInside
      ? {}
      : { sourceBeyond: formatQuantity(given, 'sourceFlow', system) }),
    notDrawn: known - points.length,
  };
}

function unitInSi(purpose: 'sourceFlow' | 'daily', system: System): number {
  const unit =
    purpose === 'daily'
      ? unitShown(purpose, system).replace(' a ', '/')
      : unitShown(purpose, system);
  const read = readQuantity(`1 ${unit}`, purpose);
  if (!read.ok) throw new RangeError(`${unit} is shown for ${purpose} but cannot be read`);
  return read.value.value;
}

/** An axis from nought to the first round value beyond `most`, in SI. */
function axis(
  most: number,
  unit: number,
  steps: number,
): { readonly end: number; readonly values: readonly number[] } {
  const wanted = most > 0 ? (most / unit) * ROOM_FOR_PEAK : 1;
  const step = roundStep(wanted, steps);
  const end = Math.ceil(wanted / step - 1e-9) * step;
  return { end: end * unit, values: multiples(0, end, step).map((value) => value * unit) };
}

/** q/(Q + q) = η H/h: a straight line through nought for each efficiency, cut where it leaves the frame. */
function rays(
  fallOverLift: number,
  mostTaken: number,
  mostDelivered: number,
  toX: (flow: number) => number,
  toY: (flow: number) => number,
  right: number,
): Ray[] {
  return RAYS.map((efficiency) => {
    const slope = efficiency * fallOverLift;
    const taken = Math.min(mostTaken, mostDelivered / slope);
    const text = String(efficiency);
    const x = toX(taken);
    const y = toY(taken * slope);
    // One that leaves at the side has its figure inside the frame, one that leaves at the top under its end.
    const words: PlacedLabel =
      x > right - 8
        ? { key: text, text, x: x - 4, y: y + 12, anchor: 'end' }
        : { key: text, text, x, y: y + 12, anchor: 'middle' };
    return { x, y, words };
  });
}

function byImportance(a: PicturePoint, b: PicturePoint): number {
  const rank = (point: PicturePoint): number =>
    (point.isChosen ? 4 : 0) + (point.isOnSheet ? 2 : 0) + (isRunning(point.kind) ? 1 : 0);
  return rank(b) - rank(a) || a.y - b.y;
}

function labelled({ pair, x, y, isChosen, isOnSheet }: PicturePoint, markWidth: number): Labelled {
  const { row, column } = pair;
  const tuning = column.detail === '' ? '' : `, ${column.detail}`;
  const [detail] = row.details;
  return {
    key: pair.key,
    text: `${row.name}${detail === undefined ? '' : `, ${detail}`}, ${column.name}${tuning}`,
    x,
    y,
    clear: markWidth / 2 + (isChosen || isOnSheet ? 11 : 6),
    isNeeded: isChosen,
  };
}

export const MARK_SHAPE = 24 / 44;

function boxAround(x: number, y: number, width: number): Box {
  const half = width / 2 + 1;
  return {
    left: x - half,
    right: x + half,
    top: y - half * MARK_SHAPE,
    bottom: y + half * MARK_SHAPE,
  };
}

/** The point nearest to a place on the picture, if one is near enough to be meant. */
export function pointAt(
  points: readonly PicturePoint[],
  x: number,
  y: number,
): PicturePoint | undefined {
  /** Judgement: half a fingertip. */
  const reach = 24;
  const distance = (point: PicturePoint): number => Math.hypot(point.x - x, point.y - y);
  const [nearest] = [...points].sort((a, b) => distance(a) - distance(b));
  return nearest !== undefined && distance(nearest) <= reach ? nearest : undefined;
}

/** Points from the least water taken to the most: the order in which arrow keys go through them. */
export function inReadingOrder(points: readonly PicturePoint[]): readonly PicturePoint[] {
  return [...points].sort((a, b) => a.x - b.x || b.y - a.y);
}
