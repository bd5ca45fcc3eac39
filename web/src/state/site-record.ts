/** A place as it is kept: its document, what cannot be read yet, and which of its revisions it is. */
import type { Place, Remembered, Unread } from './place.ts';
import type { SiteDocument } from './site-document.ts';

/** What a person has written: this is compared, kept and brought back. */
export interface Written {
  readonly document: SiteDocument;
  readonly unread: Readonly<Record<string, Unread>>;
}

export interface SiteRecord extends Written {
  readonly id: string;
  readonly order: Place['order'];
  /** Belongs to the demo workshop: an invented place. */
  readonly isDemo: boolean;
  /** Counts from 1; each saved change is one more. */
  readonly revision: number;
  /** Milliseconds since 1970. */
  readonly savedAt: number;
  /** Words for what was changed last: `the fall`. */
  readonly changed: string;
  /** When it was taken out of the list; absent while it stands there. */
  readonly deletedAt?: number;
}

/** One saved state of a place. None is ever written over. */
export interface Revision extends Written {
  readonly siteId: string;
  readonly revision: number;
  readonly savedAt: number;
  readonly changed: string;
}

/** The steps that undo and redo can take. */
export interface Steps {
  readonly past: readonly Remembered[];
  readonly future: readonly Remembered[];
}

export const NO_STEPS: Steps = { past: [], future: [] };

export interface KeptSite {
  readonly site: SiteRecord;
  readonly steps: Steps;
}

export function revisionOf(site: SiteRecord): Revision {
  const { id, revision, savedAt, changed, document, unread } = site;
  return { siteId: id, revision, savedAt, changed, document, unread };
}

/** Key order and told faults play no part: only what was written. */
export function isSameWritten(a: Written, b: Written): boolean {
  return (
    (a.document === b.document || isSame(a.document, b.document)) &&
    (a.unread === b.unread || isSame(textsOf(a.unread), textsOf(b.unread)))
  );
}

function textsOf(unread: Written['unread']): Record<string, string> {
  return Object.fromEntries(Object.entries(unread).map(([key, { text }]) => [key, text]));
}

export function isSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const left = present(a);
  const right = new Map(present(b));
  return (
    left.length === right.size &&
    left.every(([key, value]) => right.has(key) && isSame(value, right.get(key)))
  );
}

function present(value: object): [string, unknown][] {
  return Object.entries(value).filter(([, entry]) => entry !== undefined);
}

/** Judgement: 12 letters of 32 are 60 bits; a workshop with a million places meets no pair by chance. */
const ID_LENGTH = 12;
const ID_LETTERS = 'abcdefghijkmnpqrstuvwxyz23456789';

/** A new name for a place or a tab. (`crypto.randomUUID` is missing where a page comes over plain http.) */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(ID_LENGTH));
  return Array.from(bytes, (byte) => ID_LETTERS[byte % ID_LETTERS.length]).join('');
}
