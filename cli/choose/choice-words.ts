/** The few words of a choice that only a terminal needs; the others are those of every paper. */
import type { Lack, Parts, Reason } from '@fallwright/engine';
import { missingInWords, type Reader, verdictWords } from '@fallwright/papers';
import { formatNumber, formatQuantity, type System } from '@fallwright/units';

/** `942 litres a day`. */
export function daily(flow: number, system: System): string {
  return `${formatNumber(flow, 'daily', system)} ${system === 'metric' ? 'litres' : 'gallons'} a day`;
}

/** `16 m of black PE 25`. */
export function driveInWords({ drivePipe, driveLength }: Parts, system: System): string {
  return `${formatQuantity(driveLength, 'pipeLength', system)} of ${drivePipe.name}`;
}

export function lackInWords(lack: Lack, reader: Reader): string {
  return missingInWords([lack], reader)[0] ?? '';
}

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
      return `too little flow to shut its valve: it ${verdictWords('staysOpen')}`;
    case 'overRated':
      return reason.part === 'ram'
        ? 'pressure over the rating of the ram'
        : reason.part === 'vessel'
          ? 'pressure over the rating of the vessel'
          : 'pressure over the rating of a pipe';
    case 'liftTooHigh':
      return 'its hammer does not reach the lift';
    case 'standpipeDry':
      return 'the feeder loses too much: its standpipe runs dry';
    case 'verdict':
      return `worked out, it ${verdictWords(reason.verdict)}`;
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
