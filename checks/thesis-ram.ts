/**
 * A ram of a university's teaching bench, put together from three theses of one place: none of them prints line, valve
 * and flows together.
 *
 * Line of 38.1 mm and 12 m: USU-VESSEL. Lightest of the valve loads, 0.353 kg: USU-LOAD. Falls, lifts and strokes:
 * USU-STROKE. The rest is a typical DN40. So trends can be looked at; single numbers prove little.
 */
import {
  type OperatingPoint,
  operatingPoint,
  submergedWeightOfMass,
  typicalRam,
} from '@fallwright/engine';
import { typicalPlace } from './places.ts';

const LINE = 12;
const LOAD = 0.353;

const points = new Map<string, OperatingPoint>();

export function thesisRamPoint(setting: {
  readonly fall: number;
  readonly lift: number;
  readonly stroke: number;
}): OperatingPoint {
  const key = Object.values(setting).join(' ');
  let point = points.get(key);
  if (!point) {
    const typical = typicalRam('DN40');
    const ram = {
      ...typical,
      wasteValve: {
        ...typical.wasteValve,
        kind: 'weighted' as const,
        stroke: setting.stroke,
        movingMass: LOAD,
        submergedWeight: submergedWeightOfMass(LOAD),
      },
    };
    const { fall, lift } = setting;
    const place = typicalPlace({ size: 'DN40', fall, lift, length: LINE, ram });
    const [segment] = place.driveLine.segments;
    if (!segment) throw new Error('a typical place has one pipe');
    const driveLine = {
      ...place.driveLine,
      segments: [{ ...segment, pipe: { ...segment.pipe, innerDiameter: 0.0381 } }],
    };
    point = operatingPoint({ ...place, driveLine }, { reaches: 16, substeps: 80, block: 24 });
    points.set(key, point);
  }
  return point;
}
