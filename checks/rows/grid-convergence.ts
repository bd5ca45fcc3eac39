/** What a finer grid and a finer clock change: of a line alone, of a ram that runs well, of a ram at its limit. */
import { type OperatingPoint, operatingPoint } from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import { QUOTED, typicalPlace } from '../places.ts';
import { readTable, type TableRow } from '../read-table.ts';
import { headOnGrid } from './surge-moc-friction.ts';
import { identity, type Ours, withOurs } from './table-rows.ts';

/** Grids of the picture; the rows take some of them. */
export const GRIDS = [4, 8, 16, 32, 64, 128] as const;
const FINEST = 128;
/** Substeps of the pressure check. */
const FINE_CLOCK = 160;

const points = new Map<string, OperatingPoint>();

/** A DN20 at 2 m to 12 m on a grid; on the tool's own clock when none is given. */
export function pointOnGrid(reaches: number, substeps?: number): OperatingPoint {
  const key = `${reaches} ${substeps}`;
  let point = points.get(key);
  if (!point) {
    const place = typicalPlace({ size: 'DN20', fall: 2, lift: 12 });
    point = operatingPoint(place, {
      ...QUOTED,
      reaches,
      ...(substeps === undefined ? {} : { substeps }),
    });
    points.set(key, point);
  }
  return point;
}

/** The line of MOC-1, whose head the table gives for an infinitely fine grid. */
function line(): TableRow {
  const found = readTable('hydraulics/surge_moc_friction').find(
    (row) => row.text('id') === 'MOC-1-HEAD-AT-VALVE-AT-17L-OVER-A',
  );
  if (!found) throw new Error('the table of surges with friction has lost a row');
  return found;
}

/** Error of the head at the end of that line, 17 trips after the stop. */
export function lineError(reaches: number): number {
  const row = line();
  return headOnGrid(row, 17, 0, reaches) - row.number('value');
}

const NUMBERS: Readonly<Record<string, () => number>> = {
  'GC-LINE-ORDER': () => lineError(128) / lineError(256),
  'GC-DELIVERED-4': () => pointOnGrid(4).deliveryFlow / pointOnGrid(FINEST).deliveryFlow,
  'GC-DELIVERED-8': () => pointOnGrid(8).deliveryFlow / pointOnGrid(FINEST).deliveryFlow,
  'GC-DELIVERED-32': () => pointOnGrid(32).deliveryFlow / pointOnGrid(FINEST).deliveryFlow,
  'GC-BEATS-8': () => pointOnGrid(8).beatFrequency / pointOnGrid(FINEST).beatFrequency,
  'GC-PEAK-CHECK': () =>
    pointOnGrid(32, FINE_CLOCK).peakHead / pointOnGrid(FINEST, FINE_CLOCK).peakHead,
  'GC-PEAK-CHOOSING': () => pointOnGrid(8).peakHead / pointOnGrid(FINEST, FINE_CLOCK).peakHead,
  'GC-LIMIT': () => {
    const place = typicalPlace({ size: 'DN50', fall: 2, lift: 36 });
    const fine = operatingPoint(place, { ...QUOTED, reaches: 32, substeps: FINE_CLOCK });
    return operatingPoint(place, QUOTED).daubuissonEfficiency - fine.daubuissonEfficiency;
  },
};

export function rows(): readonly CheckRow[] {
  return readTable('ram/grid_convergence').map((row) => {
    const same = identity('grid_convergence', row);
    const [low, high] = [row.number('low'), row.number('high')];
    const number = NUMBERS[same.id];
    const ours: Ours = number ? { ours: number } : { skip: 'nothing of ours answers to it' };
    return {
      ...same,
      quantity: `${row.text('statement')}: ${row.text('quantity')}`,
      unit: row.text('unit'),
      published: (low + high) / 2,
      low,
      high,
      ...withOurs(ours),
    };
  });
}
