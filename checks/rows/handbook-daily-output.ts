/**
 * Handbook table T1: litres delivered in 24 hours for each litre a minute of drive water, by fall and lift.
 *
 * The table is from memory and does not say which ram, line or tuning it speaks of, so it is an order of magnitude: a
 * third. Two sizes of typical ram are run in each cell, on steel tube six times the fall long (200 bores at least). A person
 * who sets up a ram tunes it to the place; so the valve is tried with its own weight, twice, four and eight times, and
 * the best is taken.
 */
import { operatingPoint, TYPICAL_SIZES, type TypicalSize, typicalRam } from '@fallwright/engine';
import { toLitresPerDay, toLitresPerMinute } from '@fallwright/units';
import type { CheckRow } from '../check-row.ts';
import { driveLength, QUOTED, typicalPlace } from '../places.ts';
import { readTable, type TableRow } from '../read-table.ts';
import { identity } from './table-rows.ts';

const SIZES = ['DN32', 'DN50'] as const satisfies readonly TypicalSize[];
/** Weights tried, over that of the typical valve: closing velocities of 1, 1.4, 2 and 2.8 times. */
const WEIGHTS = [1, 2, 4, 8];
/** Judgement: a third, since the table is an order of magnitude from memory. */
const TOLERANCE = 1 / 3;
const SERIES = 'T1 daily output';

interface Cell {
  /** Litres a day for each litre a minute taken. */
  readonly yield: number;
  readonly weight: number;
  /** Most energy that any of the runs gave, of what it took. */
  readonly mostEnergy: number;
}

const cells = new Map<string, Cell>();

/** The best of the four weights at a fall and lift. */
export function bestOfWeights(size: TypicalSize, fall: number, lift: number): Cell {
  const key = `${size} ${fall} ${lift}`;
  const known = cells.get(key);
  if (known) return known;
  const typical = typicalRam(size);
  const { wasteValve } = typical;
  if (wasteValve.kind !== 'weighted') throw new Error('a typical ram has a weighted valve');
  const length = driveLength(fall, TYPICAL_SIZES[size], 6);
  let best: Cell = { yield: 0, weight: 1, mostEnergy: 0 };
  let mostEnergy = 0;
  for (const weight of WEIGHTS) {
    const valve = {
      ...wasteValve,
      submergedWeight: weight * wasteValve.submergedWeight,
      movingMass: weight * wasteValve.movingMass,
    };
    const ram = { ...typical, wasteValve: valve };
    const point = operatingPoint(typicalPlace({ size, fall, lift, length, ram }), QUOTED);
    mostEnergy = Math.max(mostEnergy, point.daubuissonEfficiency);
    const given =
      point.supplyFlow > 0
        ? toLitresPerDay(point.deliveryFlow) / toLitresPerMinute(point.supplyFlow)
        : 0;
    if (given > best.yield) best = { yield: given, weight, mostEnergy };
  }
  const cell = { ...best, mostEnergy };
  cells.set(key, cell);
  return cell;
}

export function rows(): readonly CheckRow[] {
  const table = readTable('ram/handbook_tables').filter((row) => row.text('table_id') === 'T1');
  const found = table.flatMap((row) => SIZES.map((size) => cellRow(row, size)));
  return [...found, energyRow(table)];
}

function cellRow(row: TableRow, size: (typeof SIZES)[number]): CheckRow {
  const same = identity('handbook_tables', row);
  const [fall, lift] = [row.number('var1_value'), row.number('var2_value')];
  return {
    ...same,
    id: `${same.id}/${size}`,
    series: `${SERIES}, ${size}`,
    quantity: `a day for each litre a minute, ${fall} m to ${lift} m, ${size}`,
    unit: 'L',
    published: row.number('output_low'),
    toleranceRelative: TOLERANCE,
    ours: () => bestOfWeights(size, fall, lift).yield,
  };
}

/** No run of all these may give out more energy than it took. */
function energyRow(table: readonly TableRow[]): CheckRow {
  return {
    id: 'T1-ENERGY',
    table: 'handbook_tables',
    series: 'energy',
    quantity: 'most energy given out over energy taken, of all runs of the table',
    unit: '-',
    published: 1,
    low: 0,
    high: 1,
    source: 'COMMON',
    knownBy: 'common practice',
    note: 'energy is not made',
    ours: () =>
      Math.max(
        ...table.flatMap((row) =>
          SIZES.map(
            (size) =>
              bestOfWeights(size, row.number('var1_value'), row.number('var2_value')).mostEnergy,
          ),
        ),
      ),
  };
}
