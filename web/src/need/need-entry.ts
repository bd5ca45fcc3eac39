/**
 * Who and what needs water, in a site document.
 *
 * One amount is the same as `other` alone: nobody said what it is for. So the first thing that is told apart leaves the amount
 * standing as other uses, and taking the rest away makes it one amount again. Nothing that was typed is lost either way.
 */
import type { Path, Plain, PlainRecord, SiteDocument } from '../state/site-document.ts';
import { isRecord, valueAt, withValue } from '../state/site-document.ts';

/** Whether the demand is told apart, and is not one amount in its longer form. */
export function isToldApart(demand: Plain | undefined): demand is PlainRecord {
  return isRecord(demand) && !('value' in demand);
}

function partsOf({ demand }: SiteDocument): PlainRecord {
  if (demand === undefined) return {};
  return isToldApart(demand) ? demand : { other: demand };
}

export function needPart(document: SiteDocument, path: Path): Plain | undefined {
  return valueAt(partsOf(document), path);
}

/** Of two ways to say the same, the one that was not written last goes: the file may hold only one. */
const IN_PLACE_OF: Readonly<Record<string, readonly Path[]>> = {
  perPerson: [['service']],
  'garden.perArea': [
    ['garden', 'evapotranspiration'],
    ['garden', 'plants'],
  ],
  'garden.evapotranspiration': [['garden', 'perArea']],
};

export function withNeedPart(
  document: SiteDocument,
  path: Path,
  value: Plain | undefined,
): SiteDocument {
  const put = withValue(partsOf(document), path, value);
  const gone = value === undefined ? [] : (IN_PLACE_OF[path.join('.')] ?? []);
  return withParts(
    document,
    gone.reduce((parts, other) => withValue(parts, other, undefined), put),
  );
}

function withParts(document: SiteDocument, parts: PlainRecord): SiteDocument {
  const names = Object.keys(parts);
  if (names.length === 0) return withValue(document, ['demand'], undefined);
  const [only] = names;
  return withValue(
    document,
    ['demand'],
    names.length === 1 && only === 'other' ? parts.other : parts,
  );
}

/** One amount, as the box over the form takes it. Emptying that box takes an amount out, but nothing that is told apart. */
export function withAmount(document: SiteDocument, amount: Plain | undefined): SiteDocument {
  if (amount === undefined && isToldApart(document.demand)) return document;
  return withValue(document, ['demand'], amount);
}

export interface Animals {
  readonly count?: Plain | undefined;
  /** What one drinks, in place of the published figure. */
  readonly each?: Plain | undefined;
}

export function animalsAt(document: SiteDocument, name: string): Animals {
  const entry = needPart(document, ['animals', name]);
  return isRecord(entry) ? { count: entry.count, each: entry.each } : { count: entry };
}

/** The shortest way to write it: how many, when the published figure holds. */
export function withAnimals(
  document: SiteDocument,
  name: string,
  { count, each }: Animals,
): SiteDocument {
  const entry = each === undefined ? count : { ...(count === undefined ? {} : { count }), each };
  return withNeedPart(document, ['animals', name], entry);
}

/** What a part lacks before it counts: by the path of the box that is still to be filled. */
export function lacksOf(document: SiteDocument): Readonly<Record<string, string>> {
  const { demand } = document;
  if (!isToldApart(demand)) return {};
  const has = (...path: Path): boolean => valueAt(demand, path) !== undefined;
  const lacks: Record<string, string> = {};
  if (!has('people') && (has('perPerson') || has('service'))) lacks.people = 'how many people';
  for (const [name, entry] of Object.entries(isRecord(demand.animals) ? demand.animals : {})) {
    if (isRecord(entry) && entry.count === undefined) lacks[`animals.${name}`] = 'how many';
  }
  if (has('garden') && !has('garden', 'area')) lacks['garden.area'] = 'how large it is';
  if (has('garden', 'plants') && !has('garden', 'evapotranspiration')) {
    lacks['garden.evapotranspiration'] = 'how much a reference meadow gives off';
  }
  if (has('drip') && !has('drip', 'plants')) lacks['drip.plants'] = 'how many plants';
  if (has('drip') && !has('drip', 'perPlant')) lacks['drip.perPlant'] = 'what one takes in a day';
  if (has('growth') && !has('years')) lacks.years = 'over how many years';
  if (has('years') && !has('growth')) lacks.growth = 'how much more each year';
  return lacks;
}

/** What waits with a box that is still empty. */
const WAITS: readonly (readonly [RegExp, readonly Path[]])[] = [
  [/^people$/, [['perPerson'], ['service']]],
  [/^garden\.area$/, [['garden']]],
  [/^garden\.evapotranspiration$/, [['garden', 'plants']]],
  [/^drip\./, [['drip']]],
  [/^(years|growth)$/, [['years'], ['growth']]],
];

/**
 * The document without the needs that are not told to the end. They wait: a garden without its size must not take the answer
 * away, and an answer without it says nothing wrong of the ram.
 */
export function withoutUnfinished(document: SiteDocument): SiteDocument {
  const { demand } = document;
  const boxes = Object.keys(lacksOf(document));
  if (!isToldApart(demand) || boxes.length === 0) return document;
  const gone = boxes.flatMap((box): readonly Path[] => {
    const [, name] = /^animals\.(.+)$/.exec(box) ?? [];
    if (name !== undefined) return [['animals', name]];
    return WAITS.find(([pattern]) => pattern.test(box))?.[1] ?? [];
  });
  return withParts(
    document,
    gone.reduce((parts, path) => withValue(parts, path, undefined), demand),
  );
}
