/** The readings behind a height that was measured and not just written down. */
import type { Given } from '../given.ts';

/** One point on which the staff stood. */
export interface LevelRow {
  readonly at?: string;
  readonly back?: Given;
  readonly inter?: Given;
  readonly fore?: Given;
  readonly distance?: Given;
  readonly note?: string;
}

/** One of levels, hops, gauge, barometric or satellite, with what belongs to it. */
export interface HeightReadings {
  /** What was written beside the readings: it is used in their place. */
  readonly value?: Given;
  readonly levels?: readonly LevelRow[];
  /** Upper point first. */
  readonly between?: readonly string[];
  readonly hops?: readonly Given[];
  readonly gauge?: Given;
  readonly class?: Given;
  readonly range?: Given;
  readonly gaugeHeight?: Given;
  /** Upper place first. */
  readonly barometric?: readonly Given[];
  readonly satellite?: readonly Given[];
  /** The ± of one reading. */
  readonly each?: Given;
  readonly date?: string;
  readonly by?: string;
  readonly note?: string;
}
