/**
 * The whole place in elevation: lengths along the pipe, heights stretched when the place is long and flat.
 *
 * Pure geometry in pixels for a given width. A narrow frame gets its own layout (fewer labels, the lift told with the
 * tank), never a shrunken wide one.
 */
import type { Crest, DevelopedPlace, Station } from './developed-place.ts';
import { groundTicks } from './ground.ts';
import type { Projection } from './handles.ts';
import type { Point } from './points.ts';
import { extentBetween, pathThrough } from './points.ts';
import { fitScales, multiples, wholeStep } from './scale.ts';
import type { Rect } from './thin.ts';
import { overlaps, spacedOut, thinned } from './thin.ts';
import type { Trouble } from './trouble.ts';
import { alongPipes, partOf } from './trouble.ts';

export interface PlacedText extends Point {
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
}

export interface GridLine {
  readonly at: number;
  readonly label: string;
}

export interface WholePlaceWords {
  readonly tank: string;
  readonly lift: string;
  readonly liftNote: string;
  readonly ram: string;
  readonly fall: string;
  /** In parts: a narrow sheet sets each on its own line. */
  readonly delivery: readonly string[];
  readonly grade: string;
  readonly gradeShort: string;
  /** `along` is the distance from the upper end of its own line. */
  readonly crest: (along: number, air: number | undefined, isVented: boolean) => string;
  readonly stretch: (stretch: number) => string;
  readonly restGrade: string;
  readonly trouble: (trouble: Trouble) => string;
}

/** The heights and lengths that a drawing spans. Held while something is dragged, so that nothing moves under the hand. */
export interface WholeRange {
  readonly highest: number;
  readonly lowest: number;
  readonly total: number;
}

export interface WholePlaceLayout {
  readonly width: number;
  readonly height: number;
  readonly stretch: number;
  readonly isNarrow: boolean;
  readonly frame: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  readonly levels: readonly GridLine[];
  readonly stations: readonly GridLine[];
  readonly unitLabel: Point;
  readonly ground: string;
  readonly ticks: string;
  readonly drive: string;
  readonly delivery: string;
  readonly pool: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
  readonly ram: Point;
  readonly tank: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
  /** Running grade line from the vessel to the tank; absent when no running head is known. */
  readonly runningGrade?: string;
  /** Level of the tank's outlet carried back to the ram: the delivery line at rest. */
  readonly restGrade: string;
  readonly riser?: string;
  readonly crests: readonly PlacedCrest[];
  /** Parts of the lines where the pressure is too high or too low for them. */
  readonly troubles: readonly string[];
  /** Where the tank's level is taken hold of. */
  readonly levelHandle: Point;
  readonly range: WholeRange;
  readonly projection: Projection;
  readonly liftDimension?: { readonly x: number; readonly top: number; readonly bottom: number };
  readonly texts: {
    readonly tank: PlacedText;
    readonly lift?: PlacedText;
    readonly liftNote?: PlacedText;
    readonly ram: PlacedText;
    readonly delivery: readonly PlacedText[];
    readonly grade?: PlacedText;
    readonly restGrade?: PlacedText;
    readonly troubles: readonly PlacedText[];
    readonly stretch: PlacedText;
  };
  /** The part that the unstretched detail shows, to be framed; absent when nothing is stretched. */
  readonly driveBox?: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
}

/** Rough width of a label set in 13 px letters: enough to keep two labels apart. */
export const roughTextWidth = (text: string): number => 6.6 * text.length;

/** The same for the italic that letters water, which runs wider. */
const roughWaterWidth = (text: string): number => 7.7 * text.length;

const GROUND_BELOW_PIPE = 5;

/** An open ring on the line, with its words where there is room for them. */
export type PlacedCrest = Point & {
  readonly key: string;
  readonly isVented: boolean;
  readonly label?: PlacedText;
};

/** No corner that is left out of a drawn line lies further than this from it, in pixels. */
const PIPE_TOLERANCE = 0.4;
const GROUND_TOLERANCE = 2.5;

export function layOutWholePlace({
  place,
  troubles = [],
  vesselHead,
  width,
  words,
  metresPerGridUnit = 1,
  held,
}: {
  readonly place: DevelopedPlace;
  readonly troubles?: readonly Trouble[];
  /** Head in the air vessel while it runs. */
  readonly vesselHead?: number | undefined;
  readonly width: number;
  readonly words: WholePlaceWords;
  /** 1 for a grid in metres, 0.3048 for one in feet. */
  readonly metresPerGridUnit?: number;
  readonly held?: WholeRange | undefined;
}): WholePlaceLayout {
  const isNarrow = width < 700;
  const margin = isNarrow
    ? { left: 30, right: 26, top: 30, bottom: 36 }
    : { left: 74, right: 104, top: 32, bottom: 46 };
  const heights = [...place.drive, ...place.delivery].map((s) => s.height);
  const range = held ?? {
    highest: Math.max(place.lift, place.fall, vesselHead ?? 0, ...heights),
    lowest: Math.min(0, ...heights),
    total: place.driveLength + place.deliveryLength,
  };
  const { highest, lowest, total } = range;
  const scales = fitScales({
    length: total,
    height: highest - lowest,
    frameWidth: width - margin.left - margin.right,
    frameHeight: isNarrow ? 170 : 200,
  });
  const top = margin.top;
  // Below level 0: the ram's name, then the stations.
  const bottom = top + (highest - lowest) * scales.up + 22;
  const toX = (station: number): number => margin.left + station * scales.along;
  const toY = (height: number): number => top + (highest - height) * scales.up;
  const toPoint = (s: Station): Point => ({ x: toX(s.station), y: toY(s.height) });

  const drive = thinned(place.drive.map(toPoint), PIPE_TOLERANCE);
  const delivery = thinned(place.delivery.map(toPoint), PIPE_TOLERANCE);
  const rightX = toX(total);
  const ram = { x: toX(place.driveLength), y: toY(0) };
  const tankHeight = isNarrow ? 15 : 20;
  const tank = {
    x: rightX - 2,
    y: toY(place.lift) + 2,
    width: isNarrow ? 12 : 16,
    height: tankHeight,
  };
  const pool = poolBeside(drive[0], toY(place.fall), isNarrow);

  const gridRight = isNarrow ? width - 6 : rightX + 58;
  const unit = metresPerGridUnit;
  const levelStep = wholeStep((highest - lowest) / unit, isNarrow ? 4 : 7) * unit;
  const stationStep = wholeStep(total / unit, isNarrow ? 4 : 9) * unit;
  const ground = groundUnder({
    drive: thinned(drive, GROUND_TOLERANCE),
    delivery: thinned(delivery, GROUND_TOLERANCE),
    pool,
    tank,
    isNarrow,
  });

  const restY = toY(place.lift);
  const deliveryLabel = placeDeliveryLabel({
    words: words.delivery,
    delivery,
    bottom: ram.y,
    under: bottom + UNDER + 16,
    isNarrow,
    width,
  });
  const gradeY = vesselHead === undefined ? undefined : toY(vesselHead);
  const hasDetail = scales.stretch > 1;
  // Beside a short delivery line the words on the scale stand clear of the ram's name.
  const besideRam =
    ram.x + 16 + roughTextWidth(words.ram) + 16 + roughTextWidth(words.stretch(scales.stretch));
  const grade =
    gradeY === undefined
      ? undefined
      : gradeText(
          isNarrow || roughWaterWidth(words.grade) > 0.7 * (rightX - ram.x)
            ? words.gradeShort
            : words.grade,
          { isNarrow, ram, rightX, gradeY: Math.min(gradeY, restY) },
        );
  // Where both grade lines are one stroke there is no room, and no need, to name the second.
  const hasRestName = gradeY !== undefined && restY - gradeY >= 18 && !isNarrow;
  const liftWords: { readonly lift?: PlacedText; readonly liftNote?: PlacedText } = isNarrow
    ? {}
    : liftTexts(words, rightX + 38, (restY + ram.y) / 2);
  const tankText: PlacedText = isNarrow
    ? { text: `${words.tank}, ${words.lift}`, x: width - 6, y: 14, anchor: 'end' }
    : { text: words.tank, x: rightX + 6, y: tank.y - 16, anchor: 'middle' };
  const underneath = deliveryLabel.isUnder ? UNDER : 0;
  const told = troubles.filter(({ line }) => line === 'delivery').map(words.trouble);
  const troubleTexts = told.map(
    (text, i): PlacedText => ({
      text,
      x: isNarrow ? 6 : 42,
      y: bottom + (isNarrow ? 50 : 36) + underneath + i * UNDER,
      anchor: 'start',
    }),
  );
  // Those of the drive line stand in its own drawing.
  const crests = placeCrests({
    crests: place.crests.filter((crest) => crest.line === 'delivery'),
    toPoint,
    labelOf: (crest) =>
      words.crest(crest.station - place.driveLength, crest.air, crest.isVented === true),
    line: delivery,
    taken: [tankText, grade, liftWords.lift, liftWords.liftNote, ...deliveryLabel.texts].flatMap(
      (text) => (text === undefined ? [] : [rectOf(text)]),
    ),
    width,
  });

  return {
    width,
    height: bottom + margin.bottom + underneath + told.length * UNDER,
    stretch: scales.stretch,
    isNarrow,
    frame: { left: isNarrow ? margin.left - 6 : 42, right: gridRight, top: top - 8, bottom },
    levels: multiples(lowest, highest, levelStep).map((height) => ({
      at: toY(height),
      label: signed(height / unit),
    })),
    stations: multiples(0, total, stationStep).map((station) => ({
      at: toX(station),
      label: signed(station / unit),
    })),
    unitLabel: { x: isNarrow ? margin.left - 10 : 36, y: top - 12 },
    ground: pathThrough(ground),
    ticks: groundTicks(ground, isNarrow ? { every: 40, stroke: 7, gap: 4.5 } : {}),
    drive: pathThrough(drive),
    delivery: pathThrough(delivery),
    pool,
    ram,
    tank,
    ...(gradeY === undefined
      ? {}
      : {
          runningGrade: pathThrough([
            { x: ram.x, y: gradeY },
            { x: rightX, y: restY },
          ]),
          riser: pathThrough([
            { x: ram.x, y: gradeY },
            { x: ram.x, y: ram.y - 22 },
          ]),
        }),
    restGrade: pathThrough([
      { x: ram.x, y: restY },
      { x: rightX, y: restY },
    ]),
    crests,
    troubles: alongPipes(troubles).map(({ line, from, to }) =>
      pathThrough(partOf(line === 'drive' ? place.drive : place.delivery, from, to).map(toPoint)),
    ),
    levelHandle: isNarrow ? { x: tank.x + tank.width / 2, y: restY } : { x: rightX + 46, y: restY },
    range,
    projection: {
      toPoint,
      toStation: ({ x, y }) => ({
        station: (x - margin.left) / scales.along,
        height: highest - (y - top) / scales.up,
      }),
      metresPerPixel: { along: 1 / scales.along, up: 1 / scales.up },
    },
    ...(isNarrow ? {} : { liftDimension: { x: rightX + 46, top: restY, bottom: ram.y } }),
    texts: {
      tank: tankText,
      ...liftWords,
      ram: { text: words.ram, x: ram.x + 16, y: ram.y + 18, anchor: 'start' },
      delivery: deliveryLabel.texts,
      ...(grade === undefined ? {} : { grade }),
      ...(hasRestName
        ? {
            restGrade: {
              text: words.restGrade,
              x: ram.x + 0.78 * (rightX - ram.x),
              y: restY + 15,
              anchor: 'end' as const,
            },
          }
        : {}),
      troubles: troubleTexts,
      stretch: {
        text: words.stretch(scales.stretch),
        x: isNarrow ? width - 6 : Math.max(gridRight, besideRam),
        y: isNarrow ? bottom + 32 + underneath : bottom - 6,
        anchor: 'end',
      },
    },
    ...(hasDetail && !isNarrow
      ? {
          driveBox: {
            x: pool.x - 6,
            y: Math.min(pool.y, ...drive.map((p) => p.y)) - 12,
            width: ram.x + 16 - (pool.x - 6),
            height:
              Math.max(...drive.map((p) => p.y)) +
              18 -
              (Math.min(pool.y, ...drive.map((p) => p.y)) - 12),
          },
        }
      : {}),
  };
}

/** The paper that a label covers. */
function rectOf(text: PlacedText): Rect {
  const wide = roughTextWidth(text.text);
  const left =
    text.anchor === 'start' ? text.x : text.anchor === 'end' ? text.x - wide : text.x - wide / 2;
  return { left, right: left + wide, top: text.y - 12, bottom: text.y + 4 };
}

/** Judgement: closer rings would touch. */
const RING_GAP = 14;

/**
 * Rings on the crests and their words: above them and to the left, to the right, or below, wherever neither the line nor
 * other words stand. Where a survey has more crests than there is room for, the deepest are shown.
 */
function placeCrests({
  crests,
  toPoint,
  labelOf,
  line,
  taken,
  width,
}: {
  readonly crests: readonly Crest[];
  readonly toPoint: (station: Station) => Point;
  readonly labelOf: (crest: Crest) => string;
  readonly line: readonly Point[];
  readonly taken: readonly Rect[];
  readonly width: number;
}): readonly PlacedCrest[] {
  const rings = spacedOut(crests, {
    xOf: (crest) => toPoint(crest).x,
    rankOf: ({ depth }) => depth,
    gap: RING_GAP,
  });
  const used = [...taken];
  const labels = new Map<Crest, PlacedText>();
  for (const crest of rings.toSorted((a, b) => b.depth - a.depth)) {
    const at = toPoint(crest);
    const text = labelOf(crest);
    const places: readonly PlacedText[] = [
      { text, x: at.x - 4, y: at.y - 18, anchor: 'end' },
      { text, x: at.x + 4, y: at.y - 18, anchor: 'start' },
      { text, x: at.x, y: at.y + 38, anchor: 'middle' },
    ];
    const free = places.find((place) => {
      const rect = rectOf(place);
      if (rect.left < 4 || rect.right > width - 4 || rect.top < 0) return false;
      const { least, most } = extentBetween(line, rect.left, rect.right);
      const isClear = place.y < at.y ? rect.bottom < least - 3 : rect.top > most + 14;
      return isClear && !used.some((other) => overlaps(rect, other));
    });
    if (free === undefined) continue;
    used.push(rectOf(free));
    labels.set(crest, free);
  }
  return rings.map((crest) => {
    const at = toPoint(crest);
    const label = labels.get(crest);
    return {
      key: `${crest.line}-${crest.station}`,
      x: at.x,
      y: at.y - 3,
      isVented: crest.isVented === true,
      ...(label === undefined ? {} : { label }),
    };
  });
}

const signed = (value: number): string => {
  const rounded = Math.round(value * 1e6) / 1e6;
  return rounded < 0 ? `−${-rounded}` : String(rounded);
};

/** The pool stands just upstream of the intake and reaches a little below it. */
function poolBeside(intake: Point | undefined, surfaceY: number, isNarrow: boolean) {
  const x = intake?.x ?? 0;
  const depth = Math.max((intake?.y ?? surfaceY) - surfaceY + 4, isNarrow ? 6 : 8);
  const width = isNarrow ? 9 : 14;
  return { x: x - width + 3, y: surfaceY, width, height: depth };
}

function groundUnder({
  drive,
  delivery,
  pool,
  tank,
  isNarrow,
}: {
  readonly drive: readonly Point[];
  readonly delivery: readonly Point[];
  readonly pool: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
  readonly tank: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
  readonly isNarrow: boolean;
}): Point[] {
  const drop = isNarrow ? GROUND_BELOW_PIPE - 1 : GROUND_BELOW_PIPE;
  const below = (points: readonly Point[]): Point[] =>
    points.map((p) => ({ x: p.x, y: p.y + drop }));
  const floor = pool.y + pool.height;
  const lip = pool.y - 1.5;
  const tankFoot = tank.y + tank.height + 2;
  const last = delivery[delivery.length - 1];
  const beforeTank = delivery.slice(1, -1);
  return [
    { x: pool.x - (isNarrow ? 10 : 30), y: lip - 2 },
    { x: pool.x, y: lip },
    { x: pool.x, y: floor },
    { x: pool.x + pool.width, y: floor },
    ...below(drive.slice(1)),
    ...below(beforeTank).filter((p) => p.x < tank.x - 8),
    { x: tank.x - 6, y: Math.max(tankFoot, (last?.y ?? 0) + drop) },
    { x: tank.x + tank.width + 6, y: tankFoot },
    { x: tank.x + tank.width + (isNarrow ? 10 : 40), y: tankFoot - 5 },
  ];
}

function liftTexts(words: WholePlaceWords, x: number, y: number) {
  return {
    lift: { text: words.lift, x, y, anchor: 'end' as const },
    liftNote: { text: words.liftNote, x, y: y + 16, anchor: 'end' as const },
  };
}

/** Height of one more line of words under the stations. */
const UNDER = 18;

/**
 * The name of the delivery line: below it, half way along. Where the line leaves no room there, the name stands under the
 * whole drawing.
 */
function placeDeliveryLabel({
  words,
  delivery,
  bottom,
  under,
  isNarrow,
  width,
}: {
  readonly words: readonly string[];
  readonly delivery: readonly Point[];
  readonly bottom: number;
  readonly under: number;
  readonly isNarrow: boolean;
  readonly width: number;
}): { readonly texts: readonly PlacedText[]; readonly isUnder: boolean } {
  const first = delivery[0];
  const last = delivery[delivery.length - 1];
  if (first === undefined || last === undefined) return { texts: [], isUnder: false };
  const lines = isNarrow ? words : [words.join(' ')];
  const longest = Math.max(...lines.map(roughWaterWidth));
  const free = isNarrow ? width - 8 : last.x - 130;
  const x = Math.min(first.x + 0.52 * (last.x - first.x), free - longest);
  const lineHeight = 16;
  if (x >= first.x + 24) {
    const { most } = extentBetween(delivery, x - 6, x + longest + 6);
    // Clear of the ground and its ticks.
    const y = most + (isNarrow ? 28 : 34);
    if (y + (lines.length - 1) * lineHeight < bottom - 4) {
      const texts = lines.map((text, i) => ({
        text,
        x,
        y: y + i * lineHeight,
        anchor: 'start' as const,
      }));
      return { texts, isUnder: false };
    }
  }
  return {
    texts: [{ text: words.join(' '), x: isNarrow ? 6 : 42, y: under, anchor: 'start' }],
    isUnder: true,
  };
}

function gradeText(
  text: string,
  at: {
    readonly isNarrow: boolean;
    readonly ram: Point;
    readonly rightX: number;
    readonly gradeY: number;
  },
): PlacedText {
  const y = at.gradeY - 7;
  return at.isNarrow
    ? { text, x: at.ram.x + 6, y, anchor: 'start' }
    : { text, x: at.ram.x + 0.78 * (at.rightX - at.ram.x), y, anchor: 'end' };
}
