/** What travels between the page and the worker that reads walks: a survey file as a list, and one of its lines made ready. */
import type { Problem } from '@fallwright/records';
import type { System } from '@fallwright/units';
import type { LineName } from '../state/lines.ts';

/** A track, a route or a table that can be chosen. */
export interface WalkListed {
  /** `Track “Round the tarn”`. */
  readonly called: string;
  readonly points: number;
  /** Metres, level for places and as written for a table. */
  readonly length: number;
  readonly hasHeights: boolean;
}

export type OpenedWalk =
  | { readonly ok: true; readonly lines: readonly WalkListed[] }
  | {
      readonly ok: false;
      readonly problems: readonly Problem[];
      /** What could be read all the same. */
      readonly readable?: readonly WalkListed[];
    };

export interface WalkChoice {
  /** Which of the listed lines. */
  readonly index: number;
  readonly line: LineName;
  /** Left out, the heights say which end is the upper one. */
  readonly isReversed?: boolean;
  /** Known height of the end away from the ram: the fall or the lift. */
  readonly far?: number;
  /** Length of the pipes as they are written, to which the walk is stretched. */
  readonly length?: number;
  /** Widest bore of the line. */
  readonly bore?: number;
  /** Metres of ground over which heights are averaged; left out, the usual ones. */
  readonly window?: number;
  /** Most points to keep. */
  readonly count: number;
}

export interface WalkPoint {
  /** Metres along the line, from its upper end in the order of the water. */
  readonly distance: number;
  /** Metres above the waste valve’s outlet. */
  readonly elevation: number;
}

export interface WalkCrest extends WalkPoint {
  /** Most air that it may hold, in cubic metres. */
  readonly air: number;
}

export interface WalkedLine {
  /** What would stand in the site file, its ends included. */
  readonly kept: readonly WalkPoint[];
  /** Heights as they were read, thinned for the eye alone. */
  readonly asRead: readonly WalkPoint[];
  readonly crests: readonly WalkCrest[];
  /** Along the ground as walked, before any stretching. */
  readonly walkedLength: number;
  readonly isReversed: boolean;
  /** Metres of ground over which heights are averaged; nought when they are not. */
  readonly window: number;
  readonly isUsualWindow: boolean;
  /** How well the heights are known one against another. */
  readonly heightSpread?: number;
  /** From the ram to the other end by the survey alone, and how well that is known. */
  readonly rise: number;
  readonly riseSpread?: number;
  readonly areSatelliteHeights: boolean;
  readonly words: Readonly<Record<System, WalkWords>>;
}

export interface WalkWords {
  /** What can mislead; before all else. */
  readonly warnings: readonly string[];
  /** What was read and what was done to it. */
  readonly done: readonly string[];
}

export type WalkedRead =
  | { readonly ok: true; readonly value: WalkedLine }
  | {
      readonly ok: false;
      readonly problems: readonly Problem[];
      /** Its length over level ground, which can be used without heights. */
      readonly levelLength?: number;
    };
