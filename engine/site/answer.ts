/** The answer to "will it run here, and how much reaches the tank?", as data. Words are made elsewhere. */
import type { HeadEnvelope, OperatingPoint, StartUp } from '../cycle/run-record.ts';
import type { MaterialName } from '../pipes/materials.ts';
import type { CubicMetrePerSecond, Metre, Pascal, Ratio, Second } from '../quantities.ts';
import type { Emptying } from './drain-time.ts';

export type VerdictKind =
  | 'runs'
  | 'runsAfterHandStart'
  | 'staysOpen'
  | 'staysShut'
  | 'flutters'
  | 'doesNotLift'
  | 'starves';

/**
 * What decides, or comes nearest to deciding, the verdict. Each compares what there is with what it takes.
 * `closingFlow`: flow the line can reach against the flow that shuts the valve (m³/s);
 * `recoil`: head in the vessel against the head that gives recoil enough to reopen the valve (m);
 * `hammer`: head that stopping the drive line makes against the head in the vessel (m);
 * `source`: flow the source gives against the flow the ram takes (m³/s);
 * `beat`: length of a beat against the shortest in which the whole line's water can take part (s): a valve that beats
 * faster dances on trapped air or on waves.
 */
export interface Limit {
  readonly kind: 'closingFlow' | 'recoil' | 'hammer' | 'source' | 'beat';
  readonly has: number;
  readonly needs: number;
  /** has/needs − 1: above nought on the running side. */
  readonly margin: Ratio;
}

export interface Verdict {
  readonly kind: VerdictKind;
  /** The limit that decided it, or for a ram that runs the one with the least margin. */
  readonly decidedBy: Limit;
  /** All limits that could be computed, tightest first. */
  readonly limits: readonly Limit[];
}

/** What an owner can change, and the SI unit of its value. */
export type Changeable =
  | 'fall' // m
  | 'lift' // m
  | 'driveLength' // m
  | 'driveBore' // m
  | 'valveWeight' // N, force that holds the waste valve open
  | 'stroke' // m
  | 'sourceFlow' // m³/s
  | 'trappedAir'; // m³ of air, where it is caught now, or at the highest crest, or three quarters along

/** The stretch of one quantity's values, nearest to the present one, on which the ram runs. */
export interface RunningStretch {
  readonly low: number;
  readonly high: number;
  /** Verdict just below `low`; absent when `low` is as far as was searched. */
  readonly belowLow?: VerdictKind;
  /** Verdict just above `high`; absent when `high` is as far as was searched. */
  readonly aboveHigh?: VerdictKind;
}

/** What would change the verdict: one quantity varied, all others as they are. */
export interface Change {
  readonly what: Changeable;
  readonly now: number;
  readonly searchedLow: number;
  readonly searchedHigh: number;
  /** Absent when the ram runs nowhere between the ends of the search. */
  readonly runs?: RunningStretch;
  /** Where it not only runs but gives what is needed; looked for only when it does not do so now. */
  readonly enough?: RunningStretch;
  /** How much trouble the change is: `free` (a turn of a nut, a bleed), `small` (a washer, a short pipe), `large` (new pipe, other place). */
  readonly effort: 'free' | 'small' | 'large';
}

/** The same line in another material: the verdict it would give. */
export interface MaterialChange {
  readonly material: MaterialName;
  /** The pipe from the tables whose bore is nearest to the present one. */
  readonly pipe: string;
  readonly verdict: VerdictKind;
  readonly deliveryFlow: CubicMetrePerSecond;
}

/** One part's pressure against its rating. */
export interface PressureCheckRow {
  /** `driveSegment` counts from 0 at the source. */
  readonly part:
    | { readonly kind: 'driveSegment'; readonly index: number; readonly name: string }
    | { readonly kind: 'ramBody'; readonly name: string }
    | { readonly kind: 'deliverySegment'; readonly index: number; readonly name: string };
  /** Highest gauge pressure in the part from the simulation, at the part's lowest point. */
  readonly simulatedPeak: Pascal;
  /** Static head and a ΔV/g: the most that stopping this flow could make. Absent for the delivery line. */
  readonly joukowskyBound?: Pascal;
  /** The larger of the two. */
  readonly governing: Pascal;
  /** Rating derated for the water's temperature; absent when none is stated. */
  readonly rating?: Pascal;
  readonly outcome: 'within' | 'over' | 'noRating';
}

export interface PressureCheck {
  readonly rows: readonly PressureCheckRow[];
  readonly peakHead: Metre;
  readonly lowestHead: Metre;
  /** Whether the head fell to vapour pressure somewhere and a cavity opened. */
  readonly hasCavity: boolean;
  readonly envelope: HeadEnvelope;
}

/** What the owner could change, and what would come of it. */
export interface WhatWouldChange {
  /** The cheapest and nearest first. Empty when they were not asked for. */
  readonly changes: readonly Change[];
  readonly materials: readonly MaterialChange[];
}

export interface Answer extends WhatWouldChange {
  readonly verdict: Verdict;
  /** Present whenever the ram beats and delivers, even when the source cannot feed it for long. */
  readonly operatingPoint?: OperatingPoint;
  /** A cold start with the delivery stop valve kept shut until the ram beats alone: the usual practice. */
  readonly startUp?: StartUp;
  /** The same start with the delivery line open from the first push. */
  readonly startUpOpen?: StartUp;
  /** For a source that is drawn down: how long it lasts from the brim until the intake comes out of the water. */
  readonly drainTime?: Second;
  /** For a source that is drawn down: how it empties, and what it gives over a day. */
  readonly emptying?: Emptying;
  /** Flow through the drive line and the wide-open waste valve. */
  readonly terminalFlow: CubicMetrePerSecond;
  /** Flow at which the waste valve lifts off its open stop. */
  readonly closingFlow: CubicMetrePerSecond;
  readonly pressureCheck?: PressureCheck;
  readonly demand?: {
    readonly needed: CubicMetrePerSecond;
    readonly isMet: boolean;
  };
}
