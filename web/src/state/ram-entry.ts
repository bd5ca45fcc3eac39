/** The ram in a site document: a nominal size, or a map of parts that may begin with one. */
import type { Plain, PlainRecord, SiteDocument } from './site-document.ts';
import { isRecord, valueAt, withValue } from './site-document.ts';

/** Parts that the page asks for itself; a file may hold more, which are kept as they are. */
const ASKED = ['typical', 'stroke', 'weight'];

export function ramParts(document: SiteDocument): PlainRecord {
  const ram = valueAt(document, ['ram']);
  if (typeof ram === 'string') return { typical: ram };
  return isRecord(ram) ? ram : {};
}

/** The document with one part of its ram changed; a ram with nothing but its size is written as that size. */
export function withRamPart(
  document: SiteDocument,
  part: string,
  value: Plain | undefined,
): SiteDocument {
  const { [part]: _old, ...others } = ramParts(document);
  const parts: PlainRecord = value === undefined ? others : { ...others, [part]: value };
  const names = Object.keys(parts);
  if (names.length === 0) return withValue(document, ['ram'], undefined);
  const { typical } = parts;
  return withValue(
    document,
    ['ram'],
    names.length === 1 && typical !== undefined ? typical : parts,
  );
}

/** Names of the parts that the file gives besides those asked on the page. */
export function otherRamParts(document: SiteDocument): readonly string[] {
  return Object.keys(ramParts(document)).filter((part) => !ASKED.includes(part));
}
