import type { Second } from '../../quantities.ts';
import { type Beat, type Rhythm, rhythmOf } from './rhythm.ts';

/**
 * How near a person taps to a beat that they hear. Source: sensorimotor synchronization, spreads of 10–40 ms, Repp (2005),
 * Psychonomic Bulletin & Review 12, 969–992 (memory). Judgement: 30 ms for a wet thumb beside a ram.
 */
export const TAP_SPREAD: Second = 0.03;
/** Judgement: nobody taps twice so soon on purpose; a key that chatters or repeats does. */
export const BOUNCE: Second = 0.06;

/** Taps in time with a ram: their rhythm, and the taps that count. Taps may come in any order; bounces are left out. */
export function tappedBeats(taps: readonly Second[]): {
  readonly beats: readonly Beat[];
  readonly rhythm: Rhythm | undefined;
  /** Taps left out because they came within `BOUNCE` of another. */
  readonly bounces: number;
} {
  const kept: Second[] = [];
  for (const tap of [...taps].filter(Number.isFinite).sort((a, b) => a - b)) {
    const last = kept.at(-1);
    if (last === undefined || tap - last > BOUNCE) kept.push(tap);
  }
  return {
    beats: kept.map((time) => ({ time, confidence: 1 })),
    rhythm: rhythmOf(kept, { timeSpread: TAP_SPREAD }),
    bounces: taps.length - kept.length,
  };
}
