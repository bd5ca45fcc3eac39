/**
 * What can be bought and what the work costs, as plain data: easy to fill from a price list.
 *
 * Money is a whole number of the currency's smallest units (pence, cents), so that sums are exact and the same everywhere.
 * A price that is not known stays away. It is never guessed: whatever needs it is told apart, with the name of what lacks it.
 * How many of each thing a build needs is computed (parts-list/), not listed here.
 */
import type { Ram } from '../../machine/ram.ts';
import type { MaterialName } from '../../pipes/materials.ts';
import type { Pipe } from '../../pipes/pipe.ts';
import type { CubicMetre, Metre, Newton, Pascal, Second, SquareMetre } from '../../quantities.ts';

/** A sum in the currency's smallest unit; always whole. Nought is a price. */
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
  /** Time of work to set one down, join it up and start it. */
  readonly setUpTime?: Second;
}

/** A bar or a coil, as it is sold whole. */
export interface SoldLength {
  readonly length: Metre;
  /** Price of the whole piece; by the pipe's price of a metre when absent. */
  readonly cost?: Money;
}

export interface PipeOffer {
  readonly key: string;
  readonly name: string;
  readonly pipe: Pipe;
  readonly costPerMetre?: Money;
  /** Bars or coils, when it is sold whole. Absent or empty: it is cut to any length. */
  readonly soldLengths?: readonly SoldLength[];
  /** False when each line must be of one piece, as a hose is. True by default: pieces are joined with sockets. */
  readonly joinable?: boolean;
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

export type ItemUnit = 'each' | 'metre' | 'hour';

/** Every kind of small part and work that a build may need, with the unit in which it is priced. */
export const ITEM_UNITS = {
  /** On the mouth of each drive line, or of the feeder. */
  strainer: 'each',
  /** Box at the source in which a feeder starts. */
  intakeBox: 'each',
  /** Open pipe at which drive lines start when a feeder brings the water; by its height. */
  standpipe: 'metre',
  /** Full-bore valve that shuts a drive line off. */
  gateValve: 'each',
  /** Union or pair of flanges, so that a ram can be taken out. */
  union: 'each',
  /** From a plastic pipe's or a hose's end to a thread. */
  endFitting: 'each',
  /** Joins two bars or coils. */
  socket: 'each',
  elbow: 'each',
  tee: 'each',
  /** Air cock on a crest, with its saddle or tee. */
  vent: 'each',
  /** Holds a drive line down. */
  clamp: 'each',
  hoseClip: 'each',
  /** What a ram is bolted to: concrete, bolts and all. */
  footing: 'each',
  /** At the foot of a delivery line, one for each ram. */
  stopValve: 'each',
  nonReturnValve: 'each',
  drain: 'each',
  wasteValveRubber: 'each',
  deliveryValveClack: 'each',
  gasket: 'each',
  trench: 'metre',
  laying: 'metre',
  labour: 'hour',
  /** Bringing everything to the place. */
  carriage: 'each',
} as const satisfies Record<string, ItemUnit>;

export type ItemKind = keyof typeof ITEM_UNITS;

/** Something on the price list. Of what fits, the cheapest is taken. */
export interface PricedItem {
  readonly key: string;
  readonly name: string;
  readonly kind: ItemKind;
  /** For one `ITEM_UNITS[kind]`. Absent when it is not known. */
  readonly cost?: Money;
  /** Nominal size, or the bore of the pipe that it fits. Absent: it fits every size. */
  readonly size?: Metre;
  /** What the pipe that it fits may be made of. Absent: anything. */
  readonly materials?: readonly MaterialName[];
  /** Keys of the rams that it fits. Absent: every ram. */
  readonly rams?: readonly string[];
  /** All holes of a strainer together; absent when it is not stated. */
  readonly openArea?: SquareMetre;
  /** Push that a footing withstands; absent when it is not stated. */
  readonly holds?: Newton;
  /** Of what is priced by the metre: length in which it is sold whole. */
  readonly soldLength?: Metre;
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
  readonly items: readonly PricedItem[];
  /** Kinds that this workshop's builds go without, or that come with its rams: not listed, not priced. */
  readonly leftOut?: readonly ItemKind[];
}
