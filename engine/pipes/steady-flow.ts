import { findRoot } from '../numerics/find-root.ts';
import {
  type CubicMetrePerSecond,
  GRAVITY,
  type Metre,
  type MetrePerSecond,
  type Ratio,
} from '../quantities.ts';
import type { Water } from '../water/water.ts';
import { boreChangeDrop } from './bore-change.ts';
import { frictionHeadLoss, meanVelocity } from './friction-head-loss.ts';
import type { PipeSegment } from './pipe.ts';

/**
 * Head from the source's surface that is gone at the end of a line, inside the last pipe, at a steady flow.
 *
 *   H = Kₑ V₁²/2g + Σ ( f L/D + K ) V²/2g + Σ drop at each change of bore
 *
 * `entranceLoss` holds strainer, entrance and the velocity head itself, on the first pipe. The head is that of pressure
 * and level, so a free end of pipe has nought of it left. Against the flow the signs turn round.
 *
 * Source: energy equation, as in any fluid mechanics text; each part names its own.
 * @throws RangeError when there is no segment, a loss coefficient is below zero, or a segment's dimensions are nonsense.
 */
export function lineHeadLoss({
  segments,
  entranceLoss,
  water,
  flow,
}: {
  readonly segments: readonly PipeSegment[];
  readonly entranceLoss: Ratio;
  readonly water: Water;
  readonly flow: CubicMetrePerSecond;
}): Metre {
  if (segments.length === 0) throw new RangeError('segments must hold at least one pipe, got none');
  if (!(entranceLoss >= 0)) {
    throw new RangeError(`entranceLoss must not be below zero, got ${entranceLoss}`);
  }
  let head = 0;
  let upstream: PipeSegment | undefined;
  for (const segment of segments) {
    const { pipe, length, fittingsLoss } = segment;
    if (!(fittingsLoss >= 0)) {
      throw new RangeError(`fittingsLoss must not be below zero, got ${fittingsLoss}`);
    }
    const atInlet = upstream
      ? boreChangeDrop({
          upstreamBore: upstream.pipe.innerDiameter,
          downstreamBore: pipe.innerDiameter,
        })
      : entranceLoss;
    const V = meanVelocity(pipe, flow);
    head +=
      frictionHeadLoss({ pipe, water, length, flow }) +
      ((atInlet + fittingsLoss) * V * Math.abs(V)) / (2 * GRAVITY);
    upstream = segment;
  }
  return head;
}

/** What a line loses at its two ends. */
export interface EndLosses {
  /** Strainer, entrance and the velocity head itself, on the first pipe. A sharp-edged mouth is 1.5. */
  readonly entrance: Ratio;
  /**
   * What stands after the line, on the velocity head of the last pipe: 0 for a free end of pipe. A valve of flow area
   * `a` after a pipe of area `A` is (A/a)².
   */
  readonly outlet: Ratio;
}

export interface SteadyFlow {
  readonly flow: CubicMetrePerSecond;
  /** Mean velocity in each segment, in their order. */
  readonly velocities: readonly MetrePerSecond[];
  readonly isConverged: boolean;
}

/**
 * Flow at which a line's losses use up the whole fall: the most that can ever run through it, its terminal flow.
 *
 *   fall = H_line(Q) + Kₒ V²/2g
 *
 * Solved to one part in 10⁹ of the free fall through the narrowest bore. No fall gives no flow. A line on the way to a shut valve never gets here.
 *
 * Source: energy equation; the losses of the line as above.
 * @throws RangeError when `fall` or a loss is below zero, or when the line as described loses nothing (no length, no
 *   entrance loss), so that no flow could use up the fall.
 */
export function steadyFlow({
  segments,
  fall,
  extraLosses,
  water,
}: {
  readonly segments: readonly PipeSegment[];
  readonly fall: Metre;
  readonly extraLosses: EndLosses;
  readonly water: Water;
}): SteadyFlow {
  if (!(fall >= 0 && Number.isFinite(fall))) {
    throw new RangeError(`fall must not be below zero, got ${fall} m`);
  }
  if (!(extraLosses.outlet >= 0)) {
    throw new RangeError(`outlet must not be below zero, got ${extraLosses.outlet}`);
  }
  const lastPipe = segments.at(-1)?.pipe;
  if (!lastPipe) throw new RangeError('segments must hold at least one pipe, got none');

  const headLeft = (flow: CubicMetrePerSecond): Metre => {
    const V = meanVelocity(lastPipe, flow);
    const line = lineHeadLoss({ segments, entranceLoss: extraLosses.entrance, water, flow });
    return fall - line - (extraLosses.outlet * V ** 2) / (2 * GRAVITY);
  };
  const velocitiesAt = (flow: CubicMetrePerSecond) =>
    segments.map(({ pipe }) => meanVelocity(pipe, flow));
  if (fall === 0) return { flow: 0, velocities: velocitiesAt(0), isConverged: true };

  // Start from the free fall through the narrowest bore, and widen until the losses exceed the fall.
  const narrowest = Math.min(...segments.map(({ pipe }) => pipe.innerDiameter));
  let high = (Math.PI / 4) * narrowest ** 2 * Math.sqrt(2 * GRAVITY * fall);
  let doublings = 0;
  while (headLeft(high) > 0) {
    high *= 2;
    doublings += 1;
    if (doublings > 40) {
      throw new RangeError(
        'segments and extraLosses must lose some head, got a line without losses',
      );
    }
  }
  const { root, isConverged } = findRoot({
    f: headLeft,
    low: 0,
    high,
    tolerance: 1e-10 * high,
  });
  return { flow: root, velocities: velocitiesAt(root), isConverged };
}
