/** The rows of a line's table of points: its fixed ends, its pipes, and what the line does from point to point. */
import type { LineName } from '../state/lines.ts';
import { pipesOf } from '../state/lines.ts';
import type { SiteDocument } from '../state/site-document.ts';
import { turnsOf } from './crests.ts';
import type { PointPlace } from './line-points.ts';
import {
  endHeights,
  leastDepthOf,
  linePoints,
  outlineOf,
  pipeSpans,
  pointKey,
  writtenPoints,
} from './line-points.ts';

export interface EndRow {
  readonly kind: 'end';
  readonly end: 'upper' | 'lower';
  readonly at: number | undefined;
  readonly height: number | undefined;
  /** From the point above it. */
  readonly change: number | undefined;
}

export interface PointRow extends PointPlace {
  readonly kind: 'point';
  readonly key: string;
  /** From the point above it, in metres; absent where one of the two cannot be read. */
  readonly change: number | undefined;
  readonly turn: 'crest' | 'sag' | undefined;
  /** Along the whole line, from its upper end. */
  readonly station: number | undefined;
}

export interface PipeRow {
  readonly kind: 'pipe';
  readonly pipe: number;
}

export type ProfileRow = EndRow | PointRow | PipeRow;

export function profileRows(
  document: SiteDocument,
  line: LineName,
  measured?: number | undefined,
): readonly ProfileRow[] {
  const ends = endHeights(document, line, measured);
  const spans = pipeSpans(document, line);
  const last = spans?.at(-1);
  const points = linePoints(document, line);
  const stations = new Map(points.map((point) => [pointKey(point), point]));
  const outline =
    (ends && outlineOf(document, line, ends)) ??
    points.map(({ station, height }) => ({ station, height }));
  const turns = new Map(
    turnsOf(outline, leastDepthOf(document, line)).map(
      ({ index, kind }) => [outline[index]?.station, kind] as const,
    ),
  );
  const rows: ProfileRow[] = [];
  const pipes = pipesOf(document, line);
  // An end on which a point of the file stands is that point.
  if (points[0]?.station !== 0) {
    rows.push({ kind: 'end', end: 'upper', at: 0, height: ends?.upper, change: undefined });
  }
  let before = points[0]?.station === 0 ? undefined : ends?.upper;
  for (const pipe of pipes.keys()) {
    if (pipes.length > 1) rows.push({ kind: 'pipe', pipe });
    for (const { index, height } of writtenPoints(document, line, pipe)) {
      const place = { line, pipe, index };
      const key = pointKey(place);
      const station = stations.get(key)?.station;
      rows.push({
        kind: 'point',
        ...place,
        key,
        change: height === undefined || before === undefined ? undefined : height - before,
        turn: turns.get(station),
        station,
      });
      before = height;
    }
  }
  const total = last && last.start + last.length;
  if (total === undefined || points.at(-1)?.station !== total) {
    const height = ends?.lower;
    rows.push({
      kind: 'end',
      end: 'lower',
      // Of its own pipe, as all places in the table are.
      at: last?.length,
      height,
      change: height === undefined || before === undefined ? undefined : height - before,
    });
  }
  return rows;
}
