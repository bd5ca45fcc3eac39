/** The words of a choice on a terminal: builds, limits, reasons, what lacks a price. */
import type {
  Candidate,
  Lack,
  Margins,
  Money,
  Parts,
  Reason,
  VerdictKind,
} from '@fallwright/engine';
import { verdictWords } from '@fallwright/papers';
import { KIND_WORDS, moneyDigits, type PriceKind } from '@fallwright/records';
import { formatQuantity, plainFigures, type System, unitShown } from '@fallwright/units';

/** `2,389.50`: digits in groups, as the column head names the currency. */
export function moneyShown(money: Money, currency: string): string {
  const [whole = '', part] = moneyDigits(money, currency).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return part === undefined ? grouped : `${grouped}.${part}`;
}

export function sum(money: Money, currency: string): string {
  return `${moneyShown(money, currency)}\u00a0${currency}`;
}

/** `942 litres a day`. */
export function daily(flow: number, system: System): string {
  const number = formatQuantity(flow, 'daily', system).split('\u00a0')[0];
  return `${number} ${system === 'metric' ? 'litres' : 'gallons'} a day`;
}

export function share(ratio: number): string {
  return `${plainFigures(100 * ratio, 2)}\u00a0%`;
}

/** `2 × Swallow 25, stroke 3.8 mm, weight 95 g`. */
export function ramInWords({ ram, tuning, count }: Parts): string {
  return `${count > 1 ? `${count}\u00a0× ` : ''}${ram.name}, ${tuning.name}`;
}

/** `16 m of black PE 25`. */
export function driveInWords({ drivePipe, driveLength }: Parts, system: System): string {
  return `${length(driveLength, system)} of ${drivePipe.name}`;
}

export function buildInWords(parts: Parts, deliveryLength: number, system: System): string {
  const { feeder, deliveryPipe, vessel, tank, count } = parts;
  const each = count > 1 ? 'each with ' : '';
  return [
    `${each}drive line of ${driveInWords(parts, system)}`,
    ...(feeder
      ? [
          `from a standpipe ${length(feeder.standpipeHeight, system)} high, fed by ${length(feeder.length, system)} of ${feeder.pipe.name}`,
        ]
      : []),
    `delivery line of ${length(deliveryLength, system)} of ${deliveryPipe.name}`,
    ...(vessel ? [`${vessel.name} in place of the ram’s own`] : []),
    ...(tank ? [tank.name] : []),
  ].join('; ');
}

export function length(metres: number, system: System): string {
  return formatQuantity(metres, 'pipeLength', system);
}

const MARGIN_WORDS: Readonly<Record<Exclude<keyof Margins, 'least'>, string>> = {
  closingFlow: 'flow that shuts the valve',
  recoil: 'recoil that opens it',
  hammer: 'lift it could reach',
  source: 'water of the source',
  beat: 'time for a beat',
  pressure: 'ratings of its parts',
  pulse: 'pulse of the vessel',
};

/** How far it is from each limit, the nearest first. */
export function marginsInWords(margins: Margins): string {
  const { least: _, ...all } = margins;
  return (Object.entries(all) as [keyof typeof MARGIN_WORDS, number][])
    .sort(([, a], [, b]) => a - b)
    .map(
      ([name, margin]) =>
        `${MARGIN_WORDS[name]} ${margin > 9.99 ? 'over 1,000\u00a0%' : share(margin)}`,
    )
    .join(', ');
}

/** `gate valve, DN40` or `laying and joining`. */
export function lackInWords({ kind, name, size }: Lack): string {
  if (kind === 'setUpTime') return `time to set up the ${name} (setUp in the range file)`;
  const what = name ?? `any ${kind === 'ram' ? 'ram' : KIND_WORDS[kind as PriceKind]}`;
  return size === undefined || name !== undefined
    ? what
    : `${what} for DN${Math.round(size * 1000)}`;
}

const VERDICT_REASONS: Readonly<Record<VerdictKind, string>> = {
  runs: 'it runs',
  runsAfterHandStart: 'it runs once started',
  staysOpen: 'too little flow to shut its valve',
  staysShut: 'its valve stays shut: too little recoil to open it',
  flutters: 'its valve flutters: no time for a beat',
  doesNotLift: 'its hammer does not reach the lift',
  starves: 'it takes more than the source gives',
};

/** Groups of reasons, for counting. */
export function reasonGroup(reason: Reason): string {
  switch (reason.kind) {
    case 'lengthDoesNotFit':
      return 'drive line too short or too long for its way';
    case 'noPieceLongEnough':
      return 'no piece of a pipe is long enough';
    case 'tankTooSmall':
      return 'tank too small';
    case 'staysOpen':
      return VERDICT_REASONS.staysOpen;
    case 'overRated':
      return reason.part === 'ram'
        ? 'pressure over the rating of the ram'
        : reason.part === 'vessel'
          ? 'pressure over the rating of the vessel'
          : 'pressure over the rating of a pipe';
    case 'liftTooHigh':
      return VERDICT_REASONS.doesNotLift;
    case 'standpipeDry':
      return 'the feeder loses too much: its standpipe runs dry';
    case 'verdict':
      return VERDICT_REASONS[reason.verdict];
    case 'belowNeed':
      return 'gives less than is needed';
    case 'pulse':
      return 'vessel too small: the delivery would pulse';
    case 'beaten':
      return reason.cost === undefined && reason.byCost === undefined
        ? 'another gives more'
        : 'another costs no more and gives no less';
    case 'failsWhenQuoted':
      return 'failed when worked out finely';
    case 'notTried':
      return 'not tried before the search was stopped';
  }
}

/** Why one build was left out, with its numbers. */
export function reasonInWords(
  reason: Reason,
  about: {
    readonly system: System;
    readonly currency: string | undefined;
    readonly name: (key: string) => string;
  },
): string {
  const { system, currency, name } = about;
  const flow = (value: number): string => formatQuantity(value, 'sourceFlow', system);
  const height = (value: number): string => formatQuantity(value, 'height', system);
  const pressure = (value: number): string => formatQuantity(value, 'pressure', system);
  switch (reason.kind) {
    case 'lengthDoesNotFit':
      return `its drive line of ${length(reason.length, system)} does not fit the way of ${length(reason.route, system)}`;
    case 'noPieceLongEnough':
      return `${reason.name} must be of one piece, and the longest is ${length(reason.longest, system)} where ${length(reason.length, system)} are needed`;
    case 'tankTooSmall':
      return `its tank holds ${formatQuantity(reason.volume, 'volume', system)}; ${formatQuantity(reason.needs, 'volume', system)} are needed`;
    case 'staysOpen':
      return `its line lets ${flow(reason.terminalFlow)} through, and the valve shuts at ${flow(reason.closingFlow)}`;
    case 'overRated':
      return `${reason.name} would see ${pressure(reason.pressure)} and may carry ${pressure(reason.rating)}`;
    case 'liftTooHigh':
      return `its hammer reaches ${height(reason.reaches)} at the most; ${height(reason.needs)} are needed`;
    case 'standpipeDry':
      return `the water in its standpipe would stand at ${height(reason.level)}, below the ground at ${height(reason.ground)}`;
    case 'verdict':
      return `${VERDICT_REASONS[reason.verdict]} (${verdictWords(reason.verdict)})`;
    case 'belowNeed':
      return `gives ${reason.water === undefined ? `at the most ${daily(reason.atMost ?? 0, system)}` : daily(reason.water, system)}; ${daily(reason.need, system)} are needed`;
    case 'pulse':
      return `its vessel would swing by ${share(reason.share)}; ${share(reason.largest)} are wished for at the most`;
    case 'beaten': {
      const own =
        reason.water === undefined
          ? `at the most ${daily(reason.atMost ?? 0, system)}`
          : daily(reason.water, system);
      const priced = (money: Money | undefined): string =>
        money === undefined || currency === undefined ? '' : ` for ${sum(money, currency)}`;
      return `gives ${own}${priced(reason.cost)}; ${name(reason.by)} gives ${daily(reason.byWater, system)}${priced(reason.byCost)}`;
    }
    case 'failsWhenQuoted':
      return reason.why === 'overRated'
        ? 'a part was over its rating when it was worked out finely'
        : `${VERDICT_REASONS[reason.why]} when it was worked out finely`;
    case 'notTried':
      return 'the search was stopped before its turn';
  }
}

/** A build on one line, for lists. */
export function candidateInWords({ parts }: Candidate, system: System): string {
  const { deliveryPipe, vessel, tank, feeder } = parts;
  return [
    ramInWords(parts),
    driveInWords(parts, system),
    ...(feeder ? [`fed by ${feeder.pipe.name}`] : []),
    deliveryPipe.name,
    ...(vessel ? [vessel.name] : []),
    ...(tank ? [tank.name] : []),
  ].join('; ');
}

export function perDayUnit(system: System): string {
  return unitShown('daily', system);
}
