/** When nothing works: which bounds failed, how often, and which combination came nearest to holding each. */
import type { Ratio } from '../../quantities.ts';
import type { Choice } from './choose.ts';
import type { Reason } from './reasons.ts';

/** Combinations that failed alike, with the one that came nearest. */
export interface Miss {
  /** Of the nearest. */
  readonly key: string;
  readonly reason: Reason;
  /** What it takes over what there is, less one; nought where only the simulation fails. */
  readonly shortBy: Ratio;
  readonly count: number;
}

/** The bounds that failed, the one that was nearest to hold first. What merely lost to another is no miss. */
export function missesOf(choice: Choice): Miss[] {
  const misses = new Map<string, Miss>();
  for (const key of choice.keys()) {
    const reason = choice.reasonFor(key);
    const shortBy = reason && shortOf(reason);
    if (reason === undefined || shortBy === undefined) continue;
    const name = reason.kind === 'verdict' ? reason.verdict : reason.kind;
    const before = misses.get(name);
    const count = (before?.count ?? 0) + 1;
    misses.set(
      name,
      before && before.shortBy <= shortBy ? { ...before, count } : { key, reason, shortBy, count },
    );
  }
  return [...misses.values()].sort(
    (a, b) => a.shortBy - b.shortBy || b.count - a.count || (a.key < b.key ? -1 : 1),
  );
}

/** How far a bound is from holding; nothing where there is no bound. */
function shortOf(reason: Reason): Ratio | undefined {
  switch (reason.kind) {
    case 'lengthDoesNotFit':
      return Math.abs(Math.log(reason.route / reason.length));
    case 'noPieceLongEnough':
      return reason.length / reason.longest - 1;
    case 'tankTooSmall':
      return reason.needs / reason.volume - 1;
    case 'staysOpen':
      return reason.closingFlow / reason.terminalFlow - 1;
    case 'overRated':
      return reason.pressure / reason.rating - 1;
    case 'liftTooHigh':
      return reason.needs / reason.reaches - 1;
    case 'standpipeDry':
      return reason.ground / reason.level - 1;
    case 'verdict':
      return Math.max(0, -reason.decidedBy.margin);
    case 'belowNeed': {
      const gives = reason.water ?? reason.atMost ?? 0;
      return gives > 0 ? reason.need / gives - 1 : Infinity;
    }
    case 'pulse':
      return reason.share / reason.largest - 1;
    case 'failsWhenQuoted':
      return 0;
    case 'beaten':
    case 'notTried':
      return undefined;
  }
}
