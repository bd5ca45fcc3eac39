/**
 * A ram in section, to scale, with its measures: words beside it where there is room, numbers and a list where there is not.
 *
 * What is written beside it stands in two columns, each label as near to its part as its neighbours allow.
 */
import type { Ram } from '@fallwright/engine';
import type { System } from '@fallwright/units';
import { formatQuantity } from '@fallwright/units';
import type { Dimension, Named, RamGeometry } from './ram-geometry.ts';
import { ramGeometry } from './ram-geometry.ts';
import type { Drawing, Line, Point, Shape, Tone } from './shapes.ts';
import { line } from './shapes.ts';
import { spreadLabels } from './spread-labels.ts';

export interface RamSection extends Drawing {
  /** Length on the sheet for each metre of the ram. */
  readonly scale: number;
  readonly dimensions: readonly Dimension[];
  /** What the numbers in the drawing stand for, the first first; empty where words stand in the drawing. */
  readonly keys: readonly string[];
  /** The same in one sentence, for those who do not see it. */
  readonly spoken: string;
}

/** A sheet narrower than this has no room for words beside the ram. Judgement. */
const LEAST_FOR_WORDS = 520;
const LETTER = 12.5;
const LINE_HEIGHT = 15.5;
/** Judgement: mean width of a letter over its height, on the wide side. */
const LETTER_WIDTH = 0.56;
const KEY_SIZE = 26;
const MARGIN = 10;
const BETWEEN = 14;
const LABEL_GAP = 7;
/** Judgement: taller than this a drawing no longer fits a screen beside its fields. */
const TALLEST = 520;
const SCALE_BAR_HEIGHT = 34;

interface Label {
  readonly point: Named;
  readonly side: 'left' | 'right';
  readonly tone: Tone;
  readonly lines: readonly string[];
}

export function ramSection(
  ram: Ram,
  { width, system }: { readonly width: number; readonly system: System },
): RamSection {
  const geometry = ramGeometry(ram);
  const labels = labelsOf(ram, geometry, system);
  const isInWords = width >= LEAST_FOR_WORDS;
  const column = (side: Label['side']): number =>
    isInWords ? Math.max(...labels.filter((label) => label.side === side).map(widthOf)) : KEY_SIZE;
  const left = MARGIN + column('left') + BETWEEN;
  const right = MARGIN + column('right') + BETWEEN;
  const { box } = geometry;
  const scale = Math.min(
    (width - left - right) / (box.right - box.left),
    TALLEST / (box.bottom - box.top),
  );
  const drawn = scale * (box.right - box.left);
  const tall = scale * (box.bottom - box.top);
  const needed = Math.max(
    ...(['left', 'right'] as const).map((side) => heightOf(labels, side, isInWords)),
  );
  const inner = Math.max(tall, needed);
  // What is narrower than its sheet stands in the middle of the room between the columns.
  const startX = left + (width - left - right - drawn) / 2;
  const startY = MARGIN + (inner - tall) / 2;
  const put = ({ x, y }: Point): Point => ({
    x: startX + (x - box.left) * scale,
    y: startY + (y - box.top) * scale,
  });
  const dimensions = geometry.dimensions.map(({ what, from, to }) => ({
    what,
    from: put(from),
    to: put(to),
  }));
  const edges = { left: startX - BETWEEN, right: startX + drawn + BETWEEN };
  const height = MARGIN + inner + SCALE_BAR_HEIGHT;
  return {
    width,
    height,
    scale,
    dimensions,
    shapes: [
      ...geometry.areas.map((shape): Shape => ({ ...shape, outline: shape.outline.map(put) })),
      ...geometry.lines.map((shape): Shape => ({ ...shape, points: shape.points.map(put) })),
      ...dimensions.flatMap(dimensionLines),
      ...columns(labels, { put, geometry, isInWords, edges, from: MARGIN, to: MARGIN + inner }),
      ...scaleBar(scale, { system, x: startX, y: height - 12, width: drawn }),
    ],
    keys: isInWords ? [] : labels.map(({ lines }) => lines.join(', ')),
    spoken: `${ram.name} in section: ${labels.map(({ lines }) => lines.join(' ')).join('; ')}.`,
  };
}

const KINDS = {
  weighted: 'held open by its weight',
  sprung: 'held open by a spring',
  swing: 'a hinged flap',
} as const;

/** In the order in which water meets the parts. */
function labelsOf(ram: Ram, { points }: RamGeometry, system: System): Label[] {
  const { wasteValve, deliveryValve, airVessel, snifter } = ram;
  const bore = (value: number): string => formatQuantity(value, 'bore', system);
  const stroke = (value: number): string => formatQuantity(value, 'stroke', system);
  const held =
    wasteValve.kind === 'weighted'
      ? `moving parts ${formatQuantity(wasteValve.movingMass, 'mass', system)}`
      : `${formatQuantity(wasteValve.forceAtOpen, 'force', system)} when open`;
  const labels: Label[] = [
    { point: 'driveLine', side: 'left', tone: 'ofWater', lines: ['drive line'] },
    { point: 'bore', side: 'left', tone: 'plain', lines: [`bore ${bore(ram.bore)}`] },
    {
      point: 'wasteValve',
      side: 'left',
      tone: 'strong',
      lines: ['waste valve', KINDS[wasteValve.kind], held],
    },
    {
      point: 'seat',
      side: 'left',
      tone: 'plain',
      lines: [`seat ${bore(wasteValve.seatDiameter)}`],
    },
    {
      point: 'stroke',
      side: 'left',
      tone: 'plain',
      lines: [`stroke ${stroke(wasteValve.stroke)}`],
    },
    {
      point: 'snifter',
      side: 'right',
      tone: 'plain',
      lines: [`snifter ${stroke(snifter?.diameter ?? 0)}`],
    },
    {
      point: 'deliveryBore',
      side: 'right',
      tone: 'plain',
      lines: [`opening ${bore(Math.sqrt((4 * deliveryValve.area) / Math.PI))}`],
    },
    { point: 'deliveryValve', side: 'right', tone: 'strong', lines: ['delivery valve'] },
    {
      point: 'airVessel',
      side: 'right',
      tone: 'strong',
      lines: ['air vessel', `holds ${formatQuantity(airVessel.volume, 'smallVolume', system)}`],
    },
    { point: 'deliveryLine', side: 'right', tone: 'ofWater', lines: ['delivery line'] },
  ];
  return labels.filter(({ point }) => points[point] !== undefined);
}

function widthOf({ lines }: Label): number {
  return Math.max(...lines.map((text) => text.length)) * LETTER * LETTER_WIDTH;
}

function labelHeight({ lines }: Label, isInWords: boolean): number {
  return isInWords ? lines.length * LINE_HEIGHT : KEY_SIZE;
}

function heightOf(labels: readonly Label[], side: Label['side'], isInWords: boolean): number {
  const own = labels.filter((label) => label.side === side);
  return own.reduce((sum, label) => sum + labelHeight(label, isInWords) + LABEL_GAP, -LABEL_GAP);
}

function columns(
  labels: readonly Label[],
  {
    put,
    geometry,
    isInWords,
    edges,
    from,
    to,
  }: {
    readonly put: (point: Point) => Point;
    readonly geometry: RamGeometry;
    readonly isInWords: boolean;
    readonly edges: { readonly left: number; readonly right: number };
    readonly from: number;
    readonly to: number;
  },
): Shape[] {
  return (['left', 'right'] as const).flatMap((side) => {
    const own = labels.filter((label) => label.side === side);
    const ends = own.map(({ point }) => put(geometry.points[point] as Point));
    const middles = spreadLabels(
      own.map((label, i) => ({
        wanted: (ends[i] as Point).y,
        height: labelHeight(label, isInWords),
      })),
      { from, to, gap: LABEL_GAP },
    );
    const x = edges[side];
    const away = side === 'left' ? -1 : 1;
    return own.flatMap((label, i): Shape[] => {
      const y = middles[i] as number;
      const end = ends[i] as Point;
      const leader = line('leader', { x: x + away * 2, y }, { x: x - away * 6, y }, end);
      return isInWords
        ? [
            leader,
            {
              kind: 'words',
              tone: label.tone,
              anchor: side === 'left' ? 'end' : 'start',
              at: {
                x: x + away * 6,
                y: y - (label.lines.length * LINE_HEIGHT) / 2 + 0.78 * LINE_HEIGHT,
              },
              lines: label.lines,
            },
          ]
        : [
            leader,
            {
              kind: 'key',
              at: { x: x + (away * KEY_SIZE) / 2, y },
              text: String(labels.indexOf(label) + 1),
            },
          ];
    });
  });
}

/** A line between two ends, each with a short stroke across it. */
function dimensionLines({ from, to }: Dimension): Line[] {
  const tick = 3.5;
  const isUpright = Math.abs(to.x - from.x) < Math.abs(to.y - from.y);
  const across = ({ x, y }: Point): Line =>
    isUpright
      ? line('dimension', { x: x - tick, y }, { x: x + tick, y })
      : line('dimension', { x, y: y - tick }, { x, y: y + tick });
  return [line('dimension', from, to), across(from), across(to)];
}

const BAR_STEPS: Readonly<Record<System, readonly number[]>> = {
  metric: [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1],
  us: [0.5, 1, 2, 4, 6, 12, 24, 36].map((inches) => inches * 0.0254),
};

/** A bar of a round length, as long as a quarter of the drawing at the most. */
function scaleBar(
  scale: number,
  {
    system,
    x,
    y,
    width,
  }: { readonly system: System; readonly x: number; readonly y: number; readonly width: number },
): Shape[] {
  const fitting = BAR_STEPS[system].filter((length) => length * scale <= Math.max(60, width / 4));
  const length = fitting.at(-1) ?? (BAR_STEPS[system][0] as number);
  const end = x + length * scale;
  return [
    line('axis', { x, y: y - 4 }, { x, y }, { x: end, y }, { x: end, y: y - 4 }),
    {
      kind: 'words',
      tone: 'tick',
      anchor: 'start',
      at: { x: end + 6, y: y + 3 },
      lines: [formatQuantity(length, 'bore', system)],
    },
  ];
}

/** The room that words take, on the wide side: what a test holds them apart by. */
export function wordsBox({ at, anchor, lines }: Shape & { readonly kind: 'words' }) {
  const width = Math.max(...lines.map((text) => text.length)) * LETTER * LETTER_WIDTH;
  const left = anchor === 'start' ? at.x : anchor === 'end' ? at.x - width : at.x - width / 2;
  const top = at.y - 0.78 * LINE_HEIGHT;
  return { left, right: left + width, top, bottom: top + lines.length * LINE_HEIGHT };
}
