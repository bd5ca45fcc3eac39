/**
 * Two laboratory rigs whose steady flow, springs and moving mass are published: a small vertical ram whose waste valve is a sprung
 * plate in an in-line check valve.
 *
 * The steady flow through the open valve sets one unknown, the passage round the plate. Everything that is not
 * published is that of a typical ram of this size. Nothing is fitted to the beats, the delivery or the pressures.
 */
import {
  findRoot,
  type Installation,
  type OperatingPoint,
  operatingPoint,
  type SprungValve,
  terminalFlow,
  typicalRam,
  waterAt,
} from '@fallwright/engine';
import { fromLitresPerMinute } from '@fallwright/units';
import { lengthOf } from './places.ts';

/** Judgement: an indoor bench at 20 °C, near sea level. */
const WATER = waterAt({ temperature: 20, altitude: 0 });
/** Drive pipe of both rigs. Source: AC-SP19; wall from the outer diameter of 1 in pipe, 33.4 mm (ASTM D1785). */
const PIPE = {
  name: '1 in PVC of the rig',
  material: 'pvc1120',
  innerDiameter: 0.02372,
  wallThickness: (0.0334 - 0.02372) / 2,
  roughness: 1.5e-6,
} as const;
/** Source: AC-SU19: seat of 641 mm², plate and stem of 0.1132 kg. */
const SEAT_AREA = 641e-6;
const MOVING_MASS = 0.1132;
/** Source: AC-SU22, a later state of the same rig. */
const STROKE = 0.0159;
/** Sharp-edged openings, as in a typical ram. */
const COEFFICIENT = 0.7;
/** Entrance 0.5 and the velocity head. */
const ENTRANCE_LOSS = 1.5;

/** A rig's fall, line and steady flow with its valve held open. */
interface Rig {
  readonly fall: number;
  readonly length: number;
  readonly steadyFlow: number;
}

/** Source: AC-SP19, row AC19-F: 59.8 L/min. */
export const RIG_OF_2019: Rig = {
  fall: 2.06,
  length: 1.74,
  steadyFlow: fromLitresPerMinute(59.8),
};
/** Source: AC-SU21, row AC21-F: 42.5 L/min; the rig rebuilt, its springs moved outside. */
export const RIG_OF_2021: Rig = {
  fall: 1.56,
  length: 1.56,
  steadyFlow: fromLitresPerMinute(42.5),
};

export interface RigSetting {
  /** Force of the spring towards open, at the open stop and shut. */
  readonly forceAtOpen: number;
  readonly forceAtShut: number;
  /** Head in the air vessel. */
  readonly vesselHead: number;
  readonly stroke?: number;
  readonly dragCoefficient?: number;
  /** Bore of the delivery valve's passage; that of a typical ram by default. */
  readonly deliveryBore?: number;
}

/** A rig with a passage of this area round its plate. */
function withPassage(rig: Rig, setting: RigSetting, passage: number): Installation {
  const typical = typicalRam('DN25');
  const { deliveryBore } = setting;
  const wasteValve: SprungValve = {
    kind: 'sprung',
    seatDiameter: Math.sqrt((4 * SEAT_AREA) / Math.PI),
    stroke: setting.stroke ?? STROKE,
    movingMass: MOVING_MASS,
    // The water goes round the plate: the passage is both the port that it loses head in and the gap that drags.
    portArea: passage,
    gapArea: passage,
    curtainCoefficient: COEFFICIENT,
    portCoefficient: COEFFICIENT,
    dragCoefficient: setting.dragCoefficient ?? 1,
    forceAtOpen: setting.forceAtOpen,
    forceAtShut: setting.forceAtShut,
  };
  return {
    water: WATER,
    source: { kind: 'steady' },
    fall: rig.fall,
    driveLine: {
      segments: [
        {
          pipe: PIPE,
          length: rig.length,
          fittingsLoss: 0,
          restraint: 'anchoredThroughout',
          freeAirFraction: 0,
        },
      ],
      entranceLoss: ENTRANCE_LOSS,
      pockets: [],
    },
    ram: {
      ...typical,
      name: 'laboratory ram',
      wasteValve,
      deliveryValve: {
        ...typical.deliveryValve,
        ...(deliveryBore === undefined ? {} : { area: (Math.PI / 4) * deliveryBore ** 2 }),
      },
    },
    lift: setting.vesselHead,
    // The vessel's head is the published one: a delivery line so wide that it adds nothing.
    deliveryLine: { segments: [lengthOf('PE100 SDR11 110', 1)] },
  };
}

/** The rig, its passage such that it passes the steady flow that was measured. */
export function rigAt(rig: Rig, setting: RigSetting): Installation {
  const passesAt = (area: number) => terminalFlow(withPassage(rig, setting, area));
  const { root } = findRoot({
    f: (area) => passesAt(area) - rig.steadyFlow,
    low: 5e-5,
    high: 2e-3,
    tolerance: 1e-10,
  });
  return withPassage(rig, setting, root);
}

/** METHOD: peaks need about 16 reaches; the substeps follow a disc that crosses in some hundredths of a second. */
export const RIG_RESOLUTION = { reaches: 16, substeps: 80, block: 24 } as const;

export function rigPoint(rig: Rig, setting: RigSetting): OperatingPoint {
  return operatingPoint(rigAt(rig, setting), RIG_RESOLUTION);
}

/** Springs of the rig of 2019. Source: notes to rows AC19-R1 to R5. */
export const SOFT_SPRING = { forceAtOpen: 0, forceAtShut: 5.7 } as const;
export const STIFF_SPRING = { forceAtOpen: 1.9, forceAtShut: 12.6 } as const;
