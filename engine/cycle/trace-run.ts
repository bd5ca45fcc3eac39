/** Head, flows, valve opening and vessel head against time, for a chart or a file. */
import type { Second } from '../quantities.ts';
import type { Installation } from './installation.ts';
import type { RunOptions } from './operating-point.ts';
import { startedKernel } from './operating-point.ts';
import type { Trace } from './run-record.ts';

export interface TraceOptions extends RunOptions {
  /** How long to follow the ram, from the moment its valve is pushed open on a line at rest. 10 s by default. */
  readonly duration?: Second;
}

/** METHOD: 16 reaches show peaks; a trace is looked at, so it is finer than a choice. */
const TRACE_REACHES = 32;
const TRACE_SUBSTEPS = 80;

/**
 * Follows a ram from one push of its waste valve, its vessel at the head of the lift. One sample a time step; the step is a
 * thirty-second of the time a wave takes down the line, or finer.
 *
 * @throws RangeError when `duration` is not above zero.
 */
export function traceRun(installation: Installation, options: TraceOptions = {}): Trace {
  const duration = options.duration ?? 10;
  if (!(duration > 0)) throw new RangeError(`duration must be above zero, got ${duration} s`);
  const kernel = startedKernel(installation, installation.lift, {
    ...options,
    reaches: options.reaches ?? TRACE_REACHES,
    substeps: options.substeps ?? TRACE_SUBSTEPS,
  });
  const samples = Math.max(2, Math.ceil(duration / kernel.grid.timeStep) + 1);
  const column = () => new Float64Array(samples);
  const time = column();
  const bodyHead = column();
  const driveFlow = column();
  const wasteFlow = column();
  const deliveryFlow = column();
  const opening = column();
  const vesselHead = column();
  for (let i = 0; i < samples; i++) {
    time[i] = kernel.time;
    bodyHead[i] = kernel.bodyHead;
    driveFlow[i] = kernel.driveFlow;
    wasteFlow[i] = kernel.wasteFlow;
    deliveryFlow[i] = kernel.deliveryFlow;
    opening[i] = kernel.opening;
    vesselHead[i] = kernel.vesselHead;
    kernel.run(1);
  }
  return {
    time,
    bodyHead,
    driveFlow,
    wasteFlow,
    deliveryFlow,
    opening,
    vesselHead,
    end: {
      outcome: kernel.isSourceEmpty ? 'sourceEmpty' : 'timeUp',
      steps: kernel.steps,
      beats: kernel.beats,
      simulatedTime: kernel.time,
      reaches: kernel.grid.reaches,
      largestWaveSpeedNudge: kernel.grid.largestNudge,
      modelOptions: kernel.detail.modelOptions,
    },
  };
}
