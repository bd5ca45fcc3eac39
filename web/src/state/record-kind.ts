/**
 * What a kept record is about: a place, a bench test, the maker's range of rams, or the price list. Its document says so in its
 * first field.
 *
 * A workshop has many places and many tests, and one range and one price list under names that are always the same, so that
 * two tabs that begin one at once make one of it.
 */
import type { SiteDocument } from './site-document.ts';

export type SharedKind = 'range' | 'prices';
export type RecordKind = 'site' | 'test' | SharedKind;

export const SHARED_KINDS: readonly SharedKind[] = ['range', 'prices'];

/** The newest format of each kind that this version writes and reads. */
export const FORMATS: Readonly<Record<RecordKind, string>> = {
  site: 'site@1',
  test: 'test@1',
  range: 'range@1',
  prices: 'prices@1',
};

/** Whatever does not say that it is something else is a place. */
export function kindOf(document: SiteDocument): RecordKind {
  const [kind] = String(document.fallwright ?? '').split('@');
  return (['test', ...SHARED_KINDS] as const).find((known) => known === kind) ?? 'site';
}

export function isSharedKind(kind: RecordKind): kind is SharedKind {
  return kind !== 'site' && kind !== 'test';
}

export function emptyDocument(kind: RecordKind): SiteDocument {
  return { fallwright: FORMATS[kind] };
}
