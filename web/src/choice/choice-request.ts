/** What a choice is made from, read from the records of the page: the same in every worker that has a part in it. */
import type { ChoiceRequest, Installation, Judgement, PlaceToFit, Ram } from '@fallwright/engine';
import { judgeBySamples, partsLister } from '@fallwright/engine';
import type { Assumption, OfferForms, RamForm, Site } from '@fallwright/records';
import { offersOf, placeFromData, placeToFit, unsureOfBuild } from '@fallwright/records';
import { readSettled } from '../answer/settled.ts';
import { readPriceDocument } from '../prices/price-document.ts';
import { readableRange } from '../range/ram-of-place.ts';
import { ramsIn } from '../range/range-document.ts';
import { textOf } from '../state/entry.ts';
import { withoutEmptyPipes } from '../state/lines.ts';
import type { SiteDocument } from '../state/site-document.ts';

/** All that a choice depends on, as plain data. */
export interface ChoiceAsked {
  readonly site: SiteDocument;
  /** The typical rams when absent. */
  readonly range?: SiteDocument;
  /** Pipes from the tables and no prices when absent. */
  readonly prices?: SiteDocument;
  readonly wish: AskedWish;
}

/** What is wished beyond what the place says. SI. */
export interface AskedWish {
  /** In place of what the place needs. */
  readonly need?: number;
  readonly driveLengths?: readonly number[];
  readonly mostRams: number;
  /** Whether the vessels of the price list are tried in place of the rams' own. */
  readonly otherVessels: boolean;
  readonly wantedChance: number;
  /** Whether the chance of what lies near the front is worked out. */
  readonly judges: boolean;
}

export interface ReadChoice {
  readonly site: Site;
  readonly request: ChoiceRequest;
  readonly forms: OfferForms;
  /** Absent when nothing has a price. */
  readonly currency?: string;
  readonly assumptions: readonly Assumption[];
  /** What was left out because it cannot be read: `Swallow 25`. */
  readonly leftOut: readonly string[];
  readonly judge: (installation: Installation, needed?: number) => Judgement;
  readonly listOf: ReturnType<typeof partsLister>['listOf'];
}

export type ChoiceRead =
  | { readonly ok: true; readonly value: ReadChoice }
  | { readonly ok: false; readonly reasons: readonly string[] };

/** As on the command line, so that both give the same. Judgement: the chance is then good to some 3 %. */
const SAMPLES = 200;
const SEED = 1;

export function readChoice({ site: document, range, prices, wish }: ChoiceAsked): ChoiceRead {
  const read = readSettled(withoutEmptyPipes(document), placeFromData);
  if (!read.ok) return { ok: false, reasons: read.problems.map(({ message }) => message) };
  const rams = range === undefined ? [] : ramsIn(range);
  const readable = readableRange(rams);
  if (rams.length > 0 && readable === undefined) {
    return { ok: false, reasons: ['No ram of the range can be read yet. Look at the range.'] };
  }
  const list = prices === undefined ? undefined : readPriceDocument(prices);
  if (list !== undefined && list.list === undefined && list.faults.length > 0) {
    return { ok: false, reasons: list.faults.map(({ message }) => message) };
  }
  const assembled = placeToFit(read.site);
  const made = offersOf({
    ...(readable === undefined ? {} : { range: readable }),
    ...(list?.list === undefined ? {} : { prices: list.list }),
    ...(assembled.wish.tankVolume === undefined ? {} : { tankVolume: assembled.wish.tankVolume }),
    otherVessels: wish.otherVessels,
  });
  if (!made.ok) return { ok: false, reasons: made.problems.map(({ message }) => message) };
  const { offers, forms, currency, assumptions } = made.value;
  const place = list?.list === undefined ? inDryTime(assembled.place) : assembled.place;
  const { need, driveLengths, mostRams, wantedChance } = wish;
  const faulty = new Set(list?.faults.flatMap(({ row }) => row ?? []));
  return {
    ok: true,
    value: {
      site: read.site,
      request: {
        place,
        offers,
        wish: {
          ...assembled.wish,
          mostRams,
          wantedChance,
          ...(need === undefined ? {} : { need }),
          ...(driveLengths === undefined ? {} : { driveLengths }),
        },
      },
      forms,
      ...(currency === undefined ? {} : { currency }),
      assumptions: [...assembled.assumptions, ...assumptions],
      leftOut: [
        ...rams
          .filter(({ id }) => !readable?.rams.some((ram) => ram.id === textOf(id)))
          .map(({ name, id }) => textOf(name) || textOf(id)),
        ...(faulty.size === 0
          ? []
          : [
              faulty.size === 1
                ? 'one row of the price list'
                : `${faulty.size} rows of the price list`,
            ]),
      ],
      judge: judgeOf(read.site, made.value),
      listOf: partsLister(place, offers).listOf,
    },
  };
}

/** Where nothing is known of prices, what lasts all year is what counts: so it is run on what the driest month brings. */
function inDryTime(place: PlaceToFit): PlaceToFit {
  const { dryFlow, source } = place;
  if (dryFlow === undefined) return place;
  const dry =
    source.kind === 'steady' ? { ...source, yield: dryFlow } : { ...source, inflow: dryFlow };
  return { ...place, source: dry };
}

/** What is told of a ram decides how sure it is. A vessel may have been changed; name and waste valve tell rams apart. */
function judgeOf(
  site: Site,
  { offers, forms }: { readonly offers: ChoiceRequest['offers']; readonly forms: OfferForms },
): ReadChoice['judge'] {
  const told = new Map<string, RamForm>();
  for (const { key, tunings } of offers.rams) {
    for (const { name, ram } of tunings) told.set(tellApart(ram), forms.ram(key, name));
  }
  return (installation, needed) => {
    const inputs = unsureOfBuild(site, installation, told.get(tellApart(installation.ram)));
    return judgeBySamples(inputs, { samples: SAMPLES, seed: SEED })(installation, needed);
  };
}

function tellApart({ name, wasteValve }: Ram): string {
  return JSON.stringify([name, wasteValve]);
}
