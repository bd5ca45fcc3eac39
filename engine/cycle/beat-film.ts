/** One settled beat, frame by frame: what a moving picture of the ram and of its drive line needs. */
import type { Metre, Second } from '../quantities.ts';
import type { Installation } from './installation.ts';
import { settle, startedKernel } from './operating-point.ts';
import type { RamKernel } from './ram-kernel.ts';
import type { OperatingPoint } from './run-record.ts';

/** All arrays have one entry a frame, but for the line's, which have `nodes` entries a frame, from source to ram. */
export interface BeatFilm {
  readonly point: OperatingPoint;
  readonly frames: number;
  readonly nodes: number;
  /** From the step after the waste valve has shut. */
  readonly time: Float64Array;
  readonly opening: Float64Array;
  readonly bodyHead: Float64Array;
  readonly driveFlow: Float64Array;
  readonly wasteFlow: Float64Array;
  readonly deliveryFlow: Float64Array;
  readonly lineHead: Float32Array;
  readonly lineFlow: Float32Array;
  /** Distance of each node from the source. */
  readonly distance: readonly Metre[];
}

export interface FilmOptions {
  /** Beats in the film; 1 by default. */
  readonly beats?: number;
  readonly reaches?: number;
}

/** Judgement: fine enough that the pressure wave is seen to run, as a trace is. */
const FILM_REACHES = 32;
const FILM_SUBSTEPS = 80;
/** Judgement: more frames than this no eye and no chart can use; then every second or third step is kept. */
const MOST_FRAMES = 6000;
/** What is shown of a ram that does not beat. */
const STILL_FILM: Second = 2;

/**
 * Lets a ram settle and films its next beats. Without a beat (the valve stays open or shut) the film shows the two seconds
 * after the push that opens the valve.
 *
 * @throws RangeError when `beats` is below 1.
 */
export function filmBeat(installation: Installation, options: FilmOptions = {}): BeatFilm {
  const beats = options.beats ?? 1;
  if (!(beats >= 1)) throw new RangeError(`beats must be at least 1, got ${beats}`);
  const run = {
    reaches: options.reaches ?? FILM_REACHES,
    substeps: FILM_SUBSTEPS,
    // Each node's head is then on record, also where a cavity parts the flows on its two sides.
    envelope: true,
  };
  let kernel = startedKernel(installation, installation.lift, run);
  const point = settle(installation, kernel, run);
  let duration: Second;
  if (point.beatFrequency > 0) {
    duration = beats / point.beatFrequency;
    kernel.run(Math.ceil((3 * duration) / kernel.grid.timeStep));
    // One step more with a clean record, so that the first frame has its own heads and not those of all beats before.
    kernel.detail.clearExtremes();
    kernel.run(1);
  } else {
    duration = STILL_FILM;
    kernel = startedKernel(installation, installation.lift, run);
  }
  return { ...record(kernel, duration), point };
}

function record(kernel: RamKernel, duration: Second): Omit<BeatFilm, 'point'> {
  const { grid } = kernel;
  const steps = Math.max(2, Math.ceil(duration / grid.timeStep));
  const every = Math.ceil(steps / MOST_FRAMES);
  const frames = Math.ceil(steps / every);
  const nodes = grid.reaches + 1;
  const column = () => new Float64Array(frames);
  const time = column();
  const opening = column();
  const bodyHead = column();
  const driveFlow = column();
  const wasteFlow = column();
  const deliveryFlow = column();
  const lineHead = new Float32Array(frames * nodes);
  const lineFlow = new Float32Array(frames * nodes);
  const start = kernel.time;
  for (let frame = 0; frame < frames; frame++) {
    time[frame] = kernel.time - start;
    opening[frame] = kernel.opening;
    bodyHead[frame] = kernel.bodyHead;
    driveFlow[frame] = kernel.driveFlow;
    wasteFlow[frame] = kernel.wasteFlow;
    deliveryFlow[frame] = kernel.deliveryFlow;
    for (let node = 0; node < nodes; node++) {
      const flow = kernel.flow[node] as number;
      lineHead[frame * nodes + node] = headAt(kernel, node, flow);
      lineFlow[frame * nodes + node] = flow;
    }
    for (let step = 0; step < every; step++) {
      kernel.detail.clearExtremes();
      kernel.run(1);
    }
  }
  return {
    frames,
    nodes,
    time,
    opening,
    bodyHead,
    driveFlow,
    wasteFlow,
    deliveryFlow,
    lineHead,
    lineFlow,
    distance: Array.from(grid.distance),
  };
}

/**
 * Head at a node after the last step. The first node's is what its forward wave holds beyond its flow, and the last node's
 * is the body's. Between them it is the one head that the line has recorded since the step before.
 */
function headAt(kernel: RamKernel, node: number, flow: number): Metre {
  const { grid, detail } = kernel;
  if (node === grid.reaches) return kernel.bodyHead;
  const recorded = detail.highest[node] as number;
  // Before the first step nothing is recorded, and the line stands at rest.
  if (node > 0 && Number.isFinite(recorded)) return recorded;
  return (kernel.forward[node] as number) - (grid.impedance[node] as number) * flow;
}
