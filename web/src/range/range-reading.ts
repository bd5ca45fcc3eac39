/** What the records make of the range on the page: its problems, and each ram ready to be drawn and answered with. */
import type { Ram } from '@fallwright/engine';
import type { Problem, RangeRam, Site } from '@fallwright/records';
import {
  installationOf,
  ramFormOf,
  ramForSite,
  rangeFromData,
  siteFromData,
  tuningsOf,
} from '@fallwright/records';
import type { SiteDocument } from '../state/site-document.ts';
import type { RamDocument } from './range-document.ts';
import { ramsIn } from './range-document.ts';

export interface ReadTuning {
  readonly name: string;
  readonly ram: Ram;
}

export type ReadRam =
  | {
      readonly ok: true;
      readonly ram: RangeRam;
      /** As it is built, before any tuning. */
      readonly built: Ram;
      readonly tunings: readonly ReadTuning[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** A range that has no rams yet is no fault. */
export function rangeProblems(document: SiteDocument): readonly Problem[] {
  if (ramsIn(document).length === 0) return [];
  const read = rangeFromData(document);
  return read.ok ? [] : read.problems;
}

/** One ram by itself: a fault in another one does not stand in its way. */
export function readRam(document: RamDocument): ReadRam {
  const read = rangeFromData({ fallwright: 'range@1', rams: [document] });
  if (!read.ok) return read;
  const [ram] = read.range.rams;
  if (ram === undefined) return { ok: false, problems: [] };
  const made = (form: Site['ram']): Ram =>
    installationOf({ ...anyPlace(), ...(form === undefined ? {} : { ram: form }) }).installation
      .ram;
  return {
    ok: true,
    ram,
    built: made(ramFormOf(ram)),
    tunings: tuningsOf(ram).map(({ name }) => ({ name, ram: made(ramForSite(ram, name)) })),
  };
}

/** A ram is put together as part of a place; which place it is plays no part in it. */
export const ANY_PLACE: SiteDocument = {
  fallwright: 'site@1',
  source: { flow: 'plenty' },
  fall: '2 m',
  drive: [{ pipe: 'PE100 SDR11 32', length: '14 m' }],
  lift: '10 m',
};

function anyPlace(): Site {
  const read = siteFromData(ANY_PLACE);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join(' '));
  return read.site;
}
