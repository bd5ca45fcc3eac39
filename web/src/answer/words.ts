/** The answer in the words of the page, and the amounts in the person's units. */
import type { VerdictKind } from '@fallwright/engine';
import { isRunning, verdictWords } from '@fallwright/papers';
import type { System } from '@fallwright/units';
import { formatNumber, formatQuantity } from '@fallwright/units';
import type { SiteAnswer, SiteAnswerState } from './site-answer.ts';

/** What reaches the tank, for the great number and its axis. */
export interface DeliveredAmount {
  readonly figure: string;
  /** What the figure counts: `litres a day at the tank`. */
  readonly unit: string;
  /** In SI, as the axis wants only their proportions. */
  readonly delivered: number;
  readonly needed?: number;
  readonly inWords: string;
  readonly neededInWords?: string;
}

export interface AnswerWords {
  readonly verdict: string;
  readonly amount?: DeliveredAmount;
  /** The limiting cause. */
  readonly reason: string;
  /** The numbers behind it. */
  readonly behind: string;
  readonly start: string;
  /** The whole in a sentence or two, for those who listen. */
  readonly spoken: string;
}

/** The verdict as it begins a line. */
export function verdictWord(kind: VerdictKind): string {
  const words = verdictWords(kind);
  return words.charAt(0).toUpperCase() + words.slice(1);
}

export function answerInWords({ answer, words }: SiteAnswer, system: System): AnswerWords {
  const verdict = verdictWord(answer.verdict.kind);
  const amount = deliveredAmount(answer, system);
  const { reasons, start } = words[system];
  const [reason = '', ...behind] = reasons;
  return {
    verdict,
    ...(amount === undefined ? {} : { amount }),
    reason,
    behind: behind.join(' '),
    start: start.join(' '),
    spoken: [
      `${verdict}.`,
      ...(amount === undefined ? [] : [`${amount.figure} ${amount.unit}.`]),
      reason,
    ].join(' '),
  };
}

const UNIT_IN_WORDS = { metric: 'litres a day', us: 'gallons a day' } as const;

function deliveredAmount(
  answer: SiteAnswer['answer'],
  system: System,
): DeliveredAmount | undefined {
  const { verdict, operatingPoint, demand, emptying } = answer;
  if (operatingPoint === undefined) return undefined;
  const goesOn = isRunning(verdict.kind);
  if (!goesOn && verdict.kind !== 'starves') return undefined;
  // A store that empties brings what a day of it brings, and not what its brim would bring all day.
  const isDaily = !goesOn && emptying !== undefined;
  const delivered = isDaily ? emptying.meanDelivery : operatingPoint.deliveryFlow;
  const when = goesOn
    ? 'at the tank'
    : isDaily
      ? 'when it is started once a day'
      : 'while the water lasts';
  return {
    figure: formatNumber(delivered, 'daily', system),
    unit: `${UNIT_IN_WORDS[system]} ${when}`,
    delivered,
    inWords: formatQuantity(delivered, 'daily', system),
    ...(demand === undefined
      ? {}
      : { needed: demand.needed, neededInWords: formatNumber(demand.needed, 'daily', system) }),
  };
}

/** How things stand, for those who listen; nothing while it is still being computed. */
export function inSpeech({ phase, shown, problems }: SiteAnswerState, system: System): string {
  if (phase === 'answered' && shown !== undefined) return answerInWords(shown.value, system).spoken;
  if (phase !== 'refused') return '';
  const wrong = problems.filter((problem) => problem.kind !== 'missing');
  if (wrong.length > 0) return wrong.map((problem) => problem.message).join(' ');
  return problems.length === 1
    ? 'One thing is still needed for an answer.'
    : `${problems.length} things are still needed for an answer.`;
}
