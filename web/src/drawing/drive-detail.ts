/**
 * The drive line to one scale both ways: the unstretched detail beside a stretched drawing.
 *
 * Lengths here are level distances, found from the pipe's length and its drop, so that nothing at all is stretched.
 */
import type { Crest, DevelopedPlace, Station } from './developed-place.ts';
import { groundTicks } from './ground.ts';
import type { Projection } from './handles.ts';
import type { Point } from './points.ts';
import { extentBetween, heightAt, pathThrough } from './points.ts';
import { roundStep } from './scale.ts';
import { spacedOut, thinned } from './thin.ts';
import type { Trouble } from './trouble.ts';
import { alongPipes, partOf } from './trouble.ts';
import type { PlacedCrest, PlacedText } from './whole-place.ts';
import { roughTextWidth } from './whole-place.ts';

export interface DriveDetailWords {
  readonly source: string;
  readonly fall: string;
  readonly drive: string;
  readonly ram: string;
  readonly crest: (along: number, air: number | undefined, isVented: boolean) => string;
  readonly scaleBar: (metres: number) => string;
  readonly trouble: (trouble: Trouble) => string;
}

/** What the drawing spans: held while something is dragged, so that nothing moves under the hand. */
export interface DetailRange {
  readonly run: number;
  readonly highest: number;
  readonly lowest: number;
  readonly top: number;
  readonly height: number;
}

export interface DriveDetailLayout {
  readonly width: number;
  readonly height: number;
  readonly isNarrow: boolean;
  /** Pixels a metre, both ways. */
  readonly scale: number;
  readonly pool: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
  readonly surface: Point;
  readonly dam: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
  readonly intake: Point;
  readonly drive: string;
  readonly ground: string;
  readonly ticks: string;
  readonly ram: Point;
  readonly level: { readonly fromX: number; readonly toX: number; readonly y: number };
  readonly fall: { readonly x: number; readonly top: number; readonly bottom: number };
  readonly crests: readonly PlacedCrest[];
  /** Parts of the line where the pressure is too high or too low for it. */
  readonly troubles: readonly string[];
  readonly isRamOver: boolean;
  readonly range: DetailRange;
  readonly projection: Projection;
  readonly texts: {
    readonly source: PlacedText;
    readonly fall: PlacedText;
    readonly drive: PlacedText;
    readonly ram: PlacedText;
    readonly troubles: readonly PlacedText[];
  };
  readonly scaleBar: {
    readonly x: number;
    readonly y: number;
    readonly length: number;
    readonly label: PlacedText;
  };
}

/** Level distance and height of each point: a leg of pipe `s` long that drops `d` covers √(s² − d²) of ground. */
export function onTheLevel(stations: readonly Station[]): { distance: number; height: number }[] {
  const first = stations[0];
  if (first === undefined) return [];
  let distance = 0;
  return stations.map((here, i) => {
    const before = stations[i - 1];
    if (before !== undefined) {
      const along = here.station - before.station;
      const drop = here.height - before.height;
      // A drop longer than the pipe is a slip in the survey; the leg is then drawn upright.
      distance += Math.sqrt(Math.max(0, along ** 2 - drop ** 2));
    }
    return { distance, height: here.height };
  });
}

export function layOutDriveDetail({
  place,
  troubles = [],
  maxWidth,
  maxRise,
  words,
  metresPerGridUnit = 1,
  isNarrow,
  held,
}: {
  readonly troubles?: readonly Trouble[];
  readonly place: DevelopedPlace;
  readonly maxWidth: number;
  /** Most pixels that the fall may take. */
  readonly maxRise: number;
  readonly words: DriveDetailWords;
  readonly metresPerGridUnit?: number;
  readonly isNarrow: boolean;
  readonly held?: DetailRange | undefined;
}): DriveDetailLayout {
  const size = isNarrow
    ? { left: 34, right: 32, poolWidth: 24, tick: 7, below: 5 }
    : { left: 54, right: 92, poolWidth: 40, tick: 9, below: 9 };
  const points = onTheLevel(place.drive);
  const heights = points.map((p) => p.height);
  const run = held?.run ?? Math.max(points[points.length - 1]?.distance ?? 0, 0.1);
  const highest = held?.highest ?? Math.max(place.fall, ...heights);
  const lowest = held?.lowest ?? Math.min(0, ...heights);
  const scale = Math.min((maxWidth - size.left - size.right) / run, maxRise / (highest - lowest));
  const width = isNarrow ? maxWidth : Math.max(460, size.left + size.right + run * scale);
  const levelMap = points.map((p, i) => ({ x: place.drive[i]?.station ?? 0, y: p.distance }));
  const atStation = ({ station, height }: Station): { distance: number; height: number } => ({
    distance: heightAt(levelMap, station),
    height,
  });
  const crests = placeCrests({
    crests: place.crests.filter((crest) => crest.line === 'drive'),
    xOf: (crest) => size.left + atStation(crest).distance * scale,
    words,
    width,
  });
  // Their words stand in rows of their own over everything else.
  const crestRow = crests.rows * 20;
  const top = held?.top ?? (isNarrow ? 40 : 54) + crestRow;
  const toPoint = (p: { distance: number; height: number }): Point => ({
    x: size.left + p.distance * scale,
    y: top + (highest - p.height) * scale,
  });
  const drive = thinned(points.map(toPoint), 0.4);
  const intake = drive[0] ?? { x: size.left, y: top };
  const ram = drive[drive.length - 1] ?? intake;
  const levelY = toPoint({ distance: 0, height: place.fall }).y;
  const poolDepth = Math.max(intake.y - levelY + size.below, isNarrow ? 11 : 20);
  const pool = {
    x: intake.x - size.poolWidth + 6,
    y: levelY,
    width: size.poolWidth,
    height: poolDepth,
  };
  const floor = pool.y + pool.height;
  const ground: Point[] = [
    { x: Math.max(0, pool.x - 30), y: levelY - 2 },
    { x: pool.x, y: levelY - 1 },
    { x: pool.x, y: floor },
    { x: pool.x + pool.width, y: floor },
    ...thinned(drive, 2.5)
      .map((p) => ({ x: p.x, y: p.y + size.below }))
      .filter((p) => p.x > pool.x + pool.width + 4 && p.x < ram.x - 12),
    { x: ram.x - 4, y: ram.y + size.below },
    { x: Math.min(width - 2, ram.x + (isNarrow ? 34 : 88)), y: ram.y + size.below },
  ];
  const deepest = Math.max(...ground.map((p) => p.y));
  const dimensionX = Math.max(ram.x - (isNarrow ? 22 : 34), intake.x + 20);
  const driveText = underThePipe(words.drive, { drive, intake, ram, below: size.below });
  const barMetres =
    roundStep((run / metresPerGridUnit) * (isNarrow ? 0.18 : 0.3), 1) * metresPerGridUnit;
  const ramY = ram.y + size.below + (isNarrow ? 22 : 28);
  const told = troubles
    .filter(({ line }) => line === 'drive')
    .map(
      (trouble, i): PlacedText => ({
        text: words.trouble(trouble),
        x: isNarrow ? 6 : driveText.x,
        // On a phone the name of the ram stands at the same height.
        y: Math.max(driveText.y, isNarrow ? ramY : 0) + (i + 1) * 19,
        anchor: 'start',
      }),
    );
  const barY = Math.max(
    deepest + (isNarrow ? 40 : 44),
    (told.at(-1) ?? driveText).y + 20,
    held === undefined ? 0 : held.height - 14,
  );
  return {
    width,
    height: barY + 14,
    isNarrow,
    scale,
    pool,
    surface: { x: pool.x + pool.width / 2 - 3, y: levelY },
    dam: {
      x: pool.x + pool.width - 2,
      y: levelY - 6,
      width: isNarrow ? 4 : 6,
      height: pool.height + 8,
    },
    intake,
    drive: pathThrough(drive),
    ground: pathThrough(ground),
    ticks: groundTicks(ground, isNarrow ? { every: 40, stroke: 7, gap: 4.5 } : {}),
    ram,
    level: { fromX: pool.x + pool.width + 6, toX: dimensionX + 12, y: levelY },
    fall: { x: dimensionX, top: levelY, bottom: ram.y },
    crests: crests.placed.map(({ crest, label }) => ({
      key: `${crest.line}-${crest.station}`,
      ...toPoint(atStation(crest)),
      isVented: crest.isVented === true,
      ...(label === undefined ? {} : { label }),
    })),
    isRamOver: troubles.some(({ isRam }) => isRam === true),
    troubles: alongPipes(troubles)
      .filter(({ line }) => line === 'drive')
      .map(({ from, to }) =>
        pathThrough(partOf(place.drive, from, to).map((corner) => toPoint(atStation(corner)))),
      ),
    range: { run, highest, lowest, top, height: barY + 14 },
    projection: {
      toPoint: (station) => toPoint(atStation(station)),
      toStation: ({ x, y }, before) => {
        const height = highest - (y - top) / scale;
        const level = (x - size.left) / scale - atStation(before).distance;
        // The leg of pipe from the corner upstream to this point: its length, not its level distance.
        const along = Math.sign(level) * Math.hypot(level, height - before.height);
        return { station: before.station + along, height };
      },
      metresPerPixel: { along: 1 / scale, up: 1 / scale },
    },
    texts: {
      source: {
        text: words.source,
        x: isNarrow ? 6 : pool.x + pool.width + 8,
        y: levelY - (isNarrow ? 16 : 14),
        anchor: 'start',
      },
      fall: besideTheFall(words.fall, { drive, dimensionX, levelY, ram }),
      drive: driveText,
      ram: {
        text: words.ram,
        x: isNarrow ? width - 4 : ram.x + 16,
        y: ramY,
        anchor: isNarrow ? 'end' : 'middle',
      },
      troubles: told,
    },
    scaleBar: {
      x: isNarrow ? 8 : 14,
      y: barY,
      length: barMetres * scale,
      label: {
        text: words.scaleBar(barMetres),
        x: (isNarrow ? 8 : 14) + barMetres * scale + 8,
        y: barY + 4,
        anchor: 'start',
      },
    },
  };
}

/** Two rows of words, one over the other, take the crests of any line that is laid with care. */
const MOST_ROWS = 2;

/** The words of the crests in rows over the drawing, each over its ring; where there is no room the ring stands alone. */
function placeCrests({
  crests,
  xOf,
  words,
  width,
}: {
  readonly crests: readonly Crest[];
  readonly xOf: (crest: Crest) => number;
  readonly words: DriveDetailWords;
  readonly width: number;
}) {
  const rings = spacedOut(crests, { xOf, rankOf: rankOfCrest, gap: 12 });
  const rows: { left: number; right: number }[][] = [];
  const labels = new Map<Crest, PlacedText>();
  for (const crest of rings.toSorted((a, b) => rankOfCrest(b) - rankOfCrest(a))) {
    const text = words.crest(crest.station, crest.air, crest.isVented === true);
    const half = roughTextWidth(text) / 2;
    const x = Math.min(Math.max(xOf(crest), half + 4), width - half - 4);
    const span = { left: x - half - 8, right: x + half + 8 };
    const isFree = (row: { left: number; right: number }[]): boolean =>
      row.every((other) => other.right < span.left || span.right < other.left);
    const free = rows.findIndex(isFree);
    const row = free === -1 ? rows.length : free;
    if (row >= MOST_ROWS) continue;
    rows[row] = [...(rows[row] ?? []), span];
    labels.set(crest, { text, x, y: 18 + row * 20, anchor: 'middle' });
  }
  return {
    rows: rows.length,
    placed: rings.map((crest) => ({ crest, label: labels.get(crest) })),
  };
}

/** Air that a run reckons with is shown before any crest that is bled. */
const rankOfCrest = ({ air, depth }: Crest): number => depth + (air === undefined ? 0 : 1000);

/** Left of the fall's dimension, between the level and the pipe where there is room; above the level where not. */
function besideTheFall(
  text: string,
  at: {
    readonly drive: readonly Point[];
    readonly dimensionX: number;
    readonly levelY: number;
    readonly ram: Point;
  },
): PlacedText {
  const right = at.dimensionX - 8;
  const { least } = extentBetween(at.drive, right - roughTextWidth(text), right);
  const room = least - at.levelY;
  if (room < 24) return { text, x: at.dimensionX + 4, y: at.levelY - 8, anchor: 'end' };
  return { text, x: right, y: at.levelY + Math.min(room - 7, 22), anchor: 'end' };
}

/** Under the ground beneath the pipe's upper half, where nothing else stands. */
function underThePipe(
  text: string,
  at: {
    readonly drive: readonly Point[];
    readonly intake: Point;
    readonly ram: Point;
    readonly below: number;
  },
): PlacedText {
  const x = at.intake.x + 0.16 * (at.ram.x - at.intake.x);
  const { most } = extentBetween(at.drive, x, Math.min(x + roughTextWidth(text), at.ram.x));
  return { text, x, y: most + at.below + 24, anchor: 'start' };
}
