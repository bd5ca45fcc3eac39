/**
 * How large an air vessel must be for the delivery line to feel no more than a stated pulse.
 *
 * The vessel takes in a beat's delivery in one short push, and with it what runs back before the delivery valve has shut. It lets
 * the delivery out over the whole beat. So its air is squeezed and stretched by both together once a beat. Taking the whole of it
 * as the swing errs a little on the safe side: some leaves while it comes in.
 */
import type { AirVessel } from '../../../machine/ram.ts';
import { findRoot } from '../../../numerics/find-root.ts';
import type { CubicMetre, Metre, Ratio } from '../../../quantities.ts';
import type { Water } from '../../../water/water.ts';

/** A vessel, the head that it stands at, and what each beat brings. */
export interface VesselDuty {
  readonly water: Water;
  /** Mean gauge head in the vessel. */
  readonly vesselHead: Metre;
  readonly deliveredPerBeat: CubicMetre;
  /** What comes in besides and runs back before the delivery valve has shut. */
  readonly backFlowPerBeat: CubicMetre;
}

/**
 * Air left in a vessel once its line is full and stands at a head.
 *
 *   V = V₀ H_atm / (H_atm + h)
 *
 * Filling is slow, so Boyle's law holds whatever the index of a beat is.
 * Source: Boyle's law; checks hold rows AV-FILL of air_vessel.csv.
 */
export function airInVessel(vessel: AirVessel, { water, vesselHead }: VesselDuty): CubicMetre {
  const { atmosphericHead } = water;
  return (vessel.volume * vessel.airShare * atmosphericHead) / (atmosphericHead + vesselHead);
}

function swungPerBeat({ deliveredPerBeat, backFlowPerBeat }: VesselDuty): CubicMetre {
  return deliveredPerBeat + backFlowPerBeat;
}

/**
 * Swing of the vessel's head in a beat, from lowest to highest, over its mean gauge head.
 *
 *   Δh/h = (H_atm + h)/h · [ (1 − v/2V)⁻ⁿ − (1 + v/2V)⁻ⁿ ]
 *
 * v is delivered and run back a beat, V the air at the mean head. Infinity when the beat's water would fill the air altogether.
 * Source: polytropic law p Vⁿ = constant, as in checks (air_vessel.csv); that all of v swings is Judgement, see
 * above, and a test holds it against a simulated vessel.
 */
export function pulseShare(vessel: AirVessel, duty: VesselDuty): Ratio {
  const { water, vesselHead } = duty;
  const half = swungPerBeat(duty) / (2 * airInVessel(vessel, duty));
  if (!(half < 1)) return Infinity;
  const n = vessel.polytropicIndex;
  return (
    ((water.atmosphericHead + vesselHead) / vesselHead) * ((1 - half) ** -n - (1 + half) ** -n)
  );
}

/**
 * Volume of the smallest vessel whose pulse stays within a share of its mean head.
 *
 * Source: `pulseShare` turned round.
 * @throws RangeError when `largestShare` or the duty's delivery is not above zero.
 */
export function vesselForPulse({
  duty,
  largestShare,
  airShare,
  polytropicIndex,
}: {
  readonly duty: VesselDuty;
  readonly largestShare: Ratio;
  readonly airShare: Ratio;
  readonly polytropicIndex: Ratio;
}): CubicMetre {
  if (!(largestShare > 0)) {
    throw new RangeError(`largestShare must be above zero, got ${largestShare}`);
  }
  if (!(duty.deliveredPerBeat > 0)) {
    throw new RangeError(`deliveredPerBeat must be above zero, got ${duty.deliveredPerBeat} m³`);
  }
  // In ln V, between half a beat's water and a vessel in which nothing is felt any more.
  const excess = (log: number): number => {
    const vessel = { volume: Math.exp(log), airShare, polytropicIndex };
    return Math.min(pulseShare(vessel, duty), 1e6) - largestShare;
  };
  const unit = { volume: 1, airShare, polytropicIndex };
  const least = Math.log(swungPerBeat(duty) / (2 * airInVessel(unit, duty)));
  const { root } = findRoot({ f: excess, low: least, high: least + 40, tolerance: 1e-9 });
  return Math.exp(root);
}
