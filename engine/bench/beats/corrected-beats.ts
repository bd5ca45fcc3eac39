import type { Second } from '../../quantities.ts';
import { type Beat, type Rhythm, rhythmOf } from './rhythm.ts';

/** What a person changes in what was heard. */
export type BeatCorrection =
  | { readonly kind: 'add'; readonly time: Second }
  | { readonly kind: 'remove'; readonly time: Second };

/** Judgement: a person points at a beat no nearer than this. */
const POINTED_AT: Second = 0.1;
/** Two beats cannot be nearer to one another. */
const NEAREST: Second = 0.02;

export interface CorrectedBeats {
  readonly beats: readonly Beat[];
  readonly rhythm: Rhythm | undefined;
  /** Corrections that pointed at nothing, or at a beat that is there already. */
  readonly unused: readonly BeatCorrection[];
}

/**
 * Beats after a person has taken some out and put others in, one correction after the other.
 *
 * The beat nearest to the place goes, when there is one within a tenth of a second; a beat put in is sure.
 */
export function correctedBeats(
  heard: readonly Beat[],
  corrections: readonly BeatCorrection[],
  { timeSpread }: { readonly timeSpread: Second },
): CorrectedBeats {
  const beats = [...heard].sort((a, b) => a.time - b.time);
  const unused: BeatCorrection[] = [];
  for (const correction of corrections) {
    const nearest = nearestTo(beats, correction.time);
    const gap = nearest < 0 ? Infinity : Math.abs((beats[nearest] as Beat).time - correction.time);
    if (correction.kind === 'remove') {
      if (gap <= POINTED_AT) beats.splice(nearest, 1);
      else unused.push(correction);
    } else if (!Number.isFinite(correction.time) || gap < NEAREST) {
      unused.push(correction);
    } else {
      const place = beats.findIndex(({ time }) => time > correction.time);
      beats.splice(place < 0 ? beats.length : place, 0, { time: correction.time, confidence: 1 });
    }
  }
  const times = beats.map(({ time }) => time);
  return { beats, rhythm: rhythmOf(times, { timeSpread }), unused };
}

function nearestTo(beats: readonly Beat[], time: Second): number {
  let nearest = -1;
  for (const [i, beat] of beats.entries()) {
    const best = beats[nearest];
    if (!best || Math.abs(beat.time - time) < Math.abs(best.time - time)) nearest = i;
  }
  return nearest;
}
