/** Rules of the trade that a combination does not keep: soft advice, each with its source. */
import type { AdviceRow, AdviceRule } from '@fallwright/engine';
import { type Purpose, plainFigures } from '@fallwright/units';
import { perCent } from '../answered.ts';
import { type Reader, shown } from './reader.ts';

type ShownAs = Purpose | 'ratio' | 'share';

const RULES = {
  sourceOverDelivery: ['The source over what is delivered', 'ratio'],
  leastFall: ['The fall', 'height'],
  usualFall: ['The fall', 'height'],
  largestLift: ['The lift', 'height'],
  largestLiftOverFall: ['The lift over the fall', 'ratio'],
  efficientLiftOverFall: ['For a good efficiency, the lift over the fall', 'ratio'],
  driveLengthOverFall: ['The drive line over the fall', 'ratio'],
  driveLengthOverBore: ['The drive line over its bore', 'ratio'],
  driveBoreOverDeliveryBore: ['The drive bore over the delivery bore', 'ratio'],
  deliveryFriction: ['Friction in the delivery pipe over the lift', 'share'],
  deliveryVelocity: ['The speed in the delivery pipe', 'velocity'],
  beatRate: ['The beat', 'beats'],
  efficiency: ['D’Aubuisson’s efficiency', 'share'],
  vesselOverBeat: ['The air vessel over a beat’s delivery', 'ratio'],
  feederOverDriveBore: ['The feeder’s bore over the drive bore', 'ratio'],
  rigidDrivePipe: ['The drive pipe', 'ratio'],
} as const satisfies Record<AdviceRule, readonly [string, ShownAs]>;

/** One sentence for each rule that is not kept. */
export function brokenAdvice(rows: readonly AdviceRow[], reader: Reader): readonly string[] {
  const broken = rows.filter(({ isWithin }) => !isWithin);
  // A fall that is too small is also an unusual one: once is enough.
  const isTooSmall = broken.some(({ rule }) => rule === 'leastFall');
  return broken
    .filter(({ rule }) => !(isTooSmall && rule === 'usualFall'))
    .map((row) => adviceInWords(row, reader));
}

function adviceInWords({ rule, value, range, source }: AdviceRow, reader: Reader): string {
  if (rule === 'rigidDrivePipe') {
    return `The drive pipe is not of metal; a stiff one is usual (${source}).`;
  }
  const [what, as] = RULES[rule];
  const show = (number: number): string =>
    as === 'ratio'
      ? plainFigures(number, 2)
      : as === 'share'
        ? perCent(number)
        : shown(number, as, reader, 2);
  const { low, high } = range;
  const usual =
    low === undefined
      ? `up to ${show(high ?? 0)}`
      : high === undefined
        ? `${show(low)} or more`
        : `${show(low)} to ${show(high)}`;
  return `${what} is ${show(value)}; usual is ${usual} (${source}).`;
}
