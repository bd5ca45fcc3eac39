/** What cannot be in a bench reading, and what to look at while the rig still runs. */
import type { BenchQuantity, ReadingDoubt } from '@fallwright/engine';
import { formatQuantity, type Purpose, type System } from '@fallwright/units';
import { perCent } from '../answered.ts';

export const READ_AS: Readonly<
  Record<BenchQuantity, { readonly called: string; readonly purpose: Purpose }>
> = {
  beatFrequency: { called: 'beats', purpose: 'beats' },
  deliveryFlow: { called: 'delivered', purpose: 'sourceFlow' },
  wasteFlow: { called: 'wasted', purpose: 'sourceFlow' },
  supplyFlow: { called: 'supply', purpose: 'sourceFlow' },
  vesselHead: { called: 'head in the vessel', purpose: 'head' },
  peakHead: { called: 'peak head', purpose: 'head' },
};

export function doubtInWords(doubt: ReadingDoubt, system: System): string {
  if (doubt.kind === 'oneReading') {
    return `The ${nameOf(doubt.quantity)} was read once only. Read it again, twice at least, so that its scatter shows.`;
  }
  const { gap, allowed } = doubt;
  const flow = (value: number): string => formatQuantity(value, 'sourceFlow', system);
  const head = (value: number): string => formatQuantity(value, 'head', system);
  switch (doubt.kind) {
    case 'waterBalance':
      return `Supply, waste and delivery differ by ${flow(gap)}; by what they are good to it should be under ${flow(allowed)}. Look for a leak, water that bypasses a bucket, or a slip in one of the three, and read them together.`;
    case 'moreOutThanIn':
      return `More leaves the ram than reaches it, by ${flow(gap)}. One of the two flows is wrong: read both again.`;
    case 'energyFromNothing':
      return 'The delivered water gains more than all the water brings: no ram can do that. Check the flows for a slip of the unit, and both heights from the waste valve’s outlet.';
    case 'liftBelowFall':
      return `The lift is ${head(gap)} under the fall: water would run there by itself. Check both heights.`;
    case 'vesselBelowLift':
      return `The head in the vessel is ${head(gap)} under the lift, so nothing could be delivered. Check the gauge’s nought and the lift.`;
    case 'peakBelowVessel':
      return `The peak in the body is ${head(gap)} under the head in the vessel, and must be over it while the ram delivers. Check which gauge is which; a long tube or air in it hides peaks.`;
    case 'moreThanLinePasses':
      return `The supply is ${flow(gap)} over what the drive line passes with the waste valve held open. Check the flow, the fall, and the pipe’s bore and length.`;
    case 'repeatsDiffer':
      return `Repeats of the ${nameOf(doubt.quantity)} lie ${perCent(gap)} apart. Wait until the ram is steady, and read again.`;
  }
}

function nameOf(quantity: BenchQuantity): string {
  const { called } = READ_AS[quantity];
  return quantity === 'deliveryFlow' || quantity === 'wasteFlow' ? `${called} flow` : called;
}
