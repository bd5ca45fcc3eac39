/** Everything that stands between a source and a tank, in the order in which water meets it. */

import type { Ram } from '../machine/ram.ts';
import type { PipeSegment } from '../pipes/pipe.ts';
import type { CubicMetre, CubicMetrePerSecond, Metre, Ratio, SquareMetre } from '../quantities.ts';
import type { Water } from '../water/water.ts';

/** A source whose level does not change: a stream, a weir, a large pond. */
export interface SteadySource {
  readonly kind: 'steady';
  /** What it yields; absent when it gives more than any ram could take. */
  readonly yield?: CubicMetrePerSecond;
}

/** A source that can be drawn down: a bucket, a spring box, a tank, a dammed pool. */
export interface StoredSource {
  readonly kind: 'store';
  readonly surfaceArea: SquareMetre;
  /** What runs into it all the time. */
  readonly inflow: CubicMetrePerSecond;
  /** Depth of water above the top of the drive line's mouth when full to the brim; below nought it sucks air. */
  readonly depthOverIntake: Metre;
}

export type Source = SteadySource | StoredSource;

/** A point of a line's profile: how far along the pipe, how high above the waste valve's outlet. */
export interface ProfilePoint {
  readonly distance: Metre;
  readonly elevation: Metre;
}

/** Air caught in the drive line, usually at a crest. */
export interface AirPocket {
  /** Distance along the drive line from the source. */
  readonly distance: Metre;
  /** Its volume at the static head of a line full of water at rest. */
  readonly volume: CubicMetre;
}

export interface DriveLine {
  /** From the source to the ram. */
  readonly segments: readonly PipeSegment[];
  /** Loss coefficient of strainer, entrance and the velocity head itself, on the first pipe. */
  readonly entranceLoss: Ratio;
  /** Points from source to ram, when they are known; a straight run from intake to ram otherwise. */
  readonly profile?: readonly ProfilePoint[];
  readonly pockets: readonly AirPocket[];
}

export interface DeliveryLine {
  /** From the ram to the tank. */
  readonly segments: readonly PipeSegment[];
  readonly profile?: readonly ProfilePoint[];
  /** Rams alike, each on its own drive line, that beat into this one line. 1 when absent. */
  readonly sharedBy?: number;
}

export interface Installation {
  readonly water: Water;
  readonly source: Source;
  /** Height of the source's surface above the waste valve's outlet. */
  readonly fall: Metre;
  readonly driveLine: DriveLine;
  readonly ram: Ram;
  /** Height of the delivery outlet at the tank above the waste valve's outlet. */
  readonly lift: Metre;
  readonly deliveryLine: DeliveryLine;
}
