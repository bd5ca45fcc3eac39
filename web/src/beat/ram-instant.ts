/** The ram's moving parts at one frame, in the units of the section drawing (780 by 620). */
import { depthOfBlue } from './line-strip.ts';
import type { Reel } from './reel.ts';
import type { VesselShape } from './vessel.ts';
import { waterLevel } from './vessel.ts';

/** Travel of the parts in the drawing, from shut to open. */
export const WASTE_TRAVEL = 24;
export const DELIVERY_TRAVEL = 14;
/** The vessel's inside in the drawing. */
export const VESSEL: VesselShape = { radius: 90, shoulder: 172, floor: 340 };

export interface RamInstant {
  /** Upward shift of the waste valve from its open place. */
  readonly wasteShift: number;
  /** Upward shift of the delivery valve from its seat. */
  readonly deliveryShift: number;
  /** Strength of the jets, 0 to 1. */
  readonly jets: number;
  readonly bodyBlue: number;
  readonly vesselBlue: number;
  readonly vesselLevel: number;
  /** Flows as shares of the greatest in the film, below nought when they run back. */
  readonly drive: number;
  readonly waste: number;
  readonly delivery: number;
  readonly outflow: number;
  readonly snifter: 'none' | 'sips' | 'leaks' | 'still';
}

/** Flows below this share of the greatest are drawn as none. */
export const LEAST_FLOW = 0.02;

export function ramAt(reel: Reel, frame: number): RamInstant {
  const { film, installation, greatestFlow, highestHead } = reel;
  const { wasteValve, airVessel, snifter } = installation.ram;
  const share = (flow: number): number => flow / Math.max(greatestFlow, 1e-12);
  const head = film.bodyHead[frame] ?? 0;
  const delivery = share(film.deliveryFlow[frame] ?? 0);
  const isShut = film.opening[frame] === 0;
  // What the simulation lets out while the valve is shut leaves by the snifter.
  const waste = isShut ? 0 : share(film.wasteFlow[frame] ?? 0);
  return {
    wasteShift: WASTE_TRAVEL * (1 - (film.opening[frame] ?? 0) / wasteValve.stroke),
    deliveryShift: deliveryShift(delivery),
    jets: Math.max(0, Math.min(1, waste * 1.2)),
    bodyBlue: depthOfBlue(head, highestHead),
    vesselBlue: depthOfBlue(film.point.vesselHead, highestHead),
    vesselLevel: waterLevel((reel.vesselAir[frame] ?? 0) / airVessel.volume, VESSEL),
    drive: share(film.driveFlow[frame] ?? 0),
    waste,
    delivery,
    outflow: reel.isBeating ? share(film.point.deliveryFlow) : 0,
    snifter: snifter === undefined ? 'none' : snifterAt(head, film.point.vesselHead),
  };
}

/** The delivery disc is not followed by the simulation: it is drawn off its seat while water passes, wide from a fifth of the greatest flow on. */
function deliveryShift(flow: number): number {
  if (Math.abs(flow) < LEAST_FLOW) return 0;
  return DELIVERY_TRAVEL * Math.min(1, Math.abs(flow) / 0.2);
}

/** It draws air while the head in the body is below nought, and spits water while the hammer stands. */
function snifterAt(head: number, vesselHead: number): 'sips' | 'leaks' | 'still' {
  if (head < 0) return 'sips';
  return head > 0.3 * vesselHead ? 'leaks' : 'still';
}
