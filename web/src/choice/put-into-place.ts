/** Puts a proposed build on the sheet of the place, in one step that can be taken back. */
import type { Place } from '../state/place.ts';
import { dropUnread, putDocument } from '../state/place.ts';
import type { PutFields } from './choice-view.ts';

const REPLACED = ['drive', 'ram', 'delivery', 'tank'] as const;

/** Drive line, ram, delivery line and tank; everything else of the place stays as it is. */
export function putIntoPlace(
  place: Place,
  { fields, what }: { readonly fields: PutFields; readonly what: string },
): Place {
  // Text that waits unread belongs to the parts that are replaced.
  const emptied = REPLACED.filter((name) => fields[name] !== undefined).reduce<Place>(
    (state, name) => dropUnread(state, [name]),
    place,
  );
  return putDocument(emptied, {
    document: { ...place.document, ...fields },
    path: ['drive'],
    called: putCalled(what),
  });
}

/** What was changed, for the line over a stale answer and for knowing the step again. */
export function putCalled(what: string): string {
  return `the build (to ${what})`;
}
