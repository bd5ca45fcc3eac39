/** Places for the checks: typical rams on the pipes that the tables speak of. */
import {
  findPipe,
  type Installation,
  type PipeSegment,
  type Ram,
  TYPICAL_SIZES,
  type TypicalSize,
  typicalRam,
  waterAt,
} from '@fallwright/engine';

/** Well and spring water. Judgement: 10 °C, as the tool assumes when nothing is said. */
export const WATER = waterAt({ temperature: 10, altitude: 0 });

/** A straight, bled, anchored length of a pipe from the tables. */
export function lengthOf(name: string, length: number): PipeSegment {
  const found = findPipe(name);
  if (!found.ok) throw new RangeError(`no pipe is called ${name}`);
  return {
    pipe: found.pipe,
    length,
    fittingsLoss: 0,
    restraint: 'anchoredThroughout',
    freeAirFraction: 0,
  };
}

/** Drive length for a bore. Source: USDA-COUNTRY, seven times the fall; CALVERT (memory), bores of 150–1000. */
export function driveLength(fall: number, bore: number, timesFall = 7): number {
  return Math.max(timesFall * fall, 200 * bore);
}

/**
 * A typical ram on medium steel tube of its own size with a sharp-edged mouth, and a delivery line so wide and short that it loses
 * nothing: handbook tables leave delivery friction out.
 */
export function typicalPlace(place: {
  readonly size: TypicalSize;
  readonly fall: number;
  readonly lift: number;
  readonly length?: number;
  readonly ram?: Ram;
  /** Drive pipe other than steel tube of the ram's size. */
  readonly drivePipe?: string;
}): Installation {
  const { size, fall, lift } = place;
  const length = place.length ?? driveLength(fall, TYPICAL_SIZES[size]);
  return {
    water: WATER,
    source: { kind: 'steady' },
    fall,
    driveLine: {
      segments: [lengthOf(place.drivePipe ?? `steel EN 10255 ${size}`, length)],
      // Sharp edge 0.5 and the velocity head.
      entranceLoss: 1.5,
      pockets: [],
    },
    ram: place.ram ?? typicalRam(size),
    lift,
    deliveryLine: { segments: [lengthOf('PE100 SDR11 110', lift)] },
  };
}

/** Beats in a block as an answer quotes them; grid and substeps are those that the tool chooses. */
export const QUOTED = { block: 24 } as const;
