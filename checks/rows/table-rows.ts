/** What the rows of nearly every table share: id, source, how it is known, the published value and its tolerance. */
import type { KnownBy } from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import { readTable, type TableRow } from '../read-table.ts';

/** What a table's own file adds to a row: our number, or why there is none. */
export type Ours = { readonly ours: () => number } | { readonly skip: string };

/** One check for each row of a table that has the columns `quantity`, `value`, `unit` and `tolerance_rel`. */
export function rowsOf(
  table: string,
  oursFor: (row: TableRow) => Ours,
  isWanted: (row: TableRow) => boolean = () => true,
): readonly CheckRow[] {
  return readTable(`hydraulics/${table}`)
    .filter(isWanted)
    .map((row) => ({
      ...identity(table, row),
      quantity: row.text('quantity'),
      unit: row.text('unit'),
      published: row.number('value'),
      toleranceRelative: row.number('tolerance_rel'),
      ...withOurs(oursFor(row)),
    }));
}

/** Id, table, source, note and how the row is known. */
export function identity(
  table: string,
  row: TableRow,
): Pick<CheckRow, 'id' | 'table' | 'source' | 'knownBy'> & { readonly note?: string } {
  const note = row.text('note');
  return {
    id: row.text('id'),
    table,
    source: row.text('source_id'),
    knownBy: knownBy(row),
    ...(note === '' ? {} : { note }),
  };
}

/** A row's own number, or a stand-in that must not be called because the row is skipped. */
export function withOurs(ours: Ours): Pick<CheckRow, 'ours'> & { readonly skip?: string } {
  if ('ours' in ours) return ours;
  return {
    skip: ours.skip,
    ours: () => {
      throw new Error(`this row is skipped: ${ours.skip}`);
    },
  };
}

function knownBy(row: TableRow): KnownBy {
  const word = row.text('known_by');
  if (word === 'seen' || word === 'computed' || word === 'memory' || word === 'common practice') {
    return word;
  }
  throw new RangeError(`${row.text('id')}: known_by must be one of the four words, got "${word}"`);
}

/** Half of the last digit that a table prints: `26.64` gives 0.005. */
export function halfLastDigit(printed: string): number {
  const decimals = printed.split('.')[1]?.length ?? 0;
  // A hair more, as the difference of two rounded numbers can end just past the half.
  return 0.500001 * 10 ** -decimals;
}
