/** What any faithful model shows: statements of the trade, with no source, each brought to one number. */
import {
  beatAtHead,
  closingFlow,
  type Installation,
  type OperatingPoint,
  operatingPoint,
  startUp,
  type TypicalSize,
  terminalFlow,
  typicalRam,
} from '@fallwright/engine';
import { toBeatsPerMinute } from '@fallwright/units';
import type { CheckRow } from '../check-row.ts';
import { lengthOf, QUOTED, typicalPlace } from '../places.ts';
import { readTable } from '../read-table.ts';
import { pointAtRatio } from './handbook-efficiency.ts';
import { identity, withOurs } from './table-rows.ts';

export function rows(): readonly CheckRow[] {
  const numbers = oursById();
  return readTable('ram/common_practice').map((row) => {
    const same = identity('common_practice', row);
    const ours = numbers[same.id];
    if (!ours) {
      return {
        ...same,
        quantity: row.text('statement'),
        unit: '-',
        published: Number.NaN,
        toleranceRelative: Number.NaN,
        ...withOurs({ skip: 'a sign to look for; no number answers to it' }),
      };
    }
    const [low, high] = [row.number('low'), row.number('high')];
    return {
      ...same,
      quantity: `${row.text('statement')}: ${row.text('quantity')}`,
      unit: row.text('unit'),
      published: low === high ? low : (low + high) / 2,
      low,
      high,
      ours,
    };
  });
}

const HOSE = 'garden hose 1/2 in';
const POLYETHYLENE = 'PE SIDR 7 1/2 in';
const PVC = 'PVC sch 40 1/2 in';

/** The half-inch ram of the trade's story: 30 m of line, 6 m of lift, 60 m of half-inch polyethylene to the tank. */
function halfInch(drivePipe: string, fall: number): Installation {
  const place = typicalPlace({ size: 'DN15', fall, lift: 6, length: 30, drivePipe });
  return { ...place, deliveryLine: { segments: [lengthOf(POLYETHYLENE, 60)] } };
}

/** The same on polyethylene at 1.2 m, over a crest that holds air in its falling leg. */
function overCrest(air: number): Installation {
  const place = halfInch(POLYETHYLENE, 1.2);
  return {
    ...place,
    driveLine: {
      ...place.driveLine,
      profile: [
        { distance: 0, elevation: 1 },
        { distance: 8, elevation: 0.5 },
        { distance: 12, elevation: 0.9 },
        { distance: 18, elevation: 0.2 },
        { distance: 30, elevation: 0 },
      ],
      pockets: air > 0 ? [{ distance: 12, volume: air }] : [],
    },
  };
}

/** DN20 on steel at 2 m of fall. */
function plain(lift = 12): Installation {
  const place = typicalPlace({ size: 'DN20', fall: 2, lift });
  return { ...place, deliveryLine: { segments: [lengthOf('PE100 SDR11 32', 60)] } };
}

function withValve(change: { readonly weight?: number; readonly stroke?: number }): Installation {
  const place = plain();
  const { wasteValve } = place.ram;
  if (wasteValve.kind !== 'weighted') throw new Error('a typical ram has a weighted valve');
  const { weight = 1, stroke = 1 } = change;
  return {
    ...place,
    ram: {
      ...place.ram,
      wasteValve: {
        ...wasteValve,
        submergedWeight: weight * wasteValve.submergedWeight,
        movingMass: weight * wasteValve.movingMass,
        stroke: stroke * wasteValve.stroke,
      },
    },
  };
}

const run = (place: Installation): OperatingPoint => operatingPoint(place, QUOTED);
const beats = (point: OperatingPoint): number => toBeatsPerMinute(point.beatFrequency);

/** Hammer over the vessel's head, on the grid on which pressures are judged. */
function snap(place: Installation): number {
  const point = operatingPoint(place, { reaches: 32, substeps: 160 });
  return point.peakHead - point.vesselHead;
}

function closing(size: TypicalSize, place: Installation): number {
  return closingFlow(typicalRam(size).wasteValve, place.water.density);
}

type Ask = (point: OperatingPoint) => number;

/** One number of a run over the same number of the plain run. */
function againstPlain(other: Installation, ask: Ask): number {
  return ask(run(other)) / ask(run(plain()));
}

function oursById(): Readonly<Record<string, () => number>> {
  const efficiency: Ask = (point) => point.daubuissonEfficiency;
  const supply: Ask = (point) => point.supplyFlow;
  const delivered: Ask = (point) => point.deliveryFlow;
  const heavy = withValve({ weight: 2 });
  const long = withValve({ stroke: 1.5 });
  const sizes: readonly TypicalSize[] = [
    'DN15',
    'DN20',
    'DN25',
    'DN32',
    'DN40',
    'DN50',
    'DN65',
    'DN80',
    'DN100',
  ];
  return {
    'CP-HOSE-1.2': () => beats(run(halfInch(HOSE, 1.2))),
    'CP-HOSE-1.2-WHY': () => {
      const place = halfInch(HOSE, 1.2);
      return terminalFlow(place) / closing('DN15', place);
    },
    'CP-HOSE-2.1': () => beats(run(halfInch(HOSE, 2.1))),
    'CP-HOSE-2.1-BADLY': () => efficiency(run(halfInch(HOSE, 2.1))),
    'CP-PE-1.2': () => beats(run(halfInch(POLYETHYLENE, 1.2))),
    'CP-PE-1.2-START': () =>
      startUp(halfInch(POLYETHYLENE, 1.2), { stopValve: 'shut' }).handStrokes,
    'CP-PVC-1.2': () => beats(run(halfInch(PVC, 1.2))),
    'CP-PVC-1.2-START': () => startUp(halfInch(PVC, 1.2), { stopValve: 'shut' }).handStrokes,
    'CP-PE-SNAP': () => snap(halfInch(POLYETHYLENE, 1.2)) / snap(halfInch(HOSE, 2.1)),
    'CP-PVC-SNAP': () => snap(halfInch(PVC, 1.2)) / snap(halfInch(HOSE, 2.1)),
    'CP-NEXT-SIZE': () => {
      const place = halfInch(HOSE, 2.1);
      const dn20 = { ...place, ram: typicalRam('DN20') };
      return closing('DN20', dn20) / terminalFlow(dn20);
    },
    'CP-AIR-STOPS': () => beats(run(overCrest(1e-3))),
    'CP-AIR-ROBS': () => delivered(run(overCrest(3e-4))) / delivered(run(overCrest(0))),
    'CP-AIR-BLED': () => beats(run(overCrest(0))),
    'CP-NO-BACK-PRESSURE': () => beats(beatAtHead(plain(), 0, QUOTED)),
    'CP-NO-BACK-PRESSURE-PE': () => beats(beatAtHead(halfInch(POLYETHYLENE, 1.2), 0, QUOTED)),
    'CP-HAND-STROKES': () => openStart(plain()),
    'CP-HAND-STROKES-PE': () => openStart(halfInch(POLYETHYLENE, 1.2)),
    'CP-HEAVY-BEATS': () => againstPlain(heavy, beats),
    'CP-HEAVY-WATER': () => againstPlain(heavy, supply),
    'CP-HEAVY-DELIVERED': () => againstPlain(heavy, delivered),
    'CP-HEAVY-EFFICIENCY': () => againstPlain(heavy, efficiency),
    'CP-STROKE-BEATS': () => againstPlain(long, beats),
    'CP-STROKE-WATER': () => againstPlain(long, supply),
    'CP-STROKE-DELIVERED': () => againstPlain(long, delivered),
    'CP-STROKE-EFFICIENCY': () => againstPlain(long, efficiency),
    'CP-LIFT-FALLS': () => {
      const flows = [4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24].map((lift) =>
        delivered(run(plain(lift))),
      );
      return flows.filter((flow, i) => i > 0 && flow >= (flows[i - 1] as number)).length;
    },
    'CP-LIFT-LEVEL': () => {
      const all = [4, 5, 6, 7, 8, 9, 10].map((lift) => efficiency(run(plain(lift))));
      return Math.min(...all) / Math.max(...all);
    },
    'CP-LIFT-DROPS': () => efficiency(run(plain(24))) / efficiency(run(plain(8))),
    'CP-LIFT-PEAK': () => {
      const [high, low] = [fine(plain(12)), fine(plain(6))];
      return high.peakHead / 12 / (low.peakHead / 6);
    },
    'CP-LIFT-BEATS': () => beats(run(plain(12))) / beats(run(plain(8))),
    ...Object.fromEntries(
      sizes.flatMap((size) => [
        [`CP-BEATS-${size}`, () => beats(pointAtRatio(size, 2, 6))],
        [`CP-EFFICIENCY-${size}`, () => efficiency(pointAtRatio(size, 2, 6))],
      ]),
    ),
  };
}

function fine(place: Installation): OperatingPoint {
  return operatingPoint(place, { reaches: 32, substeps: 160 });
}

/** Pushes until a ram goes on alone with its delivery line open; infinite when it never does. */
function openStart(place: Installation): number {
  const start = startUp(place, { stopValve: 'open' });
  return start.outcome === 'goesOn' ? start.handStrokes : Infinity;
}
