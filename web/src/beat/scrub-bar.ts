/** The bar over the slider: what the ram does when, named where the name finds room. */

import { PHASE_WORDS } from './beat-words.ts';
import type { Phase } from './phases.ts';
import type { Reel } from './reel.ts';
import type { TimeWindow } from './time-window.ts';

export interface PhaseOnBar {
  readonly phase: Phase;
  readonly left: number;
  readonly width: number;
  readonly isNamed: boolean;
}

/** Half a slider's thumb: its middle does not reach the ends of its box. */
const THUMB = 8;
/** Mean width of a letter of 14 px, and the edge and gap before it. */
const LETTER = 7;
const EDGE = 12;

export function phaseBar({ phases, film }: Reel, width: number): PhaseOnBar[] {
  const perFrame = Math.max(0, width - 2 * THUMB) / (film.frames - 1);
  return phases.map((phase) => {
    const room = (phase.lastFrame - phase.firstFrame + 1) * perFrame;
    return {
      phase,
      left: THUMB + phase.firstFrame * perFrame,
      width: room,
      isNamed: room >= PHASE_WORDS[phase.kind].length * LETTER + EDGE,
    };
  });
}

/** The first time that the valve is shut, with half as much again before and after it; undefined when it never is. */
export function shutWindow({ shut, player }: Reel): TimeWindow | undefined {
  const least = 2 * player.get().clip.frameTime;
  const first = shut.find(({ from, to }) => to - from > least);
  if (first === undefined) return undefined;
  const margin = (first.to - first.from) / 2;
  return { from: first.from - margin, to: first.to + margin };
}
