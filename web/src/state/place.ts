/**
 * The one place on the page: its site file, and what stands in boxes that cannot be read yet.
 *
 * The document only ever takes in what can be read, so the last good answer has its input to stand on. Text that cannot be
 * read waits beside it, under its path, and is kept as it was typed. Every change leaves the document before it in `past`.
 */
import type { Path, Plain, SiteDocument } from './site-document.ts';
import { pathText, withValue } from './site-document.ts';

export interface Unread {
  readonly text: string;
  /** What is wrong and what to write; absent until the person has left the field. */
  readonly fault?: string;
}

export interface Place {
  readonly document: SiteDocument;
  readonly unread: Readonly<Record<string, Unread>>;
  readonly isExample: boolean;
  /** Fields before the answer, for a place that is begun from nothing; the drawing and the answer first otherwise. */
  readonly order: 'answerFirst' | 'fieldsFirst';
  /** Counts the places that were opened one after another: an answer belongs to one of them. */
  readonly opening: number;
  readonly past: readonly Remembered[];
  /** Words for what was changed last, for the line over a stale answer: `the fall`. */
  readonly lastChanged?: string;
}

/** A place as it was: what undo brings back. */
export type Remembered = Pick<Place, 'document' | 'unread' | 'isExample' | 'order' | 'opening'>;

/** Judgement: more steps back than anyone takes; keeps what is saved small. */
const MOST_REMEMBERED = 100;

export const EMPTY_DOCUMENT: SiteDocument = { fallwright: 'site@1' };

export function openPlace(document: SiteDocument, isExample = false): Place {
  return { document, unread: {}, isExample, order: 'answerFirst', opening: 0, past: [] };
}

function remember(place: Place): readonly Remembered[] {
  const { document, unread, isExample, order, opening } = place;
  return [...place.past, { document, unread, isExample, order, opening }].slice(-MOST_REMEMBERED);
}

/** Text that can be read goes into the document; `called` tells what was changed. */
export function putValue(
  place: Place,
  change: { readonly path: Path; readonly value: Plain | undefined; readonly called: string },
): Place {
  const document = withValue(place.document, change.path, change.value);
  return putDocument(place, { ...change, document });
}

/** As `putValue`, for a change that touches more of the document than one path. */
export function putDocument(
  place: Place,
  {
    document,
    path,
    called,
  }: { readonly document: SiteDocument; readonly path: Path; readonly called: string },
): Place {
  const { [pathText(path)]: _read, ...unread } = place.unread;
  return { ...place, document, unread, lastChanged: called, past: rememberStep(place, called) };
}

/** Keys typed in one field are one step back, not one each. */
function rememberStep(place: Place, called: string): readonly Remembered[] {
  return place.lastChanged === called && place.past.length > 0 ? place.past : remember(place);
}

/** Text that cannot be read: kept as typed. The document keeps the last good value. A fault told before stays told. */
export function keepUnread(place: Place, path: Path, text: string): Place {
  const key = pathText(path);
  const fault = place.unread[key]?.fault;
  return {
    ...place,
    unread: { ...place.unread, [key]: fault === undefined ? { text } : { text, fault } },
  };
}

/** The person has left the field: now its fault is told. */
export function tellFault(place: Place, path: Path, fault: string): Place {
  const key = pathText(path);
  const unread = place.unread[key];
  if (unread === undefined || unread.fault === fault) return place;
  return { ...place, unread: { ...place.unread, [key]: { ...unread, fault } } };
}

/** Another place on the page; the one before can be brought back. */
export function replacePlace(
  place: Place,
  next: Pick<Place, 'document' | 'isExample' | 'order'>,
): Place {
  const past = remember(place);
  // One more than any before it, so that a place brought back keeps its own number.
  const opening = 1 + Math.max(...past.map((before) => before.opening));
  return { ...next, unread: {}, opening, past };
}

export function undo(place: Place): Place {
  const last = place.past[place.past.length - 1];
  return last === undefined ? place : { ...last, past: place.past.slice(0, -1) };
}

/** Forgets text under a path, for a part that is taken out. Paths behind it in a list keep their own text. */
export function dropUnread(place: Place, path: Path): Place {
  const prefix = pathText(path);
  const kept = Object.entries(place.unread).filter(
    ([key]) => key !== prefix && !key.startsWith(`${prefix}.`) && !key.startsWith(`${prefix}[`),
  );
  return { ...place, unread: Object.fromEntries(kept) };
}
