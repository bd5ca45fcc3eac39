/** A price list: what a workshop buys and sells, as a table of rows in one currency. */
import { ITEM_UNITS, type ItemKind, type Money } from '@fallwright/engine';
import type { Given } from '../given.ts';

/** Lines on which a pipe may lie. */
export const PIPE_USES = ['drive', 'feeder', 'delivery'] as const;
export type PipeUse = (typeof PIPE_USES)[number];

/** `length` is a bar or a coil, sold whole. */
export type PriceUnit = 'metre' | 'foot' | 'each' | 'hour' | 'length';

export type PriceKind = 'pipe' | 'vessel' | 'tank' | ItemKind;

/** One row. What was written is kept as it was written, so that a list goes out as it came in. */
export interface PriceRow {
  /** Unlike that of any other row. */
  readonly code: string;
  readonly kind: PriceKind;
  readonly name: string;
  /** Of a pipe: its name in the pipe tables, or its material, bore and wall. Of a part: the size that it fits. */
  readonly size?: string;
  readonly unit: PriceUnit;
  /** For one unit; absent when it is not known. */
  readonly price?: Money;
  /** Builds of this workshop go without this kind, or it comes with the ram. */
  readonly isLeftOut?: true;
  /** Length of a bar or a coil. */
  readonly soldLength?: Given;
  /** Lines for which a pipe is meant; drive and delivery when absent. */
  readonly use?: readonly PipeUse[];
  /** Of a vessel or a tank. */
  readonly volume?: Given;
  readonly rating?: Given;
  /** All holes of a strainer together. */
  readonly openArea?: Given;
  /** Push that a footing withstands. */
  readonly holds?: Given;
  /** Ids of the rams of a range that it fits; all when absent. */
  readonly fits?: readonly string[];
  /** What the pipe that it fits may be made of; anything when absent. */
  readonly madeOf?: readonly string[];
  /** Of a pipe: each line must be of one piece, as a hose is. */
  readonly isOnePiece?: true;
  readonly note?: string;
}

export interface PriceList {
  /** Three letters: `EUR`. */
  readonly currency: string;
  readonly rows: readonly PriceRow[];
}

/** The kinds by the words that stand in a list. */
export const KIND_WORDS: Readonly<Record<PriceKind, string>> = {
  pipe: 'pipe',
  vessel: 'vessel',
  tank: 'tank',
  // Made by the compiler's own check: a kind that the engine gains has to have its words here.
  ...({
    strainer: 'strainer',
    intakeBox: 'intake box',
    standpipe: 'standpipe',
    gateValve: 'gate valve',
    union: 'union',
    endFitting: 'end fitting',
    socket: 'socket',
    elbow: 'elbow',
    tee: 'tee',
    vent: 'vent',
    clamp: 'clamp',
    hoseClip: 'hose clip',
    footing: 'footing',
    stopValve: 'stop valve',
    nonReturnValve: 'non-return valve',
    drain: 'drain',
    wasteValveRubber: 'waste valve rubber',
    deliveryValveClack: 'delivery valve clack',
    gasket: 'gasket',
    trench: 'trench',
    laying: 'laying',
    labour: 'labour',
    carriage: 'carriage',
  } satisfies Record<ItemKind, string>),
};

export function isItemKind(kind: PriceKind): kind is ItemKind {
  return Object.hasOwn(ITEM_UNITS, kind);
}

/** Units in which a kind may be priced, the usual one first. A pipe has none that is usual. */
export function unitsOf(kind: PriceKind): readonly PriceUnit[] {
  if (kind === 'pipe') return ['metre', 'foot', 'length'];
  if (kind === 'vessel' || kind === 'tank') return ['each'];
  const unit = ITEM_UNITS[kind];
  return unit === 'metre' ? ['metre', 'foot'] : [unit];
}

export const UNIT_WORDS: Readonly<Record<PriceUnit, string>> = {
  metre: 'm',
  foot: 'ft',
  each: 'each',
  hour: 'h',
  length: 'length',
};

/** The columns in the order in which they are written. */
export const PRICE_COLUMNS = [
  'code',
  'kind',
  'name',
  'size',
  'unit',
  'price',
  'sold length',
  'use',
  'volume',
  'rating',
  'open area',
  'holds',
  'fits',
  'made of',
  'one piece',
  'note',
] as const;
export type PriceColumn = (typeof PRICE_COLUMNS)[number];
