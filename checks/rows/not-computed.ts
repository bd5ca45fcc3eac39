import type { CheckRow } from '../check-row.ts';
import { readTable } from '../read-table.ts';
import { identity, withOurs } from './table-rows.ts';

/** Tables that are kept whole and that nothing runs yet, with the reason. */
const REASONS: Readonly<Record<string, string>> = {};

/** Rows of the tables that nothing runs, so that they stay in sight. */
export function rows(): readonly CheckRow[] {
  return Object.entries(REASONS).flatMap(([table, skip]) =>
    readTable(`hydraulics/${table}`).map((row) => ({
      ...identity(table, row),
      quantity: row.text('quantity'),
      unit: row.text('unit'),
      published: row.has('value') ? row.number('value') : Number.NaN,
      toleranceRelative: Number.NaN,
      ...withOurs({ skip }),
    })),
  );
}
