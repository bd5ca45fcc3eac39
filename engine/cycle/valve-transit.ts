import type { WasteValve } from '../machine/waste-valve.ts';
import { openingForces } from '../machine/waste-valve.ts';
import type { Second } from '../quantities.ts';

/**
 * Time that the waste valve's disc takes to fall through its stroke under its largest opening force alone: the quickest
 * thing that the simulation has to follow.
 *
 *   t = √( 2 s m / F )
 *
 * Source: uniformly accelerated motion. Held between 2 ms and 40 ms, Judgement: a forceless disc moves with the water
 * in some tens of milliseconds, and no disc of a ram moves in less than a few.
 */
export function wasteValveTransit(valve: WasteValve): Second {
  const { atOpen, atShut } = openingForces(valve);
  const force = Math.max(atOpen, atShut, 0);
  const transit = force > 0 ? Math.sqrt((2 * valve.stroke * valve.movingMass) / force) : Infinity;
  return Math.min(0.04, Math.max(0.002, transit));
}
