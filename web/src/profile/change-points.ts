/** Moving, adding and taking out points of a line. Pure: a document goes in, a document comes out; other points keep their text. */
import type { System } from '@fallwright/units';
import type { LineName } from '../state/lines.ts';
import type { Plain, SiteDocument } from '../state/site-document.ts';
import { isList, valueAt, withValue } from '../state/site-document.ts';
import type { EndHeights, LinePoint, PointPlace } from './line-points.ts';
import {
  linePoints,
  outlineOf,
  pipeSpans,
  pointPath,
  readMetres,
  writtenPoints,
} from './line-points.ts';
import { finestStep, writtenMetres } from './written-metres.ts';

export interface Spot {
  readonly at: number;
  readonly height: number;
}

/** How far along its own pipe a point may lie, in metres. */
export interface Room {
  readonly least: number;
  readonly most: number;
}

/**
 * Between which places along its pipe a point can be moved: it stays in its pipe and keeps its order. A point that stands
 * on the very end of its pipe stays there and only rises or sinks.
 */
export function roomFor(
  document: SiteDocument,
  point: LinePoint,
  system: System,
): Room | undefined {
  const spans = pipeSpans(document, point.line);
  const span = spans?.[point.pipe];
  if (spans === undefined || span === undefined) return undefined;
  if (point.at <= 0 || point.at >= span.length) return { least: point.at, most: point.at };
  const step = finestStep(system);
  const ownPipe = linePoints(document, point.line).filter((other) => other.pipe === point.pipe);
  const here = ownPipe.findIndex((other) => other.index === point.index);
  const before = ownPipe[here - 1]?.at ?? 0;
  const after = ownPipe[here + 1]?.at ?? span.length;
  const room = { least: before + step, most: after - step };
  return room.least > room.most ? { least: point.at, most: point.at } : room;
}

/**
 * The document with a point moved. Only what changes is written anew, rounded to `step` metres; a value that a hand has
 * moved is no longer the measured one, so it is written without an origin.
 */
export function withPointMoved(
  document: SiteDocument,
  point: LinePoint,
  to: Spot,
  {
    system,
    steps = {},
  }: {
    readonly system: System;
    readonly steps?: { readonly at?: number; readonly height?: number };
  },
): SiteDocument {
  const room = roomFor(document, point, system);
  if (room === undefined) return document;
  const path = pointPath(point);
  let changed = document;
  if (room.most > room.least && to.at !== point.at) {
    const at = writtenWithin(to.at, room, system, steps.at);
    if (readMetres(at, 'pipeLength') !== point.at)
      changed = withValue(changed, [...path, 'at'], at);
  }
  const height = writtenMetres(to.height, system, steps.height);
  if (to.height !== point.height && readMetres(height, 'elevation') !== point.height) {
    changed = withValue(changed, [...path, 'height'], height);
  }
  return changed;
}

/** Rounding must not push a point past its neighbour: then it is rounded as finely as is written at all. */
function writtenWithin(at: number, room: Room, system: System, step?: number): string {
  const inside = Math.min(room.most, Math.max(room.least, at));
  const coarse = writtenMetres(inside, system, step);
  const read = readMetres(coarse, 'pipeLength') ?? -1;
  const slack = 1e-9;
  return read < room.least - slack || read > room.most + slack
    ? writtenMetres(inside, system)
    : coarse;
}

export interface Added {
  readonly document: SiteDocument;
  readonly place: PointPlace;
}

/** The document with a new point `station` metres along the line. Undefined where another point is in the way. */
export function withPointAdded(
  document: SiteDocument,
  line: LineName,
  { station, height }: { readonly station: number; readonly height: number },
  { system, steps = {} }: { readonly system: System; readonly steps?: { readonly at?: number } },
): Added | undefined {
  const spans = pipeSpans(document, line);
  const pipe = spans?.findIndex(({ start, length }) => station <= start + length) ?? -1;
  const span = spans?.[pipe];
  if (span === undefined) return undefined;
  const points = writtenPoints(document, line, pipe);
  const at = station - span.start;
  const next = points.findIndex((point) => point.at !== undefined && point.at > at);
  const index = next === -1 ? points.length : next;
  const step = finestStep(system);
  const room = {
    least: (points[index - 1]?.at ?? 0) + step,
    most: (points[index]?.at ?? span.length) - step,
  };
  if (room.least > room.most) return undefined;
  const entry = {
    at: writtenWithin(at, room, system, steps.at),
    height: writtenMetres(height, system),
  };
  const profile = valueAt(document, [line, pipe, 'profile']);
  const list: readonly Plain[] = isList(profile) ? profile : [];
  return {
    document: withValue(document, [line, pipe, 'profile'], list.toSpliced(index, 0, entry)),
    place: { line, pipe, index },
  };
}

/** Where one more point tells most: half way along the widest gap, on the line as it is drawn now. */
export function nextSpot(
  document: SiteDocument,
  line: LineName,
  ends: EndHeights,
): { readonly station: number; readonly height: number } | undefined {
  const outline = outlineOf(document, line, ends);
  if (outline === undefined) return undefined;
  let widest: { readonly station: number; readonly height: number } | undefined;
  let width = 0;
  for (const [i, here] of outline.entries()) {
    const before = outline[i - 1];
    if (before === undefined || here.station - before.station <= width) continue;
    width = here.station - before.station;
    widest = {
      station: (before.station + here.station) / 2,
      height: (before.height + here.height) / 2,
    };
  }
  return widest;
}

/** The document without a point; a pipe's profile goes with its last one. */
export function withoutPoint(document: SiteDocument, place: PointPlace): SiteDocument {
  const left = withValue(document, pointPath(place), undefined);
  const path = [place.line, place.pipe, 'profile'];
  const profile = valueAt(left, path);
  return isList(profile) && profile.length === 0 ? withValue(left, path, undefined) : left;
}

/** Whether the points of a pipe stand out of order, which no answer can be given to. */
export function isOutOfOrder(document: SiteDocument, line: LineName, pipe: number): boolean {
  let last = -1;
  for (const { at } of writtenPoints(document, line, pipe)) {
    if (at === undefined) continue;
    if (at < last) return true;
    last = at;
  }
  return false;
}

/** The points of a pipe put in the order of the water. A point whose place cannot be read stays after the one above it. */
export function withPointsInOrder(
  document: SiteDocument,
  line: LineName,
  pipe: number,
): SiteDocument {
  const path = [line, pipe, 'profile'];
  const profile = valueAt(document, path);
  if (!isList(profile)) return document;
  let last = 0;
  const placed = writtenPoints(document, line, pipe).map(({ at, index }) => {
    last = at ?? last;
    return { at: last, entry: profile[index] ?? null };
  });
  const sorted = placed.toSorted((a, b) => a.at - b.at).map(({ entry }) => entry);
  return withValue(document, path, sorted);
}
