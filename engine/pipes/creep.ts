/**
 * Slow give of a plastic wall: it stretches at once, then a little more, for seconds.
 *
 * A chain of springs and dampers (generalised Kelvin–Voigt). It costs one number per element and point of a line, and
 * is the usual form in which creep of PE pipe is published.
 */
import type { Second } from '../quantities.ts';
import type { KnownBy } from './evidence.ts';

/** One spring with its damper: how much it gives in the end, in 1/Pa, and how long it takes. */
export interface CreepElement {
  readonly compliance: number;
  readonly retardationTime: Second;
}

export interface WallCreep {
  /** What the wall gives at once, in 1/Pa: one over its short-term modulus. */
  readonly instantCompliance: number;
  readonly elements: readonly CreepElement[];
  readonly source: string;
  readonly knownBy: KnownBy;
}

/**
 * Creep of an HDPE pipe of 50.6 mm bore and 6.2 mm wall at 20 °C, fitted to pressure waves at about 395 m/s.
 *
 * One pipe on one rig; other pipes and temperatures differ by tens of per cent.
 *
 * Source: Covas et al. (2004, 2005), J. Hydraulic Research 42(5), 516–530 and 43(1), 56–70 (memory).
 */
export const HDPE_CREEP: WallCreep = {
  instantCompliance: 6.993e-10,
  elements: [
    { compliance: 1.057e-10, retardationTime: 0.05 },
    { compliance: 1.054e-10, retardationTime: 0.5 },
    { compliance: 9.051e-11, retardationTime: 1.5 },
    { compliance: 2.617e-11, retardationTime: 5 },
    { compliance: 7.456e-11, retardationTime: 10 },
  ],
  source: 'Covas et al. (2005), five-element fit for HDPE at 20 °C',
  knownBy: 'memory',
};

/**
 * Compliance of the wall some time after a load was put on, in 1/Pa.
 *
 *   J(t) = J₀ + Σ Jₖ ( 1 − e^(−t/τₖ) )
 *
 * Source: linear viscoelasticity, as in Covas et al. (2005), part II (memory).
 * @throws RangeError when `time` is below zero.
 */
export function creepCompliance(creep: WallCreep, time: Second): number {
  if (!(time >= 0)) throw new RangeError(`time must not be below zero, got ${time} s`);
  return creep.elements.reduce(
    (total, { compliance, retardationTime }) =>
      total + compliance * -Math.expm1(-time / retardationTime),
    creep.instantCompliance,
  );
}
