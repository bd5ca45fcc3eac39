import type { Answer, Emptying, StartUp } from '@fallwright/engine';
import type { Site } from '@fallwright/records';
import { formatQuantity, type System } from '@fallwright/units';
import { type Answered, answered, duration } from './answered.ts';

/** How it starts, from a full drive line at rest and an empty delivery line. Empty when that was not worked out. */
export function startUpInWords(answer: Answer, site: Site, system: System): readonly string[] {
  const { startUp, startUpOpen } = answer;
  const about = answered(answer, site, system);
  return [
    ...(startUp ? [startInWords(startUp, about)] : []),
    ...(startUp && startUpOpen ? [openStartInWords(startUp, startUpOpen)] : []),
  ];
}

function startInWords(start: StartUp, { show }: Answered): string {
  const tap = start.stopValveShut
    ? ' Keep the stop valve on the delivery line shut until it beats alone, then open it slowly.'
    : '';
  if (start.outcome === 'never') {
    return `Pushed open by hand ${times(start.handStrokes)} from cold, it does not go on alone.`;
  }
  if (start.handStrokes === 0) {
    return `From a full drive line it starts by itself as soon as the water is let in.${tap}`;
  }
  return `Fill and bleed the drive line, then push the waste valve open by hand ${times(start.handStrokes)}. It then beats alone, with ${show(start.vesselHeadAtStart, 'head')} in the air vessel after some ${duration(start.simulatedTime)}.${tap}`;
}

/** What the other way of starting costs, when it differs. */
function openStartInWords(shut: StartUp, open: StartUp): string {
  if (open.outcome === 'never') {
    return 'With that stop valve open from the first push it does not start: the empty line gives no back pressure.';
  }
  if (open.handStrokes === shut.handStrokes) {
    return 'With that stop valve open from the first push it starts as well.';
  }
  return `With that stop valve open from the first push it takes ${open.handStrokes} strokes.`;
}

function times(count: number): string {
  return count === 1 ? 'once' : `about ${count} times`;
}

/** What a store gives before its intake comes out of the water, or nothing when the source is not drawn down. */
export function fromFullStoreInWords(answer: Answer, system: System): string | undefined {
  const { drainTime, emptying, operatingPoint } = answer;
  if (!operatingPoint) return undefined;
  if (emptying?.end === 'keepsUp') return staysLow(emptying, system);
  if (drainTime === undefined) return undefined;
  const volume = emptying?.delivered ?? operatingPoint.deliveryFlow * drainTime;
  const lifted = formatQuantity(volume, 'volume', system);
  const lasts = `From full, the store lasts about ${duration(drainTime)}, in which ${lifted} reach the tank.`;
  return emptying === undefined ? lasts : `${lasts} ${thenStops(emptying, system)}`;
}

/** Why it stops, and what that makes over a day. */
function thenStops(emptying: Emptying, system: System): string {
  const how =
    emptying.end === 'intakeUncovers'
      ? 'Then the intake comes out of the water.'
      : `Then, with the surface ${formatQuantity(emptying.drop, 'depth', system, { figures: 2 })} lower, the fall is too small and the ram stops.`;
  return `${how} ${overADay(emptying, 'Left to fill again and started once a day,', system)}`;
}

function staysLow(emptying: Emptying, system: System): string {
  const drop = formatQuantity(emptying.drop, 'depth', system, { figures: 2 });
  return `From full, the surface sinks by some ${drop}, where the ram takes no more than runs in. ${overADay(emptying, 'From there', system)}`;
}

function overADay({ dailyVolume, meanDelivery }: Emptying, when: string, system: System): string {
  const volume = formatQuantity(dailyVolume, 'volume', system);
  const mean = formatQuantity(meanDelivery, 'sourceFlow', system);
  return `${when} the ram brings ${volume} a day, ${mean} on average.`;
}
