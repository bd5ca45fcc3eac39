/** The traces as geometry: three panels on one axis of time, in pixels of the width they have. */
import type { System } from '@fallwright/units';
import { formatQuantity } from '@fallwright/units';
import type { Tick } from './axis.ts';
import { ticksBetween } from './axis.ts';
import type { Decimated } from './decimate.ts';
import { decimate, firstAtOrAfter } from './decimate.ts';
import type { PlacedName } from './line-labels.ts';
import { placeNames } from './line-labels.ts';
import type { Reel } from './reel.ts';
import { fixedFigure, fixedQuantity, shownUnit } from './shown-units.ts';
import type { TimeWindow } from './time-window.ts';

export type TraceKind = 'head' | 'drive' | 'waste' | 'delivery' | 'opening';

export interface DrawnTrace {
  readonly kind: TraceKind;
  readonly path: string;
  /** The ground between the line and nought, where an amount is meant. */
  readonly area?: string;
}

export interface PlacedTick {
  readonly at: number;
  readonly label: string;
}

export interface Panel {
  readonly title: string;
  readonly note: string;
  readonly titleY: number;
  readonly top: number;
  readonly bottom: number;
  readonly ticks: readonly PlacedTick[];
  readonly zero: number;
  readonly traces: readonly DrawnTrace[];
  readonly levels: readonly { readonly kind: 'vessel' | 'fall'; readonly y: number }[];
  readonly names: readonly (PlacedName & { readonly of: TraceKind | 'level' })[];
}

export interface TraceLayout {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly window: TimeWindow;
  readonly panels: readonly Panel[];
  readonly times: readonly PlacedTick[];
  readonly timeTitle: string;
  /** Where the waste valve is shut. */
  readonly shut: readonly { readonly x: number; readonly width: number }[];
}

interface Line {
  readonly kind: TraceKind;
  readonly values: Float64Array;
  readonly name?: string;
  readonly isAmount?: boolean;
}

interface PanelPlan {
  readonly purpose: 'head' | 'sourceFlow' | 'stroke';
  readonly title: string;
  readonly note: string;
  readonly height: number;
  readonly low: number;
  readonly high: number;
  readonly lines: readonly Line[];
  readonly levels: readonly {
    readonly kind: 'vessel' | 'fall';
    readonly value: number;
    readonly name: string;
  }[];
}

const TITLE_HEIGHT = 26;
/** Pixels between the samples by which places for names are looked for. */
const LABEL_STEP = 12;

export function layOutTraces(
  reel: Reel,
  {
    width,
    window,
    system,
  }: { readonly width: number; readonly window: TimeWindow; readonly system: System },
): TraceLayout {
  const isNarrow = width < 480;
  const left = isNarrow ? 36 : 46;
  const right = width - (isNarrow ? 4 : 10);
  const top = 14;
  const plans = planPanels(reel, system, isNarrow);
  const span = window.to - window.from;
  const toX = (time: number): number => left + ((time - window.from) / span) * (right - left);
  let y = top;
  const panels = plans.map((plan) => {
    const panel = layOutPanel(plan, { reel, y, left, right, window, toX, system });
    y = panel.bottom + 12;
    return panel;
  });
  const bottom = y - 12;
  const times = ticksBetween({
    low: window.from,
    high: window.to,
    most: isNarrow ? 4 : 7,
    unitInSi: 1,
  });
  return {
    width,
    height: bottom + 38,
    left,
    right,
    top,
    bottom,
    window,
    panels,
    times: times.map(({ value, label }) => ({ at: toX(value), label })),
    timeTitle: reel.isBeating
      ? 'seconds from the moment the waste valve reopens'
      : 'seconds from the push that opens the waste valve',
    shut: shutBands(reel, window, toX),
  };
}

export function timeAt(
  { left, right, window }: Pick<TraceLayout, 'left' | 'right' | 'window'>,
  x: number,
): number {
  const share = Math.min(1, Math.max(0, (x - left) / (right - left)));
  return window.from + share * (window.to - window.from);
}

export function xAt(
  { left, right, window }: Pick<TraceLayout, 'left' | 'right' | 'window'>,
  time: number,
): number {
  return left + ((time - window.from) / (window.to - window.from)) * (right - left);
}

function planPanels(reel: Reel, system: System, isNarrow: boolean): PanelPlan[] {
  const { film, installation } = reel;
  const { vesselHead } = film.point;
  const head = (value: number): string => formatQuantity(value, 'head', system);
  const stroke = installation.ram.wasteValve.stroke;
  const title = (name: string, purpose: 'head' | 'sourceFlow' | 'stroke'): string =>
    `${name}, ${shownUnit(purpose, system).word}`;
  // A vessel far above anything that happens would press the trace flat against nought.
  const isVesselNear = vesselHead < 3 * Math.max(reel.bodyHead.high, installation.fall);
  return [
    {
      purpose: 'head',
      title: title('Head at the ram', 'head'),
      note: `highest ${fixedQuantity(reel.bodyHead.high, 'head', system)}, lowest ${fixedQuantity(reel.bodyHead.low, 'head', system)}`,
      height: isNarrow ? 128 : 182,
      low: Math.min(0, reel.bodyHead.low),
      high: Math.max(reel.bodyHead.high, installation.fall, isVesselNear ? vesselHead : 0),
      lines: [{ kind: 'head', values: film.bodyHead }],
      levels: [
        ...(isVesselNear
          ? [
              {
                kind: 'vessel' as const,
                value: vesselHead,
                name: `in the vessel ${head(vesselHead)}`,
              },
            ]
          : []),
        { kind: 'fall', value: installation.fall, name: `fall ${head(installation.fall)}` },
      ],
    },
    {
      purpose: 'sourceFlow',
      title: title('Flow', 'sourceFlow'),
      note: '',
      height: isNarrow ? 118 : 164,
      low: Math.min(0, reel.flow.low),
      high: Math.max(1e-9, reel.flow.high),
      lines: [
        { kind: 'waste', values: film.wasteFlow, name: 'to waste', isAmount: true },
        { kind: 'drive', values: film.driveFlow, name: 'drive line' },
        { kind: 'delivery', values: film.deliveryFlow, name: 'delivered' },
      ],
      levels: [],
    },
    {
      purpose: 'stroke',
      title: title('Waste valve opening', 'stroke'),
      note: `stroke ${formatQuantity(stroke, 'stroke', system)}`,
      height: isNarrow ? 60 : 76,
      low: 0,
      high: stroke,
      lines: [{ kind: 'opening', values: film.opening }],
      levels: [],
    },
  ];
}

function layOutPanel(
  plan: PanelPlan,
  place: {
    readonly reel: Reel;
    readonly y: number;
    readonly left: number;
    readonly right: number;
    readonly window: TimeWindow;
    readonly toX: (time: number) => number;
    readonly system: System;
  },
): Panel {
  const { reel, y, left, right, window, toX, system } = place;
  const top = y + TITLE_HEIGHT;
  const bottom = top + plan.height;
  const range = (plan.high - plan.low) * 1.04;
  const toY = (value: number): number => top + ((plan.high - value) / range) * plan.height;
  const columns = Math.round(right - left);
  const traces = plan.lines.map((line): DrawnTrace => {
    const shown = decimate(
      { time: reel.film.time, values: line.values },
      { from: window.from, to: window.to, columns },
    );
    const path = linePath(shown, toX, toY);
    return line.isAmount === true
      ? { kind: line.kind, path, area: areaPath(shown, path, toX, toY(0)) }
      : { kind: line.kind, path };
  });
  const named = [
    ...plan.levels.map((level) => ({ ...level, of: 'level' as const })),
    ...plan.lines.flatMap((line) =>
      line.name === undefined ? [] : [{ ...line, name: line.name, of: line.kind }],
    ),
  ];
  const samples = Math.floor((right - left) / LABEL_STEP);
  const heightsOf = (values: Float64Array): number[] =>
    sampled(reel.film.time, values, window, samples).map(toY);
  const level = (value: number): number[] => Array.from({ length: samples + 1 }, () => toY(value));
  const unnamed = plan.lines.filter((line) => line.name === undefined);
  const names = placeNames(
    [
      ...named.map((line) => ({
        name: line.name,
        heights: 'values' in line ? heightsOf(line.values) : level(line.value),
        ...('isAmount' in line && line.isAmount === true ? { ground: toY(0) } : {}),
      })),
      ...unnamed.map((line) => ({ name: '', heights: heightsOf(line.values) })),
    ],
    { left, right, top: top - 3, bottom: bottom + 4 },
  );
  return {
    title: plan.title,
    note: plan.note,
    titleY: y + 12,
    top,
    bottom,
    zero: toY(0),
    ticks: ticksBetween({
      low: plan.low,
      high: plan.high,
      most: plan.height > 100 ? 5 : 2,
      unitInSi: shownUnit(plan.purpose, system).inSi,
    }).map(({ value, label }: Tick) => ({ at: toY(value), label })),
    traces,
    levels: plan.levels.map(({ kind, value }) => ({ kind, y: toY(value) })),
    names: named.flatMap((line, i) => {
      const name = names[i];
      return name === undefined ? [] : [{ ...name, of: line.of }];
    }),
  };
}

const short = (value: number): string => String(Math.round(value * 10) / 10);

export function linePath(
  { times, values }: Decimated,
  toX: (time: number) => number,
  toY: (value: number) => number,
): string {
  let path = '';
  for (let i = 0; i < times.length; i++) {
    path += `${i === 0 ? 'M' : 'L'}${short(toX(times[i] as number))} ${short(toY(values[i] as number))}`;
  }
  return path;
}

function areaPath(
  { times }: Decimated,
  path: string,
  toX: (time: number) => number,
  zero: number,
): string {
  const first = times[0];
  const last = times[times.length - 1];
  if (first === undefined || last === undefined) return '';
  return `${path}L${short(toX(last))} ${short(zero)}H${short(toX(first))}Z`;
}

/** A line's values at evenly spaced moments of the window: the sample at or after each. */
function sampled(
  time: Float64Array,
  values: Float64Array,
  { from, to }: TimeWindow,
  count: number,
): number[] {
  return Array.from({ length: count + 1 }, (_, i) => {
    const index = firstAtOrAfter(time, from + ((to - from) * i) / count);
    return values[Math.min(index, values.length - 1)] ?? 0;
  });
}

function shutBands(
  { shut }: Reel,
  { from, to }: TimeWindow,
  toX: (time: number) => number,
): { x: number; width: number }[] {
  return shut
    .map((window) => ({ start: Math.max(from, window.from), end: Math.min(to, window.to) }))
    .filter(({ start, end }) => end > start)
    .map(({ start, end }) => ({ x: toX(start), width: toX(end) - toX(start) }));
}

/** What a panel's cursor line says of the window, for those who listen. */
export function windowInWords({ from, to }: TimeWindow): string {
  return `from ${fixedFigure(from, 3)} to ${fixedFigure(to, 3)} seconds`;
}
