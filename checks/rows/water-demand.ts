/**
 * Daily needs, and the watering formula. Planning figures are copied from the table, so their rows test our typing and units,
 * and say no more than their source; the formula is tested against a case worked out apart, in the units of its US form.
 */
import {
  ANIMAL_FIGURES,
  EMERGENCY_PARTS,
  GARDEN_FIGURE,
  PEOPLE_FIGURES,
  PLANT_FACTORS,
  type SourcedValue,
  USUAL_SERVICE,
  WATERING_EFFICIENCIES,
  wateringNeed,
} from '@fallwright/engine';
import { toLitresPerDay } from '@fallwright/units';
import type { CheckRow } from '../check-row.ts';
import { readTable, type TableRow } from '../read-table.ts';
import { identity } from './table-rows.ts';

const TABLE = 'water_demand';

/** Our figures by the row they come from. */
const FIGURES: Readonly<Record<string, readonly [SourcedValue, (value: number) => number]>> = {
  'WD-SPHERE-TOTAL': [PEOPLE_FIGURES.emergency, toLitresPerDay],
  'WD-WHO-NONE': [PEOPLE_FIGURES['far source'], toLitresPerDay],
  'WD-WHO-BASIC': [PEOPLE_FIGURES.carried, toLitresPerDay],
  'WD-WHO-INTER': [PEOPLE_FIGURES['one tap'], toLitresPerDay],
  'WD-WHO-OPT': [PEOPLE_FIGURES['several taps'], toLitresPerDay],
  'WD-BEEF': [ANIMAL_FIGURES.cow, toLitresPerDay],
  'WD-CATTLE-TX': [ANIMAL_FIGURES['range cow'], toLitresPerDay],
  'WD-SHEEP': [ANIMAL_FIGURES.sheep, toLitresPerDay],
  'WD-HORSE': [ANIMAL_FIGURES.horse, toLitresPerDay],
  'WD-DAIRY': [ANIMAL_FIGURES['dairy cow'], toLitresPerDay],
  'WD-PIG': [ANIMAL_FIGURES.pig, toLitresPerDay],
  'WD-SOW': [ANIMAL_FIGURES.sow, toLitresPerDay],
  'WD-HEN': [ANIMAL_FIGURES.hen, (each) => toLitresPerDay(100 * each)],
  'WD-DONKEY': [ANIMAL_FIGURES.donkey, toLitresPerDay],
  'WD-CAMEL': [ANIMAL_FIGURES.camel, toLitresPerDay],
  'WD-GARDEN': [GARDEN_FIGURE, toLitresPerDay],
  'WD-DRIP-EFF': [WATERING_EFFICIENCIES.drip, asItIs],
  'WD-PLANT-LAWN': [PLANT_FACTORS.lawn, asItIs],
  'WD-PLANT-AVG': [PLANT_FACTORS.shrubs, asItIs],
};

/** The three parts that the emergency total is the sum of, in the table's order. */
const PARTS = ['WD-SPHERE-SURV', 'WD-SPHERE-HYG', 'WD-SPHERE-COOK'];

/** The numbers are exact in both places; only the turn to SI and back rounds. */
const ROUNDING = { toleranceRelative: 1e-9 };

export function rows(): readonly CheckRow[] {
  return readTable(`hydraulics/${TABLE}`).flatMap(rowsOf);
}

function rowsOf(row: TableRow): readonly CheckRow[] {
  const id = row.text('id');
  const base = { ...identity(TABLE, row), quantity: row.text('user'), unit: row.text('unit') };
  const [figure, shown] = FIGURES[id] ?? [];
  if (figure && shown) {
    return [
      { ...base, published: row.number('value'), ours: () => shown(figure.value), ...ROUNDING },
      ...endsOf(row, base, { low: shown(figure.low), high: shown(figure.high) }),
      ...sumsOf(id, base, row),
    ];
  }
  const part = EMERGENCY_PARTS[PARTS.indexOf(id)];
  if (part) {
    return endsOf(row, base, { low: toLitresPerDay(part.low), high: toLitresPerDay(part.high) });
  }
  if (id === 'WD-UN-RIGHT') {
    const usual = PEOPLE_FIGURES[USUAL_SERVICE].value;
    const [low, high] = [row.number('low'), row.number('high')];
    return [
      {
        ...base,
        quantity: `what a person is taken to need when nobody says, in: ${base.quantity}`,
        published: low,
        ours: () => toLitresPerDay(usual),
        // The figure is 50 in both; a hair of slack for the turn to SI and back.
        low: low * (1 - 1e-9),
        high: high * (1 + 1e-9),
      },
    ];
  }
  if (id === 'WD-ETFORM') return [wateringRow(base)];
  throw new Error(`${id} of ${TABLE} is compared with nothing`);
}

type Base = Pick<CheckRow, 'id' | 'table' | 'source' | 'knownBy' | 'quantity' | 'unit'>;

function endsOf(
  row: TableRow,
  base: Base,
  ours: { readonly low: number; readonly high: number },
): readonly CheckRow[] {
  return (['low', 'high'] as const).flatMap((end) =>
    row.has(end)
      ? [
          {
            ...base,
            id: `${base.id}/${end}`,
            quantity: `${base.quantity}, ${end} end`,
            published: row.number(end),
            ours: () => ours[end],
            ...ROUNDING,
          },
        ]
      : [],
  );
}

/** The emergency range is the sum of its three parts. */
function sumsOf(id: string, base: Base, row: TableRow): readonly CheckRow[] {
  if (id !== 'WD-SPHERE-TOTAL') return [];
  return (['low', 'high'] as const).map((end) => ({
    ...base,
    id: `${base.id}/sum ${end}`,
    quantity: `${base.quantity}, ${end} end, as the sum of drinking, hygiene and cooking`,
    published: row.number(end),
    ours: () => EMERGENCY_PARTS.reduce((sum, part) => sum + toLitresPerDay(part[end]), 0),
    ...ROUNDING,
  }));
}

/**
 * The US form the row's note prints: gallons = ET₀ (in) · factor · area (ft²) · 0.62/efficiency. A fifth of an inch on
 * 1,000 ft² at factor 0.5 and efficiency 0.9 is 0.2 · 0.5 · 1000 · 0.62/0.9 = 68.9 gallons. The 0.62 is rounded: 0.6234.
 */
function wateringRow(base: Base): CheckRow {
  const [inch, foot] = [0.0254, 0.3048];
  const gallon = 231 * inch ** 3;
  const day = 86_400;
  return {
    ...base,
    quantity: 'water for 1,000 ft² at 0.2 in a day, plant factor 0.5, efficiency 0.9',
    unit: 'gal/day',
    published: (0.2 * 0.5 * 1000 * 0.62) / 0.9,
    ours: () =>
      (wateringNeed({
        evapotranspiration: (0.2 * inch) / day,
        plantFactor: 0.5,
        area: 1000 * foot ** 2,
        efficiency: 0.9,
      }) *
        day) /
      gallon,
    // Half of the last digit of 0.62.
    toleranceRelative: 0.005 / 0.62,
  };
}

function asItIs(value: number): number {
  return value;
}
