/** Why a combination was not taken: one sentence from its reason. */
import type { Choice, Limit, RatedPart, Reason } from '@fallwright/engine';
import { perCent } from '../answered.ts';
import { verdictWords } from '../verdict-words.ts';
import { combinationInWords } from './combination-words.ts';
import { moneyInWords, type Reader, shown } from './reader.ts';

const PARTS = {
  drivePipe: 'drive pipe',
  ram: 'ram',
  deliveryPipe: 'delivery pipe',
  vessel: 'air vessel',
} as const satisfies Record<RatedPart, string>;

export interface WhyNotRow {
  readonly key: string;
  readonly what: string;
  /** Empty without a price. */
  readonly cost: string;
  /** Empty on the front. */
  readonly why: string;
}

/** One combination and why it lost; on the front it did not. @throws RangeError for a key that is no combination's. */
export function whyNotRow(choice: Choice, key: string, reader: Reader): WhyNotRow {
  const reason = choice.reasonFor(key);
  const candidate = choice.candidate(key);
  if (!candidate) throw new RangeError(`key must be that of a combination, got ${key}`);
  return {
    key,
    what: combinationInWords(candidate.parts, reader),
    cost: candidate.cost === undefined ? '' : moneyInWords(candidate.cost, reader),
    why: reason ? reasonInWords(reason, choice, reader) : '',
  };
}

export function reasonInWords(reason: Reason, choice: Choice, reader: Reader): string {
  const flow = (value: number) => shown(value, 'daily', reader);
  switch (reason.kind) {
    case 'lengthDoesNotFit':
      return reason.length < reason.route
        ? `A drive line of ${shown(reason.length, 'pipeLength', reader)} is too short for a way of ${shown(reason.route, 'pipeLength', reader)}, and no feeder pipe is offered.`
        : `A drive line of ${shown(reason.length, 'pipeLength', reader)} is more than half as long again as its way of ${shown(reason.route, 'pipeLength', reader)}.`;
    case 'noPieceLongEnough':
      return `A line of ${reason.name} must be of one piece: ${shown(reason.length, 'pipeLength', reader)} are needed, and the longest that is sold is ${shown(reason.longest, 'pipeLength', reader)}.`;
    case 'tankTooSmall':
      return `The tank holds ${shown(reason.volume, 'volume', reader)}, and ${shown(reason.needs, 'volume', reader)} are needed.`;
    case 'staysOpen':
      return `It stays open: the line can pass ${shown(reason.terminalFlow, 'sourceFlow', reader)} at most, and the waste valve shuts at ${shown(reason.closingFlow, 'sourceFlow', reader)}.`;
    case 'overRated':
      return `The ${PARTS[reason.part]} (${reason.name}) would see ${shown(reason.pressure, 'pressure', reader)} and may carry ${shown(reason.rating, 'pressure', reader)}.`;
    case 'liftTooHigh':
      return `The hammer reaches ${shown(reason.reaches, 'head', reader)} at most, and lifting takes ${shown(reason.needs, 'head', reader)}.`;
    case 'standpipeDry':
      return `The feeder loses so much that the standpipe would stand at ${shown(reason.level, 'elevation', reader)}, below its ground at ${shown(reason.ground, 'elevation', reader)}.`;
    case 'verdict':
      return `It ${verdictWords(reason.verdict)}: ${limitInWords(reason.decidedBy, reader)}.`;
    case 'belowNeed': {
      const gives =
        reason.water === undefined
          ? `could give ${flow(reason.atMost ?? 0)} at most`
          : `gives ${flow(reason.water)}`;
      return `It ${gives}, and ${flow(reason.need)} are needed.`;
    }
    case 'pulse':
      return Number.isFinite(reason.share)
        ? `The head in its air vessel swings by ${perCent(reason.share)} at each beat, more than the ${perCent(reason.largest)} that is wished.`
        : `A beat’s water would fill all the air in its vessel.`;
    case 'beaten':
      return beatenInWords(reason, choice, reader);
    case 'failsWhenQuoted':
      return reason.why === 'overRated'
        ? 'Run again on the fine grid, its pressure goes over a rating.'
        : `Run again on the fine grid, it ${verdictWords(reason.why)}.`;
    case 'notTried':
      return 'The search was stopped before its turn.';
  }
}

/** What there is against what it takes; where the rule holds by itself, that only the simulation says otherwise. */
function limitInWords({ kind, has, needs }: Limit, reader: Reader): string {
  const purpose = {
    closingFlow: 'sourceFlow',
    recoil: 'head',
    hammer: 'head',
    source: 'sourceFlow',
    beat: 'time',
  } as const;
  const what = {
    closingFlow: ['the line can pass', 'the waste valve shuts at'],
    recoil: ['the air vessel stands at', 'the recoil needs about'],
    hammer: ['the hammer makes', 'the delivery valve opens above'],
    source: ['the source gives', 'the ram takes'],
    beat: ['a beat lasts', 'the water of the whole line needs'],
  } as const;
  const [there, takes] = what[kind];
  const show = (value: number) => shown(value, purpose[kind], reader);
  const both = `${there} ${show(has)}, ${takes} ${show(needs)}`;
  return has < needs
    ? both
    : `${both}, which would do by the plain rule; waves and losses take the rest`;
}

function beatenInWords(
  reason: Reason & { readonly kind: 'beaten' },
  choice: Choice,
  reader: Reader,
): string {
  const { by, byCost, byWater, cost, water, atMost } = reason;
  const other = choice.candidate(by);
  const what = other ? combinationInWords(other.parts, reader) : by;
  const flow = (value: number) => shown(value, 'daily', reader);
  const own = water === undefined ? `${flow(atMost ?? 0)} at most` : flow(water);
  const price = (amount: number | undefined) =>
    amount === undefined ? '' : ` for ${moneyInWords(amount, reader)}`;
  return `It gives ${own}${price(cost)}; ${flow(byWater)}${price(byCost)} come from ${what}.`;
}
