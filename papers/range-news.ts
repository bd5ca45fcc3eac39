/** What a maker's range says of a site that was answered with one of its rams: is there a newer revision, and what would it give? */
import type { Answer, VerdictKind } from '@fallwright/engine';
import type { NewestSite } from '@fallwright/records';
import { formatNumber, type System, toLitresPerDay } from '@fallwright/units';
import { isRunning, verdictWords } from './verdict-words.ts';

/** What differs between two answers for one place. */
export interface AnswersCompared {
  readonly before: AnswerShort;
  readonly after: AnswerShort;
  /** Whether a person would notice: another verdict, or another delivery by more than a hundredth. */
  readonly isDifferent: boolean;
}

export interface AnswerShort {
  readonly verdict: VerdictKind;
  /** Nought unless the ram goes on delivering, in m³/s. */
  readonly delivery: number;
}

/** Judgement: nobody measures a delivery to better than a hundredth. */
const NOTICED = 0.01;

export function answersCompared(before: Answer, after: Answer): AnswersCompared {
  const [a, b] = [short(before), short(after)];
  const gap = Math.abs(a.delivery - b.delivery);
  return {
    before: a,
    after: b,
    isDifferent: a.verdict !== b.verdict || gap > NOTICED * Math.max(a.delivery, b.delivery),
  };
}

function short({ verdict, operatingPoint }: Answer): AnswerShort {
  const delivery = isRunning(verdict.kind) ? (operatingPoint?.deliveryFlow ?? 0) : 0;
  return { verdict: verdict.kind, delivery };
}

/** `compared` is with the other site of the news, where there is one. */
export function rangeNewsInWords(
  news: NewestSite,
  compared: AnswersCompared | undefined,
  system: System,
): readonly string[] {
  const told = compared ? [differenceInWords(compared, system)] : [];
  switch (news.kind) {
    case 'notFromRange':
      return ['The ram of this site comes from no range, so there is nothing to compare it with.'];
    case 'unknownRam':
      return [
        `The range has no ${news.reference}. Is it the right range, and was the ram not taken out of it?`,
      ];
    case 'copyDiffers':
      return [
        `The parts in this site file are not those that the range has under ${news.reference}: one of the two was changed by hand. This answer is that of the site file.`,
        ...told,
      ];
    case 'isNewest':
      return [
        `${news.reference} is the newest revision.${news.isRetired ? ' The ram is no longer made.' : ''}`,
      ];
    case 'noSuchTuning':
      return [
        `There is a newer revision, ${news.newest}, but it is no longer set up as ${news.tuning}. Its tunings: ${news.tunings.join('; ')}.`,
      ];
    case 'newer': {
      const changes = news.changes.length > 0 ? `: ${news.changes.join('; before that: ')}` : '';
      return [
        `This site has ${news.reference}; the newest revision is ${news.newest}${changes}.${news.isRetired ? ' The ram is no longer made.' : ''}`,
        ...told,
      ];
    }
  }
}

function differenceInWords(
  { before, after, isDifferent }: AnswersCompared,
  system: System,
): string {
  if (!isDifferent) return 'Its answer here would be the same.';
  const unit = system === 'metric' ? 'litres' : 'gallons';
  const says = ({ verdict, delivery }: AnswerShort): string =>
    isRunning(verdict)
      ? `${verdictWords(verdict)} and gives ${formatNumber(delivery, 'daily', system)} ${unit} a day`
      : verdictWords(verdict);
  return `With it the answer would differ: it ${says(after)}, where this one ${says(before)}.`;
}

/** The same for programs. */
export function rangeNewsRecord(
  news: NewestSite,
  compared: AnswersCompared | undefined,
  system: System,
) {
  const shortRecord = ({ verdict, delivery }: AnswerShort) => ({
    verdict,
    deliveredLitresPerDay: Number(toLitresPerDay(delivery).toPrecision(6)),
  });
  return {
    kind: news.kind,
    reference: 'reference' in news ? news.reference : null,
    newest: 'newest' in news ? news.newest : null,
    isDifferent: compared?.isDifferent ?? null,
    here: compared ? shortRecord(compared.before) : null,
    there: compared ? shortRecord(compared.after) : null,
    words: rangeNewsInWords(news, compared, system).map((text) => text.replaceAll('\u00a0', ' ')),
  };
}
