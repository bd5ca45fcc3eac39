/**
 * The water in the delivery line as one rigid column, which first fills the line and then flows out at the tank.
 *
 *   L/(g A) dQ/dt = H_vessel − z_front − h_f(Q)
 *
 * While the line fills, the front of the water stands at the height of the pipe where it has come to: this is how back
 * pressure builds up. A column runs one way; when its flow turns, the delivery valve would have shut, and it is held at
 * rest.
 *
 * Source: Newton's law for a rigid column, any text on unsteady flow; friction from pipes/friction.ts.
 */

import type { CubicMetre, CubicMetrePerSecond, Metre, Second } from '../quantities.ts';
import { GRAVITY } from '../quantities.ts';
import { deliveryFrictionHead } from './delivery-friction.ts';
import type { Installation } from './installation.ts';
import type { VesselOutflow } from './ram-kernel.ts';

/** A delivery stop valve that is shut: nothing leaves the vessel. */
export const STOP_VALVE_SHUT: VesselOutflow = { advance: () => 0 };

const FRICTION_POINTS = 64;

export class DeliveryColumn implements VesselOutflow {
  readonly #length: Metre;
  readonly #volume: CubicMetre;
  readonly #lift: Metre;
  readonly #profile: Installation['deliveryLine']['profile'];
  /** Inertance L/(g A) of the full line. */
  readonly #inertance: number;
  /** Head lost per flow in the full line, against the flow, so that friction is not computed at every step. */
  readonly #lossOverFlow: Float64Array;
  readonly #flowScale: number;
  #filled: CubicMetre;
  #flow: CubicMetrePerSecond = 0;

  /**
   * The column starts with the line filled as high as the source's level would fill it, or wholly.
   * @throws RangeError when the line has no segments.
   */
  constructor(installation: Installation, start: 'toSourceLevel' | 'full') {
    const { segments, profile, sharedBy = 1 } = installation.deliveryLine;
    if (segments.length === 0) throw new RangeError('a delivery line needs at least one segment');
    this.#lift = installation.lift;
    this.#profile = profile;
    let length = 0;
    let volume = 0;
    let inertance = 0;
    for (const { length: l, pipe } of segments) {
      // One ram of several that share the line fills its share of it, and moves it.
      const area = ((Math.PI / 4) * pipe.innerDiameter ** 2) / sharedBy;
      length += l;
      volume += l * area;
      inertance += l / (GRAVITY * area);
    }
    this.#length = length;
    this.#volume = volume;
    this.#inertance = inertance;
    this.#filled = start === 'full' ? volume : this.#volumeBelow(installation.fall);
    const narrowest = Math.min(...segments.map((s) => s.pipe.innerDiameter));
    const largest = (3 * (Math.PI / 4) * narrowest ** 2) / sharedBy;
    this.#flowScale = (FRICTION_POINTS - 1) / largest;
    this.#lossOverFlow = Float64Array.from({ length: FRICTION_POINTS }, (_, k) => {
      const flow = Math.max(k, 0.1) / this.#flowScale;
      return deliveryFrictionHead(installation.deliveryLine, installation.water, flow) / flow;
    });
  }

  /** Water that stands in the line when its front is at a height. */
  #volumeBelow(height: Metre): CubicMetre {
    const slices = 200;
    let filled = 0;
    for (let k = 1; k <= slices; k++) {
      const distance = (k / slices) * this.#length;
      if (heightAlong(this.#profile, this.#lift, this.#length, distance) > height) break;
      filled = k / slices;
    }
    return filled * this.#volume;
  }

  /** Share of the line that is full of water. */
  get filledShare(): number {
    return this.#volume > 0 ? Math.min(1, this.#filled / this.#volume) : 1;
  }

  /** Height of the water's front above the waste valve's outlet. */
  get frontHeight(): Metre {
    return heightAlong(this.#profile, this.#lift, this.#length, this.filledShare * this.#length);
  }

  advance(vesselHead: Metre, timeStep: Second): CubicMetrePerSecond {
    // The first metre of water is always there: a column of no length would have no inertia.
    const share = Math.max(this.filledShare, Math.min(1, 1 / Math.max(this.#length, 1)));
    const u = Math.min(this.#flow * this.#flowScale, FRICTION_POINTS - 1.001);
    const k = u | 0;
    const a = this.#lossOverFlow[k] as number;
    const b = this.#lossOverFlow[k + 1] as number;
    const resistance = (a + (u - k) * (b - a)) * share;
    const inertance = this.#inertance * share;
    const push = vesselHead - this.frontHeight;
    // Friction implicit, so that a long step cannot overshoot.
    const flow = (inertance * this.#flow + timeStep * push) / (inertance + timeStep * resistance);
    this.#flow = Math.max(0, flow);
    this.#filled = Math.min(this.#volume, this.#filled + timeStep * this.#flow);
    return this.#flow;
  }
}

/** Height of a line at a distance along it: along its profile, or on a straight climb to the lift. */
function heightAlong(
  profile: Installation['deliveryLine']['profile'],
  lift: Metre,
  length: Metre,
  distance: Metre,
): Metre {
  if (!profile || profile.length < 2) return length > 0 ? (lift * distance) / length : lift;
  let highest = -Infinity;
  for (let k = 1; k < profile.length; k++) {
    const a = profile[k - 1] as { distance: Metre; elevation: Metre };
    const b = profile[k] as { distance: Metre; elevation: Metre };
    // Water that has passed a crest runs on by itself, so the highest point reached is what it stands against.
    highest = Math.max(highest, a.elevation);
    if (distance <= b.distance) {
      const run = Math.max(b.distance - a.distance, 1e-9);
      return Math.max(
        highest,
        a.elevation + ((b.elevation - a.elevation) * (distance - a.distance)) / run,
      );
    }
  }
  return Math.max(highest, (profile.at(-1) as { elevation: Metre }).elevation);
}
