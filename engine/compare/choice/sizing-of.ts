/** The sizes that go with a combination once it is picked: vessel, snifter, strainer, vents, anchors, delivery pipe. */
import { closingFlow } from '../../machine/waste-valve.ts';
import type {
  CubicMetre,
  Metre,
  MetrePerSecond,
  Newton,
  Ratio,
  SquareMetre,
} from '../../quantities.ts';
import type { ProfileTurn } from '../../site/profile/crests-and-sags.ts';
import type { Candidate } from './candidates.ts';
import { deliveryCrests, driveCrests } from './parts-list/needs.ts';
import { LARGEST_PULSE, type PlaceToFit, type Wish } from './place-to-fit.ts';
import { type CandidateRun, type PartPressure, pressuresOf, pulseOf } from './run.ts';
import { anchorForce, bendForce } from './sizing/anchor-force.ts';
import { deliveryPipeRows } from './sizing/delivery-pipe-choice.ts';
import { snifterSize } from './sizing/snifter-size.ts';
import { intakeDepth, strainerArea } from './sizing/strainer-area.ts';
import { vesselForPulse } from './sizing/vessel-for-pulse.ts';

export interface Sizing {
  /** Swing of the vessel's head over its mean, and the smallest vessel that keeps it within what is wished. */
  readonly pulse: Ratio;
  readonly leastVessel: CubicMetre;
  /** Widest snifter within what is usual; absent when even the narrowest would take too much. */
  readonly snifter?: Metre;
  /** Open area of the strainer on each drive line's (or the feeder's) mouth. */
  readonly strainer: { readonly low: SquareMetre; readonly high: SquareMetre };
  readonly intakeDepth: Metre;
  /** Crests at which each line wants a vent; the drive line's along the way, not along a pipe laid in curves. */
  readonly vents: {
    readonly feeder: readonly ProfileTurn[];
    readonly drive: readonly ProfileTurn[];
    readonly delivery: readonly ProfileTurn[];
  };
  /** Push on each ram's footing, and on a square bend, at the governing pressure. */
  readonly anchorForce: Newton;
  readonly squareBendForce: Newton;
  readonly deliveryFriction: Metre;
  readonly deliveryVelocity: MetrePerSecond;
  readonly pressures: readonly PartPressure[];
}

/** Judgement: a twentieth of the delivery is what the vessel's air may cost. */
const LARGEST_SPRAY: Ratio = 0.05;

/** @throws RangeError for a run that delivers nothing. */
export function sizingOf(
  place: PlaceToFit,
  wish: Wish,
  candidate: Candidate,
  run: CandidateRun,
): Sizing {
  const { parts } = candidate;
  const { drivePipe, deliveryPipe, feeder, tuning, count } = parts;
  const innerDiameter = drivePipe.pipe.innerDiameter;
  const { airShare, polytropicIndex } = tuning.ram.airVessel;
  const snifter = snifterSize({
    duty: {
      deliveryFlow: run.deliveryFlow,
      backFlow: tuning.ram.deliveryValve.backFlowPerBeat * run.beatFrequency,
      closingFlow: closingFlow(tuning.ram.wasteValve, place.water.density),
    },
    vesselHead: run.vesselHead,
    largestShare: LARGEST_SPRAY,
  });
  const mouth = feeder ? feeder.pipe.pipe.innerDiameter : innerDiameter;
  const peakPressure = run.drivePressure;
  const [row] = deliveryPipeRows({
    pipes: [deliveryPipe],
    length: place.deliveryRoute.length,
    lift: place.lift,
    flow: count * run.deliveryFlow,
    water: place.water,
  });
  return {
    pulse: pulseOf(place, parts, run),
    leastVessel: vesselForPulse({
      duty: {
        water: place.water,
        vesselHead: run.vesselHead,
        deliveredPerBeat: run.deliveredPerBeat,
        backFlowPerBeat: tuning.ram.deliveryValve.backFlowPerBeat,
      },
      largestShare: wish.largestPulse ?? LARGEST_PULSE,
      airShare,
      polytropicIndex,
    }),
    ...(snifter === undefined ? {} : { snifter }),
    strainer: strainerArea(mouth),
    intakeDepth: intakeDepth(mouth),
    vents: {
      ...driveCrests(place, parts),
      delivery: deliveryCrests(place, deliveryPipe.pipe),
    },
    anchorForce: anchorForce({ peakPressure, innerDiameter }),
    squareBendForce: bendForce({ peakPressure, innerDiameter, angle: Math.PI / 2 }),
    deliveryFriction: row?.frictionHead ?? 0,
    deliveryVelocity: row?.velocity ?? 0,
    pressures: pressuresOf(place, parts, run),
  };
}
