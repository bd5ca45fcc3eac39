/**
 * Handbook tables T2, T3 and T7 (drive water by bore), T6 (length of the drive pipe) and T8 (rigs without results).
 *
 * The tables give ranges and name no fall. Typical rams are run at 2 m of fall and 12 m of lift; where the table's range
 * holds ours, the row is met.
 */
import { operatingPoint, TYPICAL_SIZES, type TypicalSize } from '@fallwright/engine';
import { toLitresPerMinute } from '@fallwright/units';
import type { CheckRow } from '../check-row.ts';
import { QUOTED, typicalPlace } from '../places.ts';
import { readTable, type TableRow } from '../read-table.ts';
import { pointAtRatio } from './handbook-efficiency.ts';
import { identity, withOurs } from './table-rows.ts';

const FALL = 2;
const RATIO = 6;
/** Half the step between two nominal sizes, at most. */
const NEAR = 0.004;
/** Lengths tried, in bores. */
const LENGTHS = [50, 100, 150, 250, 400, 600, 1000, 1500, 2000];

export function rows(): readonly CheckRow[] {
  return readTable('ram/handbook_tables').flatMap((row) => {
    switch (row.text('table_id')) {
      case 'T2':
      case 'T3':
      case 'T7':
        return [supplyRow(row)];
      case 'T6':
        return [lengthRow(row)];
      case 'T8':
        return [
          {
            ...base(row, 'rig', 'm'),
            ...withOurs({ skip: 'a rig without results; used for the thesis ram of experiments' }),
          },
        ];
      default:
        return [];
    }
  });
}

function base(row: TableRow, quantity: string, unit: string) {
  const [low, high] = [row.number('output_low'), row.number('output_high')];
  return {
    ...identity('handbook_tables', row),
    series: `${row.text('table_id')} ${row.text('output_name')} by ${row.text('var1_name')}`,
    quantity,
    unit,
    published: (low + high) / 2,
    low,
    high,
  };
}

/** The typical size of a bore printed in millimetres. */
function sizeOf(bore: number): TypicalSize | undefined {
  const sizes = Object.entries(TYPICAL_SIZES) as [TypicalSize, number][];
  return sizes.find(([, nominal]) => Math.abs(nominal - bore / 1000) < NEAR)?.[0];
}

function supplyRow(row: TableRow): CheckRow {
  const bore = row.number('var1_value');
  const size = sizeOf(bore);
  return {
    ...base(row, `drive water of a ${size ?? `${bore} mm`} ram`, 'L/min'),
    ...withOurs(
      size === undefined
        ? { skip: 'typical rams end at DN100' }
        : { ours: () => toLitresPerMinute(pointAtRatio(size, FALL, RATIO).supplyFlow) },
    ),
  };
}

/** The length, of those tried, at which a typical ram is most efficient. */
function lengthRow(row: TableRow): CheckRow {
  const bore = row.number('var1_value');
  const size = sizeOf(bore);
  return {
    ...base(row, `most efficient length of drive pipe, ${size ?? `${bore} mm`}`, 'm'),
    ...withOurs(
      size === undefined
        ? { skip: 'typical rams end at DN100' }
        : {
            ours: () => {
              const tried = LENGTHS.map((bores) => {
                const length = (bores * bore) / 1000;
                const place = typicalPlace({ size, fall: FALL, lift: RATIO * FALL, length });
                return { length, efficiency: operatingPoint(place, QUOTED).daubuissonEfficiency };
              });
              return tried.reduce((best, one) => (one.efficiency > best.efficiency ? one : best))
                .length;
            },
          },
    ),
  };
}
