/** Reading the tables under `data`: comma-separated, one header row, quotes where a cell holds a comma. */
import { readdirSync, readFileSync } from 'node:fs';

/** A row of a table by column. */
export class TableRow {
  readonly #cells: ReadonlyMap<string, string>;
  readonly #where: string;

  constructor(cells: ReadonlyMap<string, string>, where: string) {
    this.#cells = cells;
    this.#where = where;
  }

  /** The cell as text; empty when nothing stands there. */
  text(column: string): string {
    const cell = this.#cells.get(column);
    if (cell === undefined) throw new RangeError(`${this.#where}: no column ${column}`);
    return cell;
  }

  /** The cell as a number. */
  number(column: string): number {
    const cell = this.text(column);
    const value = Number(cell);
    if (cell === '' || Number.isNaN(value)) {
      throw new RangeError(`${this.#where}: ${column} must be a number, got "${cell}"`);
    }
    return value;
  }

  has(column: string): boolean {
    return (this.#cells.get(column) ?? '') !== '';
  }
}

const DATA = new URL('./data/', import.meta.url);

/** The rows of a table, named as under `data`: `hydraulics/joukowsky`. */
export function readTable(name: string): readonly TableRow[] {
  const [header = [], ...rows] = parseCsv(readFileSync(new URL(`${name}.csv`, DATA), 'utf8'));
  return rows.map((cells, i) => {
    if (cells.length !== header.length) {
      throw new RangeError(
        `${name}, row ${i + 1}: ${cells.length} cells under ${header.length} columns`,
      );
    }
    return new TableRow(
      new Map(header.map((column, c) => [column, cells[c] ?? ''])),
      `${name}, row ${i + 1}`,
    );
  });
}

/** Names of the tables in a folder of `data`, without `.csv`. */
export function tableNames(folder: string): readonly string[] {
  return readdirSync(new URL(`${folder}/`, DATA))
    .filter((file) => file.endsWith('.csv'))
    .map((file) => file.slice(0, -'.csv'.length))
    .sort();
}

/** Cells of a comma-separated text, line by line. */
export function parseCsv(text: string): readonly (readonly string[])[] {
  const lines: string[][] = [[]];
  for (const [, quoted, plain, end] of text.matchAll(
    /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r?\n|$)/g,
  )) {
    lines.at(-1)?.push(quoted?.replaceAll('""', '"') ?? plain ?? '');
    if (end !== ',') lines.push([]);
  }
  return lines.filter((cells) => cells.length > 1 || (cells[0] ?? '') !== '');
}
