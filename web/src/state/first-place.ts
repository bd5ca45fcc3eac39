/** The one place that earlier versions kept in the browser's simple storage. It is moved to the list of places once. */
import type { KeyedKeep } from './journal.ts';
import type { Place } from './place.ts';
import type { SiteDocument } from './site-document.ts';
import { isRecord } from './site-document.ts';
import type { Written } from './site-record.ts';
import { readUnread } from './unread-text.ts';

export const FIRST_PLACE_KEY = 'fallwright.place@1';

/** Always the same, so that two tabs that move it at once make one place of it. */
export const FIRST_PLACE_ID = 'first-place';

export interface FirstPlace extends Written {
  readonly isExample: boolean;
  readonly order: Place['order'];
}

/** What was kept, or undefined when nothing was or it cannot be read. */
export function readFirstPlace(keep: Pick<KeyedKeep, 'getItem'>): FirstPlace | undefined {
  const kept = parse(keep);
  if (!isRecord(kept) || !isRecord(kept.document)) return undefined;
  const document: SiteDocument = kept.document;
  return {
    document,
    unread: readUnread(kept.unread),
    isExample: kept.isExample === true,
    order: kept.order === 'fieldsFirst' ? 'fieldsFirst' : 'answerFirst',
  };
}

function parse(keep: Pick<KeyedKeep, 'getItem'>): unknown {
  try {
    return JSON.parse(keep.getItem(FIRST_PLACE_KEY) ?? 'null');
  } catch {
    // Damaged, or storage forbidden: there is nothing to move.
    return undefined;
  }
}
