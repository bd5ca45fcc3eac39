/**
 * The friction law of the engine: one factor for every regime, smooth enough for a solver.
 *
 * Laminar flow below Re 2000, Colebrook–White solved exactly above Re 4000. Churchill's single formula was not taken:
 * it is up to 3 % off Colebrook–White where most drive lines run. Hammer and swing pass through the transition many
 * times a beat, so a jump there would make the step unsteady; the two laws are joined by a smooth curve.
 */
import type { Ratio } from '../quantities.ts';
import { colebrookFriction, colebrookSlope } from './colebrook-friction.ts';
import { laminarFriction } from './laminar-friction.ts';

/** Reynolds number below which flow in a pipe is taken as laminar. */
export const LAMINAR_END: Ratio = 2000;
/** Reynolds number above which flow in a pipe is taken as fully turbulent. */
export const TURBULENT_START: Ratio = 4000;

/**
 * Darcy friction factor at any Reynolds number above nought.
 *
 *   Re ≤ 2000:         f = 64/Re
 *   2000 < Re < 4000:  ln f a cubic in ln Re that meets both laws with their own slopes
 *   Re ≥ 4000:         Colebrook–White
 *
 * Judgement: no law is agreed on for the transition. The cubic keeps f and its slope continuous, stays between the
 * laminar law and Colebrook–White, and lets the head loss f Re² rise all the way (a test measures this).
 *
 * Two arguments in turn, as it is called in tight places; the other way round it throws for any flow in a pipe.
 *
 * Source: Hagen–Poiseuille; Colebrook (1939); the cubic is ours.
 * @throws RangeError when `reynolds` is not above zero or `relativeRoughness` is outside 0–0.1.
 */
export function darcyFriction(reynolds: Ratio, relativeRoughness: Ratio): Ratio {
  // Also refuses a nonsense roughness in laminar flow, where it would pass unseen.
  const turbulentReynolds = Math.max(reynolds, TURBULENT_START);
  const turbulent = colebrookFriction({ reynolds: turbulentReynolds, relativeRoughness });
  if (reynolds >= TURBULENT_START) return turbulent;
  if (reynolds <= LAMINAR_END) return laminarFriction(reynolds);

  const span = Math.log(TURBULENT_START / LAMINAR_END);
  const u = Math.log(reynolds / LAMINAR_END) / span;
  const start = Math.log(laminarFriction(LAMINAR_END));
  const end = Math.log(turbulent);
  const startSlope = -span;
  const endSlope = span * colebrookSlope({ reynolds: TURBULENT_START, relativeRoughness });
  const logFriction =
    (1 + 2 * u) * (1 - u) ** 2 * start +
    u * (1 - u) ** 2 * startSlope +
    u ** 2 * (3 - 2 * u) * end +
    u ** 2 * (u - 1) * endSlope;
  return Math.exp(logFriction);
}
