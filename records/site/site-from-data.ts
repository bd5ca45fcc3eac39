/** A site from data: the site, or every problem with it. */

import { LONGEST_TEXT } from '../longest-text.ts';
import type { Problem } from '../problem.ts';
import { type RecordKind, type RecordRead, recordFromData } from '../record-from-data.ts';
import { checkLines } from './check-lines.ts';
import { isWithoutPipe } from './check-pipes.ts';
import { checkSite } from './check-site.ts';
import { SITE_FORMAT, type Site, siteSchema } from './site-schema.ts';

export type SiteRead =
  | {
      readonly ok: true;
      readonly site: Site;
      /** Can be computed, but worth a second look. */
      readonly warnings: readonly Problem[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** What people call our fields elsewhere. */
const HINTS: Readonly<Record<string, string>> = {
  head: 'The height of the source above the ram is the fall: fall: 1.9 m.',
  supplyhead: 'The height of the source above the ram is the fall: fall: 1.9 m.',
  height: 'The height above the ram is the fall for the source and the lift for the tank.',
  flow: 'The flow of the source is written: source: { flow: 14 L/min }.',
  supply: 'Where the water comes from is the source: source: { flow: 14 L/min }.',
  deliveryhead: 'The height of the tank above the ram is the lift: lift: 12 m.',
  diameter: 'The inside width is the bore: bore: 26.6 mm.',
  id: 'The inside width is the bore: bore: 26.6 mm.',
  od: 'Write the inside width as bore and the thickness as wall.',
  thickness: 'The thickness of a pipe is its wall: wall: 3 mm.',
  crest: 'A crest is written: laid: over a crest.',
};

export const SITE_KIND: RecordKind<Site> = {
  called: 'site',
  format: SITE_FORMAT,
  longest: LONGEST_TEXT,
  schema: siteSchema,
  hints: HINTS,
  check: (parts) => checkSite(parts),
  secondLook: checkLines,
};

/** A place to choose for: its lines may be ways alone, whose pipes are still to be chosen. */
export const WAYS_KIND: RecordKind<Site> = {
  ...SITE_KIND,
  check: (parts) => checkSite(parts, { mayLackPipes: true }),
  secondLook: (site) =>
    [...site.drive, ...(site.delivery ?? [])].some(isWithoutPipe) ? [] : checkLines(site),
};

/** Reads a site to choose for from data that was no text. */
export function placeFromData(data: unknown): SiteRead {
  return asSite(recordFromData(data, WAYS_KIND));
}

/** Reads a site from data that was no text: a form, or the body of a request. Problems have no lines. */
export function siteFromData(data: unknown): SiteRead {
  return asSite(recordFromData(data, SITE_KIND));
}

export function asSite(read: RecordRead<Site>): SiteRead {
  return read.ok ? { ok: true, site: read.value, warnings: read.warnings } : read;
}
