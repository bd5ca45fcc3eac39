/**
 * One bench reading beside the cycle on the same rig: what was measured, what is predicted, and whether they differ by more than
 * the readings are good to.
 *
 * The prediction goes through the same engine as an answer. Its own spread here is that of the heads it was run at, which were
 * measured too; what the model leaves out is what the difference shows, and so is not counted in.
 */
import type { Installation } from '../cycle/installation.ts';
import { beatAtHead, delivers, operatingPoint, type RunOptions } from '../cycle/operating-point.ts';
import type { OperatingPoint, RunOutcome } from '../cycle/run-record.ts';
import { terminalFlow } from '../cycle/terminal-flow.ts';
import type { CubicMetrePerSecond, Ratio } from '../quantities.ts';
import type { BenchQuantity, BenchReading, Measured } from './bench-reading.ts';

export interface Residual {
  readonly quantity: BenchQuantity;
  readonly measured: number;
  readonly measuredSpread: number;
  readonly predicted: number;
  /** What the prediction moves with the heads that were read. */
  readonly predictedSpread: number;
  /** Measured less predicted. */
  readonly gap: number;
  /** The gap as a share of the predicted. */
  readonly share: Ratio;
  /** The gap over its combined standard uncertainty. */
  readonly normalized: Ratio;
  /** Whether the gap is within twice its standard uncertainty. */
  readonly agrees: boolean;
}

export interface ReadingPredicted {
  readonly outcome: RunOutcome;
  /** Whether the cycle runs and delivers at this setting. */
  readonly runs: boolean;
  readonly point: OperatingPoint;
  /** Of what was measured and is predicted; empty when the cycle does not run. */
  readonly residuals: readonly Residual[];
  /** Steady flow with the waste valve held open. */
  readonly lineCapacity: CubicMetrePerSecond;
}

/**
 * METHOD: peaks need about 16 reaches. Judgement: blocks of 24 beats, since a ram on a bench may beat unevenly and is compared to
 * a per cent.
 */
export const BENCH_RESOLUTION: RunOptions = { reaches: 16, block: 24 };
/** Coverage factor 2. Source: JCGM 100:2008, 6.2 (memory). */
const FACTOR = 2;

const PREDICTED: readonly {
  readonly quantity: BenchQuantity;
  readonly of: (point: OperatingPoint) => number;
}[] = [
  { quantity: 'beatFrequency', of: (point) => point.beatFrequency },
  { quantity: 'deliveryFlow', of: (point) => point.deliveryFlow },
  { quantity: 'wasteFlow', of: (point) => point.wasteFlow },
  { quantity: 'supplyFlow', of: (point) => point.supplyFlow },
  { quantity: 'vesselHead', of: (point) => point.vesselHead },
  { quantity: 'peakHead', of: (point) => point.peakHead },
];

/**
 * The cycle at a reading, against the reading.
 *
 * `head` says which head in the vessel the cycle is run at: `atVessel`, the one that was read or throttled to, or `throughLine`,
 * the one that lift and delivery line together ask for, which is then predicted too.
 */
export function predictedReading(
  installation: Installation,
  reading: BenchReading,
  head: 'atVessel' | 'throughLine',
  options: RunOptions = BENCH_RESOLUTION,
): ReadingPredicted {
  const run = (fallStep: number, liftStep: number): OperatingPoint =>
    runAt(installation, reading, head, { fallStep, liftStep }, options);
  const point = run(0, 0);
  const runs = delivers(point);
  const base = {
    outcome: point.end.outcome,
    runs,
    point,
    lineCapacity: terminalFlow({ ...installation, fall: reading.fall.value }),
  };
  if (!runs) return { ...base, residuals: [] };
  const sides = [
    [run(1, 0), run(-1, 0)],
    [run(0, 1), run(0, -1)],
  ] as const;
  const residuals = PREDICTED.flatMap(({ quantity, of }) => {
    const read = reading[quantity];
    // Where the vessel's head was given to the cycle it is no prediction.
    if (!read || (quantity === 'vesselHead' && head === 'atVessel')) return [];
    const shares = sides.map(([above, below]) =>
      // A ram that stops within a spread has no slope there.
      delivers(above) && delivers(below) ? (of(above) - of(below)) / 2 : 0,
    );
    return [residual(quantity, read, of(point), Math.hypot(...shares))];
  });
  return { ...base, residuals };
}

function runAt(
  installation: Installation,
  reading: BenchReading,
  head: 'atVessel' | 'throughLine',
  { fallStep, liftStep }: { readonly fallStep: number; readonly liftStep: number },
  options: RunOptions,
): OperatingPoint {
  const fall = reading.fall.value + fallStep * reading.fall.spread;
  const lift = reading.lift.value + liftStep * reading.lift.spread;
  if (head === 'throughLine') return operatingPoint({ ...installation, fall, lift }, options);
  const { vesselHead } = reading;
  const at = vesselHead ? vesselHead.value + liftStep * vesselHead.spread : lift;
  return beatAtHead({ ...installation, fall, lift }, at, options);
}

function residual(
  quantity: BenchQuantity,
  { value: measured, spread: measuredSpread }: Measured,
  predicted: number,
  predictedSpread: number,
): Residual {
  const gap = measured - predicted;
  const spread = Math.hypot(measuredSpread, predictedSpread);
  const normalized = spread > 0 ? gap / spread : gap === 0 ? 0 : Math.sign(gap) * Infinity;
  return {
    quantity,
    measured,
    measuredSpread,
    predicted,
    predictedSpread,
    gap,
    share: gap / predicted,
    normalized,
    agrees: Math.abs(normalized) <= FACTOR,
  };
}
