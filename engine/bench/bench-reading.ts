/**
 * What was read at one setting of a ram on a rig: means of repeat readings, each with what it is good to.
 *
 * A spread is a standard uncertainty: two times in three the truth lies that near.
 */
import { type Reading, repeated } from '../numerics/repeated.ts';
import type { CubicMetrePerSecond, Ratio } from '../quantities.ts';

export interface Measured {
  readonly value: number;
  /** Standard uncertainty of the value. */
  readonly spread: number;
  /** Readings behind it. */
  readonly count: number;
  /** Standard deviation of one reading about the mean; absent for a single reading. */
  readonly scatter?: number;
  /** Largest reading less the smallest. */
  readonly range: number;
}

export interface BenchReading {
  readonly fall: Measured;
  /** Head that the water is delivered against: of the outlet above the waste valve, or a throttled back pressure. */
  readonly lift: Measured;
  readonly beatFrequency?: Measured;
  readonly deliveryFlow?: Measured;
  readonly wasteFlow?: Measured;
  readonly supplyFlow?: Measured;
  readonly vesselHead?: Measured;
  readonly peakHead?: Measured;
  /** Steady flow out of the waste valve while it was held open: it shows the losses of line and valve by themselves. */
  readonly heldOpenFlow?: Measured;
  readonly handStrokes?: number;
}

/** Quantities of a reading that a simulation gives too. */
export type BenchQuantity =
  | 'beatFrequency'
  | 'deliveryFlow'
  | 'wasteFlow'
  | 'supplyFlow'
  | 'vesselHead'
  | 'peakHead';

/**
 * What one reading is good to when nobody says, as a share of it.
 *
 * Judgement, common practice with no source: a jug or a bucket with a stopwatch in one hand 2 %; beats counted over half a minute,
 * one of them doubtful at either end, 1 %; a level of a rig 0.5 %; a gauge of class 1.6 in the middle of its range 2 %; a peak
 * on a gauge or a slow sensor 10 %, since it shows less than there is.
 */
export const USUAL_SPREADS: Readonly<Record<BenchQuantity | 'fall' | 'lift', Ratio>> = {
  fall: 0.005,
  lift: 0.01,
  beatFrequency: 0.01,
  deliveryFlow: 0.02,
  wasteFlow: 0.02,
  supplyFlow: 0.02,
  vesselHead: 0.02,
  peakHead: 0.1,
};

/** Mean of repeat readings; `share` is what one is good to where no ± stands with it. */
export function averaged(readings: readonly Reading[], share: Ratio): Measured {
  const mean = readings.reduce((sum, { value }) => sum + value, 0) / readings.length;
  const { count, spread, scatter, range } = repeated(readings, share * Math.abs(mean));
  return { value: mean, spread, count, range, ...(scatter !== undefined && { scatter }) };
}

export interface BenchFlows {
  readonly delivery: FlowOfReading;
  readonly waste: FlowOfReading;
  readonly supply: FlowOfReading;
}

export interface FlowOfReading {
  readonly value: CubicMetrePerSecond;
  readonly spread: CubicMetrePerSecond;
  /** Worked out from the other two by conservation. */
  readonly isWorkedOut: boolean;
}

/** The three flows, one of them worked out when only two were read. Nothing when fewer were. */
export function flowsOf(reading: BenchReading): BenchFlows | undefined {
  const { deliveryFlow: delivery, wasteFlow: waste, supplyFlow: supply } = reading;
  const known = [delivery, waste, supply].filter((flow) => flow !== undefined).length;
  if (known < 2) return undefined;
  const read = ({ value, spread }: Measured): FlowOfReading => ({
    value,
    spread,
    isWorkedOut: false,
  });
  const workedOut = (value: number, a?: Measured, b?: Measured): FlowOfReading => ({
    value,
    spread: Math.hypot(a?.spread ?? 0, b?.spread ?? 0),
    isWorkedOut: true,
  });
  const value = (flow: Measured | undefined): number => flow?.value ?? 0;
  return {
    delivery: delivery ? read(delivery) : workedOut(value(supply) - value(waste), supply, waste),
    waste: waste ? read(waste) : workedOut(value(supply) - value(delivery), supply, delivery),
    supply: supply ? read(supply) : workedOut(value(delivery) + value(waste), delivery, waste),
  };
}
