import {
  darcyFriction,
  finalVelocity,
  frictionHeadLoss,
  type Pipe,
  waterAt,
} from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import type { TableRow } from '../read-table.ts';
import { type Ours, rowsOf } from './table-rows.ts';

/** Worked pipe problems. The wall plays no part, so any will do. */
export function rows(): readonly CheckRow[] {
  return rowsOf('pipe_flow_examples', oursFor);
}

/** Head and friction factor of the two gravity examples, which the table has in its notes. */
const GRAVITY_LINES: Readonly<
  Record<string, { head: number; darcyFriction: number; loss: number }>
> = {
  // The velocity head at the outlet counts; there is no entrance loss.
  'PF-02-V': { head: 10, darcyFriction: 0.004, loss: 1 },
  'PF-06-V': { head: 20, darcyFriction: 0.02, loss: 0.2 },
};

function oursFor(row: TableRow): Ours {
  const length = row.number('length_m');
  const innerDiameter = row.number('diameter_m');
  const gravityLine = GRAVITY_LINES[row.text('id')];
  if (gravityLine) {
    const { loss, ...line } = gravityLine;
    return { ours: () => finalVelocity({ ...line, length, innerDiameter, lossCoefficient: loss }) };
  }
  const pipe: Pipe = {
    name: row.text('id'),
    material: 'steel',
    innerDiameter,
    wallThickness: 0.1 * innerDiameter,
    roughness: row.number('roughness_m'),
  };
  const flow = row.number('flow_m3s');
  const kinematicViscosity = row.number('kin_viscosity_m2s');
  if (row.text('quantity') === 'head_loss') {
    const water = { ...waterAt({ temperature: 20, altitude: 0 }), kinematicViscosity };
    return { ours: () => frictionHeadLoss({ pipe, water, length, flow }) };
  }
  const reynolds = (4 * flow) / (Math.PI * innerDiameter * kinematicViscosity);
  return { ours: () => darcyFriction(reynolds, pipe.roughness / innerDiameter) };
}
