/** The ram of a place and the range it comes from: which of its rams it is, and whether a newer revision stands there. */
import type { Ram } from '@fallwright/engine';
import type { Range, Site } from '@fallwright/records';
import {
  installationOf,
  ramForSite,
  ramsMade,
  rangeFromData,
  siteFromData,
  siteWithNewest,
  tuningsOf,
} from '@fallwright/records';
import { plainOf } from '../answer/document-of.ts';
import type { Plain, SiteDocument } from '../state/site-document.ts';
import { withValue } from '../state/site-document.ts';
import { ANY_PLACE } from './range-reading.ts';

export interface OfferedRam {
  readonly id: string;
  readonly name: string;
  readonly revision: number;
  readonly tunings: readonly string[];
}

/** The rams that are made and can be read; one with a fault keeps no other from being chosen. */
export function readableRange(documents: readonly SiteDocument[]): Range | undefined {
  const rams = documents.flatMap((ram) => {
    const read = rangeFromData({ fallwright: 'range@1', rams: [ram] });
    return read.ok ? read.range.rams : [];
  });
  return rams.length === 0 ? undefined : { fallwright: 'range@1', rams };
}

export function offeredRams(range: Range): readonly OfferedRam[] {
  return ramsMade(range).map((ram) => ({
    id: ram.id,
    name: ram.name,
    revision: ram.revision ?? 1,
    tunings: tuningsOf(ram).map(({ name }) => name),
  }));
}

/** What a place writes down of a ram of the range: its revision, how it is set up, and its parts. */
export function entryFor(range: Range, id: string, tuning: string): Plain | undefined {
  const ram = range.rams.find((one) => one.id === id);
  const isOffered = ram !== undefined && tuningsOf(ram).some(({ name }) => name === tuning);
  return isOffered ? plainOf(ramForSite(ram, tuning)) : undefined;
}

export type Standing =
  | { readonly kind: 'notFromRange' | 'unreadable' }
  | {
      readonly kind: 'unknownRam' | 'isNewest';
      readonly reference: string;
      readonly isRetired?: boolean;
    }
  /** The place was changed since, or the range was: what the range holds can be put back. */
  | { readonly kind: 'copyDiffers'; readonly reference: string; readonly entry: Plain | undefined }
  | {
      readonly kind: 'noSuchTuning';
      readonly newest: string;
      readonly tuning: string;
      readonly tunings: readonly string[];
    }
  | {
      readonly kind: 'newer';
      readonly reference: string;
      readonly newest: string;
      readonly changes: readonly string[];
      readonly entry: Plain;
      readonly now: Ram;
      readonly newestRam: Ram;
    };

/** How the place's ram stands against the range. What else is missing in the place plays no part. */
export function standingOf(document: SiteDocument, range: Range): Standing {
  const read = siteFromData({ ...ANY_PLACE, ram: document.ram });
  if (!read.ok) return { kind: 'unreadable' };
  const found = siteWithNewest(read.site, range);
  switch (found.kind) {
    case 'notFromRange':
      return found;
    case 'copyDiffers':
      return {
        kind: 'copyDiffers',
        reference: found.reference,
        entry: found.site === read.site ? undefined : plainOf(found.site.ram),
      };
    case 'newer': {
      const entry = plainOf(found.site.ram);
      if (entry === undefined) return { kind: 'unreadable' };
      const { reference, newest, changes } = found;
      const madeOf = (site: Site): Ram => installationOf(site).installation.ram;
      return {
        kind: 'newer',
        reference,
        newest,
        changes,
        entry,
        now: madeOf(read.site),
        newestRam: madeOf(found.site),
      };
    }
    case 'noSuchTuning': {
      const { newest, tuning, tunings } = found;
      return { kind: 'noSuchTuning', newest, tuning, tunings };
    }
    default:
      return found;
  }
}

export function withRamEntry(document: SiteDocument, entry: Plain): SiteDocument {
  return withValue(document, ['ram'], entry);
}
