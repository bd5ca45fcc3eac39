/**
 * A price list as CSV: commas, semicolons or tabs between the cells, points or commas in the numbers, as spreadsheets save it.
 *
 * The currency stands in the head, `price (EUR)`. Every bad row is named, and the good ones are handed over beside the problems:
 * whether they do without the others is for the person to say.
 */
import type { Money } from '@fallwright/engine';
import {
  bareNumberMessage,
  type Purpose,
  purposeRow,
  quoted,
  readQuantity,
} from '@fallwright/units';
import { type CsvRow, csvRows } from '../csv-table.ts';
import { didYouMean } from '../did-you-mean.ts';
import type { Given } from '../given.ts';
import type { Problem, ProblemKind } from '../problem.ts';
import { decimal } from '../profile/decimal.ts';
import { orList } from '../site/fields.ts';
import { MATERIAL_WORDS, materialCalled } from '../site/materials.ts';
import { currencyCalled, minorDigits, moneyOf, notACurrency } from './money.ts';
import {
  KIND_WORDS,
  PIPE_USES,
  type PipeUse,
  PRICE_COLUMNS,
  type PriceColumn,
  type PriceKind,
  type PriceList,
  type PriceRow,
  type PriceUnit,
  UNIT_WORDS,
  unitsOf,
} from './price-list.ts';
import { partSize, pipeOfSize } from './price-size.ts';
import { withoutGuard } from './write-prices.ts';

export type PricesRead =
  | { readonly ok: true; readonly list: PriceList; readonly warnings: readonly Problem[] }
  | {
      readonly ok: false;
      readonly problems: readonly Problem[];
      /** The rows in which nothing is wrong; absent when the table as a whole cannot be read. */
      readonly good?: PriceList;
    };

/** Judgement: a large dealer's list of pipe and fittings is some thousand rows of 200 letters. */
export const LONGEST_PRICES = 1024 * 1024;
const MOST_ROWS = 5000;
const LONGEST_ROW = 5000;

const FIRST_LINE = 'The first line names the columns: code, kind, name, size, unit, price (EUR).';

/** Other words for our columns, kinds and units, without spaces and signs. */
const COLUMN_SYNONYMS: Readonly<Record<string, PriceColumn>> = {
  id: 'code',
  no: 'code',
  article: 'code',
  item: 'code',
  sku: 'code',
  key: 'code',
  type: 'kind',
  what: 'kind',
  description: 'name',
  text: 'name',
  dimension: 'size',
  pipe: 'size',
  bore: 'size',
  per: 'unit',
  unitofprice: 'unit',
  cost: 'price',
  unitprice: 'price',
  priceperunit: 'price',
  length: 'sold length',
  barlength: 'sold length',
  coillength: 'sold length',
  soldas: 'sold length',
  for: 'use',
  line: 'use',
  usedfor: 'use',
  capacity: 'volume',
  contents: 'volume',
  pressure: 'rating',
  pressurerating: 'rating',
  pn: 'rating',
  area: 'open area',
  holes: 'open area',
  withstands: 'holds',
  push: 'holds',
  rams: 'fits',
  ram: 'fits',
  fitsram: 'fits',
  material: 'made of',
  materials: 'made of',
  formaterial: 'made of',
  notes: 'note',
  remark: 'note',
  remarks: 'note',
  comment: 'note',
};

const KIND_SYNONYMS: Readonly<Record<string, PriceKind>> = {
  hose: 'pipe',
  tube: 'pipe',
  pipes: 'pipe',
  airvessel: 'vessel',
  airchamber: 'vessel',
  cistern: 'tank',
  digging: 'trench',
  excavation: 'trench',
  work: 'labour',
  labor: 'labour',
  transport: 'carriage',
  freight: 'carriage',
  checkvalve: 'nonReturnValve',
  coupling: 'socket',
  coupler: 'socket',
  bend: 'elbow',
  airvalve: 'vent',
  aircock: 'vent',
  adaptor: 'endFitting',
  adapter: 'endFitting',
  clip: 'hoseClip',
  base: 'footing',
};

const UNIT_SYNONYMS: Readonly<Record<string, PriceUnit>> = {
  m: 'metre',
  metre: 'metre',
  meter: 'metre',
  metres: 'metre',
  meters: 'metre',
  lfm: 'metre',
  ft: 'foot',
  foot: 'foot',
  feet: 'foot',
  each: 'each',
  ea: 'each',
  piece: 'each',
  pieces: 'each',
  pc: 'each',
  pcs: 'each',
  no: 'each',
  unit: 'each',
  h: 'hour',
  hr: 'hour',
  hour: 'hour',
  hours: 'hour',
  length: 'length',
  bar: 'length',
  coil: 'length',
  roll: 'length',
  stick: 'length',
};

const PURPOSE_OF: Readonly<Partial<Record<PriceColumn, Purpose>>> = {
  'sold length': 'pipeLength',
  volume: 'volume',
  rating: 'pressure',
  'open area': 'smallArea',
  holds: 'force',
};

interface Column {
  readonly name: PriceColumn;
  readonly index: number;
  /** As the head has it. */
  readonly called: string;
  /** What stands in brackets behind it. */
  readonly unit?: string;
}

/** The price list in a CSV text. Never throws on what a file holds. */
export function readPrices(text: string): PricesRead {
  const notAList = notAPriceList(text);
  if (notAList !== undefined) return refusal(notAList);
  const words = { called: 'price list', row: 'thing', longest: LONGEST_ROW };
  const table = csvRows(text, words);
  if ('message' in table) return refusal(table.message, 'unreadable', table.line);
  const [head, ...rows] = table;
  if (!head) return refusal(`This file holds no lines but notes. ${FIRST_LINE}`, 'missing');
  if (rows.length > MOST_ROWS) {
    const most = MOST_ROWS.toLocaleString('en');
    return refusal(
      `This list has more than ${most} rows. Save what rams need as a list of its own.`,
      'outOfRange',
    );
  }
  const columns = columnsOf(head);
  if (!columns.ok) return { ok: false, problems: [columns.problem] };
  const { found, currency, warnings } = columns;
  const reader = new RowReader(found, currency);
  const good: PriceRow[] = [];
  for (const row of rows) {
    const read = reader.read(row);
    if (read) good.push(read);
  }
  const list = { currency, rows: good };
  if (reader.problems.length > 0) return { ok: false, problems: reader.problems, good: list };
  if (good.length === 0)
    return refusal('This list has a head and no rows. Write one thing on each line.', 'missing');
  return { ok: true, list, warnings };
}

function notAPriceList(text: string): string | undefined {
  if (text.length > LONGEST_PRICES) {
    return `This file is longer than ${LONGEST_PRICES / 1024 / 1024} MB. Save what rams need as a list of its own.`;
  }
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are how a binary file shows
  if (/[\u0000-\u0008\u000e-\u001f\ufffd]/.test(text)) {
    return 'This is not a text file in UTF-8. Save the price list as CSV in UTF-8.';
  }
  if (text.replace(/^\ufeff/, '').trim() === '') return `This file is empty. ${FIRST_LINE}`;
  return undefined;
}

function refusal(message: string, kind: ProblemKind = 'unreadable', line = 1): PricesRead {
  return { ok: false, problems: [{ kind, field: '', line, message }] };
}

type Columns =
  | {
      readonly ok: true;
      readonly found: readonly Column[];
      readonly currency: string;
      readonly warnings: readonly Problem[];
    }
  | { readonly ok: false; readonly problem: Problem };

function columnsOf({ cells, line }: CsvRow): Columns {
  const fault = (message: string, kind: ProblemKind = 'wrongForm', field = ''): Columns => ({
    ok: false,
    problem: { kind, field, line, message },
  });
  const found: Column[] = [];
  const warnings: Problem[] = [];
  for (const [index, cell] of cells.entries()) {
    const called = withoutGuard(cell);
    if (called === '') continue;
    const column = columnOf(called, index);
    if (!column) {
      const near = didYouMean(called.replace(/[([].*/, ''), PRICE_COLUMNS);
      const message = `There is no column called ${quoted(called)}; it is not used. ${near === undefined ? `Known: ${PRICE_COLUMNS.join(', ')}.` : `Did you mean ${near}?`}`;
      warnings.push({ kind: 'unusual', field: called, line, message });
      continue;
    }
    const other = found.find(({ name }) => name === column.name);
    if (other) {
      return fault(
        `Both ${quoted(other.called)} and ${quoted(called)} can be the ${column.name}. Keep one of the two columns.`,
      );
    }
    found.push(column);
  }
  const price = found.find(({ name }) => name === 'price');
  if (!price || !found.some(({ name }) => name === 'kind')) {
    const names = cells
      .map((cell) => quoted(cell))
      .slice(0, 12)
      .join(', ');
    const lacks = price ? 'kind' : 'price';
    return fault(
      `The columns ${names} are not enough for a price list: the ${lacks} is missing. ${FIRST_LINE}`,
      'missing',
    );
  }
  if (price.unit === undefined) {
    return fault(
      `In which currency is ${quoted(price.called)}? Write it in the first line, like price (EUR).`,
      'noUnit',
      price.called,
    );
  }
  const currency = currencyCalled(price.unit);
  if (currency === undefined) {
    return fault(
      `${notACurrency(price.unit)} The first line names it, like price (EUR).`,
      'unknownUnit',
      price.called,
    );
  }
  return { ok: true, found, currency, warnings };
}

function columnOf(cell: string, index: number): Column | undefined {
  const [, name = '', unit] = /^([^([]*?)\s*(?:[([]\s*([^)\]]*?)\s*[)\]])?$/.exec(cell) ?? [];
  const known = columnCalled(name);
  if (known) return { name: known, index, called: cell, ...(unit ? { unit } : {}) };
  // `price EUR` and `rating_bar` say their unit without brackets.
  const words = name.split(/[_\s]+/);
  const last = words.pop();
  const shorter = unit === undefined && last ? columnCalled(words.join(' ')) : undefined;
  return shorter && last ? { name: shorter, index, called: cell, unit: last } : undefined;
}

function columnCalled(name: string): PriceColumn | undefined {
  const bare = bareLetters(name);
  return (
    PRICE_COLUMNS.find((column) => bareLetters(column) === bare) ??
    (Object.hasOwn(COLUMN_SYNONYMS, bare) ? COLUMN_SYNONYMS[bare] : undefined)
  );
}

function bareLetters(text: string): string {
  return text.toLowerCase().replace(/[^a-z0-9]/g, '');
}

function kindCalled(text: string): PriceKind | undefined {
  const bare = bareLetters(text);
  const kinds = Object.keys(KIND_WORDS) as PriceKind[];
  return (
    kinds.find((kind) => bareLetters(KIND_WORDS[kind]) === bare) ??
    (Object.hasOwn(KIND_SYNONYMS, bare) ? KIND_SYNONYMS[bare] : undefined)
  );
}

/** Reads rows one after the other, so that it knows the codes before. */
class RowReader {
  readonly problems: Problem[] = [];
  readonly #columns: readonly Column[];
  readonly #currency: string;
  readonly #codes = new Map<string, number>();

  constructor(columns: readonly Column[], currency: string) {
    this.#columns = columns;
    this.#currency = currency;
  }

  /** The row; undefined when something in it is wrong, which is then among the problems. */
  read(row: CsvRow): PriceRow | undefined {
    const before = this.problems.length;
    const kind = this.#kind(row);
    if (kind === undefined) return undefined;
    const code = this.#code(row);
    const size = this.#text(row, 'size');
    const name = this.#text(row, 'name') ?? size ?? KIND_WORDS[kind];
    const unit = this.#unit(row, kind);
    const price = this.#price(row);
    const quantities = {
      soldLength: this.#quantity(row, 'sold length'),
      volume: this.#quantity(row, 'volume'),
      rating: this.#quantity(row, 'rating'),
      openArea: this.#quantity(row, 'open area'),
      holds: this.#quantity(row, 'holds'),
    };
    const use = this.#use(row);
    const fits = listIn(this.#text(row, 'fits'), /[\s,;/]+/);
    const madeOf = this.#madeOf(row);
    const isOnePiece = this.#isOnePiece(row);
    const note = this.#text(row, 'note');
    if (kind === 'pipe') this.#checkPipe(row, name, size, quantities);
    else if (kind === 'vessel' || kind === 'tank') this.#checkVolume(row, kind, quantities.volume);
    else if (size !== undefined && partSize(size) === undefined) {
      this.#add(
        'wrongForm',
        row,
        'size',
        `${quoted(size)} is no size that a part fits. Write DN25, 1 in or 25 mm, or leave it empty for every size.`,
      );
    }
    if (unit === 'length' && this.#text(row, 'sold length') === undefined) {
      this.#add(
        'missing',
        row,
        'sold length',
        'A pipe that is priced by its bar or coil needs the length of it. Write 6 m.',
      );
    }
    if (this.problems.length > before || unit === undefined || code === undefined) return undefined;
    return defined({
      code,
      kind,
      name,
      size,
      unit,
      price: price === 'left out' ? undefined : price,
      isLeftOut: price === 'left out' ? true : undefined,
      ...quantities,
      use,
      fits,
      madeOf,
      isOnePiece,
      note,
    });
  }

  #column(name: PriceColumn): Column | undefined {
    return this.#columns.find((column) => column.name === name);
  }

  #text(row: CsvRow, name: PriceColumn): string | undefined {
    const column = this.#column(name);
    const cell = column && row.cells[column.index];
    return cell === undefined || cell === '' ? undefined : withoutGuard(cell);
  }

  #add(kind: ProblemKind, { line }: CsvRow, name: PriceColumn, message: string): void {
    this.problems.push({ kind, field: this.#column(name)?.called ?? name, line, message });
  }

  #kind(row: CsvRow): PriceKind | undefined {
    const written = this.#text(row, 'kind');
    if (written === undefined) {
      this.#add(
        'missing',
        row,
        'kind',
        `What kind of thing this is is missing. Write ${orList(Object.values(KIND_WORDS))}.`,
      );
      return undefined;
    }
    const kind = kindCalled(written);
    if (kind) return kind;
    const near = didYouMean(written, Object.values(KIND_WORDS));
    const advice =
      bareLetters(written) === 'ram'
        ? 'Rams have their prices in the range file.'
        : near === undefined
          ? `Write ${orList(Object.values(KIND_WORDS))}.`
          : `Did you mean ${near}?`;
    this.#add(
      'unknownWord',
      row,
      'kind',
      `${quoted(written)} is no kind of thing on a price list. ${advice}`,
    );
    return undefined;
  }

  #code(row: CsvRow): string | undefined {
    const code = this.#text(row, 'code') ?? `row ${row.line}`;
    const first = this.#codes.get(code);
    if (first !== undefined) {
      this.#add(
        'contradiction',
        row,
        'code',
        `The code ${quoted(code)} stands in line ${first} already. Give each row its own.`,
      );
      return undefined;
    }
    this.#codes.set(code, row.line);
    return code;
  }

  #unit(row: CsvRow, kind: PriceKind): PriceUnit | undefined {
    const allowed = unitsOf(kind);
    const usual = kind === 'pipe' ? undefined : allowed[0];
    const written = this.#text(row, 'unit');
    const choices = orList(allowed.map((unit) => UNIT_WORDS[unit]));
    if (written === undefined) {
      if (usual !== undefined) return usual;
      this.#add(
        'missing',
        row,
        'unit',
        `Of what is this the price? Write ${choices} (a bar or a coil).`,
      );
      return undefined;
    }
    const bare = bareLetters(written);
    const unit = Object.hasOwn(UNIT_SYNONYMS, bare) ? UNIT_SYNONYMS[bare] : undefined;
    if (unit && allowed.includes(unit)) return unit;
    this.#add(
      'unknownUnit',
      row,
      'unit',
      `A ${KIND_WORDS[kind]} cannot be priced by ${quoted(written)}. Write ${choices}.`,
    );
    return undefined;
  }

  #price(row: CsvRow): Money | 'left out' | undefined {
    const written = this.#text(row, 'price');
    if (written === undefined) return undefined;
    if (bareLetters(written) === 'leftout') return 'left out';
    const amount = amountIn(written, this.#currency);
    if (amount === undefined) {
      this.#add(
        'notANumber',
        row,
        'price',
        `${quoted(written)} is no price. Write a plain number like 12.50, nothing when it is not known, or: left out.`,
      );
      return undefined;
    }
    const read = moneyOf(amount, this.#currency);
    if (!read.ok) {
      this.#add('wrongForm', row, 'price', `${quoted(written)}: ${read.message}`);
      return undefined;
    }
    return read.money;
  }

  #quantity(row: CsvRow, name: PriceColumn): Given | undefined {
    const written = this.#text(row, name);
    const purpose = PURPOSE_OF[name];
    if (written === undefined || purpose === undefined) return undefined;
    const unit = this.#column(name)?.unit;
    const bare = decimal(written.replace(',', '.'));
    if (bare !== undefined && unit === undefined) {
      this.#add('noUnit', row, name, bareNumberMessage(written, bare, purposeRow(purpose)));
      return undefined;
    }
    const text = bare === undefined ? written : `${written} ${unit}`;
    const read = readQuantity(text, purpose, `the ${name}`);
    if (!read.ok) {
      this.#add('wrongForm', row, name, read.problems.map(({ message }) => message).join(' '));
      return undefined;
    }
    if (!(read.value.value > 0)) {
      this.#add('outOfRange', row, name, `The ${name} is ${text}. It must be above nought.`);
      return undefined;
    }
    return { ...read.value, origin: 'stated' };
  }

  #use(row: CsvRow): readonly PipeUse[] | undefined {
    const words = listIn(this.#text(row, 'use'), /[\s,;/+&]+/);
    const wrong = words?.find((word) => !PIPE_USES.some((use) => use === word.toLowerCase()));
    if (wrong !== undefined) {
      this.#add(
        'unknownWord',
        row,
        'use',
        `${quoted(wrong)} is no use of a pipe. Write ${PIPE_USES.join(', ')}, or several of them.`,
      );
      return undefined;
    }
    return words && PIPE_USES.filter((use) => words.some((word) => word.toLowerCase() === use));
  }

  #madeOf(row: CsvRow): readonly string[] | undefined {
    const words = listIn(this.#text(row, 'made of'), /[,;/]+/);
    const wrong = words?.find((word) => materialCalled(word) === undefined);
    if (wrong !== undefined) {
      this.#add(
        'unknownWord',
        row,
        'made of',
        `${quoted(wrong)} is no material we know. Write ${orList(MATERIAL_WORDS)}.`,
      );
    }
    return words;
  }

  #isOnePiece(row: CsvRow): true | undefined {
    const written = this.#text(row, 'one piece');
    if (written === undefined || /^(no|n|0|false)$/i.test(written)) return undefined;
    if (/^(yes|y|1|true|x)$/i.test(written)) return true;
    this.#add(
      'unknownWord',
      row,
      'one piece',
      `${quoted(written)} is neither yes nor no. Write yes when each line must be of one piece.`,
    );
    return undefined;
  }

  #checkPipe(
    row: CsvRow,
    name: string,
    size: string | undefined,
    { rating }: { readonly rating: Given | undefined },
  ): void {
    const read = pipeOfSize(size ?? name, rating);
    if (!read.ok) this.#add('unknownWord', row, size === undefined ? 'name' : 'size', read.message);
  }

  #checkVolume(row: CsvRow, kind: PriceKind, volume: Given | undefined): void {
    if (volume || this.#text(row, 'volume') !== undefined) return;
    this.#add(
      'missing',
      row,
      'volume',
      `What the ${KIND_WORDS[kind]} holds is missing. Write ${kind === 'tank' ? '1000 L' : '3 L'}.`,
    );
  }
}

/**
 * A plain amount: `12.50`, `12,5`, `1 250,00`, `1’250.-`. A single sign before exactly three digits groups thousands, unless the
 * currency has three digits behind the point.
 */
function amountIn(written: string, currency: string): number | undefined {
  const text = written
    .replace(/[\s\u00a0\u2007\u2009\u202f'’]/g, '')
    .replace(/^[−–]/, '-')
    .replace(/[.,][-–—]+$/, '')
    .replace(new RegExp(`^${currency}|${currency}$`, 'i'), '')
    .replace(/^[€£$₹¥]|[€£$₹¥]$/g, '');
  const last = Math.max(text.lastIndexOf('.'), text.lastIndexOf(','));
  if (last < 0) return decimal(text);
  const sign = text.charAt(last);
  const other = sign === '.' ? ',' : '.';
  const groups = new RegExp(`^-?[1-9]\\d{0,2}(\\${sign}\\d{3})+$`);
  const isRepeated = text.indexOf(sign) !== last;
  if (groups.test(text) && (isRepeated || minorDigits(currency) < 3)) {
    return decimal(text.replaceAll(sign, ''));
  }
  if (isRepeated) return undefined;
  const whole = text.slice(0, last);
  if (whole.includes(other) && !new RegExp(`^-?[1-9]\\d{0,2}(\\${other}\\d{3})+$`).test(whole)) {
    return undefined;
  }
  return decimal(`${whole.replaceAll(other, '')}.${text.slice(last + 1)}`);
}

function listIn(text: string | undefined, between: RegExp): readonly string[] | undefined {
  const words = (text ?? '').split(between).flatMap((word) => word.trim() || []);
  return words.length === 0 ? undefined : words;
}

type Loose<Data> = { readonly [Key in keyof Data]: Data[Key] | undefined };

/** Without what is undefined. */
function defined(row: Loose<PriceRow>): PriceRow {
  const entries = Object.entries(row).filter(([, value]) => value !== undefined);
  // What the type asks for was never undefined: `read` has seen to it.
  return Object.fromEntries(entries) as unknown as PriceRow;
}
