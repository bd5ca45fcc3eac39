/**
 * The choice for a place: which combinations lie on the front of cost and water, which three to pick, and why the others lost.
 *
 * Combinations are gone through from the cheapest up. One whose upper bound is clearly beaten by what has been run and costs no
 * more is never run. A generator hands out the rest in batches and takes results, so that a caller may run them where it likes:
 * here, or in workers. What comes out depends neither on the size of the batches nor on the order of results: a reason never
 * says what happened to be run first, only what the finished front says.
 */
import type { Installation } from '../../cycle/installation.ts';
import { deratedRating } from '../../pipes/derated-rating.ts';
import type { CubicMetrePerSecond, Ratio } from '../../quantities.ts';
import { GRAVITY } from '../../quantities.ts';
import type { Answer } from '../../site/answer.ts';
import { answerFor } from '../../site/answer-for.ts';
import { type Bounds, boundsOf, deliveryBound } from './bounds.ts';
import { type Candidate, candidates } from './candidates.ts';
import { byCostThenKey, frontOf, type Point, Staircase } from './front.ts';
import { installationOf } from './installation-of-parts.ts';
import type { Money, Offers } from './offers.ts';
import { type Contender, type Picks, picksAmong } from './picks.ts';
import { LARGEST_PULSE, LONGEST_PER_ROUTE, type PlaceToFit, type Wish } from './place-to-fit.ts';
import type { Reason } from './reasons.ts';
import { type CandidateRun, marginsOf, reasonAfterRun, runOf } from './run.ts';

/** What a judge says of one ram's share of a combination, with the spread of the inputs and the dry season. */
export interface Judgement {
  /** Chance that it runs and gives what is needed. */
  readonly chance: Ratio;
  /** What it delivers at the least in nine cases of ten, and at the most in nine of ten. */
  readonly low: CubicMetrePerSecond;
  readonly high: CubicMetrePerSecond;
}

/** Something to compute, wherever the caller likes. `key` comes back with the result. */
export type ChoiceTask =
  | { readonly kind: 'run'; readonly key: string; readonly candidate: Candidate }
  | {
      readonly kind: 'judge';
      readonly key: string;
      readonly installation: Installation;
      /** What one ram has to give. */
      readonly needed?: CubicMetrePerSecond;
    }
  | {
      readonly kind: 'quote';
      readonly key: string;
      readonly installation: Installation;
      readonly needed?: CubicMetrePerSecond;
    };

export type ChoiceResult =
  | { readonly kind: 'run'; readonly key: string; readonly run: CandidateRun }
  | { readonly kind: 'judge'; readonly key: string; readonly judgement: Judgement }
  | { readonly kind: 'quote'; readonly key: string; readonly answer: Answer };

export interface ChoiceProgress {
  readonly combinations: number;
  /** Turned away by bounds or ratings. */
  readonly rejected: number;
  /** Beaten without a run. */
  readonly pruned: number;
  /** Decided by a run, their own or that of a combination which differs in vessel or tank alone. */
  readonly decided: number;
  /** Different runs among all combinations, and how many of them were made. */
  readonly distinctRuns: number;
  readonly runs: number;
}

export interface ChoiceBatch {
  readonly tasks: readonly ChoiceTask[];
  readonly progress: ChoiceProgress;
}

/** Results of a batch in any order; `stop` ends the search and keeps what is done. */
export interface ChoiceReply {
  readonly results: readonly ChoiceResult[];
  readonly stop?: boolean;
}

export interface ChoiceRequest {
  readonly place: PlaceToFit;
  readonly wish: Wish;
  readonly offers: Offers;
}

export interface ChoiceOptions {
  /** Runs in a batch. */
  readonly batch?: number;
  /** Try everything that no limit turns away: for holding the search against. */
  readonly isBruteForce?: boolean;
  /** Whether the caller can judge. Off by default: picks then rest on margins alone. */
  readonly judges?: boolean;
  /** Quote the picks on the fine grid, and drop what fails there. On by default. */
  readonly quotes?: boolean;
}

/** Combinations that are compared with each other, and what comes of it. */
export interface Field {
  /**
   * The cheapest first. Where prices are missing: the one with most water. Where something is needed, only what gives nearly as
   * much, unless nothing does. One that was quoted and failed there stays, with its reason.
   */
  readonly front: readonly Contender[];
  /** The front, and what lies near it. */
  readonly contenders: readonly Contender[];
  readonly picks: Picks;
}

export interface Choice {
  readonly priced: Field;
  /** Those that lack a price, judged by water alone; each names what is missing. */
  readonly unpriced: Field;
  /** False when the search was stopped. */
  readonly isComplete: boolean;
  readonly progress: ChoiceProgress;
  /** Why a combination lost; nothing for one on the front. @throws RangeError for a key that is no combination's. */
  readonly reasonFor: (key: string) => Reason | undefined;
  readonly candidate: (key: string) => Candidate | undefined;
  readonly keys: () => Iterable<string>;
}

/** Judgement: enough for both cores to be busy, few enough for pruning to keep up. */
const BATCH = 32;
/** Judgement: so many beside the front are judged; each costs as many runs as a judge takes samples. */
const MOST_JUDGED_BESIDE = 12;

interface Entry extends Candidate {
  readonly order: Money;
  /** Why it cannot be used, before any run. */
  readonly early?: Reason;
  /** Most water that all its rams together can give. */
  readonly atMost: CubicMetrePerSecond;
}

/** Combinations that are held against each other. */
interface Group {
  readonly entries: readonly Entry[];
  /** What gives less is not looked at; nought once it turns out that nothing gives as much. */
  leastWater: CubicMetrePerSecond;
}

/** Judgement: a tenth below the need is still worth seeing, and a coarse run is off by a few per cent. */
const WORTH_SEEING: Ratio = 0.9;

function leastWaterOf({ need }: Wish): CubicMetrePerSecond {
  return WORTH_SEEING * (need ?? 0);
}

function belowNeed(
  has: { readonly water: CubicMetrePerSecond } | { readonly atMost: CubicMetrePerSecond },
  leastWater: CubicMetrePerSecond,
  { need }: Wish,
): Reason | undefined {
  const flow = 'water' in has ? has.water : has.atMost;
  if (need === undefined || flow >= leastWater) return undefined;
  return { kind: 'belowNeed', need, ...has };
}

/** Makes the choice. See `ChoiceTask` for what the caller has to do between. */
export function* choose(
  { place, wish, offers }: ChoiceRequest,
  options: ChoiceOptions = {},
): Generator<ChoiceBatch, Choice, ChoiceReply> {
  const { batch = BATCH, isBruteForce = false, judges = false, quotes = true } = options;
  const largestPulse = wish.largestPulse ?? LARGEST_PULSE;
  const entries = entriesOf(place, wish, offers);
  const byKey = new Map(entries.map((entry) => [entry.key, entry]));
  const runs = new Map<string, CandidateRun>();
  const distinctRuns = new Set(entries.map((e) => e.runKey)).size;
  const fate = new Map<string, 'rejected' | 'pruned' | 'decided'>();
  const progress = (): ChoiceProgress => {
    const tally = { rejected: 0, pruned: 0, decided: 0 };
    for (const what of fate.values()) tally[what]++;
    return { combinations: entries.length, ...tally, distinctRuns, runs: runs.size };
  };
  let isStopped = false;
  const groups: readonly Group[] = [
    { entries: entries.filter((e) => e.cost !== undefined), leastWater: leastWaterOf(wish) },
    { entries: entries.filter((e) => e.cost === undefined), leastWater: leastWaterOf(wish) },
  ];
  const early = (entry: Entry, { leastWater }: Group): Reason | undefined =>
    entry.early ?? belowNeed({ atMost: entry.atMost }, leastWater, wish);
  const late = (entry: Entry, run: CandidateRun, { leastWater }: Group): Reason | undefined =>
    reasonAfterRun(place, entry, run, largestPulse) ??
    belowNeed({ water: entry.parts.count * run.deliveryFlow }, leastWater, wish);

  function* searchOne(group: Group): Generator<ChoiceBatch, void, ChoiceReply> {
    const stairs = new Staircase();
    let next = 0;
    const waiting: Entry[] = [];
    const decide = (entry: Entry, run: CandidateRun): void => {
      fate.set(entry.key, 'decided');
      if (late(entry, run, group)) return;
      stairs.add({
        key: entry.key,
        cost: entry.order,
        water: entry.parts.count * run.deliveryFlow,
      });
    };
    while (next < group.entries.length && !isStopped) {
      const tasks = new Map<string, ChoiceTask>();
      waiting.length = 0;
      while (next < group.entries.length && tasks.size < batch) {
        const entry = group.entries[next++] as Entry;
        if (early(entry, group)) {
          fate.set(entry.key, 'rejected');
          continue;
        }
        const run = runs.get(entry.runKey);
        if (run) {
          decide(entry, run);
        } else if (!isBruteForce && stairs.beatsClearly(entry.order, entry.atMost)) {
          fate.set(entry.key, 'pruned');
        } else {
          tasks.set(entry.runKey, { kind: 'run', key: entry.runKey, candidate: entry });
          waiting.push(entry);
        }
      }
      if (tasks.size === 0) continue;
      const reply: ChoiceReply = yield { tasks: [...tasks.values()], progress: progress() };
      for (const result of reply.results) {
        if (result.kind === 'run' && tasks.has(result.key)) runs.set(result.key, result.run);
      }
      for (const entry of waiting) {
        const run = runs.get(entry.runKey);
        if (run) decide(entry, run);
      }
      if (reply.stop) isStopped = true;
    }
  }

  const fields: Field[] = [];
  const failures = new Map<string, Reason>();
  const usableIn = (group: Group): Usable[] =>
    group.entries.flatMap((entry) => {
      const run = early(entry, group) ? undefined : runs.get(entry.runKey);
      if (!run || late(entry, run, group)) return [];
      const water = entry.parts.count * run.deliveryFlow;
      return [{ key: entry.key, cost: entry.order, water, entry, run }];
    });
  const stairsOf = new Map<Group, Staircase>();
  for (const group of groups) {
    yield* searchOne(group);
    if (usableIn(group).length === 0 && group.leastWater > 0 && !isStopped) {
      // Nothing gives what is needed: then the whole front is what helps.
      group.leastWater = 0;
      yield* searchOne(group);
    }
    const usable = usableIn(group).sort(
      (a, b) => a.cost - b.cost || b.water - a.water || byCostThenKey(a, b),
    );
    const front = frontOf(usable);
    const stairs = new Staircase();
    for (const point of front) stairs.add(point);
    stairsOf.set(group, stairs);
    const near = usable.filter((p) => !stairs.beatsClearly(p.cost, p.water));
    let contenders = near.map(
      ({ entry, run, water }): Contender => ({
        candidate: entry,
        run,
        water,
        margins: marginsOf(place, entry.parts, run, largestPulse),
        isOnFront: front.some((f) => f.key === entry.key),
      }),
    );
    if (judges && !isStopped) {
      const wanted = toJudge(contenders);
      const tasks = wanted.map((c) => judgeTask(place, wish, c));
      const reply: ChoiceReply =
        tasks.length > 0 ? yield { tasks, progress: progress() } : { results: [] };
      if (reply.stop) isStopped = true;
      const said = new Map(
        reply.results.flatMap((r) => (r.kind === 'judge' ? [[r.key, r.judgement] as const] : [])),
      );
      contenders = contenders.map((c) => {
        const judgement = said.get(c.candidate.key);
        return judgement ? { ...c, judgement } : c;
      });
    }
    const answers = new Map<string, Answer>();
    let picks = picksAmong(contenders, wish, answers);
    // A pick that fails on the fine grid is dropped, and the next best is asked in its place.
    while (quotes && !isStopped) {
      const asked = picksList(picks).filter((c) => !answers.has(c.candidate.key));
      if (asked.length === 0) break;
      const tasks = asked.map((c) => quoteTask(place, wish, c));
      const reply: ChoiceReply = yield { tasks, progress: progress() };
      if (reply.stop) isStopped = true;
      for (const result of reply.results) {
        if (result.kind !== 'quote') continue;
        answers.set(result.key, result.answer);
        const failure = failureOf(result.answer);
        if (failure) failures.set(result.key, failure);
      }
      const standing = contenders.filter((c) => !failures.has(c.candidate.key));
      picks = picksAmong(standing, wish, answers);
      if (asked.some((c) => !answers.has(c.candidate.key))) break;
    }
    fields.push({ front: contenders.filter((c) => c.isOnFront), contenders, picks });
  }

  const onFront = new Set(fields.flatMap((f) => f.front.map((c) => c.candidate.key)));
  const reasonFor = (key: string): Reason | undefined => {
    const entry = byKey.get(key);
    if (!entry) throw new RangeError(`key must be that of a combination, got ${key}`);
    const group = groups[entry.cost === undefined ? 1 : 0] as Group;
    const failure = failures.get(key);
    if (failure) return failure;
    if (onFront.has(key)) return undefined;
    const outright = early(entry, group);
    if (outright) return outright;
    const stairs = stairsOf.get(group) as Staircase;
    const beaten = (own: Pick<Reason & { kind: 'beaten' }, 'water' | 'atMost'>): Reason => {
      const best = stairs.bestUpTo(entry.order) as Point;
      const by = byKey.get(best.key) as Entry;
      return {
        kind: 'beaten',
        by: best.key,
        byWater: best.water,
        ...(by.cost === undefined ? {} : { byCost: by.cost }),
        ...(entry.cost === undefined ? {} : { cost: entry.cost }),
        ...own,
      };
    };
    // What the finished front beats by bound is beaten by it, whether it happened to be run or not.
    if (stairs.beatsClearly(entry.order, entry.atMost)) return beaten({ atMost: entry.atMost });
    const run = runs.get(entry.runKey);
    if (!run) return { kind: 'notTried' };
    return late(entry, run, group) ?? beaten({ water: entry.parts.count * run.deliveryFlow });
  };
  return {
    priced: fields[0] as Field,
    unpriced: fields[1] as Field,
    isComplete: !isStopped,
    progress: progress(),
    reasonFor,
    candidate: (key) => byKey.get(key),
    keys: () => byKey.keys(),
  };
}

/** All combinations with their bounds: the priced from the cheapest up, the others from the most promising down. */
function entriesOf(place: PlaceToFit, wish: Wish, offers: Offers): Entry[] {
  const bounds = new Map<string, Bounds>();
  const flows = new Map<string, CubicMetrePerSecond>();
  const entries: Entry[] = [];
  for (const candidate of candidates(place, wish, offers)) {
    const { parts, runKey } = candidate;
    const order = candidate.cost ?? 0;
    const add = (early: Reason | undefined, atMost: CubicMetrePerSecond): void => {
      entries.push({ ...candidate, order, atMost, ...(early ? { early } : {}) });
    };
    const misfit = misfitOf(place, wish, candidate);
    if (misfit) {
      add(misfit, 0);
      continue;
    }
    const installation = installationOf(place, parts);
    // The drive side alone decides all bounds but that of friction in the delivery pipe.
    const driveKey = [
      parts.ram.key,
      parts.tuning.name,
      parts.count,
      parts.drivePipe.key,
      parts.driveLength,
      parts.feeder ? 'fed' : '',
    ].join('|');
    let bound = bounds.get(driveKey);
    if (!bound) {
      bound = boundsOf(installation, parts);
      bounds.set(driveKey, bound);
    }
    if (bound.reason) {
      add(bound.reason, 0);
      continue;
    }
    let flow = flows.get(runKey);
    if (flow === undefined) {
      flow = deliveryBound(installation, bound);
      flows.set(runKey, flow);
    }
    add(undefined, parts.count * flow);
  }
  return entries.sort((a, b) =>
    a.cost === undefined && b.cost === undefined
      ? b.atMost - a.atMost || byCostThenKey({ cost: 0, key: a.key }, { cost: 0, key: b.key })
      : byCostThenKey({ cost: a.order, key: a.key }, { cost: b.order, key: b.key }),
  );
}

/** What can be seen without any hydraulics but a standing column. */
function misfitOf(place: PlaceToFit, wish: Wish, { parts }: Candidate): Reason | undefined {
  const { drivePipe, driveLength, feeder, tank, deliveryPipe, vessel } = parts;
  const way = place.driveRoute.length;
  const isShort = driveLength < way * (1 - 1e-9) && !feeder;
  if (isShort || driveLength > LONGEST_PER_ROUTE * way * (1 + 1e-9)) {
    return { kind: 'lengthDoesNotFit', length: driveLength, route: way };
  }
  for (const [pipe, length] of [
    [drivePipe, driveLength],
    [feeder?.pipe, feeder?.length ?? 0],
    [deliveryPipe, place.deliveryRoute.length],
  ] as const) {
    if (pipe?.joinable !== false || !pipe.soldLengths?.length) continue;
    const longest = Math.max(...pipe.soldLengths.map((sold) => sold.length));
    if (longest < length) return { kind: 'noPieceLongEnough', name: pipe.name, length, longest };
  }
  if (tank && wish.tankVolume !== undefined && tank.volume < wish.tankVolume) {
    return { kind: 'tankTooSmall', volume: tank.volume, needs: wish.tankVolume };
  }
  const pressure = place.water.density * GRAVITY * place.lift;
  const pipeRating = deratedRating(deliveryPipe.pipe, place.water.temperature);
  if (pipeRating !== undefined && pressure > pipeRating) {
    const { name } = deliveryPipe;
    return { kind: 'overRated', part: 'deliveryPipe', name, pressure, rating: pipeRating };
  }
  if (vessel?.rating !== undefined && pressure > vessel.rating) {
    const { name, rating } = vessel;
    return { kind: 'overRated', part: 'vessel', name, pressure, rating };
  }
  return undefined;
}

interface Usable extends Point {
  readonly entry: Entry;
  readonly run: CandidateRun;
}

/** The whole front, and those beside it that stand farthest from their limits. */
function toJudge(contenders: readonly Contender[]): Contender[] {
  const beside = contenders
    .filter((c) => !c.isOnFront)
    .sort(
      (a, b) => b.margins.least - a.margins.least || (a.candidate.key < b.candidate.key ? -1 : 1),
    );
  return [...contenders.filter((c) => c.isOnFront), ...beside.slice(0, MOST_JUDGED_BESIDE)];
}

function neededOfOne(wish: Wish, { candidate }: Contender) {
  return wish.need === undefined ? {} : { needed: wish.need / candidate.parts.count };
}

/** One ram's share, at its own level, with what the source gives in the dry season. */
function judgeTask(place: PlaceToFit, wish: Wish, contender: Contender): ChoiceTask {
  const { candidate, run } = contender;
  const { dryFlow } = place;
  const source =
    dryFlow === undefined
      ? place.source
      : place.source.kind === 'steady'
        ? { ...place.source, yield: dryFlow }
        : { ...place.source, inflow: dryFlow };
  return {
    kind: 'judge',
    key: candidate.key,
    installation: installationOf({ ...place, source }, candidate.parts, run.level),
    ...neededOfOne(wish, contender),
  };
}

function quoteTask(place: PlaceToFit, wish: Wish, contender: Contender): ChoiceTask {
  const { candidate, run } = contender;
  return {
    kind: 'quote',
    key: candidate.key,
    installation: installationOf(place, candidate.parts, run.level),
    ...neededOfOne(wish, contender),
  };
}

function picksList(picks: Picks): Contender[] {
  const { cheapest, mostWater, mostForgiving } = picks;
  const list = [cheapest, mostWater, mostForgiving].flatMap((p) => (p ? [p.contender] : []));
  return list.filter((c, i) => list.findIndex((d) => d.candidate.key === c.candidate.key) === i);
}

function failureOf({ verdict, pressureCheck }: Answer): Reason | undefined {
  if (verdict.kind !== 'runs' && verdict.kind !== 'runsAfterHandStart') {
    return { kind: 'failsWhenQuoted', why: verdict.kind };
  }
  return pressureCheck?.rows.some((r) => r.outcome === 'over')
    ? { kind: 'failsWhenQuoted', why: 'overRated' }
    : undefined;
}

/** Does one task here. `judge` is for callers that can; without it there are no tasks to judge. */
export function performTask(
  place: PlaceToFit,
  task: ChoiceTask,
  judge?: (installation: Installation, needed?: CubicMetrePerSecond) => Judgement,
): ChoiceResult {
  const { key } = task;
  switch (task.kind) {
    case 'run':
      return { kind: 'run', key, run: runOf(place, task.candidate.parts) };
    case 'judge':
      if (!judge) throw new RangeError('judge must be given to a choice that judges, got none');
      return { kind: 'judge', key, judgement: judge(task.installation, task.needed) };
    case 'quote': {
      const demand = task.needed === undefined ? {} : { demand: task.needed };
      const answer = answerFor(task.installation, { changes: false, ...demand });
      return { kind: 'quote', key, answer };
    }
  }
}

/** The whole choice on this thread. */
export function chooseHere(
  request: ChoiceRequest,
  options: ChoiceOptions = {},
  judge?: (installation: Installation, needed?: CubicMetrePerSecond) => Judgement,
): Choice {
  const search = choose(request, { ...options, judges: judge !== undefined });
  let step = search.next();
  while (!step.done) {
    const results = step.value.tasks.map((task) => performTask(request.place, task, judge));
    step = search.next({ results });
  }
  return step.value;
}
