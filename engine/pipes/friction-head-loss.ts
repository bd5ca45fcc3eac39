import {
  type CubicMetrePerSecond,
  GRAVITY,
  type Metre,
  type MetrePerSecond,
} from '../quantities.ts';
import type { Water } from '../water/water.ts';
import { darcyFriction } from './friction.ts';
import type { Pipe } from './pipe.ts';

/** Mean velocity of a flow in a pipe; it carries the sign of the flow. */
export function meanVelocity(pipe: Pipe, flow: CubicMetrePerSecond): MetrePerSecond {
  if (!(pipe.innerDiameter > 0)) {
    throw new RangeError(`innerDiameter must be above zero, got ${pipe.innerDiameter} m`);
  }
  return flow / ((Math.PI / 4) * pipe.innerDiameter ** 2);
}

/**
 * Head lost to the wall of a straight length of pipe. Against the flow it is negative.
 *
 *   h = f (L/D) V|V| / 2g
 *
 * Steady flow, or flow that changes slowly; a wave loses more (see the unsteady-friction option of a run).
 *
 * Source: Darcy–Weisbach, as in any fluid mechanics text (memory); the factor stands in `friction.ts`.
 * @throws RangeError when the bore is not above zero, `length` is below zero, or `flow` is not a number.
 */
export function frictionHeadLoss({
  pipe,
  water,
  length,
  flow,
}: {
  readonly pipe: Pipe;
  readonly water: Water;
  readonly length: Metre;
  readonly flow: CubicMetrePerSecond;
}): Metre {
  if (!(length >= 0)) throw new RangeError(`length must not be below zero, got ${length} m`);
  if (!Number.isFinite(flow)) throw new RangeError(`flow must be finite, got ${flow} m³/s`);
  const V = meanVelocity(pipe, flow);
  const D = pipe.innerDiameter;
  const reynolds = (Math.abs(V) * D) / water.kinematicViscosity;
  if (reynolds === 0) return 0;
  const f = darcyFriction(reynolds, pipe.roughness / D);
  return (f * (length / D) * V * Math.abs(V)) / (2 * GRAVITY);
}
