/**
 * What a combination cannot exceed, without a run.
 *
 * Each bound is cheap and errs towards letting a combination through: what they turn away, a run would have turned away too.
 */

import { deliveryFrictionHead } from '../../cycle/delivery-friction.ts';
import type { Installation } from '../../cycle/installation.ts';
import { terminalFlow } from '../../cycle/terminal-flow.ts';
import { closingFlow, openingForces, type WasteValve } from '../../machine/waste-valve.ts';
import { findRoot } from '../../numerics/find-root.ts';
import { deratedRating } from '../../pipes/derated-rating.ts';
import { joukowskyHead } from '../../pipes/joukowsky.ts';
import type { PipeSegment } from '../../pipes/pipe.ts';
import { waveSpeed } from '../../pipes/wave-speed.ts';
import type { CubicMetrePerSecond, Metre } from '../../quantities.ts';
import { GRAVITY } from '../../quantities.ts';
import type { Parts } from './candidates.ts';
import type { Reason } from './reasons.ts';

/** What can be said of one ram's share of a combination before it is run. */
export interface Bounds {
  /** Flow through the line and the wide-open valve. */
  readonly terminalFlow: CubicMetrePerSecond;
  /** Flow that shuts the valve. */
  readonly closingFlow: CubicMetrePerSecond;
  /** Most flow that the line can have gathered when the valve is shut. */
  readonly fastestFlow: CubicMetrePerSecond;
  /** Why it cannot be used at all. */
  readonly reason?: Reason;
}

/**
 * Bounds of a drive line and a ram, whatever stands behind the delivery valve. The line's first level is the source's: a
 * feeder can only take from it.
 */
export function boundsOf(installation: Installation, parts: Parts): Bounds {
  const { water, ram, fall } = installation;
  const terminal = terminalFlow(installation);
  const closing = closingFlow(ram.wasteValve, water.density);
  const fastest = fastestFlow(installation, terminal, closing);
  const bounds = {
    terminalFlow: terminal,
    closingFlow: closing,
    fastestFlow: fastest,
  };
  const last = installation.driveLine.segments.at(-1) as PipeSegment;
  const area = (Math.PI / 4) * last.pipe.innerDiameter ** 2;
  const speed = waveSpeed(last, water);

  // The valve shuts at its closing flow or above; below it, it stays open for ever.
  if (terminal < closing) {
    return {
      ...bounds,
      reason: { kind: 'staysOpen', terminalFlow: terminal, closingFlow: closing },
    };
  }

  // Parts are judged by a ΔV/g of the fastest flow, and that is at least the closing flow.
  const level = parts.feeder ? 0 : fall;
  const pressure = water.density * GRAVITY * (level + joukowskyHead(speed, closing / area));
  const pipeRating = deratedRating(last.pipe, water.temperature);
  for (const [part, name, rating] of [
    ['drivePipe', last.pipe.name, pipeRating],
    ['ram', ram.name, ram.rating],
  ] as const) {
    if (rating !== undefined && pressure > rating) {
      return { ...bounds, reason: { kind: 'overRated', part, name, pressure, rating } };
    }
  }

  const reaches = fall + joukowskyHead(speed, fastest / area);
  const needs = installation.lift + ram.deliveryValve.crackingHead;
  if (reaches < needs) return { ...bounds, reason: { kind: 'liftTooHigh', reaches, needs } };
  return bounds;
}

/**
 * Most flow that a single-pipe line can have when its waste valve is shut.
 *
 *   Q ≤ min( Q_terminal, Q_c + Q' (3 m s Q_c/(F Q'))^⅓ + 2 g H A/a ),  Q' = g A H/L
 *
 * The disc leaves its stop at Q_c. From then the flow grows by no more than Q' (a column without losses), and the disc is
 * pushed by F[(Q/Q_c)² − 1] ≥ 2 F Q' t/Q_c or more, so it has run its stroke s after (3 m s Q_c/(F Q'))^⅓ at the latest; a
 * slower growth adds less. The water of an elastic line gathers speed in steps, 2 g H A/a each: one is added.
 * Source: Newton's law for disc and column, derived here; a test holds it against random places.
 */
function fastestFlow(
  installation: Installation,
  terminal: CubicMetrePerSecond,
  closing: CubicMetrePerSecond,
): CubicMetrePerSecond {
  const { driveLine, water, fall, ram } = installation;
  const last = driveLine.segments.at(-1) as PipeSegment;
  const lengthOverArea = driveLine.segments.reduce(
    (sum, s) => sum + s.length / ((Math.PI / 4) * s.pipe.innerDiameter ** 2),
    0,
  );
  const growth = (GRAVITY * fall) / lengthOverArea;
  const area = (Math.PI / 4) * last.pipe.innerDiameter ** 2;
  const step = (2 * GRAVITY * fall * area) / waveSpeed(last, water);
  return Math.min(terminal, closing + growth * closingTime(ram.wasteValve, closing, growth) + step);
}

function closingTime(valve: WasteValve, closing: CubicMetrePerSecond, growth: number): number {
  const { atOpen } = openingForces(valve);
  if (!(atOpen > 0 && growth > 0)) return 0;
  return Math.cbrt((3 * valve.movingMass * valve.stroke * closing) / (atOpen * growth));
}

/**
 * Most that one ram can deliver: no ram gives more energy than it takes, and a valve that beats does not take all the line passes.
 *
 *   q (h − H) ≤ Q_w H,  q h ≤ (Q_w + q) H with Q_w + q ≤ yield
 *   Q_w ≤ Q_f [ −½ ln(1 − r²)/(r artanh r) ] / [ 1 + H/(h − H) · r/artanh r ],  r = Q_f/Q_terminal
 *
 * h is the lift and the friction that q itself makes in the delivery line. The first bracket is the mean of a column's flow that
 * starts from rest and ends at Q_f (`velocityAfter` in pipes/rigid-column.ts); the second adds the time in which h slows it to rest.
 *
 * Source: energy (Rankine's and D'Aubuisson's efficiency of 1) and the rigid column, derived here. Waves may open the valve on
 * water that is not quite at rest; that the losses left out outweigh it by far is Judgement: on 1500 random places that run,
 * waste came to 0.75 of the first bracket at most, and delivery to 0.4 of the bound without the second (a test tries some again).
 */
export function deliveryBound(
  installation: Installation,
  bounds: Pick<Bounds, 'fastestFlow' | 'terminalFlow'>,
): CubicMetrePerSecond {
  const { fall, lift, source, deliveryLine, water } = installation;
  if (lift <= fall) return Infinity;
  const given = (source.kind === 'steady' ? source.yield : source.inflow) ?? Infinity;
  // A line that is at its terminal flow would take for ever; so near to it the mean is that flow.
  const r = Math.min(bounds.fastestFlow / bounds.terminalFlow, 1 - 1e-9);
  const slowness = Math.atanh(r) / r;
  const meanWhileOpen = (bounds.fastestFlow * -0.5 * Math.log(1 - r * r)) / (r * r * slowness);
  const at = (head: Metre): number => {
    const perWaste = fall / (head - fall);
    return Math.min((meanWhileOpen * perWaste) / (1 + perWaste / slowness), (given * fall) / head);
  };
  const free = at(lift);
  if (!(free > 0)) return free;
  const excess = (flow: number): number =>
    at(lift + deliveryFrictionHead(deliveryLine, water, flow)) - flow;
  // Friction can only take from the bound; the root is taken from its upper side.
  const { root } = findRoot({ f: excess, low: 0, high: free * 1.001, tolerance: 1e-4 * free });
  return Math.min(free, root + 2e-4 * free);
}
