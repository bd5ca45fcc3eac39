import { lineHeadLoss } from '../pipes/steady-flow.ts';
import type { CubicMetrePerSecond, Metre } from '../quantities.ts';
import type { Water } from '../water/water.ts';
import type { DeliveryLine } from './installation.ts';

/**
 * Head lost in the delivery line at its mean flow, the velocity head at its open end included.
 *
 * The air vessel is taken to even out the flow, so the loss is that of a steady flow. A line that several rams share carries
 * the flow of them all; `flow` is that of one.
 * Source: Darcy–Weisbach, see pipes/friction.ts.
 */
export function deliveryFrictionHead(
  line: DeliveryLine,
  water: Water,
  flow: CubicMetrePerSecond,
): Metre {
  if (line.segments.length === 0 || flow <= 0) return 0;
  // 1: the velocity head is lost where the water leaves the pipe at the tank.
  return lineHeadLoss({
    segments: line.segments,
    entranceLoss: 1,
    water,
    flow: flow * (line.sharedBy ?? 1),
  });
}
