/**
 * The range as the page edits it: a plain tree that may be unfinished. What a place was answered with is never changed: a new
 * revision puts the ram as it was among the earlier ones first.
 */
import { textOf } from '../state/entry.ts';
import type { Path, Plain, PlainRecord, SiteDocument } from '../state/site-document.ts';
import { isList, isRecord, valueAt, withValue } from '../state/site-document.ts';

export type RamDocument = PlainRecord;

/** The box of a place in which a ram of the range stands. */
export const RANGE_RAM_ID = 'field-ram-range';

const NO_RAMS: readonly RamDocument[] = [];

export function ramsIn(document: SiteDocument): readonly RamDocument[] {
  return recordsIn(document.rams);
}

/** Always the same list for the same part of a document, so that who watches it sees that nothing changed. */
export function recordsIn(list: Plain | undefined): readonly PlainRecord[] {
  if (!isList(list)) return NO_RAMS;
  return list.every(isRecord) ? list : list.filter(isRecord);
}

export const ramPath = (index: number, ...rest: Path): Path => ['rams', index, ...rest];

export function ramIndex(document: SiteDocument, id: string): number | undefined {
  const index = ramsIn(document).findIndex((ram) => textOf(ram.id) === id);
  return index === -1 ? undefined : index;
}

/** Counted from 1; a ram that says nothing is in its first. */
export function revisionOf(ram: RamDocument): number {
  const written = Number(textOf(ram.revision));
  return Number.isInteger(written) && written > 0 ? written : 1;
}

/** `swallow-25@3`, as a place names the revision that it stands on. */
export function referenceOf(ram: RamDocument): string {
  return `${textOf(ram.id)}@${revisionOf(ram)}`;
}

export function isRetired(ram: RamDocument): boolean {
  return ram.retired === true;
}

/** The reference of a place's ram, or nothing when it is of no range. */
export function rangeReferenceIn(site: SiteDocument): string | undefined {
  const reference = textOf(valueAt(site, ['ram', 'range']));
  return reference === '' ? undefined : reference;
}

/** Small letters, figures and -, unlike any id of the range. */
export function freeId(document: SiteDocument, name: string): string {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, LONGEST_ID);
  const wanted = plain === '' ? 'ram' : plain;
  return free(wanted, '-', (id) => ramIndex(document, id) === undefined);
}

/** Two rams of one name cannot be told apart. */
function freeName(document: SiteDocument, wanted: string): string {
  const names = ramsIn(document).map(({ name }) => textOf(name));
  return free(wanted, ' ', (name) => !names.includes(name));
}

function free(wanted: string, between: string, isFree: (text: string) => boolean): string {
  for (let number = 1; ; number++) {
    const text = number === 1 ? wanted : `${wanted}${between}${number}`;
    if (isFree(text)) return text;
  }
}

/** Leaves room for a number in the forty letters that an id may have. */
const LONGEST_ID = 36;

/** A ram by the typical rule, to begin from. */
export function withNewRam(
  document: SiteDocument,
  size: string,
): { readonly document: SiteDocument; readonly id: string } {
  const name = freeName(document, `Ram ${size.replace(/^DN/, '')}`);
  const id = freeId(document, name);
  return { document: withRam(document, ramsIn(document).length, { id, name, ram: size }), id };
}

/** A ram of its own with the parts and tunings of another, in its first revision; nothing is built yet. */
export function withCopy(
  document: SiteDocument,
  index: number,
): { readonly document: SiteDocument; readonly id: string } {
  const rams = ramsIn(document);
  const original = rams[index];
  if (original === undefined) throw new RangeError(`index must be that of a ram, got ${index}`);
  const { revision, date, change, serials, earlier, retired, ...kept } = original;
  const name = freeName(document, `${textOf(original.name)}, copy`);
  const id = freeId(document, `${textOf(original.id)} copy`);
  const copy = { ...kept, id, name, change: `copied from ${referenceOf(original)}` };
  return {
    document: { ...document, rams: [...rams.slice(0, index + 1), copy, ...rams.slice(index + 1)] },
    id,
  };
}

export function withRetired(document: SiteDocument, index: number, is: boolean): SiteDocument {
  return withValue(document, ramPath(index, 'retired'), is ? true : undefined);
}

export function withoutRam(document: SiteDocument, index: number): SiteDocument {
  return withValue(document, ramPath(index), undefined);
}

/** What an answer rests on, and what tells one revision from another. */
const OF_A_REVISION = [
  'revision',
  'date',
  'change',
  'name',
  'ram',
  'tunings',
  'settings',
  'serials',
] as const;

/** The ram as it is goes among the earlier ones; what is written from now on is one revision newer, and nothing is built so yet. */
export function withNewRevision(document: SiteDocument, index: number, date: string): SiteDocument {
  const ram = ramsIn(document)[index];
  if (ram === undefined) throw new RangeError(`index must be that of a ram, got ${index}`);
  const snapshot = Object.fromEntries(
    OF_A_REVISION.flatMap((key): [string, Plain][] => {
      const value = key === 'revision' ? revisionOf(ram) : ram[key];
      return value === undefined ? [] : [[key, value]];
    }),
  );
  const { change: _then, serials: _built, earlier, ...kept } = ram;
  return withRam(document, index, {
    ...kept,
    revision: revisionOf(ram) + 1,
    date,
    earlier: [snapshot, ...(isList(earlier) ? earlier : [])],
  });
}

export function earlierRevisions(ram: RamDocument): readonly RamDocument[] {
  return recordsIn(ram.earlier);
}

export function withRam(document: SiteDocument, index: number, ram: RamDocument): SiteDocument {
  const rams = [...ramsIn(document)];
  rams[index] = ram;
  return { ...document, rams };
}

/** Places that stand on a revision of a ram; a place that was deleted can be brought back and counts too. */
export function placesOn<Kept extends { readonly document: SiteDocument }>(
  sites: readonly Kept[],
  reference: string,
): readonly Kept[] {
  return sites.filter(({ document }) => rangeReferenceIn(document) === reference);
}
