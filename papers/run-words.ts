import type { Answer, RunOutcome } from '@fallwright/engine';
import { plainFigures } from '@fallwright/units';
import { perCent } from './answered.ts';

const OUTCOMES = {
  settled: 'the beats agreed',
  irregular: 'the beats never agreed, so their mean is given',
  staysOpen: 'the waste valve never shut',
  staysShut: 'the waste valve shut and did not open again',
  noDelivery: 'it beat and nothing passed the delivery valve',
  sourceEmpty: 'the intake came out of the water',
  timeUp: 'the time that was followed ran out',
} as const satisfies Record<RunOutcome, string>;

/** How the number was worked out: the effort behind it and how it ended. Empty when no beat was simulated. */
export function runInWords({ operatingPoint }: Answer): readonly string[] {
  if (!operatingPoint) return [];
  const { end } = operatingPoint;
  const count = (number: number): string => plainFigures(number, 3);
  const nudge =
    end.largestWaveSpeedNudge > 0.005
      ? ` Wave speeds were nudged by up to ${perCent(end.largestWaveSpeedNudge)} to fit the grid.`
      : '';
  const options = end.modelOptions.length > 0 ? ` With ${end.modelOptions.join(', ')}.` : '';
  return [
    `${count(end.beats)} beats in ${count(end.steps)} steps over ${count(end.reaches)} reaches of the drive line: ${OUTCOMES[end.outcome]}.${nudge}${options}`,
  ];
}
