/** Steps of the place that change the points of a line, with the text that waits in the boxes of its table kept in step. */
import type { System } from '@fallwright/units';
import type { LineName } from '../state/lines.ts';
import type { Place } from '../state/place.ts';
import { putDocument, putWhole } from '../state/place.ts';
import type { SiteDocument } from '../state/site-document.ts';
import { nextSpot, withoutPoint, withPointAdded, withPointsInOrder } from './change-points.ts';
import type { PointPlace } from './line-points.ts';
import { endHeights, pointPath } from './line-points.ts';
import {
  unreadAfterAdding,
  unreadAfterRemoving,
  unreadWithoutPipe,
  unreadWithoutRow,
} from './unread-rows.ts';

export const LINE_CALLED: Readonly<Record<LineName, string>> = {
  drive: 'the drive line',
  delivery: 'the delivery line',
};

/** How sentences and steps name a point: `point 2 of the drive line`. */
export function pointCalled({ line, pipe, index }: PointPlace): string {
  const inPipe = pipe === 0 ? '' : `, pipe ${pipe + 1}`;
  return `point ${index + 1} of ${LINE_CALLED[line]}${inPipe}`;
}

/** A drag ends: one step of its own. */
export function pointDragged(place: Place, document: SiteDocument, at: PointPlace): Place {
  if (document === place.document) return place;
  const unread = unreadWithoutRow(place.unread, at);
  return putWhole(place, { document, unread }, pointCalled(at));
}

/** Keys pressed one after another on one point are one step together. */
export function pointMovedByKey(place: Place, document: SiteDocument, at: PointPlace): Place {
  if (document === place.document) return place;
  const called = `where ${pointCalled(at)} lies`;
  const next = putDocument(place, { path: pointPath(at), called, document });
  return { ...next, unread: unreadWithoutRow(next.unread, at) };
}

/** A point was pulled out of a line in the drawing. */
export function pointPulled(place: Place, document: SiteDocument, at: PointPlace): Place {
  const unread = unreadAfterAdding(place.unread, at);
  return putWhole(place, { document, unread }, pointCalled(at));
}

export interface PointAdded {
  readonly state: Place;
  readonly place: PointPlace;
}

/** One more point half way along the widest gap. Undefined while length, fall or lift are missing, or all is full. */
export function pointAdded(
  place: Place,
  line: LineName,
  system: System,
  measured?: number | undefined,
): PointAdded | undefined {
  const ends = endHeights(place.document, line, measured);
  const spot = ends && nextSpot(place.document, line, ends);
  const added = spot && withPointAdded(place.document, line, spot, { system });
  if (added === undefined) return undefined;
  return { state: pointPulled(place, added.document, added.place), place: added.place };
}

export function pointTakenOut(place: Place, at: PointPlace): Place {
  const unread = unreadAfterRemoving(place.unread, at);
  return putWhole(place, { document: withoutPoint(place.document, at), unread }, pointCalled(at));
}

export function pointsPutInOrder(place: Place, line: LineName, pipe: number): Place {
  const document = withPointsInOrder(place.document, line, pipe);
  const unread = unreadWithoutPipe(place.unread, { line, pipe });
  return putWhole(place, { document, unread }, `the order of ${LINE_CALLED[line]}’s points`);
}
