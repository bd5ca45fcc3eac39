/**
 * The surveyed points of the drive line and the delivery line, read from the site document.
 *
 * A line may be several pipes, and each pipe counts its points from its own upper end; a drawing counts along the whole
 * line. Entries of the document are never changed in place, so each is read once and remembered by its own record.
 */
import type { Purpose } from '@fallwright/units';
import { readQuantity } from '@fallwright/units';
import { textOf } from '../state/entry.ts';
import type { LineName } from '../state/lines.ts';
import { pipesOf } from '../state/lines.ts';
import type { Path, Plain, PlainRecord, SiteDocument } from '../state/site-document.ts';
import { isList, isRecord } from '../state/site-document.ts';
import { LEAST_DEPTH } from './crests.ts';

export const LINES: readonly LineName[] = ['drive', 'delivery'];

/** Which entry of the document a point is. */
export interface PointPlace {
  readonly line: LineName;
  readonly pipe: number;
  readonly index: number;
}

/** A point as it was written, in metres; what cannot be read is absent. */
export interface WrittenPoint extends PointPlace {
  readonly at: number | undefined;
  readonly height: number | undefined;
}

/** A point that can be drawn. */
export interface LinePoint extends PointPlace {
  /** Metres along its own pipe, from that pipe's upper end. */
  readonly at: number;
  /** Metres along the whole line, from the line's upper end. */
  readonly station: number;
  /** Metres above the waste valve's outlet. */
  readonly height: number;
}

/** Where a pipe begins in its line, and how long it is. */
export interface PipeSpan {
  readonly start: number;
  readonly length: number;
}

export function pointPath({ line, pipe, index }: PointPlace): Path {
  return [line, pipe, 'profile', index];
}

export function isSamePoint(a: PointPlace | undefined, b: PointPlace | undefined): boolean {
  if (a === undefined || b === undefined) return a === b;
  return a.line === b.line && a.pipe === b.pipe && a.index === b.index;
}

/** A name for one point that a list or a page can be keyed by. */
export const pointKey = ({ line, pipe, index }: PointPlace): string => `${line}-${pipe}-${index}`;

/** Metres of a length or height as it stands in the document; undefined while it cannot be read. */
export function readMetres(entry: Plain | undefined, purpose: Purpose): number | undefined {
  const text = textOf(entry);
  if (text === '') return undefined;
  const read = readQuantity(text, purpose);
  return read.ok ? read.value.value : undefined;
}

const entriesOf = (pipe: PlainRecord | undefined): readonly Plain[] =>
  isList(pipe?.profile) ? pipe.profile : [];

type ReadPoint = Pick<WrittenPoint, 'at' | 'height'> & {
  /** The ± beside the height, in metres; nought where none stands. */
  readonly spread: number;
};

const NOTHING_READ: ReadPoint = { at: undefined, height: undefined, spread: 0 };
const read = new WeakMap<PlainRecord, ReadPoint>();

function readPoint(entry: Plain): ReadPoint {
  if (!isRecord(entry)) return NOTHING_READ;
  const known = read.get(entry);
  if (known !== undefined) return known;
  const height = readQuantity(textOf(entry.height), 'elevation');
  const point = {
    at: readMetres(entry.at, 'pipeLength'),
    height: height.ok ? height.value.value : undefined,
    spread: height.ok ? (height.value.spread ?? 0) : 0,
  };
  read.set(entry, point);
  return point;
}

/** Every point of one pipe, in the order of the file. */
export function writtenPoints(
  document: SiteDocument,
  line: LineName,
  pipe: number,
): readonly WrittenPoint[] {
  const entries = entriesOf(pipesOf(document, line)[pipe]);
  return entries.map((entry, index) => {
    const { at, height } = readPoint(entry);
    return { line, pipe, index, at, height };
  });
}

/**
 * How far a line must turn for a crest to be told from the survey's own error: no less than the widest ± beside a height.
 * The answer counts crests by the same rule, and by the bore.
 */
export function leastDepthOf(document: SiteDocument, line: LineName): number {
  const spreads = pipesOf(document, line).flatMap((pipe) =>
    entriesOf(pipe).map((entry) => (isRecord(entry) ? readPoint(entry).spread : 0)),
  );
  return Math.max(LEAST_DEPTH, ...spreads);
}

export function hasProfile(document: SiteDocument, line: LineName): boolean {
  return pipesOf(document, line).some((pipe) => entriesOf(pipe).length > 0);
}

/** The pipes of a line one after another; undefined while a length is missing. */
export function pipeSpans(document: SiteDocument, line: LineName): readonly PipeSpan[] | undefined {
  const spans: PipeSpan[] = [];
  let start = 0;
  for (const pipe of pipesOf(document, line)) {
    const length = readMetres(pipe.length, 'pipeLength');
    if (length === undefined || length <= 0) return undefined;
    spans.push({ start, length });
    start += length;
  }
  return spans;
}

/**
 * The points of a line that can be drawn, in the order of the water. A point that cannot be read, lies past the end of
 * its pipe or before the point above it is left out: the table says what is wrong with it.
 */
export function linePoints(document: SiteDocument, line: LineName): readonly LinePoint[] {
  const spans = pipeSpans(document, line);
  if (spans === undefined) return [];
  const points: LinePoint[] = [];
  let last = -1;
  for (const [pipe, { start, length }] of spans.entries()) {
    for (const { index, at, height } of writtenPoints(document, line, pipe)) {
      if (at === undefined || height === undefined) continue;
      const station = start + at;
      if (at < 0 || at > length || station <= last) continue;
      points.push({ line, pipe, index, at, station, height });
      last = station;
    }
  }
  return points;
}

/** A point of a line's outline, which may be one of its ends and then belongs to no entry of the file. */
export interface OutlinePoint {
  readonly station: number;
  readonly height: number;
  readonly point?: LinePoint;
}

/** Heights of both ends of a line above the waste valve's outlet. */
export interface EndHeights {
  readonly upper: number;
  readonly lower: number;
}

/** The whole line from end to end; an end on which no point stands is put there. Undefined while its length is not known. */
export function outlineOf(
  document: SiteDocument,
  line: LineName,
  ends: EndHeights,
): readonly OutlinePoint[] | undefined {
  const last = pipeSpans(document, line)?.at(-1);
  if (last === undefined) return undefined;
  const total = last.start + last.length;
  const points: OutlinePoint[] = linePoints(document, line).map((point) => ({
    station: point.station,
    height: point.height,
    point,
  }));
  if (points[0]?.station !== 0) points.unshift({ station: 0, height: ends.upper });
  if (points.at(-1)?.station !== total) points.push({ station: total, height: ends.lower });
  return points;
}

/**
 * Ends of a line: the drive line falls from the source to the ram, the delivery line rises from there to the tank.
 * `measured` is what readings come to, for a fall or a lift that is not written; see `useMeasuredMetres`.
 */
export function endHeights(
  document: SiteDocument,
  line: LineName,
  measured?: number | undefined,
): EndHeights | undefined {
  const far = readMetres(line === 'drive' ? document.fall : document.lift, 'height') ?? measured;
  if (far === undefined) return undefined;
  return line === 'drive' ? { upper: far, lower: 0 } : { upper: 0, lower: far };
}
