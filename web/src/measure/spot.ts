/** Where the readings of one measurement stand in the document: one gauging of the source, or those of the fall or the lift. */
import { movedUnder } from '../profile/unread-rows.ts';
import type { HeightName } from '../state/measured-entry.ts';
import {
  gaugingsOf,
  heightReadings,
  withGauging,
  withHeightReadings,
} from '../state/measured-entry.ts';
import type { Place } from '../state/place.ts';
import { putDocument, putWhole } from '../state/place.ts';
import type { Path, Plain, PlainRecord, SiteDocument } from '../state/site-document.ts';
import { isList, pathText, valueAt, withValue } from '../state/site-document.ts';

export interface Spot {
  readonly path: Path;
  /** How sentences name it: `measurement 2`. */
  readonly called: string;
  readonly read: (document: SiteDocument) => PlainRecord;
  readonly write: (document: SiteDocument, readings: PlainRecord) => SiteDocument;
}

export function gaugingSpot(index: number): Spot {
  return {
    path: ['source', 'gauging', index],
    called: `measurement ${index + 1}`,
    read: (document) => gaugingsOf(document)[index] ?? {},
    write: (document, gauging) => withGauging(document, index, gauging),
  };
}

export function heightSpot(height: HeightName): Spot {
  return {
    path: [height],
    called: `the ${height}`,
    read: (document) => heightReadings(document, height),
    write: (document, readings) => withHeightReadings(document, height, readings),
  };
}

export const readAt = (spot: Spot, inner: Path) => (document: SiteDocument) =>
  valueAt(asLists(spot.read(document)), inner);

export const writeAt =
  (spot: Spot, inner: Path) =>
  (document: SiteDocument, value: Plain | undefined): SiteDocument =>
    spot.write(document, withValue(asLists(spot.read(document)), inner, value));

/** Lists that a file may write as one thing alone, and the one time that is a list of times here. */
const LISTS = ['times', 'head', 'depths', 'hops', 'levels'] as const;

export function asLists(readings: PlainRecord): PlainRecord {
  const { time, ...others } = readings;
  const spelled =
    time !== undefined && others.times === undefined ? { ...others, times: time } : readings;
  const alone = LISTS.filter((key) => spelled[key] !== undefined && !isList(spelled[key]));
  if (alone.length === 0) return spelled;
  return { ...spelled, ...Object.fromEntries(alone.map((key) => [key, [spelled[key] ?? '']])) };
}

export function listAt(readings: PlainRecord, key: string): readonly Plain[] {
  const list = asLists(readings)[key];
  return isList(list) ? list : [];
}

/** A reading put at the end, such as a time from the watch. A step of its own for undo; half a reading that waits there moves on. */
export function withReadingAdded(state: Place, spot: Spot, key: string, text: string): Place {
  const list = listAt(spot.read(state.document), key);
  const unread = movedUnder(state.unread, pathText([...spot.path, key]), (at) =>
    at >= list.length ? at + 1 : at,
  );
  const document = writeAt(spot, [key])(state.document, [...list, text]);
  return putWhole(state, { document, unread }, `${key} ${list.length + 1} of ${spot.called}`);
}

/** One entry of a list taken out; text that waits in the boxes behind it moves up with them. */
export function withReadingTakenOut(state: Place, spot: Spot, key: string, index: number): Place {
  const list = listAt(spot.read(state.document), key);
  const rest = list.filter((_, at) => at !== index);
  const path = [...spot.path, key];
  const moved = {
    ...state,
    unread: movedUnder(state.unread, pathText(path), (at) =>
      at === index ? undefined : at > index ? at - 1 : at,
    ),
  };
  return putDocument(moved, {
    path,
    called: `taking out ${key} ${index + 1} of ${list.length} of ${spot.called}`,
    document: writeAt(spot, [key])(state.document, rest.length === 0 ? undefined : rest),
  });
}
