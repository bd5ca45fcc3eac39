/**
 * Rules and trends of the trade, read as numbers where the engine computes one. What a builder decides by eye is kept in
 * sight as a skip.
 */
import {
  type Installation,
  joukowskyHead,
  type OperatingPoint,
  operatingPoint,
  type TypicalSize,
  typicalRam,
  waveSpeed,
} from '@fallwright/engine';
import { fromLitresPerMinute, toBeatsPerMinute } from '@fallwright/units';
import type { CheckRow, Tolerance } from '../check-row.ts';
import { lengthOf, QUOTED, typicalPlace, WATER } from '../places.ts';
import { readTable, type TableRow } from '../read-table.ts';
import { RIG_OF_2019, rigAt, rigPoint, SOFT_SPRING } from '../rigs.ts';
import { springSettings, workingSettings } from '../spring-window.ts';
import { thesisRamPoint } from '../thesis-ram.ts';
import { BEATS, DELIVERY, EFFICIENCY } from './experiments.ts';
import { pointAtRatio } from './handbook-efficiency.ts';
import { identity, withOurs } from './table-rows.ts';

type Figure = Tolerance & {
  readonly quantity: string;
  readonly unit: string;
  readonly published: number;
  readonly ours: () => number;
  readonly note?: string;
  readonly suffix?: string;
};

export function rows(): readonly CheckRow[] {
  const numbers = numbersById();
  return readTable('ram/rules_of_thumb').flatMap((row) => {
    const found = numbers[row.text('id')];
    if (found) return found.map((number) => numberRow(row, number));
    return [
      {
        ...identity('rules_of_thumb', row),
        quantity: row.text('rule'),
        unit: row.text('unit'),
        published: Number.NaN,
        toleranceRelative: Number.NaN,
        ...withOurs({ skip: SKIPS[row.text('id')] ?? A_BUILDERS_RULE }),
      },
    ];
  });
}

function numberRow(row: TableRow, number: Figure): CheckRow {
  const { suffix, ...rest } = number;
  const same = identity('rules_of_thumb', row);
  return { ...same, id: suffix === undefined ? same.id : `${same.id}/${suffix}`, ...rest };
}

const A_BUILDERS_RULE = 'a rule for the builder; nothing that the engine computes answers to it';
const SKIPS: Readonly<Record<string, string>> = {
  RT01: 'a rule for choosing; T1 and T4 hold the same balance',
  RT14: 'one site, without its heads',
  RT15: 'run as T6: the most efficient length in bores',
  RT21: 'run as T6: the most efficient length in bores',
  RT31: 'run as AC19-R1 to R5',
  RT34: 'the settled beat is found at a constant vessel head',
  RT36: 'no parts of that ram are printed; weight is run in common_practice',
  RT37: 'a driven valve is not in the model',
  RT40: 'the force at the open stop is not printed with the stiffness',
  RT56: 'the settled beat is found at a constant vessel head, so vessels of any size give the same',
  RT59: 'run as CP-HAND-STROKES',
  RT65: 'a mean over many unlike sites',
};

/** A trend: the sign of a ratio. Judgement: 0.1 % is the least that counts as a change. */
const RISES = { published: 1.001, low: 1.001, high: 100 } as const;
const FALLS = { published: 0.999, low: 0, high: 0.999 } as const;

const beats = (point: OperatingPoint): number => toBeatsPerMinute(point.beatFrequency);

function withWeight(weight: number): OperatingPoint {
  const ram = typicalRam('DN20');
  const { wasteValve } = ram;
  if (wasteValve.kind !== 'weighted') throw new Error('a typical ram has a weighted valve');
  const valve = {
    ...wasteValve,
    submergedWeight: weight * wasteValve.submergedWeight,
    movingMass: weight * wasteValve.movingMass,
  };
  const place = typicalPlace({
    size: 'DN20',
    fall: 2,
    lift: 12,
    ram: { ...ram, wasteValve: valve },
  });
  return operatingPoint(place, QUOTED);
}

/** A DN20 whose lift and line stay as they are while the fall changes. */
function atFall(fall: number): OperatingPoint {
  return operatingPoint(typicalPlace({ size: 'DN20', fall, lift: 12, length: 14 }), QUOTED);
}

/** The bench of RT23: 63.5 mm line of 3 to 3.5 m, 38 mm ram, 3 m of fall, 6 m of lift. */
function shortLine(length: number): OperatingPoint {
  const place = typicalPlace({ size: 'DN40', fall: 3, lift: 6, length });
  const [segment] = place.driveLine.segments;
  if (!segment) throw new Error('a typical place has one pipe');
  const pipe = { ...segment.pipe, innerDiameter: 0.0635 };
  const driveLine = { ...place.driveLine, segments: [{ ...segment, pipe }] };
  return operatingPoint({ ...place, driveLine }, QUOTED);
}

function hammerOf(pipe: string): number {
  return joukowskyHead(waveSpeed(lengthOf(pipe, 10), WATER), 1);
}

const thesis = (fall: number, stroke: number): OperatingPoint =>
  thesisRamPoint({ fall, lift: 11.56, stroke });

/** Force that drags the plate of the rig shut at its steady flow, with the spring let go. */
function closingDrag(place: Installation): number {
  const { wasteValve } = place.ram;
  // closingFlow turned round: a force at the open stop that the steady flow just overcomes.
  const flow = fromLitresPerMinute(59.8);
  const curtain =
    wasteValve.curtainCoefficient * Math.PI * wasteValve.seatDiameter * wasteValve.stroke;
  return (
    0.5 *
    place.water.density *
    641e-6 *
    flow ** 2 *
    (1 / curtain ** 2 + wasteValve.dragCoefficient / wasteValve.gapArea ** 2)
  );
}

function numbersById(): Readonly<Record<string, readonly Figure[]>> {
  const soft = { ...SOFT_SPRING, vesselHead: 6.07 };
  const share = (ratio: number): number => {
    const point = pointAtRatio('DN32', 2, ratio);
    return point.deliveryFlow / point.supplyFlow;
  };
  const best = (): OperatingPoint =>
    workingSettings().reduce((a, b) => (b.point.deliveryFlow > a.point.deliveryFlow ? b : a)).point;
  return {
    RT03: [
      {
        quantity: 'beats of a DN20 at 0.46 m of fall, lift six times the fall',
        unit: '1/min',
        published: 60,
        low: 1,
        high: 200,
        ours: () => beats(pointAtRatio('DN20', 0.46, 6)),
      },
    ],
    RT11: [
      {
        quantity: 'greatest efficiency of typical rams at lift/fall 6, 2 m of fall',
        unit: '-',
        published: 0.75,
        low: 0.3,
        high: 0.75,
        ours: () =>
          Math.max(
            ...(['DN20', 'DN25', 'DN32', 'DN40', 'DN50', 'DN65', 'DN80', 'DN100'] as const).map(
              (size: TypicalSize) => pointAtRatio(size, 2, 6).daubuissonEfficiency,
            ),
          ),
      },
    ],
    RT12: [
      {
        quantity: 'share delivered at lift/fall 5, DN32 at 2 m',
        unit: '-',
        published: 1 / 7,
        ...DELIVERY,
        ours: () => share(5),
      },
    ],
    RT13: [
      {
        quantity: 'share delivered at lift/fall 10, DN32 at 2 m',
        unit: '-',
        published: 1 / 14,
        ...DELIVERY,
        ours: () => share(10),
      },
    ],
    RT23: [
      {
        quantity: 'efficiency with 3.5 m of line over that with 3 m',
        unit: '-',
        ...RISES,
        ours: () => shortLine(3.5).daubuissonEfficiency / shortLine(3).daubuissonEfficiency,
      },
    ],
    RT29: [
      {
        quantity: 'beats of a DN25 at 2 m to 12 m',
        unit: '1/min',
        published: 60,
        low: 30,
        high: 120,
        ours: () => beats(pointAtRatio('DN25', 2, 6)),
        note: 'a factor of two: neither fall, size nor weight is printed',
      },
    ],
    RT30: [
      {
        quantity: 'beats of a DN50 at 2 m to 12 m',
        unit: '1/min',
        published: 80,
        low: 40,
        high: 120,
        ours: () => beats(pointAtRatio('DN50', 2, 6)),
      },
    ],
    RT32: [
      {
        suffix: 'supply',
        quantity: 'supply with half the weight over supply, DN20',
        unit: '-',
        ...FALLS,
        ours: () => withWeight(0.5).supplyFlow / withWeight(1).supplyFlow,
      },
      {
        suffix: 'delivery',
        quantity: 'delivered with half the weight over delivered, DN20',
        unit: '-',
        ...FALLS,
        ours: () => withWeight(0.5).deliveryFlow / withWeight(1).deliveryFlow,
      },
      {
        suffix: 'efficiency',
        quantity: 'efficiency with half the weight over efficiency, DN20',
        unit: '-',
        ...RISES,
        ours: () => withWeight(0.5).daubuissonEfficiency / withWeight(1).daubuissonEfficiency,
      },
    ],
    RT33: [
      {
        suffix: 'supply',
        quantity: 'supply at 3 m of fall over supply at 2 m, DN20',
        unit: '-',
        ...RISES,
        ours: () => atFall(3).supplyFlow / atFall(2).supplyFlow,
      },
      {
        suffix: 'delivery',
        quantity: 'delivered at 3 m of fall over delivered at 2 m, DN20',
        unit: '-',
        ...RISES,
        ours: () => atFall(3).deliveryFlow / atFall(2).deliveryFlow,
      },
      {
        suffix: 'efficiency',
        quantity: 'efficiency at 3 m of fall over that at 2 m, DN20',
        unit: '-',
        ...RISES,
        ours: () => atFall(3).daubuissonEfficiency / atFall(2).daubuissonEfficiency,
      },
      {
        suffix: 'efficiency, valve left alone',
        quantity: 'efficiency at 2.8 m of fall over that at 2.3 m, thesis ram',
        unit: '-',
        ...FALLS,
        ours: () =>
          thesis(2.8, 0.015).daubuissonEfficiency / thesis(2.3, 0.015).daubuissonEfficiency,
        note: 'USU-STROKE prints the opposite trend: 0.431 to 0.366',
      },
    ],
    RT35: [
      {
        suffix: 'efficiency',
        quantity: 'efficiency at 25 mm of stroke over that at 15 mm, thesis ram',
        unit: '-',
        ...FALLS,
        ours: () =>
          thesis(2.3, 0.025).daubuissonEfficiency / thesis(2.3, 0.015).daubuissonEfficiency,
      },
      {
        suffix: 'waste',
        quantity: 'waste at 25 mm of stroke over that at 15 mm, thesis ram',
        unit: '-',
        ...RISES,
        ours: () => thesis(2.3, 0.025).wasteFlow / thesis(2.3, 0.015).wasteFlow,
      },
    ],
    RT38: [
      {
        suffix: 'beats',
        quantity: 'beats with twice the weight over beats, DN20',
        unit: '-',
        ...FALLS,
        ours: () => beats(withWeight(2)) / beats(withWeight(1)),
      },
      {
        suffix: 'closing',
        quantity: 'flow at closing with twice the weight over that without, DN20',
        unit: '-',
        ...RISES,
        ours: () => withWeight(2).flowAtClosing / withWeight(1).flowAtClosing,
      },
      {
        suffix: 'water per beat',
        quantity: 'water per beat with twice the weight over that without, DN20',
        unit: '-',
        ...RISES,
        ours: () => {
          const perBeat = (point: OperatingPoint) => point.supplyFlow / point.beatFrequency;
          return perBeat(withWeight(2)) / perBeat(withWeight(1));
        },
      },
    ],
    RT39: [
      {
        suffix: 'too weak',
        quantity: 'delivered with a slack spring over the best',
        unit: '-',
        published: 0,
        low: 0,
        high: 0.1,
        ours: () => (springSettings()[0]?.point.deliveryFlow ?? Number.NaN) / best().deliveryFlow,
        note: 'published: too weak a spring stays shut',
      },
      {
        suffix: 'too stiff',
        quantity: 'delivered with a spring of 6 N over the best',
        unit: '-',
        published: 0,
        low: 0,
        high: 0,
        ours: () =>
          (springSettings().at(-1)?.point.deliveryFlow ?? Number.NaN) / best().deliveryFlow,
      },
      {
        suffix: 'window',
        quantity: 'width of the window of springs that work',
        unit: 'N',
        published: 3.9,
        low: 1.5,
        high: 7.3,
        ours: () => {
          const working = workingSettings();
          return (working.at(-1)?.force ?? Number.NaN) - (working[0]?.force ?? Number.NaN);
        },
        note: 'clamp ranges of 2.5, 6.5 and 12 cm at 60.4 N/m',
      },
      {
        suffix: 'one maximum',
        quantity: 'maxima of delivery inside the window',
        unit: '-',
        published: 1,
        low: 1,
        high: 1,
        ours: () => maximaOf(workingSettings().map(({ point }) => point.deliveryFlow)),
      },
      {
        suffix: 'best delivery',
        quantity: 'delivery at the best spring',
        unit: 'mL/s',
        published: 26.55,
        ...DELIVERY,
        ours: () => 1e6 * best().deliveryFlow,
        note: 'best of rows AC21-4; those of AC21-0, AC21-2 and AC19-A are 24.3, 24.6 and 26.7',
      },
      {
        suffix: 'beat',
        quantity: 'length of the beat at the best spring',
        unit: 's',
        published: 0.3,
        ...BEATS,
        ours: () => 1 / best().beatFrequency,
      },
    ],
    RT41: [
      {
        quantity: 'closing force on the plate at the steady flow of AC19-F',
        unit: 'N',
        published: 4.2,
        toleranceRelative: 0.15,
        ours: () => closingDrag(rigAt(RIG_OF_2019, soft)),
        note: 'drag coefficient 1; the passage round the plate comes from the steady flow alone',
      },
    ],
    RT42: [
      {
        quantity: 'delivered through a 6 mm passage over that through the full bore',
        unit: '-',
        published: 0.25,
        low: 0,
        high: 0.5,
        ours: () =>
          rigPoint(RIG_OF_2019, { ...soft, deliveryBore: 0.006 }).deliveryFlow /
          rigPoint(RIG_OF_2019, { ...soft, deliveryBore: 0.02372 }).deliveryFlow,
        note: 'published: under 10 % of theory against 40 to 46 %',
      },
    ],
    RT44: [
      {
        quantity: 'peak at the waste valve over the vessel head, AC19-R1',
        unit: '-',
        published: 4.3,
        low: 4.3 * 0.7,
        high: 4.3 * 1.3,
        ours: () => rigPoint(RIG_OF_2019, soft).peakHead / 6.07,
      },
    ],
    RT45: [
      {
        quantity: 'hammer of 1 m/s in steel DN50',
        unit: 'm',
        published: 115,
        low: 100,
        high: 130,
        ours: () => hammerOf('steel EN 10255 DN50'),
      },
    ],
    RT46: [
      {
        quantity: 'hammer of 1 m/s in PVC schedule 40 of 1 in',
        unit: 'm',
        published: 45,
        low: 35,
        high: 55,
        ours: () => hammerOf('PVC sch 40 1 in'),
      },
    ],
    RT55: [
      {
        quantity: 'vessel of a typical DN32 over its delivery a beat, 2 m to 12 m',
        unit: '-',
        published: 35,
        low: 20,
        high: 50,
        ours: () =>
          typicalRam('DN32').airVessel.volume / pointAtRatio('DN32', 2, 6).deliveredPerBeat,
      },
    ],
    RT63: [
      {
        quantity: 'efficiency of a DN32 at lift/fall 6, 2 m of fall',
        unit: '-',
        published: 0.66,
        ...EFFICIENCY,
        ours: () => pointAtRatio('DN32', 2, 6).daubuissonEfficiency,
        note: 'the figure for commercial rams',
      },
    ],
    RT64: [
      {
        quantity: 'efficiency of a DN32 at lift/fall 6, 2 m of fall',
        unit: '-',
        published: 0.6,
        low: 0.5,
        high: 0.7,
        ours: () => pointAtRatio('DN32', 2, 6).daubuissonEfficiency,
      },
    ],
  };
}

/** Maxima of a series, its ends included, without the wobble of a hundredth that beats have. */
function maximaOf(values: readonly number[]): number {
  const wobble = 0.01 * Math.max(...values);
  let count = 0;
  let lowest = values[0] ?? 0;
  let highest = lowest;
  let isClimbing = true;
  for (const value of values) {
    if (isClimbing) {
      highest = Math.max(highest, value);
      if (value < highest - wobble) {
        count++;
        isClimbing = false;
        lowest = value;
      }
    } else {
      lowest = Math.min(lowest, value);
      if (value > lowest + wobble) {
        isClimbing = true;
        highest = value;
      }
    }
  }
  return count + (isClimbing ? 1 : 0);
}
