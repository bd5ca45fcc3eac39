/** A reading beside what is predicted for it, as far as that is known. */
import type { ReadingAnswer } from '@fallwright/engine';
import { flowsOf } from '@fallwright/engine';
import type { AgainstPoint } from '@fallwright/papers';
import type { ReadReading } from './test-reading.ts';
import type { Outcome } from './work-list.ts';

export type Answers = ReadonlyMap<string, Outcome<ReadingAnswer>>;

export function answerTo(
  reading: ReadReading | undefined,
  answers: Answers,
): ReadingAnswer | undefined {
  if (reading?.ok !== true) return undefined;
  const outcome = answers.get(reading.asked);
  return outcome?.kind === 'known' ? outcome.value : undefined;
}

export function askedOf(readings: readonly ReadReading[]): readonly string[] {
  return readings.flatMap((reading) => (reading.ok ? [reading.asked] : []));
}

/** The delivered flow of a reading as a mark in a picture; nothing where none was read or follows from the others. */
export function pointOf(
  reading: ReadReading,
  answers: Answers,
  label: string,
): AgainstPoint | undefined {
  if (!reading.ok) return undefined;
  const { setting } = reading;
  const delivered = flowsOf(setting.reading)?.delivery ?? setting.reading.deliveryFlow;
  if (delivered === undefined) return undefined;
  const predicted = answerTo(reading, answers)?.predicted;
  const residual = predicted?.residuals.find(({ quantity }) => quantity === 'deliveryFlow');
  return {
    label,
    lift: setting.reading.lift.value,
    measured: delivered.value,
    spread: delivered.spread,
    predicted: predicted?.runs === true ? predicted.point.deliveryFlow : undefined,
    predictedSpread: residual?.predictedSpread,
    agrees: residual?.agrees ?? true,
  };
}

/** `−21 %`, `+1.0 %`. */
export function signedPerCent(share: number): string {
  const size = Math.abs(100 * share);
  return `${share < 0 ? '−' : '+'}${size.toFixed(size < 9.95 ? 1 : 0)}\u00a0%`;
}

/** The delivered flow that lies furthest from its prediction, of all readings. */
export function worstDelivery(
  answers: readonly ReadingAnswer[],
): { readonly share: number; readonly agrees: boolean } | undefined {
  const all = answers.flatMap(({ predicted }) =>
    predicted.residuals.filter(({ quantity }) => quantity === 'deliveryFlow'),
  );
  const [first, ...rest] = all;
  return rest.reduce(
    (worst, one) => (Math.abs(one.share) > Math.abs(worst?.share ?? 0) ? one : worst),
    first,
  );
}
