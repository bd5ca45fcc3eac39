/** What can be built from a range of rams and a price list. What neither of them has is said: typical rams, table pipes, no prices. */
import {
  findPipe,
  type ItemKind,
  type Offers,
  PIPES,
  type PipeOffer,
  type PricedItem,
  type RamOffer,
  type TankOffer,
  TYPICAL_SIZES,
  type TypicalSize,
  typicalRam,
} from '@fallwright/engine';
import { isItemKind, type PriceList, type PriceRow } from '../prices/price-list.ts';
import { partSize, pipeOfSize } from '../prices/price-size.ts';
import type { Problem } from '../problem.ts';
import type { Range } from '../range/range-schema.ts';
import { ramsMade } from '../range/revisions.ts';
import { ramForSite } from '../range/site-copy.ts';
import { AS_BUILT, tuningsOf } from '../range/tunings-of.ts';
import { type Assumption, Assumptions } from '../site/assumption.ts';
import { materialCalled } from '../site/materials.ts';
import type { PipeLength } from '../site/pipe-fields.ts';
import type { RamForm } from '../site/ram-fields.ts';
import { ramOf } from '../site/ram-of.ts';

/** How what is offered would be written in a site file. */
export interface OfferForms {
  /** By the key of the ram and the name of the tuning. */
  readonly ram: (key: string, tuning: string) => RamForm;
  /** By the key of the pipe. */
  readonly pipe: (
    key: string,
  ) => Pick<PipeLength, 'pipe' | 'material' | 'bore' | 'wall' | 'rating'>;
}

export interface AssembledOffers {
  readonly offers: Offers;
  /** Absent when nothing has a price. */
  readonly currency?: string;
  readonly forms: OfferForms;
  readonly assumptions: readonly Assumption[];
}

export type OffersMade =
  | { readonly ok: true; readonly value: AssembledOffers }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export interface OffersFrom {
  /** The typical rams when absent. */
  readonly range?: Range;
  /** Pipes from the tables and no prices when absent. */
  readonly prices?: PriceList;
  /** Water that a tank must hold; no tank is chosen when absent. */
  readonly tankVolume?: number;
  /** Whether the vessels of the price list are tried in place of the rams' own. */
  readonly otherVessels?: boolean;
}

const METRES_PER_FOOT = 0.3048;

export function offersOf({
  range,
  prices,
  tankVolume,
  otherVessels = false,
}: OffersFrom): OffersMade {
  const problems = clashes(range, prices);
  if (problems.length > 0) return { ok: false, problems };
  const assumptions = new Assumptions();
  const ramForms = new Map<string, RamForm>();
  const rams = range ? ramsOf(range, ramForms) : typicalRams(ramForms, assumptions);
  const pipeForms = new Map<string, ReturnType<OfferForms['pipe']>>();
  const pipes = prices
    ? pricedPipes(prices, pipeForms)
    : tablePipes(
        rams.map(({ tunings }) => tunings[0]?.ram.bore ?? 0),
        pipeForms,
        assumptions,
      );
  const rows = prices?.rows ?? [];
  const currency = prices?.currency ?? range?.rams.find(({ price }) => price)?.price?.currency;
  return {
    ok: true,
    value: {
      offers: {
        rams,
        ...pipes,
        vessels: otherVessels ? containers(rows, 'vessel') : [],
        tanks: tankVolume === undefined ? [] : tanksFor(containers(rows, 'tank'), tankVolume),
        items: rows.flatMap(itemOf),
        leftOut: leftOutOf(rows),
      },
      ...(currency !== undefined && { currency }),
      forms: {
        ram: (key, tuning) => required(ramForms, `${key}|${tuning}`),
        pipe: (key) => required(pipeForms, key),
      },
      assumptions: assumptions.list,
    },
  };
}

function required<Value>(map: ReadonlyMap<string, Value>, key: string): Value {
  const value = map.get(key);
  if (value === undefined) throw new RangeError(`key must be that of an offer, got ${key}`);
  return value;
}

/** What each file may say alone but not both together. */
function clashes(range: Range | undefined, prices: PriceList | undefined): readonly Problem[] {
  const problems: Problem[] = [];
  const priced = range?.rams.findIndex(({ price }) => price) ?? -1;
  const ramCurrency = range?.rams[priced]?.price?.currency;
  if (prices && ramCurrency !== undefined && ramCurrency !== prices.currency) {
    const message = `The rams are priced in ${ramCurrency} and the price list in ${prices.currency}. Write both in one currency.`;
    problems.push({ kind: 'contradiction', field: `rams[${priced}].price`, message });
  }
  if (range && ramsMade(range).length === 0) {
    const message =
      'Every ram of this range is retired, so there is none to choose. Take retired off one of them.';
    problems.push({ kind: 'contradiction', field: 'rams', message });
  }
  if (!prices) return problems;
  for (const use of ['drive', 'delivery'] as const) {
    if (prices.rows.some((row) => row.kind === 'pipe' && !row.isLeftOut && isFor(row, use)))
      continue;
    const message = `The price list has no pipe for the ${use} line. Add a row: kind pipe, size PE100 SDR11 25, use ${use}. Its price may stay empty.`;
    problems.push({ kind: 'missing', field: 'use', message });
  }
  return problems;
}

function ramsOf(range: Range, forms: Map<string, RamForm>): readonly RamOffer[] {
  return ramsMade(range).map((ram) => ({
    key: ram.id,
    name: ram.name,
    tunings: tuningsOf(ram).map(({ name, form }) => {
      forms.set(`${ram.id}|${name}`, ramForSite(ram, name));
      return { name, ram: ramOf(form, 0, new Assumptions()) };
    }),
    ...(ram.price && { cost: ram.price.money }),
    ...(ram.setUp && { setUpTime: ram.setUp.value }),
  }));
}

function typicalRams(forms: Map<string, RamForm>, assumptions: Assumptions): readonly RamOffer[] {
  const sizes = Object.keys(TYPICAL_SIZES) as TypicalSize[];
  assumptions.words('range', 'rams', `typical ones from ${sizes[0]} to ${sizes.at(-1)}`, {
    why: 'no range was given; what is built may differ, and its price is not known',
    basis: 'judgement',
  });
  return sizes.map((size) => {
    forms.set(`${size}|${AS_BUILT}`, { typical: size });
    return {
      key: size,
      name: `typical ${size}`,
      tunings: [{ name: AS_BUILT, ram: typicalRam(size) }],
    };
  });
}

type Pipes = Pick<Offers, 'drivePipes' | 'feederPipes' | 'deliveryPipes'>;

function isFor({ use }: PriceRow, line: 'drive' | 'feeder' | 'delivery'): boolean {
  // A feeder is laid on purpose: nobody wants one for every pipe that could be one.
  return use ? use.includes(line) : line !== 'feeder';
}

/** Rows of one pipe in several bars or coils are one offer. */
function pricedPipes(
  { rows }: PriceList,
  forms: Map<string, ReturnType<OfferForms['pipe']>>,
): Pipes {
  const groups = new Map<string, PriceRow[]>();
  for (const row of rows) {
    if (row.kind !== 'pipe' || row.isLeftOut) continue;
    const { size, name, rating, use, unit, soldLength, isOnePiece, price } = row;
    const isPiece = unit === 'length';
    const sameOffer = [size ?? name, rating?.value, use?.join(), unit, isOnePiece];
    const byMetre = isPiece ? [] : [price, soldLength?.value];
    const key = JSON.stringify([...sameOffer, ...byMetre]);
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  const offers = [...groups.values()].map((group) => ({
    first: group[0] as PriceRow,
    offer: pipeOfferOf(group, forms),
  }));
  const forLine = (line: 'drive' | 'feeder' | 'delivery') =>
    offers.filter(({ first }) => isFor(first, line)).map(({ offer }) => offer);
  return {
    drivePipes: forLine('drive'),
    feederPipes: forLine('feeder'),
    deliveryPipes: forLine('delivery'),
  };
}

function pipeOfferOf(
  group: readonly PriceRow[],
  forms: Map<string, ReturnType<OfferForms['pipe']>>,
): PipeOffer {
  const { code, name, size, rating, unit, price, soldLength, isOnePiece } = group[0] as PriceRow;
  const read = pipeOfSize(size ?? name, rating);
  if (!read.ok) throw new RangeError(`a price list must come from readPrices: ${read.message}`);
  forms.set(code, read.form);
  const soldLengths =
    unit === 'length'
      ? group.map((row) => ({
          length: row.soldLength?.value ?? 0,
          ...(row.price === undefined ? {} : { cost: row.price }),
        }))
      : soldLength
        ? [{ length: soldLength.value }]
        : [];
  const perMetre =
    unit === 'length' || price === undefined
      ? undefined
      : unit === 'foot'
        ? Math.round(price / METRES_PER_FOOT)
        : price;
  return {
    key: code,
    name,
    pipe: read.pipe,
    ...(perMetre === undefined ? {} : { costPerMetre: perMetre }),
    ...(soldLengths.length > 0 && { soldLengths }),
    ...(isOnePiece && { joinable: false }),
  };
}

/**
 * Pipes to try where nobody says what can be bought. Common practice, no source: a drive pipe of the ram's own size, of steel or
 * of thick plastic, and a delivery pipe of half to all of it.
 */
function tablePipes(
  bores: readonly number[],
  forms: Map<string, ReturnType<OfferForms['pipe']>>,
  assumptions: Assumptions,
): Pipes {
  assumptions.words('prices', 'pipes', 'galvanised steel and PE100 SDR11 of the rams’ sizes', {
    why: 'no price list was given, so they are judged by water alone',
    basis: 'judgement',
  });
  const steel = named('galvanised steel DN');
  const plastic = named('PE100 SDR11 ');
  const drive = bores.flatMap((bore) => [nearest(steel, bore), nearest(plastic, bore)]);
  const delivery = bores.flatMap((bore) => [
    nearest(plastic, bore / 2),
    nearest(plastic, 0.75 * bore),
  ]);
  const offersFor = (names: readonly string[]): PipeOffer[] =>
    [...new Set(names)].map((name) => {
      const found = findPipe(name);
      if (!found.ok) throw new RangeError(`the pipe tables have lost ${name}`);
      forms.set(name, { pipe: name });
      return { key: name, name, pipe: found.pipe };
    });
  return {
    drivePipes: offersFor(drive),
    feederPipes: [],
    deliveryPipes: offersFor(delivery),
  };
}

type TablePipe = (typeof PIPES)[number];

function named(start: string): readonly TablePipe[] {
  return PIPES.filter(({ name }) => name.startsWith(start));
}

function nearest(pipes: readonly TablePipe[], bore: number): string {
  const gap = ({ innerDiameter }: TablePipe): number => Math.abs(Math.log(innerDiameter / bore));
  return pipes.reduce((best, pipe) => (gap(pipe) < gap(best) ? pipe : best)).name;
}

function containers(rows: readonly PriceRow[], kind: 'vessel' | 'tank') {
  return rows.flatMap((row) =>
    row.kind !== kind || row.isLeftOut || !row.volume
      ? []
      : [
          {
            key: row.code,
            name: row.name,
            volume: row.volume.value,
            ...(row.price === undefined ? {} : { cost: row.price }),
            ...(row.rating && { rating: row.rating.value }),
          },
        ],
  );
}

/** The cheapest tank that holds enough: another moves no water. All of them where none does, so that each is told to be too small. */
function tanksFor(tanks: readonly TankOffer[], volume: number): readonly TankOffer[] {
  const enough = tanks
    .filter((tank) => tank.volume >= volume)
    .sort((a, b) => (a.cost ?? Infinity) - (b.cost ?? Infinity) || a.volume - b.volume);
  return enough.length > 0 ? enough.slice(0, 1) : tanks;
}

function itemOf(row: PriceRow): readonly PricedItem[] {
  const { kind, price, unit, size } = row;
  if (!isItemKind(kind) || row.isLeftOut) return [];
  const perUnit =
    unit === 'foot' && price !== undefined ? Math.round(price / METRES_PER_FOOT) : price;
  const fitting = size === undefined ? undefined : partSize(size);
  const materials = row.madeOf?.flatMap((words) => materialCalled(words) ?? []);
  return [
    {
      key: row.code,
      name: row.name,
      kind,
      ...(perUnit === undefined ? {} : { cost: perUnit }),
      ...(fitting === undefined ? {} : { size: fitting }),
      ...(materials && { materials }),
      ...(row.fits && { rams: row.fits }),
      ...(row.openArea && { openArea: row.openArea.value }),
      ...(row.holds && { holds: row.holds.value }),
      ...(row.soldLength && { soldLength: row.soldLength.value }),
    },
  ];
}

/** Kinds whose only row says that they are left out. */
function leftOutOf(rows: readonly PriceRow[]): readonly ItemKind[] {
  return [
    ...new Set(
      rows.flatMap(({ kind, isLeftOut }) => (isLeftOut && isItemKind(kind) ? [kind] : [])),
    ),
  ];
}
