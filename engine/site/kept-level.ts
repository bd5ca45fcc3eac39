/**
 * The level at which a store that sinks stays: lower down the ram takes less, and somewhere it may take no more than runs in.
 *
 * Such a ram never stops and nobody tends it, so it runs, and what it gives is told for that level. At the brim alone it would
 * be said to starve, although it draws no air.
 */
import type { Installation } from '../cycle/installation.ts';
import { delivers, operatingPoint } from '../cycle/operating-point.ts';
import type { OperatingPoint } from '../cycle/run-record.ts';
import type { CubicMetrePerSecond } from '../quantities.ts';
import type { VerdictKind } from './answer.ts';
import { atFall } from './drain-time.ts';
import { kindOf } from './verdict.ts';

export interface Judged {
  readonly kind: VerdictKind;
  readonly deliveryFlow: CubicMetrePerSecond;
}

/**
 * The verdict on a run at the brim, and what is delivered; for a store that sinks to a level and stays, those of that level.
 *
 * One more run, with the surface at the intake, tells whether there is such a level. The delivery there lies between the two
 * runs as the inflow lies between their draws.
 */
export function judgedWithStore(
  installation: Installation,
  point: OperatingPoint,
  options: { readonly block?: number } = {},
): Judged {
  const kind = kindOf(installation, point);
  const { source, fall } = installation;
  const atBrim = { kind, deliveryFlow: point.deliveryFlow };
  if (kind !== 'starves' || source.kind !== 'store' || source.inflow <= 0) return atBrim;
  const lowest = fall - source.depthOverIntake;
  if (!(lowest > 0)) return atBrim;
  const atIntake = operatingPoint(atFall(installation, lowest), options);
  if (!delivers(atIntake) || atIntake.supplyFlow > source.inflow) return atBrim;
  const part = (point.supplyFlow - source.inflow) / (point.supplyFlow - atIntake.supplyFlow);
  const deliveryFlow = point.deliveryFlow + part * (atIntake.deliveryFlow - point.deliveryFlow);
  return { kind: 'runs', deliveryFlow };
}
