/** A CSV text as rows of cells, each with its line: commas, semicolons or tabs between the cells, as spreadsheets save them. */
import { CsvError, parse } from 'csv-parse/browser/esm/sync';

export interface CsvRow {
  readonly line: number;
  readonly cells: readonly string[];
}

export interface CsvWords {
  /** What the file is, for messages: `survey`. */
  readonly called: string;
  /** What stands in each row: `point`. */
  readonly row: string;
  /** Letters of the longest row. */
  readonly longest: number;
}

/** All rows but empty ones and notes behind `#`, or why there are none and in which line. */
export function csvRows(
  text: string,
  { called, row, longest }: CsvWords,
): readonly CsvRow[] | { readonly message: string; readonly line: number } {
  const firstLine =
    text
      .replace(/^\ufeff/, '')
      .split(/\r\n|\r|\n/)
      .find((line) => line.trim() !== '' && !line.startsWith('#')) ?? '';
  const delimiter = ['\t', ';'].find((sign) => firstLine.includes(sign)) ?? ',';
  try {
    const records = parse(text, {
      bom: true,
      delimiter,
      comment: '#',
      comment_no_infix: true,
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      skip_records_with_empty_values: true,
      trim: true,
      max_record_size: longest,
    }) as unknown as readonly { readonly record: string[]; readonly info: { lines: number } }[];
    return records.map(({ record, info }) => ({ line: info.lines, cells: record }));
  } catch (cause) {
    if (!(cause instanceof CsvError)) throw cause;
    const { lines } = cause as CsvError & { readonly lines?: number };
    return { message: csvFault(cause.code, { called, row, longest }), line: lines ?? 1 };
  }
}

function csvFault(code: string, { called, row }: CsvWords): string {
  switch (code) {
    case 'CSV_QUOTE_NOT_CLOSED':
      return 'A quotation mark is opened and never closed. Close it, or take it out.';
    case 'INVALID_OPENING_QUOTE':
    case 'CSV_INVALID_CLOSING_QUOTE':
    case 'CSV_NON_TRIMABLE_CHAR_AFTER_CLOSING_QUOTE':
      return 'A quotation mark stands inside a cell here. Take it out; for feet and inches write ft and in.';
    case 'CSV_MAX_RECORD_SIZE':
      return `This row is longer than any row of a ${called}. Is it the right file, and is each ${row} on a line of its own?`;
    default:
      return `This cannot be read as a table. Save the ${called} as CSV, one ${row} on each line.`;
  }
}
