/**
 * Running a ram until its beats can be trusted.
 *
 * Beats may come to agree to the last digit, or go on differing by a per cent or so for ever, because waves are still ringing
 * in the line when the valve opens. So there are two ways to be settled: the last few beats are alike, or the means of the
 * last two blocks of beats are. The vessel's head may be let follow the delivery meanwhile: after each block it is set to
 * the head that this delivery asks for.
 */
import type { CubicMetre, CubicMetrePerSecond, Metre, Ratio, Second } from '../quantities.ts';
import type { RamKernel } from './ram-kernel.ts';
import type { RunOutcome } from './run-record.ts';

/** Successive beats agree when length, waste and delivery differ by less than this. */
const AGREEMENT: Ratio = 1e-3;
/** How many beats in a row must agree. */
const AGREEING_BEATS = 4;
/** Means of two blocks agree within this. Judgement: a good valve's own beats vary by 2 % (checks: AC19-R3). */
const BLOCK_AGREEMENT: Ratio = 0.02;
/** Beats left out before the first block: the line is still gathering speed. */
const WARM_UP = 3;
/** Times over that a ram is watched for a beat while something moves in it: a disc may also hang in mid-stream for ever. */
const MOST_WAITS = 8;
/** Blocks after which a run that never agreed is called irregular, and its last two blocks are taken as they are. */
const MOST_BLOCKS = 8;

/** Means over the last beats of a run. All nought when the ram does not beat. */
export interface SettledBeat {
  readonly outcome: RunOutcome;
  readonly beats: number;
  readonly length: Second;
  readonly wasted: CubicMetre;
  readonly delivered: CubicMetre;
  readonly flowAtClosing: CubicMetrePerSecond;
  /** Standard deviation of the beats' lengths over their mean. */
  readonly spread: Ratio;
}

interface Beat {
  readonly time: Second;
  readonly wasted: CubicMetre;
  readonly delivered: CubicMetre;
  readonly closing: CubicMetrePerSecond;
}

export interface SettlingOptions {
  /** Nothing may happen for this long before the run is called still. */
  readonly still: Second;
  /** Beats in a block: few for choosing, more when a figure is to be quoted. */
  readonly block: number;
  /** Head for a delivery, when the vessel's head is to follow it; and how near is near enough. */
  readonly follow?: {
    readonly headFor: (flow: CubicMetrePerSecond) => Metre;
    readonly tolerance: Metre;
  };
}

/** Runs until the beats agree, or the ram stands still, or it has beaten long enough. */
export function settledBeat(kernel: RamKernel, options: SettlingOptions): SettledBeat {
  const { still, block, follow } = options;
  const stillSteps = Math.ceil(still / kernel.grid.timeStep);
  const history: Beat[] = [];
  let agreeing = 0;
  let isHeadRight = follow === undefined;
  kernel.clearExtremes();
  while (history.length <= WARM_UP + MOST_BLOCKS * block) {
    // A disc may also hang still in mid-stream, neither shut nor wide open: no beat is no beat.
    let ended = kernel.run(stillSteps);
    // Water may still be passing to the vessel: where the lift is hardly above the fall, little slows it down.
    for (let wait = 1; wait < MOST_WAITS && ended === 0; wait++) {
      if (kernel.isSourceEmpty || kernel.time - kernel.lastMotion >= still) break;
      ended = kernel.run(stillSteps);
    }
    if (kernel.isSourceEmpty) return noBeat('sourceEmpty', history.length);
    if (ended === 0) {
      return noBeat(kernel.opening > 0 ? 'staysOpen' : 'staysShut', history.length);
    }
    const last = kernel.lastBeat;
    history.push({
      time: last.time,
      wasted: last.wasted,
      delivered: last.delivered,
      closing: last.flowAtClosing,
    });
    if (history.length < 3) continue;

    const isAlike = areAlike(change(history, 2, 1), change(history, 1, 0), AGREEMENT);
    agreeing = isAlike ? agreeing + 1 : 0;
    if (agreeing >= AGREEING_BEATS) {
      if (isHeadRight) return meanBeat('settled', history, AGREEING_BEATS);
      isHeadRight = followHead(kernel, change(history, AGREEING_BEATS, 0), follow);
      if (isHeadRight) return meanBeat('settled', history, AGREEING_BEATS);
      agreeing = 0;
      continue;
    }
    const blocks = (history.length - 1 - WARM_UP) / block;
    if (blocks < 1 || !Number.isInteger(blocks)) continue;
    const wasHeadRight = isHeadRight;
    isHeadRight = followHead(kernel, change(history, block, 0), follow);
    if (
      blocks >= 2 &&
      wasHeadRight &&
      isHeadRight &&
      areAlike(change(history, 2 * block, block), change(history, block, 0), BLOCK_AGREEMENT)
    ) {
      return meanBeat('settled', history, 2 * block);
    }
  }
  return meanBeat('irregular', history, 2 * block);
}

/** Moves the vessel's head to what the delivery asks for; true when it stood there already. */
function followHead(kernel: RamKernel, block: Change, follow: SettlingOptions['follow']): boolean {
  if (follow === undefined) return true;
  const head = kernel.vesselHead;
  const bare = follow.headFor(0);
  const flow = Math.max(0, block.delivered / block.length);
  const asked = follow.headFor(flow);
  const excess = asked - head;
  if (Math.abs(excess) <= follow.tolerance) return true;
  // Newton's step: delivery falls about as the head's inverse, friction grows about as the flow to the power 1.8.
  const stiffness = (1.8 * (asked - bare)) / head;
  kernel.setVesselHead(head + excess / (1 + stiffness));
  return false;
}

interface Change {
  readonly length: Second;
  readonly wasted: CubicMetre;
  readonly delivered: CubicMetre;
}

/** What happened between two beats, counted back from the last. */
function change(history: readonly Beat[], from: number, to: number): Change {
  const a = history.at(-1 - from) as Beat;
  const b = history.at(-1 - to) as Beat;
  return {
    length: b.time - a.time,
    wasted: b.wasted - a.wasted,
    delivered: b.delivered - a.delivered,
  };
}

function areAlike(a: Change, b: Change, share: Ratio): boolean {
  // Delivery is held to its own size, but not below a hundredth of the waste: a ram that lifts nothing has settled too.
  const delivery = Math.max(Math.abs(b.delivered), 1e-2 * Math.abs(b.wasted));
  return (
    Math.abs(a.length - b.length) < share * b.length &&
    Math.abs(a.wasted - b.wasted) < share * Math.abs(b.wasted) &&
    Math.abs(a.delivered - b.delivered) < share * delivery
  );
}

function noBeat(outcome: RunOutcome, beats: number): SettledBeat {
  return { outcome, beats, length: 0, wasted: 0, delivered: 0, flowAtClosing: 0, spread: 0 };
}

/** A ram delivers when a beat gives more than this share of what its waste valve lets go. */
const LEAST_DELIVERY: Ratio = 1e-3;

function meanBeat(outcome: RunOutcome, history: readonly Beat[], last: number): SettledBeat {
  const whole = change(history, last, 0);
  const length = whole.length / last;
  const delivered = whole.delivered / last;
  const wasted = whole.wasted / last;
  let variance = 0;
  let closing = 0;
  for (let i = 0; i < last; i++) {
    variance += (change(history, i + 1, i).length - length) ** 2 / last;
    closing += (history.at(-1 - i) as Beat).closing / last;
  }
  const isDelivering = delivered > LEAST_DELIVERY * Math.max(wasted, 0);
  return {
    outcome: isDelivering ? outcome : 'noDelivery',
    beats: history.length,
    length,
    wasted,
    // What is left of nothing is rounding, and a trickle of one part in a thousand is nothing.
    delivered: isDelivering ? delivered : 0,
    flowAtClosing: closing,
    spread: Math.sqrt(variance) / length,
  };
}
