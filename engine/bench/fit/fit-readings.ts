/** The readings of one test or several as numbers to fit to: what was read over what the cycle gives, in spreads. */
import {
  beatAtHead,
  delivers,
  operatingPoint,
  type RunOptions,
} from '../../cycle/operating-point.ts';
import type { OperatingPoint } from '../../cycle/run-record.ts';
import { terminalFlow } from '../../cycle/terminal-flow.ts';
import type { Ratio } from '../../quantities.ts';
import type { BenchCase } from '../answer-reading.ts';
import type { BenchQuantity, Measured } from '../bench-reading.ts';
import { type FitFactors, withFitFactors } from './fit-parameters.ts';

export type FitQuantity = BenchQuantity | 'heldOpenFlow';

const OF_POINT: Readonly<Record<BenchQuantity, (point: OperatingPoint) => number>> = {
  beatFrequency: (point) => point.beatFrequency,
  deliveryFlow: (point) => point.deliveryFlow,
  wasteFlow: (point) => point.wasteFlow,
  supplyFlow: (point) => point.supplyFlow,
  vesselHead: (point) => point.vesselHead,
  peakHead: (point) => point.peakHead,
};

/**
 * How far a settled beat strays about a smooth law while a parameter moves: waves that still ring when the valve opens. Measured on two
 * rams of DN20 and DN25 on steel at three lifts each, along the closing force and others, about a parabola: beats 0.2 to 0.6 %, flows
 * 0.3 to 0.9 %, peak 1 to 2 %; more reaches and longer blocks leave it as it is. The upper ends are taken.
 */
export const RIPPLE: Readonly<Record<FitQuantity, Ratio>> = {
  beatFrequency: 0.006,
  deliveryFlow: 0.009,
  wasteFlow: 0.009,
  supplyFlow: 0.009,
  vesselHead: 0.001,
  peakHead: 0.02,
  heldOpenFlow: 0,
};

/**
 * Sixteen reaches, as a bench reading is compared on, and blocks of eight beats. Measured on the demo test's ram: eight reaches are off
 * sixteen by up to 0.9 % in beats, 1.6 % in flows and 14 % in the peak; longer blocks leave the ripple as it is and cost three times as much.
 */
export const FIT_RESOLUTION: RunOptions = { reaches: 16, block: 8 };

/** One number to fit to. */
export interface FitDatum {
  /** Place of its case in the list that was given. */
  readonly reading: number;
  readonly quantity: FitQuantity;
  readonly measured: number;
  /** Spread of its logarithm: of the reading, of the heads that the cycle was run at, and of the ripple. */
  readonly spread: Ratio;
}

/** Whatever is above nought; a ram that was seen not to deliver is no number on a scale of ratios. */
export function dataOf(
  cases: readonly BenchCase[],
  options: RunOptions = FIT_RESOLUTION,
): readonly FitDatum[] {
  return cases.flatMap((one, reading) => {
    const heads = headSpreads(one, options);
    return readOf(one).map(
      ([quantity, read]): FitDatum => ({
        reading,
        quantity,
        measured: read.value,
        spread: Math.hypot(read.spread / read.value, heads(quantity), RIPPLE[quantity]),
      }),
    );
  });
}

function readOf({ reading, head }: BenchCase): readonly (readonly [FitQuantity, Measured])[] {
  const quantities = [...(Object.keys(OF_POINT) as BenchQuantity[]), 'heldOpenFlow' as const];
  return quantities.flatMap((quantity) => {
    const read = reading[quantity];
    if (!read || !(read.value > 0)) return [];
    // A head that the cycle is run at is no prediction of it.
    if (quantity === 'vesselHead' && head === 'atVessel') return [];
    return [[quantity, read] as const];
  });
}

/** What each quantity moves with one spread of the fall and of the lift. */
function headSpreads(one: BenchCase, options: RunOptions): (quantity: FitQuantity) => Ratio {
  const { reading } = one;
  const moved = (fall: number, lift: number): BenchCase => ({
    ...one,
    reading: {
      ...reading,
      fall: { ...reading.fall, value: reading.fall.value + fall * reading.fall.spread },
      lift: { ...reading.lift, value: reading.lift.value + lift * reading.lift.spread },
      ...(reading.vesselHead && {
        vesselHead: {
          ...reading.vesselHead,
          value: reading.vesselHead.value + lift * reading.vesselHead.spread,
        },
      }),
    },
  });
  const pairs = [
    [predictedOf(moved(1, 0), {}, options), predictedOf(moved(-1, 0), {}, options)],
    [predictedOf(moved(0, 1), {}, options), predictedOf(moved(0, -1), {}, options)],
  ] as const;
  return (quantity) =>
    Math.hypot(
      ...pairs.map(([above, below]) => {
        const [high, low] = [above(quantity), below(quantity)];
        // A ram that stands still within a spread has no slope there.
        return high !== undefined && low !== undefined ? Math.log(high / low) / 2 : 0;
      }),
    );
}

/** What the cycle gives at one setting: nothing for a quantity that it has not, since the ram stands still. */
export function predictedOf(
  { reading, installation, head }: BenchCase,
  factors: FitFactors,
  options: RunOptions = FIT_RESOLUTION,
): (quantity: FitQuantity) => number | undefined {
  const rig = {
    ...withFitFactors(installation, factors),
    fall: reading.fall.value,
    lift: reading.lift.value,
  };
  let point: OperatingPoint | undefined;
  const pointThere = (): OperatingPoint => {
    point ??=
      head === 'throughLine'
        ? operatingPoint(rig, options)
        : beatAtHead(rig, reading.vesselHead?.value ?? rig.lift, options);
    return point;
  };
  return (quantity) => {
    if (quantity === 'heldOpenFlow') return terminalFlow(rig);
    const found = pointThere();
    const value = OF_POINT[quantity](found);
    return delivers(found) && value > 0 ? value : undefined;
  };
}

/** Logarithms of predicted over measured, in spreads; undefined when the ram stands still at any of them. */
export function residualsAt(
  cases: readonly BenchCase[],
  data: readonly FitDatum[],
  factors: FitFactors,
  options: RunOptions = FIT_RESOLUTION,
): readonly number[] | undefined {
  const predicted = new Map<number, (quantity: FitQuantity) => number | undefined>();
  const residuals: number[] = [];
  for (const { reading, quantity, measured, spread } of data) {
    let of = predicted.get(reading);
    if (!of) {
      of = predictedOf(cases[reading] as BenchCase, factors, options);
      predicted.set(reading, of);
    }
    const value = of(quantity);
    if (value === undefined) return undefined;
    residuals.push(Math.log(value / measured) / spread);
  }
  return residuals;
}
