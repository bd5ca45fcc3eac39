/**
 * Handbook tables T4 (efficiency by lift over fall) and T5 (one cell of another).
 *
 * T4 does not name a ram or a line: typical rams of three sizes at three falls, on steel tube seven times the fall long (200
 * bores at least). The method asks for 0.12 up to twelve times the fall; beyond, the same tolerance shows where the model
 * and the table part.
 */
import { type OperatingPoint, operatingPoint, type TypicalSize } from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import { QUOTED, typicalPlace } from '../places.ts';
import { readTable, type TableRow } from '../read-table.ts';
import { EFFICIENCY } from './experiments.ts';
import { identity } from './table-rows.ts';

export const SIZES = ['DN20', 'DN32', 'DN50'] as const satisfies readonly TypicalSize[];
export const FALLS = [1.5, 2, 3] as const;
/** Lift over fall up to which the method asks for agreement. */
export const ASKED_RATIO = 12;

const points = new Map<string, OperatingPoint>();

/** A typical ram at a fall and a lift of so many falls. */
export function pointAtRatio(size: TypicalSize, fall: number, ratio: number): OperatingPoint {
  const key = `${size} ${fall} ${ratio}`;
  let point = points.get(key);
  if (!point) {
    point = operatingPoint(typicalPlace({ size, fall, lift: ratio * fall }), QUOTED);
    points.set(key, point);
  }
  return point;
}

export function rows(): readonly CheckRow[] {
  return readTable('ram/handbook_tables').flatMap((row) => {
    if (row.text('table_id') === 'T4') {
      return SIZES.flatMap((size) => FALLS.map((fall) => ratioRow(row, size, fall)));
    }
    return row.text('table_id') === 'T5' ? [singleCell(row)] : [];
  });
}

function ratioRow(row: TableRow, size: (typeof SIZES)[number], fall: number): CheckRow {
  const same = identity('handbook_tables', row);
  const ratio = row.number('var1_value');
  return {
    ...same,
    id: `${same.id}/${size} ${fall} m`,
    series: `T4 efficiency, lift/fall ${ratio <= ASKED_RATIO ? 'to' : 'beyond'} ${ASKED_RATIO}`,
    quantity: `efficiency at lift/fall ${ratio}, ${size} at ${fall} m`,
    unit: '-',
    published: row.number('output_low'),
    ...EFFICIENCY,
    ours: () => pointAtRatio(size, fall, ratio).daubuissonEfficiency,
  };
}

/** T5 prints a share of the water; its efficiency is that share times lift over fall. */
function singleCell(row: TableRow): CheckRow {
  const [fall, lift] = [row.number('var1_value'), row.number('var2_value')];
  return {
    ...identity('handbook_tables', row),
    series: 'T5 one cell',
    quantity: `efficiency at ${fall} m to ${lift} m, DN32`,
    unit: '-',
    published: row.number('implied_efficiency'),
    ...EFFICIENCY,
    ours: () => pointAtRatio('DN32', fall, lift / fall).daubuissonEfficiency,
  };
}
