/** Which marks stand over a stretch of what was heard, and where a person should look next. */
import type { Beat, Rhythm } from '@fallwright/engine';
import { UNSURE } from '@fallwright/papers';

export interface Mark {
  readonly kind: 'beat' | 'missed' | 'other';
  readonly time: number;
  readonly isSure: boolean;
}

interface Row {
  readonly beats: readonly Beat[];
  readonly others: readonly Beat[];
  readonly rhythm: Rhythm | undefined;
}

/** Width of a mark for a finger, so that two beats do not share one. */
const FINGER = 44;
/** Judgement: without a rhythm, eight seconds show whether anything beats. */
const WITHOUT_RHYTHM = 8;

/** Seconds that stand on the sheet: each beat has room for a finger. */
export function spanFor(width: number, rhythm: Rhythm | undefined): number {
  return rhythm === undefined ? WITHOUT_RHYTHM : Math.max(1, (width / FINGER) * rhythm.period);
}

export function marksOf({
  beats,
  others,
  rhythm,
  from,
  to,
}: Row & { readonly from: number; readonly to: number }): readonly Mark[] {
  const isShown = ({ time }: { readonly time: number }): boolean => time >= from && time <= to;
  // A sound that has been counted is no other one any more.
  const nearest = 0.02;
  const isBeat = (time: number): boolean =>
    beats.some((beat) => Math.abs(beat.time - time) <= nearest);
  return [
    ...beats
      .filter(isShown)
      .map(({ time, confidence }): Mark => ({ kind: 'beat', time, isSure: confidence >= UNSURE })),
    ...missedIn(rhythm)
      .map((time): Mark => ({ kind: 'missed', time, isSure: true }))
      .filter(isShown),
    ...others
      .filter(isShown)
      .filter(({ time }) => !isBeat(time))
      .map(({ time }): Mark => ({ kind: 'other', time, isSure: true })),
  ].sort((a, b) => a.time - b.time);
}

/** Where beats were due and none is. */
function missedIn(rhythm: Rhythm | undefined): readonly number[] {
  return (rhythm?.gaps ?? []).flatMap(({ kind, from, length, periods }) =>
    kind === 'missed'
      ? Array.from({ length: periods - 1 }, (_, k) => from + ((k + 1) * length) / periods)
      : [],
  );
}

/** The next gap or unsure beat behind `after`; the first of all when there is none behind. */
export function nextToLookAt({ beats, rhythm }: Row, after: number): number | undefined {
  const gaps = (rhythm?.gaps ?? [])
    .filter(({ kind }) => kind !== 'regular')
    .map(({ from, length }) => from + length / 2);
  const unsure = beats.filter(({ confidence }) => confidence < UNSURE).map(({ time }) => time);
  const odd = [...gaps, ...unsure].sort((a, b) => a - b);
  return odd.find((time) => time > after) ?? odd[0];
}
