/** Writes the place down after each change and reads it back, so that a closed tab loses nothing. */

import type { Place, Unread } from './place.ts';
import { openPlace } from './place.ts';
import type { Keep } from './settings.ts';
import type { SiteDocument } from './site-document.ts';
import { isRecord } from './site-document.ts';
import type { Store } from './store.ts';

const KEY = 'fallwright.place@1';

export type Saved =
  | { readonly kind: 'saved' }
  | { readonly kind: 'notSaved'; readonly why: string };

/** What was kept, or undefined when nothing was or it cannot be read. The step-back list is not kept. */
export function readPlace(keep: Keep): Place | undefined {
  const kept = parse(readText(keep));
  if (!isRecord(kept) || !isRecord(kept.document)) return undefined;
  const document: SiteDocument = kept.document;
  return {
    ...openPlace(document, kept.isExample === true),
    order: kept.order === 'fieldsFirst' ? 'fieldsFirst' : 'answerFirst',
    unread: readUnread(kept.unread),
  };
}

function readUnread(kept: unknown): Record<string, Unread> {
  if (!isRecord(kept)) return {};
  const entries = Object.entries(kept).flatMap(([key, entry]): [string, Unread][] => {
    if (!isRecord(entry) || typeof entry.text !== 'string') return [];
    return [
      [
        key,
        typeof entry.fault === 'string'
          ? { text: entry.text, fault: entry.fault }
          : { text: entry.text },
      ],
    ];
  });
  return Object.fromEntries(entries);
}

/** Keeps the place from now on; the store it gives says whether that works. */
export function keepPlace(keep: Keep, place: Store<Place>, saved: Store<Saved>): void {
  const write = (): void => {
    const { document, unread, isExample, order } = place.get();
    try {
      keep.setItem(KEY, JSON.stringify({ document, unread, isExample, order }));
      saved.update((state) => (state.kind === 'saved' ? state : { kind: 'saved' }));
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      saved.update(() => ({ kind: 'notSaved', why }));
    }
  };
  place.subscribe(write);
}

function readText(keep: Keep): string | null {
  try {
    return keep.getItem(KEY);
  } catch {
    // Storage forbidden: the page works, and the saved mark says that nothing is kept once something is typed.
    return null;
  }
}

function parse(text: string | null): unknown {
  if (text === null) return undefined;
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
