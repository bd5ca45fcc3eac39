/** Head loss per length: the older formula, and the friction by which a choice compares delivery pipes. */
import {
  deliveryPipeRows,
  findPipe,
  hazenWilliamsGradient,
  type Pipe,
  waterAt,
} from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import { readTable, type TableRow } from '../read-table.ts';
import { identity, rowsOf, withOurs } from './table-rows.ts';

export function rows(): readonly CheckRow[] {
  const formula = rowsOf('hazen_williams', (row) => ({
    ours: () =>
      hazenWilliamsGradient({
        innerDiameter: row.number('bore_m'),
        coefficient: row.number('hazen_c'),
        flow: row.number('flow_m3s'),
      }),
  }));
  return [...formula, ...readTable('hydraulics/hazen_williams').flatMap(printedRow)];
}

/**
 * Where the older formula is held to be good: water mains of 50 mm and more at about 1 m/s (memory). Slower water in narrower pipe is
 * nearer to smooth flow, whose friction the formula puts too low by up to a quarter.
 */
const LEAST_BORE = 0.05;
const LEAST_SPEED = 1;

/** Long, so that the velocity head at the tank is nothing beside the friction. */
const LENGTH = 1000;

/** A printed loss against Darcy's friction of the same pipe, as `deliveryPipeRows` tells it. */
function printedRow(row: TableRow): CheckRow[] {
  if (row.text('known_by') !== 'seen') return [];
  const found = findPipe('PVC sch 40 1 in');
  if (!found.ok) throw new Error('the PVC pipe is not in the tables');
  const innerDiameter = row.number('bore_m');
  const pipe = { ...found.pipe, innerDiameter };
  const speed = row.number('flow_m3s') / ((Math.PI / 4) * innerDiameter ** 2);
  const isInRange = innerDiameter >= LEAST_BORE || speed >= LEAST_SPEED;
  return [
    {
      ...identity('hazen_williams', row),
      id: `${row.text('id')}/delivery`,
      quantity: 'head_loss_gradient of a delivery pipe, by Darcy',
      unit: row.text('unit'),
      published: row.number('value'),
      // Printed by the formula: within its range Darcy's friction of smooth pipe parts from it by several per cent.
      toleranceRelative: 0.1,
      ...withOurs(
        isInRange
          ? { ours: () => gradient(pipe, row.number('flow_m3s')) }
          : { skip: 'narrow pipe and slow water: there the older formula reads too low' },
      ),
    },
  ];
}

function gradient(pipe: Pipe, flow: number): number {
  const [ours] = deliveryPipeRows({
    pipes: [{ key: 'pvc', name: 'PVC', pipe }],
    length: LENGTH,
    lift: 10,
    flow,
    // 60 °F, for which such tables are made.
    water: waterAt({ temperature: 15.6, altitude: 0 }),
  });
  return (ours?.frictionHead ?? Number.NaN) / LENGTH;
}
