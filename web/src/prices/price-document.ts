/**
 * The price list as the page edits it: a currency and rows of cells as they stand in a CSV file, so that what is typed is kept
 * as it was typed. What it says is what the reader of CSV files makes of it, and nothing else.
 */
import type { PriceColumn, PriceList, PriceRow, Problem } from '@fallwright/records';
import {
  KIND_WORDS,
  moneyDigits,
  PRICE_COLUMNS,
  readPrices,
  UNIT_WORDS,
} from '@fallwright/records';
import { textOf } from '../state/entry.ts';
import type { PlainRecord, SiteDocument } from '../state/site-document.ts';
import { isList, isRecord } from '../state/site-document.ts';

/** The cells of a row, as written. */
export type RowDocument = PlainRecord;

const NO_ROWS: readonly RowDocument[] = [];

export function rowsIn({ rows }: SiteDocument): readonly RowDocument[] {
  if (!isList(rows)) return NO_ROWS;
  return rows.every(isRecord) ? rows : rows.filter(isRecord);
}

export function currencyIn({ currency }: SiteDocument): string {
  return textOf(currency);
}

/** The whole list as CSV, faults and all. */
export function priceCsv(document: SiteDocument): string {
  const head = PRICE_COLUMNS.map((name) =>
    name === 'price' ? `price (${currencyIn(document)})` : name,
  );
  const lines = rowsIn(document).map((row) => PRICE_COLUMNS.map((name) => textOf(row[name])));
  return `${[head, ...lines].map((cells) => cells.map(safeCell).join(',')).join('\r\n')}\r\n`;
}

/** Signs that make a spreadsheet take a cell for a formula, and run it; the reader takes the apostrophe off again. */
const FORMULA = /^'*[=+\-@\t]/;

function safeCell(text: string): string {
  const oneLine = text.replace(/[\r\n]+/g, ' ');
  const guarded = FORMULA.test(oneLine) ? `'${oneLine}` : oneLine;
  return /[",;\t]|^\s|\s$|^#/.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}

export interface PriceFault {
  /** Which row, from 0; absent for what concerns the whole list. */
  readonly row?: number;
  readonly column: string;
  readonly message: string;
}

export interface PriceReading {
  /** The rows in which nothing is wrong; absent when not even the currency can be read. */
  readonly list?: PriceList;
  readonly faults: readonly PriceFault[];
}

/** A list that has no rows yet is no fault. */
export function readPriceDocument(document: SiteDocument): PriceReading {
  if (rowsIn(document).length === 0) return { faults: [] };
  const read = readPrices(priceCsv(document));
  if (read.ok) return { list: read.list, faults: [] };
  return {
    ...(read.good === undefined ? {} : { list: read.good }),
    faults: read.problems.map(faultOf),
  };
}

/** The head is line 1, so the first row is line 2. */
function faultOf({ field, line = 1, message }: Problem): PriceFault {
  return line === 1 ? { column: field, message } : { row: line - 2, column: field, message };
}

/** A list from a file as the page edits it. */
export function priceDocument({ currency, rows }: PriceList): SiteDocument {
  return { fallwright: 'prices@1', currency, rows: rows.map((row) => cellsOf(row, currency)) };
}

function cellsOf(row: PriceRow, currency: string): RowDocument {
  const price = row.isLeftOut
    ? 'left out'
    : row.price === undefined
      ? undefined
      : moneyDigits(row.price, currency);
  const cells: Record<PriceColumn, string | undefined> = {
    code: row.code,
    kind: KIND_WORDS[row.kind],
    name: row.name,
    size: row.size,
    unit: UNIT_WORDS[row.unit],
    price,
    'sold length': row.soldLength?.text,
    use: row.use?.join(' '),
    volume: row.volume?.text,
    rating: row.rating?.text,
    'open area': row.openArea?.text,
    holds: row.holds?.text,
    fits: row.fits?.join(' '),
    'made of': row.madeOf?.join('; '),
    'one piece': row.isOnePiece ? 'yes' : undefined,
    note: row.note,
  };
  return Object.fromEntries(Object.entries(cells).filter(([, cell]) => cell !== undefined));
}

/** A code that no row has yet. */
export function freeCode(rows: readonly RowDocument[], start: string): string {
  const codes = new Set(rows.map(({ code }) => textOf(code)));
  for (let number = rows.length + 1; ; number++) {
    const code = `${start}${number}`;
    if (!codes.has(code)) return code;
  }
}
