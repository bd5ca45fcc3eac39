/** Delivery pipes for a flow: what each loses in friction against what it costs. */
import { lineHeadLoss } from '../../../pipes/steady-flow.ts';
import type { CubicMetrePerSecond, Metre, MetrePerSecond, Ratio } from '../../../quantities.ts';
import type { Water } from '../../../water/water.ts';
import type { Money, PipeOffer } from '../offers.ts';
import { cutPlan } from '../parts-list/cut-plan.ts';

/** One pipe that might carry a delivery. */
export interface DeliveryPipeRow {
  readonly offer: PipeOffer;
  /** Head lost at this flow, the velocity head at the tank included. */
  readonly frictionHead: Metre;
  /** Friction over the lift. */
  readonly shareOfLift: Ratio;
  readonly velocity: MetrePerSecond;
  /** Absent when the pipe's price is not known. */
  readonly cost?: Money;
}

/**
 * Every pipe at one flow, the cheapest first and those without a price last.
 *
 * The flow is held: what the friction takes from the flow itself is the simulation's to say.
 * Source: friction of pipes/friction.ts, held against hazen_williams.csv in checks.
 */
export function deliveryPipeRows({
  pipes,
  length,
  lift,
  flow,
  water,
}: {
  readonly pipes: readonly PipeOffer[];
  readonly length: Metre;
  readonly lift: Metre;
  readonly flow: CubicMetrePerSecond;
  readonly water: Water;
}): DeliveryPipeRow[] {
  const rows = pipes.map((offer): DeliveryPipeRow => {
    const segment = {
      pipe: offer.pipe,
      length,
      fittingsLoss: 0,
      restraint: 'anchoredThroughout',
      freeAirFraction: 0,
    } as const;
    const frictionHead = lineHeadLoss({ segments: [segment], entranceLoss: 1, water, flow });
    const cost = cutPlan(offer, [{ line: 'delivery', length, count: 1 }], 0)?.cost;
    return {
      offer,
      frictionHead,
      shareOfLift: frictionHead / lift,
      velocity: flow / ((Math.PI / 4) * offer.pipe.innerDiameter ** 2),
      ...(cost === undefined ? {} : { cost }),
    };
  });
  return rows.sort(
    (a, b) =>
      (a.cost ?? Infinity) - (b.cost ?? Infinity) ||
      a.frictionHead - b.frictionHead ||
      (a.offer.key < b.offer.key ? -1 : 1),
  );
}

/** The cheapest pipe whose friction stays within a share of the lift; nothing when none does or none has a price. */
export function cheapestWithin(
  rows: readonly DeliveryPipeRow[],
  largestShare: Ratio,
): DeliveryPipeRow | undefined {
  return rows.find((row) => row.cost !== undefined && row.shareOfLift <= largestShare);
}
