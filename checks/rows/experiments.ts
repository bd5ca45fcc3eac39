/**
 * Measured rams. Those whose line, valve and heads are all published are run; the rest are kept in sight with what they lack.
 *
 * Judgement bands, from the scatter of the sources (repeat trials drift by a tenth and more): beats within 15 % good, 30 % acceptable; delivery
 * 15 % and 35 %; efficiency 0.05 and 0.12; peak over static head 30 % and a factor of two. A row is met inside the
 * acceptable band; beyond it the row is a miss, and twofold off it is wrong.
 */
import { daubuissonEfficiency, type OperatingPoint, terminalFlow } from '@fallwright/engine';
import {
  fromLitresPerMinute,
  toBeatsPerMinute,
  toLitresPerMinute,
  toMetresOfWater,
} from '@fallwright/units';
import type { CheckRow } from '../check-row.ts';
import { fittedPoint } from '../fitted-rig.ts';
import { beatsOf, LOG_ABSENT, type PressureLog, pressureLog } from '../pressure-log.ts';
import { readTable, type TableRow } from '../read-table.ts';
import {
  RIG_OF_2019,
  RIG_OF_2021,
  type RigSetting,
  rigAt,
  rigPoint,
  SOFT_SPRING,
  STIFF_SPRING,
} from '../rigs.ts';
import { thesisRamPoint } from '../thesis-ram.ts';
import { identity, withOurs } from './table-rows.ts';

export const BEATS = { toleranceRelative: 0.3 } as const;
export const DELIVERY = { toleranceRelative: 0.35 } as const;
export const EFFICIENCY = { toleranceAbsolute: 0.12 } as const;
const STEADY_FLOW = { toleranceRelative: 0.03 } as const;

/** Settings of the rig of 2019 that are logged. */
const RUNS: Readonly<Record<string, RigSetting>> = {
  'AC19-R1': { ...SOFT_SPRING, vesselHead: 6.07 },
  'AC19-R2': { ...SOFT_SPRING, vesselHead: 6.92 },
  'AC19-R3': { ...STIFF_SPRING, vesselHead: 9.79 },
  'AC19-R5': { ...STIFF_SPRING, vesselHead: 7.58 },
  'AC19-S1': { ...STIFF_SPRING, vesselHead: 6 },
  'AC19-S2': { ...SOFT_SPRING, vesselHead: 6 },
};

const points = new Map<string, OperatingPoint>();
function pointOf(id: string): OperatingPoint {
  let point = points.get(id);
  if (!point) {
    const setting = RUNS[id];
    if (!setting) throw new RangeError(`no setting of the rig is called ${id}`);
    point = rigPoint(RIG_OF_2019, setting);
    points.set(id, point);
  }
  return point;
}

export function rows(): readonly CheckRow[] {
  return readTable('ram/experiments').flatMap((row) => {
    const id = row.text('id');
    if (id === 'AC19-F' || id === 'AC21-F') return [steadyRow(row)];
    if (RUNS[id]) return [...rigRows(row), ...fittedRows(row), ...logRows(row)];
    if (id.startsWith('USU-')) return thesisRows(row);
    const energy = energyRow(row);
    return energy ? [energy] : [skipped(row, lackOf(row))];
  });
}

type Common = Pick<CheckRow, 'id' | 'table' | 'source' | 'knownBy'> & { readonly note?: string };

function common(row: TableRow, series: string, quantity: string): Common & { series: string } {
  const same = identity('experiments', row);
  return { ...same, id: quantity === '' ? same.id : `${same.id}/${quantity}`, series };
}

function skipped(row: TableRow, skip: string): CheckRow {
  return {
    ...common(row, 'not run', ''),
    quantity: 'operating point',
    unit: '-',
    published: Number.NaN,
    toleranceRelative: Number.NaN,
    ...withOurs({ skip }),
  };
}

/** What a row lacks, so that nothing can be run from it. */
function lackOf(row: TableRow): string {
  const id = row.text('id');
  if (/^AC(19-A|21-)/.test(id)) {
    return "the spring's force at this setting is not printed; the series is run as a shape (rules_of_thumb RT39)";
  }
  if (id.startsWith('UMS-')) return 'no valve and no waste flow are printed; run as a trend (RT23)';
  if (id === 'ITDA-1') return 'the printed efficiency contradicts itself';
  if (!row.has('wasted_l_min')) return 'no waste flow is printed, nor the parts of the ram';
  return 'heads are not printed';
}

/** The steady flow sets the passage round the plate, so this row holds that setting and predicts nothing. */
function steadyRow(row: TableRow): CheckRow {
  const rig = row.text('id') === 'AC19-F' ? RIG_OF_2019 : RIG_OF_2021;
  return {
    ...common(row, 'laboratory ram', 'steady flow'),
    quantity: 'steady flow through the open valve',
    unit: 'L/min',
    published: row.number('wasted_l_min'),
    ...STEADY_FLOW,
    ours: () =>
      toLitresPerMinute(
        terminalFlow(rigAt(rig, { forceAtOpen: 0, forceAtShut: 1, vesselHead: 6 })),
      ),
    note: 'this flow sets the passage round the plate; it predicts nothing',
  };
}

function rigRows(row: TableRow): CheckRow[] {
  const id = row.text('id');
  const found: CheckRow[] = [];
  if (row.has('beats_per_min')) {
    found.push({
      ...common(row, 'laboratory ram', 'beats'),
      quantity: 'beats a minute',
      unit: '1/min',
      published: row.number('beats_per_min'),
      ...BEATS,
      ours: () => toBeatsPerMinute(pointOf(id).beatFrequency),
    });
  }
  if (row.has('delivered_l_min')) {
    found.push({
      ...common(row, 'laboratory ram', 'delivered'),
      quantity: 'delivered',
      unit: 'L/min',
      published: row.number('delivered_l_min'),
      ...DELIVERY,
      ours: () => toLitresPerMinute(pointOf(id).deliveryFlow),
    });
  }
  if (row.has('peak_pressure_kpa')) {
    const published = toMetresOfWater(1000 * row.number('peak_pressure_kpa'));
    found.push({
      ...common(row, 'laboratory ram', 'peak'),
      quantity: 'peak head at the waste valve',
      unit: 'm',
      published,
      low: published / 2,
      high: published * 2,
      // A ram that stands open has no peak of a beat.
      ours: () => (pointOf(id).beatFrequency > 0 ? pointOf(id).peakHead : 0),
      note: 'a factor of two: the log is sampled every 2 to 6 ms and may miss the first spike',
    });
  }
  return found;
}

/** The ram fitted to the steady flow and to run R1, at that run and at those that the fit did not see. */
function fittedRows(row: TableRow): CheckRow[] {
  const id = row.text('id');
  const setting = RUNS[id];
  if (!setting || !row.has('beats_per_min') || !row.has('peak_pressure_kpa')) return [];
  const note =
    id === 'AC19-R1'
      ? 'fitted to this run and to AC19-F: a fit, and no prediction'
      : 'fitted to AC19-F and AC19-R1 alone: this run is predicted';
  const peak = toMetresOfWater(1000 * row.number('peak_pressure_kpa'));
  return [
    {
      ...common(row, 'laboratory ram, fitted', 'fitted beats'),
      quantity: 'beats a minute, fitted ram',
      unit: '1/min',
      published: row.number('beats_per_min'),
      ...BEATS,
      ours: () => toBeatsPerMinute(fittedPoint(setting).beatFrequency),
      note,
    },
    {
      ...common(row, 'laboratory ram, fitted', 'fitted peak'),
      quantity: 'peak head at the waste valve, fitted ram',
      unit: 'm',
      published: peak,
      low: peak / 2,
      high: peak * 2,
      ours: () => fittedPoint(setting).peakHead,
      note,
    },
  ];
}

/** What we read from a log against the figures that stand with it. */
function logRows(row: TableRow): CheckRow[] {
  const id = row.text('id');
  if (id !== 'AC19-R1' && id !== 'AC19-R3') return [];
  const log = pressureLog(id);
  const read = (value: (log: PressureLog) => number) =>
    withOurs(log ? { ours: () => value(log) } : { skip: LOG_ABSENT });
  const period = Number(/median period ([\d.]+) s/.exec(row.text('note'))?.[1]);
  // Judgement: the log that we have is a shorter window of a run that drifts.
  const window = {
    toleranceRelative: 0.15,
    note: 'a shorter window of a run that drifts',
  } as const;
  return [
    {
      ...common(row, 'pressure logs', 'log period'),
      quantity: 'median period of the log',
      unit: 's',
      published: period,
      ...window,
      ...read((one) => beatsOf(one).medianPeriod),
    },
    {
      ...common(row, 'pressure logs', 'log beats'),
      quantity: 'beats a minute of the log',
      unit: '1/min',
      published: row.number('beats_per_min'),
      ...window,
      ...read((one) => beatsOf(one).beatsPerMinute),
    },
    {
      ...common(row, 'pressure logs', 'log peak'),
      quantity: 'median peak of the log',
      unit: 'm',
      published: toMetresOfWater(1000 * row.number('peak_pressure_kpa')),
      ...window,
      ...read((one) => beatsOf(one).medianPeak),
    },
  ];
}

/** Efficiency by fall and stroke, on a line of a sister study; see thesis-ram.ts. */
function thesisRows(row: TableRow): CheckRow[] {
  const energy = energyRow(row);
  const efficiency: CheckRow = {
    ...common(row, 'thesis ram', 'efficiency'),
    quantity: "efficiency (D'Aubuisson)",
    unit: '-',
    published: row.number('efficiency'),
    ...EFFICIENCY,
    ours: () =>
      thesisRamPoint({
        fall: row.number('supply_head_m'),
        lift: row.number('lift_or_delivery_head_m'),
        stroke: row.number('valve_stroke_mm') / 1000,
      }).daubuissonEfficiency,
    note: 'drive pipe and valve load are those of sister studies at the same university; this one prints neither',
  };
  return energy ? [efficiency, energy] : [efficiency];
}

/** Rows that print both flows and both heads: their efficiency by our definition, and within the energy that there is. */
function energyRow(row: TableRow): CheckRow | undefined {
  const needed = ['supply_head_m', 'lift_or_delivery_head_m', 'delivered_l_min', 'wasted_l_min'];
  if (!needed.every((column) => row.has(column)) || row.number('delivered_l_min') === 0) {
    return undefined;
  }
  return {
    ...common(row, 'energy', 'energy'),
    quantity: "efficiency (D'Aubuisson) of the printed flows",
    unit: '-',
    published: row.number('efficiency_recomputed'),
    toleranceAbsolute: 0.001,
    ours: () =>
      daubuissonEfficiency(
        { fall: row.number('supply_head_m'), lift: row.number('lift_or_delivery_head_m') },
        {
          wasteFlow: fromLitresPerMinute(row.number('wasted_l_min')),
          deliveryFlow: fromLitresPerMinute(row.number('delivered_l_min')),
        },
      ),
    note: 'recomputed from the printed flows and heads; rounding of four figures',
  };
}
