/** A price list back to CSV, as it was written; read again it is the same list. */
import { moneyDigits } from './money.ts';
import {
  KIND_WORDS,
  PRICE_COLUMNS,
  type PriceColumn,
  type PriceList,
  type PriceRow,
  UNIT_WORDS,
} from './price-list.ts';

/**
 * Signs that make a spreadsheet take a cell for a formula, and run it. An apostrophe before them makes it a text, and is taken
 * off again when the list is read; so one is put before such apostrophes too.
 */
const FORMULA = /^'*[=+\-@\t\r]/;

export function writePrices({ currency, rows }: PriceList): string {
  const head = PRICE_COLUMNS.map((name) => (name === 'price' ? `price (${currency})` : name));
  const lines = [
    head,
    ...rows.map((row) => PRICE_COLUMNS.map((name) => cellOf(row, name, currency))),
  ];
  return `${lines.map((cells) => cells.map(safeCell).join(',')).join('\r\n')}\r\n`;
}

function cellOf(row: PriceRow, name: PriceColumn, currency: string): string {
  switch (name) {
    case 'code':
    case 'name':
    case 'size':
    case 'note':
      return row[name] ?? '';
    case 'kind':
      return KIND_WORDS[row.kind];
    case 'unit':
      return UNIT_WORDS[row.unit];
    case 'price':
      if (row.isLeftOut) return 'left out';
      return row.price === undefined ? '' : moneyDigits(row.price, currency);
    case 'sold length':
      return row.soldLength?.text ?? '';
    case 'use':
      return (row.use ?? []).join(' ');
    case 'volume':
    case 'rating':
    case 'holds':
      return row[name]?.text ?? '';
    case 'open area':
      return row.openArea?.text ?? '';
    case 'fits':
      return (row.fits ?? []).join(' ');
    case 'made of':
      return (row.madeOf ?? []).join('; ');
    case 'one piece':
      return row.isOnePiece ? 'yes' : '';
  }
}

function safeCell(text: string): string {
  const guarded = FORMULA.test(text) ? `'${text}` : text;
  const needsQuotes = /[",;\r\n\t]|^\s|\s$|^#/.test(guarded);
  return needsQuotes ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}

/** What stood in a cell before it was made safe. */
export function withoutGuard(cell: string): string {
  return /^'+[=+\-@\t\r]/.test(cell) ? cell.slice(1) : cell;
}
