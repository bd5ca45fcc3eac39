/** What a combination is made of, in a line. */
import type { Parts } from '@fallwright/engine';
import { type Reader, shown } from './reader.ts';

/** `2 × Swallow 25 (light weight), each on 14 m of 1 in steel, delivery through 20 mm PE, with the 5 L vessel and the 1,000 L tank`. */
export function combinationInWords(parts: Parts, reader: Reader): string {
  const { count, drivePipe, driveLength, feeder, deliveryPipe, vessel, tank } = parts;
  const extras = [vessel?.name, tank?.name].filter((name) => name !== undefined);
  return [
    ramsInWords(parts),
    `${count > 1 ? 'each ' : ''}on ${shown(driveLength, 'pipeLength', reader)} of ${drivePipe.name}`,
    ...(feeder
      ? [`fed by ${shown(feeder.length, 'pipeLength', reader)} of ${feeder.pipe.name}`]
      : []),
    `delivery through ${deliveryPipe.name}`,
    ...(extras.length > 0 ? [`with ${extras.join(' and ')}`] : []),
  ].join(', ');
}

/** `2 × Swallow 25 (light weight)`. The tuning is left out where a ram has only one. */
export function ramsInWords({ count, ram, tuning }: Pick<Parts, 'count' | 'ram' | 'tuning'>) {
  const times = count > 1 ? `${count}\u00a0× ` : '';
  return `${times}${ram.name}${ram.tunings.length > 1 ? ` (${tuning.name})` : ''}`;
}
