/** Worked examples with printed answers: efficiencies by their definitions, energy limits, wave speeds. */
import {
  daubuissonEfficiency,
  findRoot,
  growthTime,
  joukowskyPressure,
  rankineEfficiency,
  timeToVelocity,
  waveSpeed,
} from '@fallwright/engine';
import { fromLitresPerMinute, toLitresPerDay, toLitresPerMinute } from '@fallwright/units';
import type { CheckRow } from '../check-row.ts';
import { readTable, type TableRow } from '../read-table.ts';
import { RIG_OF_2019, RIG_OF_2021, rigAt } from '../rigs.ts';
import { EFFICIENCY } from './experiments.ts';
import { pointAtRatio } from './handbook-efficiency.ts';
import { identity, type Ours, withOurs } from './table-rows.ts';

const SHARE_OF_RATIO = { toleranceRelative: 0.35 } as const;

export function rows(): readonly CheckRow[] {
  return readTable('ram/worked_examples').flatMap(rowsOf);
}

type Numbers = Pick<CheckRow, 'quantity' | 'unit' | 'published'> &
  ({ toleranceAbsolute: number } | { toleranceRelative: number } | { low: number; high: number });

function one(row: TableRow, numbers: Numbers, ours: Ours, suffix = '', note?: string): CheckRow {
  const same = identity('worked_examples', row);
  return {
    ...same,
    id: `${same.id}${suffix}`,
    series: 'worked examples',
    ...(note === undefined ? {} : { note }),
    ...numbers,
    ...withOurs(ours),
  };
}

function heads(row: TableRow) {
  return { fall: row.number('fall_m'), lift: row.number('lift_m') };
}

/** In the examples with printed flows the drive flow is all that is taken from the source. */
function flows(row: TableRow) {
  const deliveryFlow = fromLitresPerMinute(row.number('delivered_l_min'));
  const supply = fromLitresPerMinute(row.number('drive_flow_l_min'));
  return { deliveryFlow, wasteFlow: supply - deliveryFlow };
}

/** Supply and delivery of a ram whose efficiency is given, by the engine's own definition turned round. */
function splitAt(
  given: { readonly fall: number; readonly lift: number },
  definition: typeof daubuissonEfficiency,
  efficiency: number,
): number {
  const { root } = findRoot({
    f: (share) => definition(given, { deliveryFlow: share, wasteFlow: 1 - share }) - efficiency,
    low: 1e-9,
    high: 0.999,
    tolerance: 1e-12,
  });
  return root;
}

function rowsOf(row: TableRow): CheckRow[] {
  const id = row.text('id');
  const none = { published: Number.NaN, toleranceRelative: Number.NaN };
  switch (id) {
    case 'W01':
    case 'W03':
    case 'W05': {
      // W05 rounds its denominator: its answer and ours part by 0.001.
      const numbers = {
        quantity: "efficiency (D'Aubuisson)",
        unit: '-',
        published: row.number('published_answer'),
        toleranceAbsolute: id === 'W05' ? 0.0011 : 0.0005,
      };
      return [one(row, numbers, { ours: () => daubuissonEfficiency(heads(row), flows(row)) })];
    }
    case 'W04': {
      const { deliveryFlow, wasteFlow } = flows(row);
      const rankine = () => rankineEfficiency(heads(row), flows(row));
      return [
        one(
          row,
          {
            quantity: "Rankine's gain over all water taken",
            unit: '-',
            published: row.number('published_answer'),
            toleranceAbsolute: 0.0005,
          },
          { ours: () => (rankine() * wasteFlow) / (wasteFlow + deliveryFlow) },
        ),
        one(
          row,
          {
            quantity: 'efficiency (Rankine)',
            unit: '-',
            published: 0.378,
            toleranceAbsolute: 0.0005,
          },
          { ours: rankine },
          '/rankine',
        ),
      ];
    }
    case 'W06':
      return [
        one(
          row,
          { quantity: 'flow over a notch', unit: 'L/min', ...none },
          {
            skip: 'the source leaves out the coefficient of the notch, and its head of 11 mm is below any range',
          },
        ),
      ];
    case 'W08': {
      const supply = fromLitresPerMinute(row.number('drive_flow_l_min'));
      const efficiency = row.number('efficiency');
      const ask = (definition: typeof daubuissonEfficiency) => () =>
        toLitresPerDay(supply * splitAt(heads(row), definition, efficiency));
      const daily = { unit: 'L/day', toleranceRelative: 0.0005 };
      return [
        one(
          row,
          { quantity: "delivered a day (D'Aubuisson)", published: 4542, ...daily },
          {
            ours: ask(daubuissonEfficiency),
          },
          '',
          'recomputed by the compiler of the table; the source prints the question alone',
        ),
        one(
          row,
          { quantity: 'delivered a day (Rankine)', published: 4955, ...daily },
          {
            ours: ask(rankineEfficiency),
          },
          '/rankine',
          'recomputed by the compiler of the table; the source prints the question alone',
        ),
      ];
    }
    case 'W09': {
      const wanted = fromLitresPerMinute(row.number('delivered_l_min'));
      const efficiency = row.number('efficiency');
      return [
        one(
          row,
          { quantity: 'drive flow', unit: 'L/min', published: 72.2, toleranceRelative: 0.001 },
          {
            ours: () =>
              toLitresPerMinute(wanted / splitAt(heads(row), daubuissonEfficiency, efficiency)),
          },
          '',
          'recomputed by the compiler of the table; the source prints the question alone',
        ),
      ];
    }
    case 'W10':
    case 'W11': {
      const ratio = row.number('lift_m');
      const share = 1 / Number(/1\/(\d+)/.exec(row.text('published_answer'))?.[1]);
      return [
        one(
          row,
          {
            quantity: `share of the water delivered at lift/fall ${ratio}, DN32 at 2 m`,
            unit: '-',
            published: share,
            ...SHARE_OF_RATIO,
          },
          {
            ours: () => {
              const point = pointAtRatio('DN32', 2, ratio);
              return point.deliveryFlow / point.supplyFlow;
            },
          },
        ),
      ];
    }
    case 'W12':
      return [
        one(
          row,
          {
            quantity: 'share delivered when nothing is lost',
            unit: '%',
            published: row.number('published_answer'),
            toleranceAbsolute: 0.05,
          },
          { ours: () => 100 * splitAt(heads(row), daubuissonEfficiency, 1) },
        ),
      ];
    case 'W13':
      return [
        one(
          row,
          { quantity: 'efficiency, DN32', unit: '-', published: 0.82, ...EFFICIENCY },
          {
            ours: () =>
              pointAtRatio(
                'DN32',
                row.number('fall_m'),
                row.number('lift_m') / row.number('fall_m'),
              ).daubuissonEfficiency,
          },
        ),
      ];
    case 'W16':
      return [
        one(
          row,
          {
            quantity: 'hammer of 2.2 m/s at 1200 m/s',
            unit: 'MPa',
            published: row.number('published_answer'),
            toleranceAbsolute: 0.005,
          },
          {
            ours: () =>
              joukowskyPressure({ density: 1000, waveSpeed: 1200, velocityChange: 2.2 }) / 1e6,
          },
        ),
      ];
    case 'W17': {
      const place = rigAt(RIG_OF_2019, { forceAtOpen: 0, forceAtShut: 5.7, vesselHead: 6 });
      const [segment] = place.driveLine.segments;
      return [
        one(
          row,
          {
            quantity: 'wave speed of the rig by pipe theory',
            unit: 'm/s',
            published: 500,
            low: 500,
            high: 700,
          },
          { ours: () => (segment ? waveSpeed(segment, place.water) : Number.NaN) },
          '',
          'the source rejects the 46 m/s that it reads off a swing, and says that theory gives over 500',
        ),
      ];
    }
    case 'W18':
      return [
        one(
          row,
          {
            quantity: 'best delivery of a stiff column',
            unit: 'mL/s',
            published: Number.parseFloat(row.text('published_answer')),
            toleranceRelative: 0.02,
          },
          { ours: () => idealDelivery(row) },
        ),
      ];
    case 'W20':
      return [
        one(
          row,
          { quantity: 'source over delivery', unit: '-', ...none },
          {
            skip: 'a rule for choosing, not a computed number; T1 and T4 hold the same balance',
          },
        ),
      ];
    default:
      return [
        one(
          row,
          { quantity: row.text('asked'), unit: '-', ...none },
          { skip: 'nothing of ours answers to it' },
        ),
      ];
  }
}

/**
 * Delivery when the flow grows as a stiff column to 0.615 of its end velocity, the valve shuts at once, and the column then
 * runs out against the lift without loss.
 */
function idealDelivery(row: TableRow): number {
  const { fall, lift } = heads(row);
  const { length } = RIG_OF_2021;
  const finalVelocity = 1.603;
  const bore = 0.02372;
  const velocity = 0.615 * finalVelocity;
  const growing = timeToVelocity({
    velocity,
    startVelocity: 0,
    finalVelocity,
    growthTime: growthTime({ head: fall, length, finalVelocity }),
  });
  const slowing = (9.80665 * (lift - fall)) / length;
  const delivered = ((Math.PI / 4) * bore ** 2 * velocity ** 2) / (2 * slowing);
  return (1e6 * delivered) / (growing + velocity / slowing);
}
