import { atmosphericPressure, pressureAtGeopotentialHeight } from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import { readTable } from '../read-table.ts';
import { identity } from './table-rows.ts';

/** Standard pressure of the air by geometric and by geopotential height. */
export function rows(): readonly CheckRow[] {
  return readTable('hydraulics/atmosphere').map((row) => {
    const isGeometric = row.text('altitude_kind') === 'geometric';
    const pressure = isGeometric ? atmosphericPressure : pressureAtGeopotentialHeight;
    return {
      ...identity('atmosphere', row),
      quantity: 'atmospheric_pressure',
      unit: row.text('unit'),
      published: row.number('value'),
      toleranceRelative: row.number('tolerance_rel'),
      ours: () => pressure(row.number('altitude_m')),
    };
  });
}
