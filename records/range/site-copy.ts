/**
 * The ram of a range as it stands in a site file: its reference, its tuning, and a copy of its parts.
 *
 * The copy makes the site file whole, so that it still gives its answer when it is mailed without the range, or years later.
 */
import { isSameData } from '../same-data.ts';
import type { RamForm } from '../site/ram-fields.ts';
import type { Site } from '../site/site-schema.ts';
import type { RamRevision, Range, RangeRam } from './range-schema.ts';
import { ramAt, referenceTo, revisionNumber } from './revisions.ts';
import { AS_BUILT, tuningsOf } from './tunings-of.ts';

/** What to write under `ram:` of a site file. @throws RangeError when the revision has no such tuning. */
export function ramForSite(ram: RangeRam, tuning: string, revision: RamRevision = ram): RamForm {
  const found = tuningsOf(revision).find(({ name }) => name === tuning);
  if (!found) throw new RangeError(`tuning must be one of ${ram.id}, got ${tuning}`);
  return {
    range: referenceTo(ram, revision),
    ...(tuning === AS_BUILT ? {} : { tuning }),
    ...found.form,
  };
}

/** What a range says of the ram that a site was answered with. */
export type NewestSite =
  /** The site's ram comes from no range, or from another one. */
  | { readonly kind: 'notFromRange' }
  | { readonly kind: 'unknownRam'; readonly reference: string }
  /** The range holds other parts under the same revision: one of the two files was changed by hand. */
  | { readonly kind: 'copyDiffers'; readonly reference: string; readonly site: Site }
  | { readonly kind: 'isNewest'; readonly reference: string; readonly isRetired: boolean }
  /** The tuning that the site has is no longer made. */
  | {
      readonly kind: 'noSuchTuning';
      readonly reference: string;
      readonly newest: string;
      readonly tuning: string;
      readonly tunings: readonly string[];
    }
  /** There is a newer revision: the same site with it, to be answered and compared. */
  | {
      readonly kind: 'newer';
      readonly reference: string;
      readonly newest: string;
      /** What changed in each revision since, the latest first, as far as the range says. */
      readonly changes: readonly string[];
      readonly isRetired: boolean;
      readonly site: Site;
    };

/** The site with the newest revision of its ram, set up as before, or why there is none. */
export function siteWithNewest(site: Site, range: Range): NewestSite {
  if (typeof site.ram !== 'object' || site.ram.range === undefined) return { kind: 'notFromRange' };
  const { range: reference, tuning = AS_BUILT } = site.ram;
  const found = ramAt(range, reference);
  if (!found) return { kind: 'unknownRam', reference };
  const { ram, revision } = found;
  const isRetired = ram.retired === true;
  const same = tuningsOf(revision).find(({ name }) => name === tuning);
  const kept = same && ramForSite(ram, tuning, revision);
  if (!kept || !isSameData(kept, site.ram)) {
    return { kind: 'copyDiffers', reference, site: kept ? { ...site, ram: kept } : site };
  }
  if (found.isNewest) return { kind: 'isNewest', reference, isRetired };
  const newest = referenceTo(ram);
  const tunings = tuningsOf(ram).map(({ name }) => name);
  if (!tunings.includes(tuning)) {
    return { kind: 'noSuchTuning', reference, newest, tuning, tunings };
  }
  const since = [ram, ...(ram.earlier ?? [])].filter(
    (one) => revisionNumber(one) > revisionNumber(revision),
  );
  return {
    kind: 'newer',
    reference,
    newest,
    changes: since.flatMap(({ change }) => change ?? []),
    isRetired,
    site: { ...site, ram: ramForSite(ram, tuning) },
  };
}
