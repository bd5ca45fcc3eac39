/** The whole answer for one place: run, start, pressures, verdict, and what would change it. */
import type { Installation, StoredSource } from '../cycle/installation.ts';
import { delivers, operatingPoint } from '../cycle/operating-point.ts';
import type { OperatingPoint } from '../cycle/run-record.ts';
import { startUp } from '../cycle/start-up.ts';
import { terminalFlow } from '../cycle/terminal-flow.ts';
import { closingFlow } from '../machine/waste-valve.ts';
import type { CubicMetrePerSecond } from '../quantities.ts';
import type { Answer } from './answer.ts';
import { DAY } from './demand/demand-figures.ts';
import { atFall, type Emptying, emptying } from './drain-time.ts';
import { pressureCheck } from './pressure-check.ts';
import { verdictOn } from './verdict.ts';
import { whatWouldChange } from './what-would-change.ts';

export interface AnswerOptions {
  /** Flow that is needed at the tank. */
  readonly demand?: CubicMetrePerSecond;
  /** Look for what would change the verdict; the slowest part. On by default. */
  readonly changes?: boolean;
  /** Follow a cold start. On by default. */
  readonly startUp?: boolean;
  /** Run the fine grid for pressures. On by default. */
  readonly pressures?: boolean;
}

/** Beats in each block behind a figure that is quoted. Judgement: the mean of 48 irregular beats is good to 1–2 %. */
const QUOTING_BLOCK = 24;
/** Judgement: delivery on 8 reaches is off by 4 % in the median of sensible places, on 32 by 2 % (grid-refinement tests). */
const QUOTING_REACHES = 32;

const QUOTING = { block: QUOTING_BLOCK, reaches: QUOTING_REACHES };

/** An answer as it stands before the run for pressures, which takes as long as all the rest. */
export interface EarlyAnswer {
  readonly answer: Answer;
  /** Whether it beats, so that its pressures are still to be looked at. */
  readonly lacksPressures: boolean;
}

/** Runs an installation and says whether it runs, how much it gives, and why. */
export function answerFor(installation: Installation, options: AnswerOptions = {}): Answer {
  const { answer, lacksPressures } = earlyAnswer(installation, options);
  return lacksPressures && options.pressures !== false
    ? withPressures(installation, answer)
    : answer;
}

/** Everything but the pressures. */
export function earlyAnswer(
  installation: Installation,
  options: Omit<AnswerOptions, 'pressures'> = {},
): EarlyAnswer {
  const full = atTheBrim(installation);
  const brim = operatingPoint(full, QUOTING);
  const isLifting = delivers(brim);
  const start =
    isLifting && options.startUp !== false ? startUp(full, { stopValve: 'shut' }) : undefined;
  const startOpen =
    isLifting && options.startUp !== false ? startUp(full, { stopValve: 'open' }) : undefined;
  const terminal = terminalFlow(installation);
  const { source } = installation;
  const emptied = isLifting && source.kind === 'store' ? emptying(installation, source) : undefined;
  const { place, point } =
    emptied?.end === 'keepsUp' && source.kind === 'store' && brim.supplyFlow > source.inflow
      ? whereItStays(installation, source, emptied.drop)
      : { place: installation, point: brim };
  const store = emptied?.end === 'keepsUp' ? givingSteadily(emptied, point) : emptied;
  const verdict = verdictOn(place, point, terminalFlow(place), start);
  // A store whose inflow keeps up at the brim is no more than a steady source.
  const sinks = store !== undefined && store.drop > 0;
  // What comes over a day: a store that empties does not give what its brim gives.
  const comes = sinks && store.end !== 'keepsUp' ? store.meanDelivery : point.deliveryFlow;
  const { demand } = options;
  const changed =
    options.changes === false
      ? { changes: [], materials: [] }
      : atOnce(whatWouldChange(installation, demand));
  const answer: Answer = {
    verdict,
    ...(isLifting ? { operatingPoint: point } : {}),
    ...(start ? { startUp: start } : {}),
    ...(startOpen ? { startUpOpen: startOpen } : {}),
    ...(sinks && store.end !== 'keepsUp' ? { drainTime: store.time } : {}),
    ...(sinks ? { emptying: store } : {}),
    terminalFlow: terminal,
    closingFlow: closingFlow(installation.ram.wasteValve, installation.water.density),
    ...changed,
    ...(demand === undefined
      ? {}
      : { demand: { needed: demand, isMet: isLifting && comes >= demand } }),
  };
  return { answer, lacksPressures: brim.beatFrequency > 0 };
}

function atOnce<Result>(work: Generator<void, Result, void>): Result {
  let step = work.next();
  while (step.done !== true) step = work.next();
  return step.value;
}

/** The answer with the pressures in every part. */
export function withPressures(installation: Installation, answer: Answer): Answer {
  return { ...answer, pressureCheck: pressureCheck(atTheBrim(installation)).check };
}

/**
 * A store whose surface sinks to a level and stays there: the ram goes on, so it is judged at that level. There the inflow is
 * what it takes; a hair that the run takes more is the width of the steps in which the level was found.
 */
function whereItStays(
  installation: Installation,
  source: StoredSource,
  drop: number,
): { readonly place: Installation; readonly point: OperatingPoint } {
  const lower = atFall(installation, installation.fall - drop);
  const point = operatingPoint(lower, QUOTING);
  const given = Math.max(source.inflow, point.supplyFlow);
  return { place: { ...lower, source: { kind: 'steady', yield: given } }, point };
}

/** One figure for what comes: that of the run which is quoted, and not of the coarser ones that found the level. */
function givingSteadily(store: Emptying, { deliveryFlow }: OperatingPoint): Emptying {
  const day = deliveryFlow * DAY;
  return { ...store, delivered: day, dailyVolume: day, meanDelivery: deliveryFlow };
}

/** The beat of a store is that at its brim; how long it lasts is told apart. */
function atTheBrim(installation: Installation): Installation {
  return installation.source.kind === 'store'
    ? { ...installation, source: atFall(installation, installation.fall).source }
    : installation;
}
