/**
 * The whole place in elevation: lengths along the pipe, heights stretched when the place is long and flat.
 *
 * Pure geometry in pixels for a given width. A narrow frame gets its own layout (fewer labels, the lift told with the
 * tank), never a shrunken wide one.
 */
import type { DevelopedPlace, Station } from './developed-place.ts';
import { groundTicks } from './ground.ts';
import type { Point } from './points.ts';
import { extentBetween, pathThrough } from './points.ts';
import { fitScales, multiples, wholeStep } from './scale.ts';

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
  readonly crest: (along: number, air: number | undefined) => string;
  readonly stretch: (stretch: number) => string;
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
  readonly crests: readonly (Point & { readonly label: PlacedText })[];
  readonly liftDimension?: { readonly x: number; readonly top: number; readonly bottom: number };
  readonly texts: {
    readonly tank: PlacedText;
    readonly lift?: PlacedText;
    readonly liftNote?: PlacedText;
    readonly ram: PlacedText;
    readonly delivery: readonly PlacedText[];
    readonly grade?: PlacedText;
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

export function layOutWholePlace({
  place,
  vesselHead,
  width,
  words,
  metresPerGridUnit = 1,
}: {
  readonly place: DevelopedPlace;
  /** Head in the air vessel while it runs. */
  readonly vesselHead?: number | undefined;
  readonly width: number;
  readonly words: WholePlaceWords;
  /** 1 for a grid in metres, 0.3048 for one in feet. */
  readonly metresPerGridUnit?: number;
}): WholePlaceLayout {
  const isNarrow = width < 700;
  const margin = isNarrow
    ? { left: 30, right: 26, top: 30, bottom: 36 }
    : { left: 74, right: 104, top: 32, bottom: 46 };
  const heights = [...place.drive, ...place.delivery].map((s) => s.height);
  const highest = Math.max(place.lift, place.fall, vesselHead ?? 0, ...heights);
  const lowest = Math.min(0, ...heights);
  const total = place.driveLength + place.deliveryLength;
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

  const drive = place.drive.map(toPoint);
  const delivery = place.delivery.map(toPoint);
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
  const ground = groundUnder({ drive, delivery, pool, tank, isNarrow });

  // Those of the drive line stand in its own drawing.
  const onDelivery = place.crests.filter((crest) => crest.line === 'delivery');
  const crests = onDelivery.map((crest) => {
    const at = toPoint(crest);
    const text = words.crest(crest.station - place.driveLength, crest.air);
    const wouldLeave = at.x - 8 - roughTextWidth(text) < 4;
    return {
      x: at.x,
      y: at.y - 3,
      label: {
        text,
        x: wouldLeave ? at.x + 8 : at.x - 4,
        y: at.y - 18,
        anchor: wouldLeave ? ('start' as const) : ('end' as const),
      },
    };
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

  return {
    width,
    height: bottom + margin.bottom + (deliveryLabel.isUnder ? UNDER : 0),
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
    ...(isNarrow ? {} : { liftDimension: { x: rightX + 46, top: restY, bottom: ram.y } }),
    texts: {
      tank: isNarrow
        ? { text: `${words.tank}, ${words.lift}`, x: width - 6, y: 14, anchor: 'end' }
        : { text: words.tank, x: rightX + 6, y: tank.y - 16, anchor: 'middle' },
      ...(isNarrow ? {} : liftTexts(words, rightX + 38, (restY + ram.y) / 2)),
      ram: { text: words.ram, x: ram.x + 16, y: ram.y + 18, anchor: 'start' },
      delivery: deliveryLabel.texts,
      ...(gradeY === undefined
        ? {}
        : {
            grade: gradeText(
              isNarrow || roughWaterWidth(words.grade) > 0.7 * (rightX - ram.x)
                ? words.gradeShort
                : words.grade,
              {
                isNarrow,
                ram,
                rightX,
                gradeY: Math.min(gradeY, restY),
              },
            ),
          }),
      stretch: {
        text: words.stretch(scales.stretch),
        x: isNarrow ? width - 6 : gridRight,
        y: isNarrow ? bottom + 32 + (deliveryLabel.isUnder ? UNDER : 0) : bottom - 6,
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
