/** A worker as a room in which questions are asked: hired when needed, and a fault in it reaches who asked. */
import type { Remote } from 'comlink';
import { wrap } from 'comlink';

interface Hired<Work> {
  readonly worker: Worker;
  readonly work: Remote<Work>;
  /** Rejects when the worker's script cannot load or breaks outside a question. */
  readonly broken: Promise<never>;
}

function hire<Work>(worker: Worker): Hired<Work> {
  const broken = new Promise<never>((_, reject) => {
    worker.addEventListener('error', (event) => {
      reject(new WorkerBroken(event.message || 'its script could not be loaded'));
    });
  });
  // Nobody may be asking at that moment; whoever asks hears of it through the race below.
  broken.catch(() => {});
  return { worker, work: wrap<Work>(worker), broken };
}

class WorkerBroken extends Error {}

/** One worker, hired when first asked, and hired anew after it broke or was ended. */
export function room<Work>(newWorker: () => Worker) {
  let hired: Hired<Work> | undefined;
  let waiting = 0;
  return {
    hire: (): void => {
      hired ??= hire<Work>(newWorker());
    },
    ask: async <Value>(question: (work: Remote<Work>) => Promise<Value>): Promise<Value> => {
      hired ??= hire<Work>(newWorker());
      const mine = hired;
      waiting += 1;
      try {
        return await Promise.race([question(mine.work), mine.broken]);
      } catch (error) {
        if (error instanceof WorkerBroken && hired === mine) hired = undefined;
        throw error;
      } finally {
        if (hired === mine || hired === undefined) waiting = Math.max(0, waiting - 1);
      }
    },
    isBusy: (): boolean => waiting > 0,
    end: (): void => {
      hired?.worker.terminate();
      hired = undefined;
    },
  };
}
