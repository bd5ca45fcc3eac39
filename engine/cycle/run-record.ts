/** What a simulated run leaves behind. */
import type {
  CubicMetre,
  CubicMetrePerSecond,
  Hertz,
  Metre,
  MetrePerSecond,
  Ratio,
  Second,
} from '../quantities.ts';

/**
 * How a run ended.
 * `settled`: successive beats agreed; `irregular`: it beats and delivers, but its beats never agreed, so means over many
 * beats are given; `staysOpen`: the waste valve never shut; `staysShut`: it shut and did not open again;
 * `noDelivery`: it beats but nothing passes the delivery valve; `sourceEmpty`: the intake came out of the water;
 * `timeUp`: it was followed for as long as was asked.
 */
export type RunOutcome =
  | 'settled'
  | 'irregular'
  | 'staysOpen'
  | 'staysShut'
  | 'noDelivery'
  | 'sourceEmpty'
  | 'timeUp';

/** The grid and the effort behind a run. */
export interface RunEnd {
  readonly outcome: RunOutcome;
  readonly steps: number;
  readonly beats: number;
  readonly simulatedTime: Second;
  /** Reaches in the whole drive line. */
  readonly reaches: number;
  /** Largest change of a segment's wave speed made so that each segment holds whole reaches, as a share of it. */
  readonly largestWaveSpeedNudge: Ratio;
  /** Options of the model that were on, such as unsteady friction; empty for the plain model. */
  readonly modelOptions: readonly string[];
}

/** The beat of a ram once it has settled, at one head in its vessel. */
export interface OperatingPoint {
  readonly end: RunEnd;
  /** Head in the air vessel at which the beat was found: lift and delivery friction. */
  readonly vesselHead: Metre;
  readonly beatFrequency: Hertz;
  /** Mean flow delivered. */
  readonly deliveryFlow: CubicMetrePerSecond;
  /** Mean flow out of the waste valve. */
  readonly wasteFlow: CubicMetrePerSecond;
  /** Mean flow taken from the source: the two together. */
  readonly supplyFlow: CubicMetrePerSecond;
  readonly deliveredPerBeat: CubicMetre;
  /** q (h − H) / (Q H), with heads above the ram. */
  readonly rankineEfficiency: Ratio;
  /** q h / ((Q + q) H), with heads above the ram. */
  readonly daubuissonEfficiency: Ratio;
  /** Flow in the drive line when the waste valve shuts, mean of the beats. */
  readonly flowAtClosing: CubicMetrePerSecond;
  /** Largest velocity in the drive line's last pipe. */
  readonly driveVelocity: MetrePerSecond;
  /** Highest and lowest head at the ram's body. */
  readonly peakHead: Metre;
  readonly lowestHead: Metre;
  /** Spread of the beats' lengths: standard deviation over mean. */
  readonly beatSpread: Ratio;
}

/** Highest and lowest head along the drive line, from source to ram. */
export interface HeadEnvelope {
  readonly distance: readonly Metre[];
  readonly highest: readonly Metre[];
  readonly lowest: readonly Metre[];
}

/** A cold start: full drive line at rest, empty vessel, empty delivery line. */
export interface StartUp {
  /** `goesOn`: runs alone after the strokes; `never`: no number of strokes that was tried sets it going. */
  readonly outcome: 'goesOn' | 'never';
  /** Times a person pushes the waste valve open until it beats alone. */
  readonly handStrokes: number;
  /** Whether the delivery stop valve was kept shut until the ram beat alone, and then opened slowly. */
  readonly stopValveShut: boolean;
  /** Head in the vessel when it first beat alone. */
  readonly vesselHeadAtStart: Metre;
  readonly simulatedTime: Second;
  readonly steps: number;
}

/** One beat or more, sampled in time: what a chart or a file shows. */
export interface Trace {
  readonly time: Float64Array;
  readonly bodyHead: Float64Array;
  readonly driveFlow: Float64Array;
  readonly wasteFlow: Float64Array;
  readonly deliveryFlow: Float64Array;
  readonly opening: Float64Array;
  readonly vesselHead: Float64Array;
  readonly end: RunEnd;
}
