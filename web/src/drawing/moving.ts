/** Moving a point of a line, by pixels or by keys. Pure: what is moved, where to, and the document that comes of it. */
import type { System } from '@fallwright/units';
import type { Spot } from '../profile/change-points.ts';
import { withPointAdded, withPointMoved } from '../profile/change-points.ts';
import type { LinePoint, PointPlace } from '../profile/line-points.ts';
import { isSamePoint, linePoints } from '../profile/line-points.ts';
import { dragStep, metresPerUnit } from '../profile/written-metres.ts';
import type { LineName } from '../state/lines.ts';
import type { SiteDocument } from '../state/site-document.ts';
import type { Station } from './developed-place.ts';
import type { Projection } from './handles.ts';
import { cornerBefore } from './handles.ts';
import type { Point } from './points.ts';

/** A line as one of the drawings shows it. */
export interface DrawnLine {
  readonly line: LineName;
  /** Where it begins, in metres of pipe from the source. */
  readonly from: number;
  readonly corners: readonly Station[];
  readonly projection: Projection;
  /** Between these pixels a point can be seen. */
  readonly top: number;
  readonly bottom: number;
  readonly width: number;
}

/** Gives the document with the point under a pixel, for one drag of one point. */
export function pointDragger(
  document: SiteDocument,
  point: LinePoint,
  drawn: DrawnLine,
  system: System,
): (at: Point) => SiteDocument {
  const { projection } = drawn;
  const before = cornerBefore(drawn.corners, drawn.from + point.station);
  const pipeStart = drawn.from + point.station - point.at;
  const steps = {
    at: dragStep(projection.metresPerPixel.along, system),
    height: dragStep(projection.metresPerPixel.up, system),
  };
  return ({ x, y }) => {
    const seen = { x, y: Math.min(drawn.bottom, Math.max(drawn.top, y)) };
    const { station, height } = projection.toStation(seen, before);
    return withPointMoved(document, point, { at: station - pipeStart, height }, { system, steps });
  };
}

/** A new point where the line was pulled, and the document it stands in. */
export function pulledPoint(
  document: SiteDocument,
  at: Point,
  drawn: DrawnLine,
  system: System,
): { readonly document: SiteDocument; readonly point: LinePoint } | undefined {
  const { station, height } = onTheLine(at, drawn);
  const added = withPointAdded(
    document,
    drawn.line,
    { station: station - drawn.from, height },
    { system, steps: { at: dragStep(drawn.projection.metresPerPixel.along, system) } },
  );
  const point = added && pointAt(added.document, added.place);
  return added && point && { document: added.document, point };
}

export function pointAt(document: SiteDocument, place: PointPlace): LinePoint | undefined {
  return linePoints(document, place.line).find((point) => isSamePoint(point, place));
}

/** The station of the line under a pixel: on the leg that the pixel is over. */
function onTheLine({ x }: Point, { corners, projection }: DrawnLine): Station {
  const next = corners.findIndex((corner) => projection.toPoint(corner).x >= x);
  const last = corners.at(-1) ?? { station: 0, height: 0 };
  const b = corners[next] ?? last;
  const a = corners[next - 1] ?? b;
  const from = projection.toPoint(a).x;
  const to = projection.toPoint(b).x;
  const share = to === from ? 0 : (x - from) / (to - from);
  return {
    station: a.station + share * (b.station - a.station),
    height: a.height + share * (b.height - a.height),
  };
}

/** Judgement: a key moves a height by what a staff on a slope is read to. */
const KEY_HEIGHT: Readonly<Record<System, number>> = { metric: 0.05, us: 0.2 };
/** Shift, or a page key, goes ten times as far. */
const FURTHER = 10;

/** How far one key moves a point: a two-hundredth of the line along it, rounded. */
export function keyStep(length: number, system: System, isFurther: boolean): Spot {
  const times = isFurther ? FURTHER : 1;
  return {
    at: times * dragStep(length / 200, system),
    height: times * KEY_HEIGHT[system] * metresPerUnit(system),
  };
}

/** The way that a key points; undefined for a key that moves nothing. */
export function keyWay(
  key: string,
): { readonly along: number; readonly up: number; readonly isPage?: true } | undefined {
  switch (key) {
    case 'ArrowUp':
      return { along: 0, up: 1 };
    case 'ArrowDown':
      return { along: 0, up: -1 };
    case 'ArrowRight':
      return { along: 1, up: 0 };
    case 'ArrowLeft':
      return { along: -1, up: 0 };
    case 'PageUp':
      return { along: 0, up: 1, isPage: true };
    case 'PageDown':
      return { along: 0, up: -1, isPage: true };
    default:
      return undefined;
  }
}
