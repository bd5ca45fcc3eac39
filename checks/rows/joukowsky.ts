import { GRAVITY, joukowskyHead, joukowskyPressure } from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import type { TableRow } from '../read-table.ts';
import { type Ours, rowsOf } from './table-rows.ts';

/** Surge of a sudden stop: worked examples and arithmetic. */
export function rows(): readonly CheckRow[] {
  return rowsOf('joukowsky', oursFor).map((row) => {
    if (row.id !== 'JK-CALC-1') return row;
    // 998.2 × 1398 is 1395483.6: the table prints whole pascals under a tolerance of 10⁻⁹.
    return {
      ...row,
      toleranceRelative: 0.5 / row.published,
      note: 'tolerance is the rounding to whole pascals, not the 1e-9 of the table',
    };
  });
}

function oursFor(row: TableRow): Ours {
  const waveSpeed = row.number('wave_speed_ms');
  const velocityChange = row.number('velocity_change_ms');
  if (row.text('quantity') === 'pressure_rise') {
    const density = row.number('density_kgm3');
    return { ours: () => joukowskyPressure({ density, waveSpeed, velocityChange }) };
  }
  // The examples were worked with their own acceleration of free fall.
  const sourceGravity = row.number('gravity_ms2');
  return { ours: () => (joukowskyHead(waveSpeed, velocityChange) * GRAVITY) / sourceGravity };
}
