/** What travels between the page and its workers: the answer with what it stands on, and the problems of a site. */
import type { Answer, Change, Installation, MaterialChange, WaterPlan } from '@fallwright/engine';
import type { LineNote } from '@fallwright/papers';
import type { Assumption, Problem } from '@fallwright/records';
import type { System } from '@fallwright/units';
import type { OpenedAlternative } from '../alternatives/opened.ts';
import type { AnswerState, EngineRoom, Outcome } from './answerer.ts';

export type SiteProblem = Problem;

/** Words of the answer in one system of units. Made in the worker, for both systems at once, so that turning them is instant. */
export interface WordsOfAnswer {
  /** The limiting cause first, then the numbers behind it. */
  readonly reasons: readonly string[];
  /** How it starts. */
  readonly start: readonly string[];
  readonly assumptions: readonly string[];
  /** How flow and heights were measured; empty when they were not. */
  readonly measured: readonly string[];
  /** Need and tank over the day and the year. */
  readonly water: readonly string[];
  /** Crests, sags and pressures at rest, line by line. */
  readonly along: readonly LineNote[];
}

export interface SiteAnswer {
  readonly installation: Installation;
  readonly answer: Answer;
  readonly assumptions: readonly Assumption[];
  readonly words: Readonly<Record<System, WordsOfAnswer>>;
  /** Need, delivery and tank over the year and a day; absent while no need is known. */
  readonly plan?: WaterPlan;
  readonly cautions: readonly string[];
  /** Can be computed, but worth a second look. */
  readonly warnings: readonly SiteProblem[];
}

/** What the run for pressures adds. */
export type SitePressures = Pick<SiteAnswer, 'answer' | 'cautions'>;

/** What would change it, with each change and each material as a sentence in both systems. */
export interface SiteChanges {
  readonly changes: readonly Change[];
  /** For each change what to lay beside the present place; absent where it turns nothing. */
  readonly alternatives: readonly (OpenedAlternative | undefined)[];
  readonly materials: readonly MaterialChange[];
  readonly sentences: Readonly<Record<System, readonly string[]>>;
}

export type SiteOutcome = Outcome<SiteAnswer, SiteProblem>;
export type SiteAnswerState = AnswerState<SiteAnswer, SiteProblem, SiteChanges>;
export type SiteEngineRoom = EngineRoom<SiteAnswer, SiteProblem, SiteChanges>;

/** The answer that tells the verdict and the flows: the early one, where there is one. */
export function newestAnswer({ early, shown }: SiteAnswerState): SiteAnswer | undefined {
  return early ?? shown?.value;
}

/** Pressures of the input before, while those of the newest are worked out. */
export function pressuresBefore({
  early,
  shown,
}: SiteAnswerState): Answer['pressureCheck'] | undefined {
  return early === undefined ? undefined : shown?.value.answer.pressureCheck;
}

/** What a worker sends back. In a box, because comlink's types take a bare union apart. */
export interface Reply<Result> {
  readonly outcome: Result;
}
