/** A line with constant Darcy friction, stopped at once: heads at its end as the waves come back. */
import { LineSurge } from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import { lineOfSpeed } from '../line-of-speed.ts';
import { readTable, type TableRow } from '../read-table.ts';
import { identity, withOurs } from './table-rows.ts';

/**
 * The table's heads are extrapolated to an infinitely fine grid, so ours are too: friction lumped at the nodes makes an error
 * that halves with each doubling (the grid convergence in the validation page shows it).
 */
const COARSE = 128;

/** Steps after the stop at which each head is read, in returns L/a; one step less where it says "just before". */
const MOMENTS: Readonly<Record<string, { readonly trips: number; readonly stepsBefore: number }>> =
  {
    head_at_valve_just_after_closure: { trips: 0, stepsBefore: 0 },
    head_at_valve_just_before_2L_over_a: { trips: 2, stepsBefore: 1 },
    head_at_valve_at_3L_over_a: { trips: 3, stepsBefore: 0 },
    head_at_valve_at_5L_over_a: { trips: 5, stepsBefore: 0 },
    head_at_valve_at_17L_over_a: { trips: 17, stepsBefore: 0 },
  };

export function rows(): readonly CheckRow[] {
  return readTable('hydraulics/surge_moc_friction').map((row) => {
    const moment = MOMENTS[row.text('quantity')];
    return {
      ...identity('surge_moc_friction', row),
      quantity: row.text('quantity'),
      unit: row.text('unit'),
      published: row.number('value'),
      toleranceAbsolute: row.number('tolerance_abs'),
      ...withOurs(
        moment === undefined
          ? { skip: `nothing of ours answers to ${row.text('quantity')}` }
          : { ours: () => headAfter(row, moment.trips, moment.stepsBefore) },
      ),
    };
  });
}

function headAfter(row: TableRow, trips: number, stepsBefore: number): number {
  return (
    2 * headOnGrid(row, trips, stepsBefore, 2 * COARSE) -
    headOnGrid(row, trips, stepsBefore, COARSE)
  );
}

/** Head at the end on one grid, a number of trips L/a after the stop. */
export function headOnGrid(
  row: TableRow,
  trips: number,
  stepsBefore: number,
  reaches: number,
): number {
  const line = stoppedLine(row, reaches);
  const steps = trips * reaches - stepsBefore + 1;
  for (let i = 0; i < steps; i++) line.advance();
  return line.headAtEnd;
}

/** The line of a row, stopped at once. */
function stoppedLine(row: TableRow, reaches: number): LineSurge {
  const innerDiameter = row.number('diameter_m');
  const darcy = row.number('darcy_f');
  return new LineSurge({
    ...lineOfSpeed({
      length: row.number('length_m'),
      innerDiameter,
      waveSpeed: row.number('wave_speed_ms'),
    }),
    fall: row.number('reservoir_head_m'),
    end: { kind: 'flow', flowAt: () => 0 },
    initialFlow: row.number('initial_velocity_ms') * (Math.PI / 4) * innerDiameter ** 2,
    reaches,
    friction: () => darcy,
  });
}
