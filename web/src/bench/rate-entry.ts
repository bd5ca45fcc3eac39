import type { Rhythm } from '@fallwright/engine';
import { rateInFigures } from '@fallwright/papers';
import { toBeatsPerMinute } from '@fallwright/units';

/** The figures of a rate: `119.6` and `0.4`. */
export function rateFigures({ beatFrequency, spread }: Rhythm): {
  readonly rate: string;
  readonly spread: string;
} {
  const written = rateInFigures(toBeatsPerMinute(beatFrequency), toBeatsPerMinute(spread));
  const [rate = written, off = '0'] = written.replace(/ beats$/, '').split(' ± ');
  return { rate, spread: off };
}

/** As a reading holds it: `119.6/min ± 0.4/min`. */
export function rateEntry(rhythm: Rhythm): string {
  const { rate, spread } = rateFigures(rhythm);
  return Number(spread) > 0 ? `${rate}/min ± ${spread}/min` : `${rate}/min`;
}
