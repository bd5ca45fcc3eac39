/**
 * A few worker threads that do the tasks of a choice. Whoever is free takes the next; the order of the results says nothing, and
 * the choice does not look at it.
 */
import { Worker } from 'node:worker_threads';
import type { ChoiceResult } from '@fallwright/engine';
import type { WorkerSetUp, WorkerTask } from './choice-worker.ts';

export class ChoicePool {
  readonly #workers: readonly Worker[];
  #isStopped = false;
  #stopWaiting: () => void = () => {};

  constructor(size: number, setUp: WorkerSetUp) {
    const file = new URL('./choice-worker.ts', import.meta.url);
    this.#workers = Array.from({ length: size }, () => new Worker(file, { workerData: setUp }));
  }

  get isStopped(): boolean {
    return this.#isStopped;
  }

  /** Ends the batch that is under way with what is done of it. */
  stop(): void {
    this.#isStopped = true;
    this.#stopWaiting();
  }

  /** What came of the tasks: of all of them, or of those that were done when it was stopped. `done` counts them. */
  async perform(
    tasks: readonly WorkerTask[],
    done: (count: number) => void,
  ): Promise<readonly ChoiceResult[]> {
    const results: ChoiceResult[] = [];
    const waiting = [...tasks];
    const work = async (worker: Worker): Promise<void> => {
      for (let task = waiting.shift(); task && !this.#isStopped; task = waiting.shift()) {
        results.push(await resultOf(worker, task));
        done(results.length);
      }
    };
    const all = Promise.all(this.#workers.map(work));
    // After a stop nobody waits for the tasks under way, whose workers are then ended.
    all.catch(() => {});
    const stopped = new Promise<void>((resolve) => {
      this.#stopWaiting = resolve;
      if (this.#isStopped) resolve();
    });
    await Promise.race([all, stopped]);
    return [...results];
  }

  async close(): Promise<void> {
    await Promise.all(this.#workers.map((worker) => worker.terminate()));
  }
}

/** @throws what the worker threw: a mistake of ours, since no file can lead to one. */
function resultOf(worker: Worker, task: WorkerTask): Promise<ChoiceResult> {
  return new Promise((resolve, reject) => {
    const settle = (end: () => void): void => {
      worker.off('message', onMessage);
      worker.off('error', onError);
      worker.off('exit', onExit);
      end();
    };
    const onMessage = (result: ChoiceResult): void => settle(() => resolve(result));
    const onError = (error: Error): void => settle(() => reject(error));
    const onExit = (): void => settle(() => reject(new Error('a worker ended before its task')));
    worker.on('message', onMessage);
    worker.on('error', onError);
    worker.on('exit', onExit);
    worker.postMessage(task);
  });
}
