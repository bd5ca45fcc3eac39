/** A surveyed line as a file holds it, before it is a profile: places on the ground, or distances with heights. */
import type { ProfilePoint } from '@fallwright/engine';
import type { Problem, ProblemKind } from '../problem.ts';

/** A place on the ground; its height is absent when the file gives none. */
export interface SurveyedPlace {
  /** Degrees north. */
  readonly latitude: number;
  /** Degrees east. */
  readonly longitude: number;
  readonly height?: number;
  /** Line of the file, counted from 1. */
  readonly line: number;
}

/** Ground between two parts of a track where the recorder was off. */
export interface SurveyGap {
  /** Place in the list of points before it. */
  readonly after: number;
  /** Level distance across it. */
  readonly distance: number;
}

/** Places walked or drawn, in order. */
export interface PlacesLine {
  readonly kind: 'track' | 'route' | 'waypoints' | 'table of places';
  readonly name: string;
  readonly points: readonly SurveyedPlace[];
  readonly gaps: readonly SurveyGap[];
  /** Level distance over all points. */
  readonly length: number;
  readonly withoutHeight: number;
  /** Widest ± written beside a height. */
  readonly heightSpread?: number;
}

/** Distances and heights written by hand or by a level. */
export interface TableLine {
  readonly kind: 'table';
  readonly name: string;
  readonly profile: readonly ProfilePoint[];
  readonly length: number;
  readonly heightSpread?: number;
}

export type SurveyLine = PlacesLine | TableLine;

export interface SurveyFile {
  /** Every line that can be chosen: tracks first, then routes, then the waypoints in their order. */
  readonly lines: readonly SurveyLine[];
  /** What the file says that is worth knowing and does not stop anything. */
  readonly notices: readonly Problem[];
}

export type SurveyRead =
  | { readonly ok: true; readonly value: SurveyFile }
  | {
      readonly ok: false;
      readonly problems: readonly Problem[];
      /** What could be read all the same, so that a recorder that died on the way does not cost the walk. */
      readonly readable?: SurveyFile;
    };

/** Judgement: a day's walk is 30,000 points and 5 MB; what is larger is another kind of file. */
export const LONGEST_SURVEY = 10 * 1024 * 1024;
/** Judgement: two points for each metre of the longest line that can be computed would be half of this. */
export const MOST_SURVEY_POINTS = 200_000;
/** Judgement: a person mends some of these and reads the file again. */
const MOST_PROBLEMS = 50;

/** A list of problems that stops growing, and says so, when a file is wrong from end to end. */
export class ProblemList {
  readonly #list: Problem[] = [];
  #more = 0;

  add(kind: ProblemKind, field: string, line: number, message: string): void {
    if (this.#list.length < MOST_PROBLEMS) this.#list.push({ kind, field, line, message });
    else this.#more += 1;
  }

  get isEmpty(): boolean {
    return this.#list.length === 0;
  }

  all(): readonly Problem[] {
    if (this.#more === 0) return this.#list;
    const message = `${this.#more} more of such problems follow. Mend these first, then read the file again.`;
    return [...this.#list, { kind: 'unreadable', field: '', message }];
  }
}

/** Why a text cannot be a survey at all, or undefined. */
export function notASurvey(text: string): string | undefined {
  if (text.length > LONGEST_SURVEY) {
    return `This file is longer than ${LONGEST_SURVEY / 1024 / 1024} MB. Save the one line that is wanted as a file of its own.`;
  }
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are how a binary file shows
  if (/[\u0000-\u0008\u000e-\u001f\ufffd]/.test(text)) {
    return 'This is not a text file in UTF-8. Save the survey as GPX, or as CSV in UTF-8.';
  }
  if (text.replace(/^\ufeff/, '').trim() === '') {
    return 'This file is empty. A survey is a GPX file, or a CSV file whose first line is: distance (m), height (m)';
  }
  return undefined;
}

export function refusal(message: string, kind: ProblemKind = 'unreadable', line = 1): SurveyRead {
  return { ok: false, problems: [{ kind, field: '', line, message }] };
}
