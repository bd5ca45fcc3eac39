/**
 * Three picks: the cheapest that does what is needed, the one with most water, the most forgiving.
 *
 * Where a judge has spoken, they go by what it says of spread inputs and the dry season; elsewhere by margins.
 */
import type { CubicMetrePerSecond, Ratio } from '../../quantities.ts';
import type { Answer } from '../../site/answer.ts';
import type { Candidate } from './candidates.ts';
import type { Judgement } from './choose.ts';
import { WANTED_CHANCE, type Wish } from './place-to-fit.ts';
import type { CandidateRun, Margins } from './run.ts';

/** A combination on the front or near it. */
export interface Contender {
  readonly candidate: Candidate;
  readonly run: CandidateRun;
  /** What all its rams together deliver. */
  readonly water: CubicMetrePerSecond;
  readonly margins: Margins;
  readonly isOnFront: boolean;
  readonly judgement?: Judgement;
}

export interface Pick {
  readonly contender: Contender;
  /** On the fine grid, for one ram's share; absent when the search was stopped before or quotes were not wanted. */
  readonly answer?: Answer;
}

export interface Picks {
  readonly cheapest?: Pick;
  readonly mostWater?: Pick;
  readonly mostForgiving?: Pick;
  /** Why there is no cheapest: what is needed, the most that can be had, and the best chance of it. */
  readonly shortfall?: {
    readonly need: CubicMetrePerSecond;
    readonly mostWater: CubicMetrePerSecond;
    readonly bestChance?: Ratio;
  };
}

/** Judgement: chances nearer than this cannot be told apart by a few hundred samples. */
const CHANCE_STEP: Ratio = 0.05;

/** The picks among contenders that stand in the order of cost, with the quoted answers that there are. */
export function picksAmong(
  contenders: readonly Contender[],
  wish: Wish,
  answers: ReadonlyMap<string, Answer>,
): Picks {
  const wanted = wish.wantedChance ?? WANTED_CHANCE;
  // What the dry season stops is picked only when it stops everything.
  const lasting = contenders.filter((c) => (c.margins.source ?? 0) >= 0);
  const eligible = lasting.length > 0 ? lasting : contenders;
  // Beside those that were judged, one that was not is unknown, not sure.
  const isJudged = eligible.some((c) => c.judgement);
  const isSure = ({ judgement }: Contender): boolean =>
    judgement ? judgement.chance >= wanted : !isJudged;
  const enough = eligible.filter((c) => isEnough(c, wish, answers) && isSure(c));
  const cheapest = enough[0];
  const mostWater = first(
    eligible.some(isSure) ? eligible.filter(isSure) : eligible,
    (a, b) => sureWater(b) - sureWater(a),
  );
  const mostForgiving = first(
    eligible.some((c) => isEnough(c, wish, answers))
      ? eligible.filter((c) => isEnough(c, wish, answers))
      : eligible,
    (a, b) => step(b) - step(a) || b.margins.least - a.margins.least,
  );
  const chances = contenders.flatMap((c) => (c.judgement ? [c.judgement.chance] : []));
  const pick = (name: keyof Picks, contender: Contender | undefined) => {
    if (!contender) return {};
    const answer = answers.get(contender.candidate.key);
    return { [name]: { contender, ...(answer ? { answer } : {}) } };
  };
  return {
    ...pick('cheapest', cheapest),
    ...pick('mostWater', mostWater),
    ...pick('mostForgiving', mostForgiving),
    ...(cheapest || wish.need === undefined
      ? {}
      : {
          shortfall: {
            need: wish.need,
            mostWater: Math.max(0, ...contenders.map((c) => c.water)),
            ...(chances.length > 0 ? { bestChance: Math.max(...chances) } : {}),
          },
        }),
  };
}

/** Whether it gives what is needed; by its quoted figure where there is one. */
function isEnough(c: Contender, wish: Wish, answers: ReadonlyMap<string, Answer>): boolean {
  if (wish.need === undefined) return true;
  const quoted = answers.get(c.candidate.key)?.operatingPoint?.deliveryFlow;
  const water = quoted === undefined ? c.water : c.candidate.parts.count * quoted;
  return water >= wish.need;
}

/** What can be counted on: the low end of the judged band, or the nominal figure where nobody judged. */
function sureWater(c: Contender): CubicMetrePerSecond {
  return c.judgement ? c.candidate.parts.count * c.judgement.low : c.water;
}

/** Chance in steps; those that were not judged come behind those that were. */
function step(c: Contender): number {
  return c.judgement ? Math.round(c.judgement.chance / CHANCE_STEP) : -1;
}

/** The first by an order; of those alike, the one that came first and so costs least. */
function first<T>(list: readonly T[], order: (a: T, b: T) => number): T | undefined {
  return list.reduce<T | undefined>(
    (best, item) => (best === undefined || order(item, best) < 0 ? item : best),
    undefined,
  );
}
