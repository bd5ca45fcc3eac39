/**
 * A survey as a table: distances and heights, or latitudes, longitudes and heights, as spreadsheets save them.
 *
 * Commas, semicolons or tabs between the cells, points or commas in the numbers. Units stand in the head, `distance (m)`, or
 * in each cell; a number with neither is a problem, never a guess.
 */
import {
  bareNumberMessage,
  type Purpose,
  purposeRow,
  quoted,
  readQuantity,
} from '@fallwright/units';
import { type CsvRow, csvRows } from '../csv-table.ts';
import type { Problem } from '../problem.ts';
import { decimal } from './decimal.ts';
import { isHeightOnEarth, placeFault, placesLine } from './places-line.ts';
import {
  MOST_SURVEY_POINTS,
  notASurvey,
  ProblemList,
  refusal,
  type SurveyedPlace,
  type SurveyRead,
} from './survey-file.ts';

type ColumnKind = 'distance' | 'height' | 'latitude' | 'longitude';

const COLUMN_NAMES: Readonly<Record<ColumnKind, readonly string[]>> = {
  distance: ['distance', 'dist', 'chainage', 'station', 'along', 'at', 'length'],
  height: ['height', 'elevation', 'elev', 'ele', 'level', 'altitude', 'alt', 'z'],
  latitude: ['latitude', 'lat'],
  longitude: ['longitude', 'long', 'lon', 'lng'],
};

/** Judgement: a row of a survey is some 100 letters; a longer one has lost its end. */
const LONGEST_ROW = 10_000;

const FIRST_LINE =
  'The first line names the columns: distance (m), height (m), or lat, lon, height (m).';

interface Column {
  readonly kind: ColumnKind;
  readonly index: number;
  readonly called: string;
  /** Unit written in the head. */
  readonly unit?: string;
}

const SURVEY_WORDS = { called: 'survey', row: 'point', longest: LONGEST_ROW };

/** The line in a CSV text. Never throws on what a file holds. */
export function readProfileCsv(text: string): SurveyRead {
  const notText = notASurvey(text);
  if (notText !== undefined) return refusal(notText);
  const table = csvRows(text, SURVEY_WORDS);
  if ('message' in table) return refusal(table.message, 'unreadable', table.line);
  const [head, ...rows] = table;
  if (!head) return refusal(`This file holds no lines but notes. ${FIRST_LINE}`, 'missing');
  if (rows.length > MOST_SURVEY_POINTS) {
    return refusal(
      `This file holds more than ${MOST_SURVEY_POINTS.toLocaleString('en')} rows. Save the part that is wanted as a file of its own.`,
      'outOfRange',
    );
  }
  const columns = columnsOf(head);
  if (!columns.ok) return { ok: false, problems: [columns.problem] };
  const numbers = plainNumbers(rows);
  const problems = new ProblemList();
  const { find, ignored } = columns;
  const distance = find('distance');
  const height = find('height');
  const latitude = find('latitude');
  const longitude = find('longitude');
  const read = new CellReader(problems, numbers);
  if (distance && height) return tableOfDistances(rows, { distance, height }, read, ignored);
  if (latitude && longitude) {
    return tableOfPlaces(rows, { latitude, longitude, height }, read, ignored);
  }
  return refusal(
    `The columns ${head.cells.map((cell) => quoted(cell.trim())).join(', ')} are not enough for a profile. ${FIRST_LINE}`,
    'missing',
    head.line,
  );
}

type Columns =
  | {
      readonly ok: true;
      readonly find: (kind: ColumnKind) => Column | undefined;
      readonly ignored: readonly Problem[];
    }
  | { readonly ok: false; readonly problem: Problem };

function columnsOf({ cells, line }: CsvRow): Columns {
  const problem = (message: string): Columns => ({
    ok: false,
    problem: { kind: 'wrongForm', field: '', line, message },
  });
  if (cells.every((cell) => cell === '' || /^[+−-]?[\d.,]/.test(cell))) {
    return problem(`The first line holds numbers and no names. ${FIRST_LINE}`);
  }
  const found: Column[] = [];
  const unknown: string[] = [];
  for (const [index, cell] of cells.entries()) {
    const column = columnOf(cell, index);
    if (!column) {
      if (cell !== '') unknown.push(quoted(cell));
      continue;
    }
    const other = found.find(({ kind }) => kind === column.kind);
    if (other) {
      return problem(
        `Both ${quoted(other.called)} and ${quoted(cell)} can be the ${column.kind}. Keep one of the two columns.`,
      );
    }
    found.push(column);
  }
  const message = `These columns are not used: ${unknown.join(', ')}.`;
  return {
    ok: true,
    find: (kind) => found.find((column) => column.kind === kind),
    ignored: unknown.length === 0 ? [] : [{ kind: 'unusual', field: '', line, message }],
  };
}

function columnOf(cell: string, index: number): Column | undefined {
  const [, name = '', unit] = /^([^([]*?)\s*(?:[([]\s*([^)\]]*?)\s*[)\]])?$/.exec(cell) ?? [];
  const plain = name
    .toLowerCase()
    .replace(/[_\s]+/g, ' ')
    .trim();
  const words = plain.split(' ');
  for (const [kind, names] of Object.entries(COLUMN_NAMES) as [ColumnKind, readonly string[]][]) {
    if (names.includes(plain)) {
      return { kind, index, called: cell, ...(unit ? { unit } : {}) };
    }
    // `distance m` and `height_ft` say their unit without brackets.
    const last = words.at(-1);
    if (!unit && words.length === 2 && names.includes(words[0] ?? '') && last) {
      return { kind, index, called: cell, unit: last };
    }
  }
  return undefined;
}

/**
 * Whether commas in this file are decimal ones. Decided for the whole file, since 1,250 alone may be either: where no
 * number has a point, they are; where a number has both signs, its last one is the decimal one.
 */
function plainNumbers(rows: readonly CsvRow[]): (cell: string) => string {
  let hasPoint = false;
  let last: '.' | ',' | undefined;
  for (const { cells } of rows) {
    for (const cell of cells) {
      if (!/^[+−-]?\s*[\d.,]/.test(cell)) continue;
      if (cell.includes('.')) hasPoint = true;
      if (cell.includes('.') && cell.includes(',')) {
        last = cell.lastIndexOf('.') > cell.lastIndexOf(',') ? '.' : ',';
      }
    }
  }
  const decimalSign = last ?? (hasPoint ? '.' : ',');
  const other = decimalSign === '.' ? ',' : '.';
  const grouped = new RegExp(`(\\d)\\${other}(?=\\d{3}(?!\\d))`, 'g');
  return (cell) => cell.replaceAll(grouped, '$1').replace(/(\d|^|[+−-]),(?=\d)/g, '$1.');
}

class CellReader {
  readonly problems: ProblemList;
  readonly #plain: (cell: string) => string;
  readonly #factors = new Map<string, number>();
  /** Widest ± beside a height. */
  spread: number | undefined;

  constructor(problems: ProblemList, plain: (cell: string) => string) {
    this.problems = problems;
    this.#plain = plain;
  }

  /** A length in metres; undefined when the cell is empty or wrong, which is then a problem. */
  length(
    { cells, line }: CsvRow,
    column: Column,
    purpose: Purpose,
    { mayBeEmpty = false }: { readonly mayBeEmpty?: boolean } = {},
  ): number | undefined {
    const written = cells[column.index] ?? '';
    const field = column.called;
    if (written === '') {
      if (!mayBeEmpty) {
        this.problems.add(
          'missing',
          field,
          line,
          `Nothing stands under ${quoted(field)} in this row. Fill it in, or take the row out.`,
        );
      }
      return undefined;
    }
    const text = this.#plain(written);
    const bare = decimal(text.replace(/^[−–]/, '-'));
    const unit = column.unit ?? (isGpxHeight(column) ? 'm' : undefined);
    if (bare !== undefined && unit === undefined) {
      this.problems.add(
        'noUnit',
        field,
        line,
        `${bareNumberMessage(written, bare, purposeRow(purpose))} Or name the unit in the first line: ${field} (m).`,
      );
      return undefined;
    }
    // In a table of 20,000 points nearly every cell is a plain number under a unit, which is the same for all.
    const factor = bare !== undefined && bare >= 0 ? this.#factorOf(unit, purpose) : undefined;
    if (bare !== undefined && factor !== undefined) return bare * factor;
    const read = readQuantity(bare === undefined ? text : `${text} ${unit}`, purpose, field);
    if (!read.ok) {
      const message = read.problems.map((problem) => problem.message).join(' ');
      this.problems.add('wrongForm', field, line, message);
      return undefined;
    }
    if (read.value.spread !== undefined && column.kind === 'height') {
      this.spread = Math.max(this.spread ?? 0, read.value.spread);
    }
    return read.value.value;
  }

  #factorOf(unit = '', purpose: Purpose): number | undefined {
    const known = this.#factors.get(unit);
    if (known !== undefined) return known;
    const one = readQuantity(`1 ${unit}`, purpose);
    if (one.ok) this.#factors.set(unit, one.value.value);
    return one.ok ? one.value.value : undefined;
  }

  degrees({ cells }: CsvRow, column: Column): number | undefined {
    return decimal(
      this.#plain(cells[column.index] ?? '')
        .replace(/^[−–]/, '-')
        .replace(/\s*°$/, ''),
    );
  }
}

/** GPX's own word for height is in metres by its definition, so nothing is guessed for a bare `ele`. */
function isGpxHeight({ called }: Column): boolean {
  return called.toLowerCase() === 'ele';
}

function tableOfDistances(
  rows: readonly CsvRow[],
  { distance, height }: { readonly distance: Column; readonly height: Column },
  read: CellReader,
  notices: readonly Problem[],
): SurveyRead {
  const { problems } = read;
  const profile: { readonly distance: number; readonly elevation: number }[] = [];
  for (const row of rows) {
    const at = read.length(row, distance, 'pipeLength');
    const elevation = read.length(row, height, 'elevation');
    const last = profile.at(-1);
    if (at === undefined || elevation === undefined) continue;
    if (last && !(at > last.distance)) {
      problems.add(
        'contradiction',
        distance.called,
        row.line,
        'The distance does not grow from the row above. Put the points in order along the line, each place once.',
      );
      continue;
    }
    profile.push({ distance: at, elevation });
  }
  if (!problems.isEmpty) return { ok: false, problems: problems.all() };
  if (profile.length < 2) return tooFew();
  const length = (profile.at(-1)?.distance ?? 0) - (profile[0]?.distance ?? 0);
  const spread = read.spread === undefined ? {} : { heightSpread: read.spread };
  const line = { kind: 'table', name: 'table', profile, length, ...spread } as const;
  return { ok: true, value: { lines: [line], notices } };
}

function tableOfPlaces(
  rows: readonly CsvRow[],
  columns: {
    readonly latitude: Column;
    readonly longitude: Column;
    readonly height: Column | undefined;
  },
  read: CellReader,
  notices: readonly Problem[],
): SurveyRead {
  const { problems } = read;
  const places: SurveyedPlace[] = [];
  for (const row of rows) {
    const latitude = read.degrees(row, columns.latitude);
    const longitude = read.degrees(row, columns.longitude);
    const height = columns.height
      ? read.length(row, columns.height, 'elevation', { mayBeEmpty: true })
      : undefined;
    const fault = placeFault(latitude, longitude);
    if (fault !== undefined || latitude === undefined || longitude === undefined) {
      problems.add('wrongForm', '', row.line, fault ?? '');
      continue;
    }
    const known = height !== undefined && isHeightOnEarth(height);
    places.push({ latitude, longitude, line: row.line, ...(known ? { height } : {}) });
  }
  if (!problems.isEmpty) return { ok: false, problems: problems.all() };
  if (places.length < 2) return tooFew();
  const spread = read.spread === undefined ? {} : { heightSpread: read.spread };
  const line = { ...placesLine('table of places', 'table of places', [places]), ...spread };
  return { ok: true, value: { lines: [line], notices } };
}

function tooFew(): SurveyRead {
  return refusal(
    'There are fewer than two points, and a line needs two. Write one for each end at least.',
    'missing',
  );
}
