/** Puts a pair on the sheet, in one step that can be taken back. */
import type { Place } from '../state/place.ts';
import { dropUnread, putDocument } from '../state/place.ts';
import { withValue } from '../state/site-document.ts';
import { changedSite } from './drive-rows.ts';
import type { Pair } from './pairs.ts';
import { pairName } from './pairs.ts';
import { sameText } from './same-text.ts';

export function adopted(place: Place, pair: Pair): Place {
  const { row, column } = pair;
  const changed = changedSite(place.document, row.changes);
  // A sheet that leaves the choice of the ram to its pipe is left so while that gives this very ram.
  const document =
    column.isOnSheet && row.isOnSheet ? changed : withValue(changed, ['ram'], column.entry);
  if (sameText(document) === sameText(place.document)) return place;
  // Text that waits unread belongs to the parts that are taken out.
  const emptied = [['ram'], ...row.changes.map(({ path }) => path)].reduce<Place>(
    (state, path) => dropUnread(state, path),
    place,
  );
  return putDocument(emptied, { document, path: ['drive'], called: adoptionOf(pair) });
}

/** What was changed, for the line over a stale answer and for knowing the step again. */
export function adoptionOf(pair: Pair): string {
  return `the pair of pipe and ram (to ${pairName(pair)})`;
}
