import { finalVelocity, growthTime, timeToVelocity, velocityAfter } from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import type { TableRow } from '../read-table.ts';
import { type Ours, rowsOf } from './table-rows.ts';

/** How the flow grows in a pipe that is opened: final velocity, time constant, times to a share of it. */
export function rows(): readonly CheckRow[] {
  return rowsOf('rigid_column', oursFor);
}

function oursFor(row: TableRow): Ours {
  const [head, length] = [row.number('head_m'), row.number('length_m')];
  const final = finalVelocity({
    head,
    length,
    innerDiameter: row.number('diameter_m'),
    darcyFriction: row.number('darcy_f'),
    lossCoefficient: row.number('minor_K_total'),
  });
  const column = {
    growthTime: growthTime({ head, length, finalVelocity: final }),
    finalVelocity: final,
  };
  const quantity = row.text('quantity');
  const time = /^time_to_(\d+)pct(?:_from_([\d.]+)_m\/s)?$/.exec(quantity);
  if (time) {
    const [, percent, start = '0'] = time;
    const velocity = (Number(percent) / 100) * final;
    return { ours: () => timeToVelocity({ ...column, velocity, startVelocity: Number(start) }) };
  }
  switch (quantity) {
    case 'final_velocity':
      return { ours: () => final };
    case 'time_constant_LV0_over_gH':
      return { ours: () => column.growthTime };
    case 'velocity_at_one_time_constant':
      return { ours: () => velocityAfter({ ...column, time: column.growthTime }) };
    default:
      return { skip: `nothing of ours answers to ${quantity}` };
  }
}
