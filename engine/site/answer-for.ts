/** The whole answer for one place: run, start, pressures, verdict, and what would change it. */
import type { Installation } from '../cycle/installation.ts';
import { delivers, operatingPoint } from '../cycle/operating-point.ts';
import { startUp } from '../cycle/start-up.ts';
import { closingFlow } from '../machine/waste-valve.ts';
import type { CubicMetrePerSecond } from '../quantities.ts';
import type { Answer } from './answer.ts';
import { atFall, emptying } from './drain-time.ts';
import { pressureCheck } from './pressure-check.ts';
import { terminalFlow, verdictOn } from './verdict.ts';
import { changesOneByOne, inOrderOfTrying, materialChanges } from './what-would-change.ts';

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

/** Runs an installation and says whether it runs, how much it gives, and why. */
export function answerFor(installation: Installation, options: AnswerOptions = {}): Answer {
  // The beat of a store is that at its brim; how long it lasts is told apart.
  const still =
    installation.source.kind === 'store'
      ? { ...installation, source: atFall(installation, installation.fall).source }
      : installation;
  const point = operatingPoint(still, { block: QUOTING_BLOCK, reaches: QUOTING_REACHES });
  const isLifting = delivers(point);
  const isBeating = point.beatFrequency > 0;
  const start =
    isLifting && options.startUp !== false ? startUp(still, { stopValve: 'shut' }) : undefined;
  const startOpen =
    isLifting && options.startUp !== false ? startUp(still, { stopValve: 'open' }) : undefined;
  const terminal = terminalFlow(installation);
  const verdict = verdictOn(installation, point, terminal, start);
  const pressures =
    isBeating && options.pressures !== false ? pressureCheck(still).check : undefined;
  const store =
    isLifting && installation.source.kind === 'store'
      ? emptying(installation, installation.source)
      : undefined;
  // A store whose inflow keeps up at the brim is no more than a steady source.
  const sinks = store !== undefined && store.drop > 0;
  const { demand } = options;
  const wantsChanges = options.changes !== false;
  const changes = wantsChanges ? [...changesOneByOne(installation, demand)] : [];
  return {
    verdict,
    ...(isLifting ? { operatingPoint: point } : {}),
    ...(start ? { startUp: start } : {}),
    ...(startOpen ? { startUpOpen: startOpen } : {}),
    ...(sinks && store.end !== 'keepsUp' ? { drainTime: store.time } : {}),
    ...(sinks ? { emptying: store } : {}),
    terminalFlow: terminal,
    closingFlow: closingFlow(installation.ram.wasteValve, installation.water.density),
    ...(pressures ? { pressureCheck: pressures } : {}),
    changes: inOrderOfTrying(changes),
    materials: wantsChanges ? materialChanges(installation) : [],
    ...(demand === undefined
      ? {}
      : { demand: { needed: demand, isMet: isLifting && point.deliveryFlow >= demand } }),
  };
}
