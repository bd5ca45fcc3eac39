/**
 * One worker of a choice: does the tasks it is sent, one by one, and sends back what came of each.
 *
 * It loads the engine alone, so that it begins at once: what is not sure of a build is worked out by who sends the task.
 */
import { parentPort, workerData } from 'node:worker_threads';
import {
  type ChoiceTask,
  judgeBySamples,
  type PlaceToFit,
  performTask,
  type UncertainInput,
} from '@fallwright/engine';

/** All that a worker has to know before its first task. */
export interface WorkerSetUp {
  readonly place: PlaceToFit;
  readonly samples: number;
  readonly seed: number;
}

export interface WorkerTask {
  readonly task: ChoiceTask;
  /** What is not sure of the build that is to be judged. */
  readonly inputs: readonly UncertainInput[];
}

const { place, samples, seed } = workerData as WorkerSetUp;

parentPort?.on('message', ({ task, inputs }: WorkerTask) => {
  parentPort?.postMessage(performTask(place, task, judgeBySamples(inputs, { samples, seed })));
});
