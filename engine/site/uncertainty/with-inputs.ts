/** An installation with drawn values in place of its own. */
import type { Installation } from '../../cycle/installation.ts';
import { MATERIALS } from '../../pipes/materials.ts';
import type { Pipe, PipeSegment } from '../../pipes/pipe.ts';
import type { Ratio } from '../../quantities.ts';
import { presentValue, varied } from '../varied.ts';
import type { Unsure, UnsureFactor, UnsureValue } from './uncertain-input.ts';
import { UNSURE_FACTORS, UNSURE_VALUES } from './uncertain-input.ts';

/** Judgement: a lift is drawn no nearer to the fall than this; below the fall water runs by itself and no ram is needed. */
const LEAST_LIFT_OVER_FALL: Ratio = 1.02;

/** The value that is not sure; nothing when this installation has no such thing. */
export function middleOf(installation: Installation, what: UnsureValue): number | undefined {
  switch (what) {
    case 'deliveryLength':
      return installation.deliveryLine.segments.reduce((sum, s) => sum + s.length, 0);
    case 'deliveryBore':
      return installation.deliveryLine.segments.at(-1)?.pipe.innerDiameter;
    default:
      return presentValue(installation, what);
  }
}

/** The installation with every drawn value, whatever the order in which they stand. */
export function withInputs(
  installation: Installation,
  drawn: Partial<Readonly<Record<Unsure, number>>>,
): Installation {
  let drawnPlace = installation;
  for (const what of UNSURE_VALUES) {
    const value = drawn[what];
    if (value !== undefined) drawnPlace = withValue(drawnPlace, what, value);
  }
  for (const what of UNSURE_FACTORS) {
    const factor = drawn[what];
    if (factor !== undefined && factor !== 1) drawnPlace = withFactor(drawnPlace, what, factor);
  }
  const { fall, lift } = drawnPlace;
  return { ...drawnPlace, lift: Math.max(lift, LEAST_LIFT_OVER_FALL * fall) };
}

function withValue(installation: Installation, what: UnsureValue, value: number): Installation {
  const { deliveryLine } = installation;
  const now = middleOf(installation, what);
  switch (what) {
    case 'deliveryLength': {
      const scale = value / (now as number);
      const { profile } = deliveryLine;
      return {
        ...installation,
        deliveryLine: {
          ...deliveryLine,
          segments: deliveryLine.segments.map((s) => ({ ...s, length: s.length * scale })),
          ...(profile && {
            profile: profile.map((p) => ({ ...p, distance: p.distance * scale })),
          }),
        },
      };
    }
    case 'deliveryBore': {
      const scale = value / (now as number);
      const segments = eachPipe(deliveryLine.segments, (pipe) => ({
        ...pipe,
        innerDiameter: pipe.innerDiameter * scale,
      }));
      return { ...installation, deliveryLine: { ...deliveryLine, segments } };
    }
    case 'trappedAir':
      return now ? withPocketsScaled(installation, value / now) : varied(installation, what, value);
    default:
      return varied(installation, what, value);
  }
}

/** Every pocket stays where it is. */
function withPocketsScaled(installation: Installation, scale: Ratio): Installation {
  const { driveLine } = installation;
  const pockets = driveLine.pockets
    .map((pocket) => ({ ...pocket, volume: pocket.volume * scale }))
    .filter(({ volume }) => volume > 0);
  return { ...installation, driveLine: { ...driveLine, pockets } };
}

function withFactor(installation: Installation, what: UnsureFactor, factor: Ratio): Installation {
  const { driveLine, deliveryLine, ram } = installation;
  const { wasteValve, deliveryValve } = ram;
  switch (what) {
    case 'roughness': {
      const rougher = (pipe: Pipe): Pipe => ({ ...pipe, roughness: pipe.roughness * factor });
      return {
        ...installation,
        driveLine: { ...driveLine, segments: eachPipe(driveLine.segments, rougher) },
        deliveryLine: { ...deliveryLine, segments: eachPipe(deliveryLine.segments, rougher) },
      };
    }
    case 'fittings':
      return {
        ...installation,
        driveLine: {
          ...driveLine,
          entranceLoss: driveLine.entranceLoss * factor,
          segments: driveLine.segments.map((s) => ({
            ...s,
            fittingsLoss: s.fittingsLoss * factor,
          })),
        },
      };
    case 'wallStiffness': {
      // Not by a thicker wall: in a hose, whose wall is thick, half the modulus would count for too little.
      const stiffer = (pipe: Pipe): Pipe => ({
        ...pipe,
        youngsModulus:
          factor * (pipe.youngsModulus ?? MATERIALS[pipe.material].youngsModulus.value),
      });
      return {
        ...installation,
        driveLine: { ...driveLine, segments: eachPipe(driveLine.segments, stiffer) },
      };
    }
    case 'curtainCoefficient': {
      const curtainCoefficient = wasteValve.curtainCoefficient * factor;
      return {
        ...installation,
        ram: { ...ram, wasteValve: { ...wasteValve, curtainCoefficient } },
      };
    }
    case 'drag': {
      const dragCoefficient = wasteValve.dragCoefficient * factor;
      return { ...installation, ram: { ...ram, wasteValve: { ...wasteValve, dragCoefficient } } };
    }
    case 'deliveryValveLoss': {
      const lossCoefficient = deliveryValve.lossCoefficient * factor;
      return {
        ...installation,
        ram: { ...ram, deliveryValve: { ...deliveryValve, lossCoefficient } },
      };
    }
    case 'backFlow': {
      const backFlowPerBeat = deliveryValve.backFlowPerBeat * factor;
      return {
        ...installation,
        ram: { ...ram, deliveryValve: { ...deliveryValve, backFlowPerBeat } },
      };
    }
    case 'bodyGive':
      return {
        ...installation,
        ram: { ...ram, bodyElasticity: ram.bodyElasticity * factor },
      };
  }
}

function eachPipe(
  segments: readonly PipeSegment[],
  change: (pipe: Pipe) => Pipe,
): readonly PipeSegment[] {
  return segments.map((segment) => ({ ...segment, pipe: change(segment.pipe) }));
}
