/** A line with the wave speed that an example states, for examples that give no pipe and no water. */
import {
  type DriveLine,
  type PipeSegment,
  type Water,
  waterAt,
  waveSpeed,
} from '@fallwright/engine';

/** Steel, a tenth as thick as its bore: stiffer than any example needs. */
const WALL_PER_BORE = 0.1;

/**
 * The water's bulk modulus is chosen so that waves run at the speed stated; nothing else of the line depends on it.
 * It never boils, since the exact solutions let heads fall below a vacuum.
 */
export function lineOfSpeed(example: {
  readonly length: number;
  readonly innerDiameter: number;
  readonly waveSpeed: number;
  readonly entranceLoss?: number;
}): { readonly driveLine: DriveLine; readonly water: Water } {
  const { length, innerDiameter, entranceLoss = 0 } = example;
  const segment: PipeSegment = {
    pipe: {
      name: 'as the example states',
      material: 'steel',
      innerDiameter,
      wallThickness: WALL_PER_BORE * innerDiameter,
      roughness: 0,
    },
    length,
    fittingsLoss: 0,
    restraint: 'anchoredThroughout',
    freeAirFraction: 0,
  };
  const plain = { ...waterAt({ temperature: 20, altitude: 0 }), vapourHead: -Infinity };
  // 1/(ρ a²) = 1/K + what the wall gives, so K follows from the speed that is wanted and the speed that plain water has.
  const { density } = plain;
  const softer =
    1 / plain.bulkModulus +
    1 / (density * example.waveSpeed ** 2) -
    1 / (density * waveSpeed(segment, plain) ** 2);
  const water = { ...plain, bulkModulus: 1 / softer };
  return { driveLine: { segments: [segment], entranceLoss, pockets: [] }, water };
}
