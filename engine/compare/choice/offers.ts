/**
 * What can be bought and what the work costs, as plain data: easy to fill from a price list.
 *
 * Money is a whole number of the currency's smallest units (pence, cents), so that sums are exact and the same everywhere.
 * A price that is not known stays away. It is never guessed: whatever needs it is told apart, with the name of what lacks it.
 */
import type { Ram } from '../../machine/ram.ts';
import type { Pipe } from '../../pipes/pipe.ts';
import type { CubicMetre, Metre, Pascal } from '../../quantities.ts';

/** A sum in the currency's smallest unit; always whole. */
export type Money = number;

/** One way in which a ram can be set up: a weight, a stroke, a spring. */
export interface Tuning {
  readonly name: string;
  /** The ram so set. */
  readonly ram: Ram;
}

export interface RamOffer {
  readonly key: string;
  readonly name: string;
  readonly tunings: readonly Tuning[];
  /** One ram, ready to bolt down. */
  readonly cost?: Money;
}

export interface PipeOffer {
  readonly key: string;
  readonly name: string;
  readonly pipe: Pipe;
  readonly costPerMetre?: Money;
  /** Length of a bar or a coil, when it is sold whole. */
  readonly soldLength?: Metre;
}

/** An air vessel in place of the ram's own. */
export interface VesselOffer {
  readonly key: string;
  readonly name: string;
  readonly volume: CubicMetre;
  readonly cost?: Money;
  /** Gauge pressure that it may carry; absent when none is stated. */
  readonly rating?: Pascal;
}

export interface TankOffer {
  readonly key: string;
  readonly name: string;
  readonly volume: CubicMetre;
  readonly cost?: Money;
}

/** Work and small parts. Nought is a price; an absent one is not known. */
export interface CostModel {
  /** Digging, for each metre of drive, feeder and delivery line. */
  readonly trenchPerMetre?: Money;
  /** Laying and joining, for each metre of the same. */
  readonly layingPerMetre?: Money;
  /** Footing, bolts, valves and setting up, for each ram. */
  readonly workPerRam?: Money;
  readonly fittingsPerRam?: Money;
  /** Pipe, stays and base, for each metre of a standpipe's height. */
  readonly standpipePerMetre?: Money;
}

/** All that a choice is made from. */
export interface Offers {
  readonly rams: readonly RamOffer[];
  readonly drivePipes: readonly PipeOffer[];
  /** Pipes that may bring water from a far source to a standpipe; none when that is not wanted. */
  readonly feederPipes: readonly PipeOffer[];
  readonly deliveryPipes: readonly PipeOffer[];
  /** Vessels in place of the rams' own; none leaves each ram its own. */
  readonly vessels: readonly VesselOffer[];
  /** Tanks; none leaves the tank out of the choice. */
  readonly tanks: readonly TankOffer[];
  readonly costModel: CostModel;
}

/** Cost of a length of pipe, whole bars or coils where it is sold so; nothing when its price is not known. */
export function pipeCost(offer: PipeOffer, length: Metre): Money | undefined {
  if (offer.costPerMetre === undefined) return undefined;
  return Math.round(offer.costPerMetre * boughtLength(offer, length));
}

/** Length that has to be bought. A hair's breadth over a whole number of bars is rounding and no bar. */
export function boughtLength(offer: PipeOffer, length: Metre): Metre {
  const { soldLength } = offer;
  if (soldLength === undefined || !(soldLength > 0)) return length;
  return Math.ceil(length / soldLength - 1e-9) * soldLength;
}
