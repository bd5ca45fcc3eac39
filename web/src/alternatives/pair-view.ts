/** All that the table, the cards and the picture need to know, made once for the three of them. */
import type { System } from '@fallwright/units';
import type { Wishes } from './cells.ts';
import type { DriveRow } from './drive-rows.ts';
import type { Pair, PairResults } from './pairs.ts';
import type { RamColumn } from './ram-columns.ts';

export interface PairView {
  readonly rows: readonly DriveRow[];
  readonly columns: readonly RamColumn[];
  readonly pairs: readonly Pair[];
  readonly results: PairResults;
  readonly wishes: Wishes;
  readonly system: System;
  readonly chosen: Pair | undefined;
  readonly onChoose: (pair: Pair) => void;
  readonly onRemove: (row: DriveRow) => void;
}
