import type { Metre, Pascal, Ratio } from '../quantities.ts';
import type { MaterialName } from './materials.ts';

/** A kind of pipe as it is bought: what it is made of, how wide, how thick, how much pressure it may carry. */
export interface Pipe {
  /** How a person names it, such as `PE100 SDR11 25`. */
  readonly name: string;
  readonly material: MaterialName;
  /** Diameter of the bore. */
  readonly innerDiameter: Metre;
  readonly wallThickness: Metre;
  /** Short-term elastic modulus of this wall; absent when it is that of its material in the tables. */
  readonly youngsModulus?: Pascal;
  /** Height of the wall's roughness, as in the Colebrook equation. */
  readonly roughness: Metre;
  /** Long-term gauge pressure that the pipe is rated for at its rating temperature; absent when nothing states one. */
  readonly rating?: Pascal;
}

/**
 * How a pipe is held along its length, which decides how its wall stretches under a pressure wave.
 * `anchoredUpstream`: held at the source end only; `anchoredThroughout`: buried or clamped, cannot move lengthwise;
 * `expansionJoints`: free to move (a hose lying on the ground).
 */
export type Restraint = 'anchoredUpstream' | 'anchoredThroughout' | 'expansionJoints';

/** A length of one pipe in a line, with the fittings that belong to it. */
export interface PipeSegment {
  readonly pipe: Pipe;
  readonly length: Metre;
  /** Sum of loss coefficients of bends and fittings in this segment, on the pipe's own velocity head. 0 when straight. */
  readonly fittingsLoss: Ratio;
  readonly restraint: Restraint;
  /** Volume of free air over volume of water at atmospheric pressure, spread evenly along the pipe. 0 when bled. */
  readonly freeAirFraction: Ratio;
}
