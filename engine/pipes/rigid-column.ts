/**
 * How the flow grows in a pipe once its end is open: the water taken as one stiff column.
 *
 * With a constant friction factor the growth is a hyperbolic tangent. It is the hand check for the drive stroke; a run
 * uses elastic pipe and the friction of the moment.
 */
import {
  GRAVITY,
  type Metre,
  type MetrePerSecond,
  type Ratio,
  type Second,
} from '../quantities.ts';

/**
 * Velocity at which losses use up the whole head.
 *
 *   V₀ = √( 2 g H / (K + f L/D) )
 *
 * `lossCoefficient` holds every loss but the wall's, the velocity head at the outlet included.
 *
 * Source: energy equation, as in any fluid mechanics text (memory).
 * @throws RangeError when `head`, `length`, the bore or the sum of losses is not above zero.
 */
export function finalVelocity({
  head,
  length,
  innerDiameter,
  darcyFriction,
  lossCoefficient,
}: {
  readonly head: Metre;
  readonly length: Metre;
  readonly innerDiameter: Metre;
  readonly darcyFriction: Ratio;
  readonly lossCoefficient: Ratio;
}): MetrePerSecond {
  requirePositive({ head, length, innerDiameter }, 'm');
  const losses = lossCoefficient + (darcyFriction * length) / innerDiameter;
  requirePositive({ losses }, '');
  return Math.sqrt((2 * GRAVITY * head) / losses);
}

/**
 * Time in which the flow would reach its final velocity if it kept its first acceleration.
 *
 *   T = L V₀ / (g H)
 *
 * Source: rigid-column theory, derived.
 * @throws RangeError when an argument is not above zero.
 */
export function growthTime({
  head,
  length,
  finalVelocity,
}: {
  readonly head: Metre;
  readonly length: Metre;
  readonly finalVelocity: MetrePerSecond;
}): Second {
  requirePositive({ head, length }, 'm');
  requirePositive({ finalVelocity }, 'm/s');
  return (length * finalVelocity) / (GRAVITY * head);
}

/**
 * Velocity after a time, from rest.
 *
 *   V = V₀ tanh(t / T)
 *
 * Source: rigid-column theory, derived from dV/dt = (gH/L)(1 − V²/V₀²).
 * @throws RangeError when `growthTime` or `finalVelocity` is not above zero, or `time` is below zero.
 */
export function velocityAfter({
  time,
  growthTime,
  finalVelocity,
}: {
  readonly time: Second;
  readonly growthTime: Second;
  readonly finalVelocity: MetrePerSecond;
}): MetrePerSecond {
  requirePositive({ growthTime }, 's');
  requirePositive({ finalVelocity }, 'm/s');
  if (!(time >= 0)) throw new RangeError(`time must not be below zero, got ${time} s`);
  return finalVelocity * Math.tanh(time / growthTime);
}

/**
 * Time that the flow takes from one velocity to a higher one.
 *
 *   t = T [ artanh(V/V₀) − artanh(V₁/V₀) ]
 *
 * Source: rigid-column theory, the law above turned round.
 * @throws RangeError when `growthTime` or `finalVelocity` is not above zero, or a velocity does not lie within the
 *   final one.
 */
export function timeToVelocity({
  velocity,
  startVelocity,
  growthTime,
  finalVelocity,
}: {
  readonly velocity: MetrePerSecond;
  readonly startVelocity: MetrePerSecond;
  readonly growthTime: Second;
  readonly finalVelocity: MetrePerSecond;
}): Second {
  requirePositive({ growthTime }, 's');
  requirePositive({ finalVelocity }, 'm/s');
  for (const [name, value] of Object.entries({ velocity, startVelocity })) {
    if (!(value >= 0 && value < finalVelocity)) {
      throw new RangeError(
        `${name} must be at least 0 and below the final velocity of ${finalVelocity} m/s, got ${value} m/s`,
      );
    }
  }
  return (
    growthTime * (Math.atanh(velocity / finalVelocity) - Math.atanh(startVelocity / finalVelocity))
  );
}

function requirePositive(quantities: Readonly<Record<string, number>>, unit: string): void {
  for (const [name, value] of Object.entries(quantities)) {
    if (!(value > 0))
      throw new RangeError(`${name} must be above zero, got ${value} ${unit}`.trim());
  }
}
