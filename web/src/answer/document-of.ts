/** A site as the plain tree that the page edits: each quantity as it was written, with its origin where it is not the usual one. */
import type { Given, Range, Site } from '@fallwright/records';
import { isGiven, isPrice } from '@fallwright/records';
import { entryOf } from '../state/entry.ts';
import { withListedLines } from '../state/lines.ts';
import type { Plain, SiteDocument } from '../state/site-document.ts';
import { isRecord } from '../state/site-document.ts';

export function documentOf(site: Site): SiteDocument {
  const plain = plainOf(site);
  return isRecord(plain) ? withListedLines(plain) : {};
}

/** A range as the page edits it. */
export function rangeDocumentOf(range: Range): SiteDocument {
  const plain = plainOf(range);
  return isRecord(plain) ? plain : {};
}

export function plainOf(value: unknown): Plain | undefined {
  if (isGiven(value)) return value.readings ? plainOf(value.readings) : written(value);
  if (isPrice(value)) return value.text;
  if (Array.isArray(value)) return value.map((item) => plainOf(item) ?? null);
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, plainOf(item)]));
  }
  if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean')
    return value;
  return undefined;
}

const written = ({ text, origin }: Given): Plain => entryOf(text, origin);
