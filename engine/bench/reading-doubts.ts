/**
 * What cannot be, or is unlikely, in a bench reading: found while the rig is still running, when it can be read again.
 *
 * A difference is a breach when it is more than twice its standard uncertainty; by chance that happens once in twenty.
 * Source for the factor: JCGM 100:2008, 6.2, coverage factor 2 (memory).
 */
import type { CubicMetrePerSecond, Metre, Ratio } from '../quantities.ts';
import type { BenchQuantity, BenchReading, Measured } from './bench-reading.ts';
import { flowsOf } from './bench-reading.ts';

export type ReadingDoubt =
  /** Supply less waste less delivery, all three read. */
  | Breach<'waterBalance'>
  /** A flow worked out from two others came out below nought. */
  | Breach<'moreOutThanIn'>
  /** Power out of the water delivered less the power that all the water brings, as flow × head, in m⁴/s. */
  | Breach<'energyFromNothing'>
  /** The lift is not above the fall: no ram is needed. */
  | Breach<'liftBelowFall'>
  /** Head in the vessel under the lift that it is said to deliver to. */
  | Breach<'vesselBelowLift'>
  /** Peak at the ram under the head in its vessel. */
  | Breach<'peakBelowVessel'>
  /** More through the drive line than it passes with the waste valve held open. */
  | Breach<'moreThanLinePasses'>
  /** Repeat readings lie far apart. `gap` and `allowed` are shares of their mean. */
  | (Breach<'repeatsDiffer'> & { readonly quantity: BenchQuantity })
  /** Read once only: how it varies is not known. */
  | { readonly kind: 'oneReading'; readonly quantity: BenchQuantity };

interface Breach<Kind extends string> {
  readonly kind: Kind;
  /** How far apart the two are. */
  readonly gap: number;
  /** How far they might be by what the readings are good to. */
  readonly allowed: number;
}

const FACTOR = 2;
/** Judgement: repeats of one setting that lie further apart are of two settings, or one is a slip. */
export const WIDEST_REPEATS: Ratio = 0.15;
const REPEATED: readonly BenchQuantity[] = [
  'beatFrequency',
  'deliveryFlow',
  'wasteFlow',
  'supplyFlow',
];

/** `lineCapacity` is the steady flow of the drive line with the waste valve held open, when the rig is known. */
export function doubtsAboutReading(
  reading: BenchReading,
  { lineCapacity }: { readonly lineCapacity?: CubicMetrePerSecond } = {},
): readonly ReadingDoubt[] {
  return [
    ...balanceDoubts(reading),
    ...energyDoubts(reading),
    ...headDoubts(reading),
    ...capacityDoubts(reading, lineCapacity),
    ...REPEATED.flatMap((quantity) => repeatDoubts(quantity, reading[quantity])),
  ];
}

/** A doubt that means a slip: what is read cannot be so. The others only ask for more readings. */
export function isImpossible({ kind }: ReadingDoubt): boolean {
  return kind !== 'oneReading' && kind !== 'repeatsDiffer';
}

function breach<Kind extends string>(
  kind: Kind,
  gap: number,
  ...spreads: readonly number[]
): readonly Breach<Kind>[] {
  const allowed = FACTOR * Math.hypot(...spreads);
  return gap > allowed ? [{ kind, gap, allowed }] : [];
}

function balanceDoubts(reading: BenchReading): readonly ReadingDoubt[] {
  const { deliveryFlow, wasteFlow, supplyFlow } = reading;
  if (deliveryFlow && wasteFlow && supplyFlow) {
    const gap = supplyFlow.value - wasteFlow.value - deliveryFlow.value;
    return breach(
      'waterBalance',
      Math.abs(gap),
      supplyFlow.spread,
      wasteFlow.spread,
      deliveryFlow.spread,
    );
  }
  const flows = flowsOf(reading);
  if (!flows) return [];
  return Object.values(flows)
    .filter(({ isWorkedOut, value }) => isWorkedOut && value < 0)
    .flatMap(({ value, spread }) => breach('moreOutThanIn', -value, spread));
}

/** q h ≤ (q + Q) H, whatever the ram. */
function energyDoubts(reading: BenchReading): readonly ReadingDoubt[] {
  const flows = flowsOf(reading);
  if (!flows) return [];
  const { delivery, waste } = flows;
  const { fall, lift } = reading;
  const gain = lift.value - fall.value;
  const given = waste.value + delivery.value;
  return breach(
    'energyFromNothing',
    delivery.value * lift.value - given * fall.value,
    gain * delivery.spread,
    fall.value * waste.spread,
    delivery.value * lift.spread,
    given * fall.spread,
  );
}

function headDoubts({ fall, lift, vesselHead, peakHead }: BenchReading): readonly ReadingDoubt[] {
  const above = (upper: Measured, lower: Measured, kind: 'vesselBelowLift' | 'peakBelowVessel') =>
    breach(kind, lower.value - upper.value, upper.spread, lower.spread);
  const againstPeak: Measured = vesselHead ?? lift;
  return [
    ...(lift.value <= fall.value
      ? [{ kind: 'liftBelowFall' as const, gap: fall.value - lift.value, allowed: 0 as Metre }]
      : []),
    ...(vesselHead ? above(vesselHead, lift, 'vesselBelowLift') : []),
    ...(peakHead ? above(peakHead, againstPeak, 'peakBelowVessel') : []),
  ];
}

function capacityDoubts(
  reading: BenchReading,
  lineCapacity: CubicMetrePerSecond | undefined,
): readonly ReadingDoubt[] {
  const flows = flowsOf(reading);
  const supply = flows?.supply ?? reading.supplyFlow ?? reading.wasteFlow;
  if (lineCapacity === undefined || !supply) return [];
  // Losses of a line are known to some 5 %, and the flow goes with their root. Judgement.
  return breach(
    'moreThanLinePasses',
    supply.value - lineCapacity,
    supply.spread,
    0.025 * lineCapacity,
  );
}

function repeatDoubts(
  quantity: BenchQuantity,
  read: Measured | undefined,
): readonly ReadingDoubt[] {
  if (!read) return [];
  if (read.count === 1) return [{ kind: 'oneReading', quantity }];
  const gap = read.range / Math.abs(read.value);
  return gap > WIDEST_REPEATS
    ? [{ kind: 'repeatsDiffer', quantity, gap, allowed: WIDEST_REPEATS }]
    : [];
}
