/**
 * The place on the page: its site file, and what stands in boxes that cannot be read yet.
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
  /** The place's name in the list and in its address; empty while none is open. */
  readonly id: string;
  readonly document: SiteDocument;
  readonly unread: Readonly<Record<string, Unread>>;
  /** Invented, from the demo workshop. */
  readonly isDemo: boolean;
  /** Fields before the answer, for a place that is begun from nothing; the drawing and the answer first otherwise. */
  readonly order: 'answerFirst' | 'fieldsFirst';
  /** Counts the places that were opened one after another: an answer belongs to one of them. */
  readonly opening: number;
  readonly past: readonly Remembered[];
  /** What undo has taken back, and redo would do again; the last one first in turn. */
  readonly future: readonly Remembered[];
  /** Words for what was changed last, for the line over a stale answer: `the fall`. */
  readonly lastChanged?: string;
}

/** A place as it was: what undo brings back. */
export type Remembered = Pick<Place, 'document' | 'unread'>;

/** Judgement: more steps back than anyone takes; keeps what is saved small. */
export const MOST_REMEMBERED = 100;

export function openPlace(document: SiteDocument, id = ''): Place {
  return {
    id,
    document,
    unread: {},
    isDemo: false,
    order: 'answerFirst',
    opening: 0,
    past: [],
    future: [],
  };
}

function remember({ past, document, unread }: Place): readonly Remembered[] {
  return [...past, { document, unread }].slice(-MOST_REMEMBERED);
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
  const past = rememberStep(place, called);
  return { ...place, document, unread, lastChanged: called, past, future: [] };
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

/** All that is written put in place of what stands there, such as a revision brought back. One step for undo. */
export function putWhole(place: Place, next: Remembered, called: string): Place {
  const { document, unread } = next;
  return { ...place, document, unread, lastChanged: called, past: remember(place), future: [] };
}

export function undo(place: Place): Place {
  const last = place.past.at(-1);
  if (last === undefined) return place;
  const future = [...place.future, here(place)];
  return stepTo(place, { ...last, past: place.past.slice(0, -1), future });
}

export function redo(place: Place): Place {
  const next = place.future.at(-1);
  if (next === undefined) return place;
  return stepTo(place, { ...next, past: remember(place), future: place.future.slice(0, -1) });
}

/** What is typed after a step is a step of its own. */
function stepTo(
  { lastChanged: _forgotten, ...place }: Place,
  step: Pick<Place, 'document' | 'unread' | 'past' | 'future'>,
): Place {
  return { ...place, ...step };
}

function here({ document, unread }: Place): Remembered {
  return { document, unread };
}

/** Forgets text under a path, for a part that is taken out. Paths behind it in a list keep their own text. */
export function dropUnread(place: Place, path: Path): Place {
  const prefix = pathText(path);
  const kept = Object.entries(place.unread).filter(
    ([key]) => key !== prefix && !key.startsWith(`${prefix}.`) && !key.startsWith(`${prefix}[`),
  );
  return { ...place, unread: Object.fromEntries(kept) };
}
