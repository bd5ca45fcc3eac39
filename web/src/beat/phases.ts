/** What the ram is doing, frame by frame, in four words. */
import type { BeatFilm } from '@fallwright/engine';

/**
 * `gathers`: the waste valve is open and water runs towards it; `delivers`: it is shut and the vessel has still to take its
 * last water; `recoils`: the water runs back, from the last delivery until it runs forward again; `shut`: the waste valve
 * is shut and nothing passes.
 */
export type PhaseKind = 'gathers' | 'delivers' | 'recoils' | 'shut';

export interface Phase {
  readonly kind: PhaseKind;
  readonly firstFrame: number;
  readonly lastFrame: number;
}

export type Flows = Pick<BeatFilm, 'frames' | 'opening' | 'driveFlow' | 'deliveryFlow'>;

export function phasesOf(film: Flows): Phase[] {
  const phases: Phase[] = [];
  const add = (kind: PhaseKind, firstFrame: number, lastFrame: number): void => {
    if (lastFrame < firstFrame) return;
    const before = phases[phases.length - 1];
    if (before?.kind === kind) phases[phases.length - 1] = { ...before, lastFrame };
    else phases.push({ kind, firstFrame, lastFrame });
  };
  for (const { isShut, firstFrame, lastFrame } of runsOf(film.opening)) {
    if (isShut) {
      const reopens = lastFrame < film.frames - 1;
      const last = lastDelivery(film.deliveryFlow, firstFrame, lastFrame);
      if (last === undefined) add('shut', firstFrame, lastFrame);
      else {
        add('delivers', firstFrame, last);
        add(reopens ? 'recoils' : 'shut', last + 1, lastFrame);
      }
    } else {
      const forward = firstForward(film.driveFlow, firstFrame, lastFrame);
      add('recoils', firstFrame, forward - 1);
      add('gathers', forward, lastFrame);
    }
  }
  return phases;
}

export function phaseAt(phases: readonly Phase[], frame: number): Phase | undefined {
  return phases.find((phase) => frame >= phase.firstFrame && frame <= phase.lastFrame);
}

interface Run {
  readonly isShut: boolean;
  readonly firstFrame: number;
  readonly lastFrame: number;
}

/** Stretches in which the waste valve is shut, and those in which it is not. */
export function runsOf(opening: Float64Array): Run[] {
  const runs: Run[] = [];
  let firstFrame = 0;
  for (let frame = 1; frame <= opening.length; frame++) {
    const isShut = opening[firstFrame] === 0;
    if (frame < opening.length && (opening[frame] === 0) === isShut) continue;
    runs.push({ isShut, firstFrame, lastFrame: frame - 1 });
    firstFrame = frame;
  }
  return runs;
}

function lastDelivery(flow: Float64Array, first: number, last: number): number | undefined {
  for (let frame = last; frame >= first; frame--) if ((flow[frame] ?? 0) > 0) return frame;
  return undefined;
}

/** First frame of an open stretch in which water runs towards the ram; one past its end when it never does. */
function firstForward(flow: Float64Array, first: number, last: number): number {
  for (let frame = first; frame <= last; frame++) if ((flow[frame] ?? 0) >= 0) return frame;
  return last + 1;
}
