/** Where pairs are run and the chosen one is answered in full: two workers, hired at the first question. */
import type { Remote } from 'comlink';
import { wrap } from 'comlink';
import type { SiteOutcome } from '../answer/site-answer.ts';
import type { SiteWork } from '../answer/site-worker.ts';
import type { SiteDocument } from '../state/site-document.ts';
import type { AlternativesWork } from './alternatives-worker.ts';
import type { SweepRoom } from './sweep.ts';

export interface AlternativesRoom extends SweepRoom {
  /** The whole answer for the place with one pair in it. */
  readonly answer: (site: SiteDocument) => Promise<SiteOutcome>;
  readonly close: () => void;
}

interface Hired<Work> {
  readonly worker: Worker;
  readonly work: Remote<Work>;
  /** Rejects when the worker's script cannot load or breaks outside a question. */
  readonly broken: Promise<never>;
}

export function openAlternativesRoom(): AlternativesRoom {
  const runner = post<AlternativesWork>(
    () => new Worker(new URL('./alternatives-worker.ts', import.meta.url), { type: 'module' }),
  );
  const teller = post<SiteWork>(
    () => new Worker(new URL('../answer/site-worker.ts', import.meta.url), { type: 'module' }),
  );
  return {
    begin: (jobs) => runner.ask((work) => work.begin(jobs)),
    next: () => runner.ask((work) => work.next()),
    answer: (site) =>
      teller.ask(async (work) => (await work.answer(JSON.stringify(site), 'whole')).outcome),
    close: () => {
      runner.close();
      teller.close();
    },
  };
}

/** A place for one worker: hired when first asked, and anew after it broke. */
function post<Work>(newWorker: () => Worker) {
  let hired: Hired<Work> | undefined;
  const close = (): void => {
    hired?.worker.terminate();
    hired = undefined;
  };
  return {
    ask: async <Value>(question: (work: Remote<Work>) => Promise<Value>): Promise<Value> => {
      hired ??= hire<Work>(newWorker());
      const mine = hired;
      try {
        return await Promise.race([question(mine.work), mine.broken]);
      } catch (error) {
        if (hired === mine) close();
        throw error;
      }
    },
    close,
  };
}

function hire<Work>(worker: Worker): Hired<Work> {
  const broken = new Promise<never>((_, reject) => {
    worker.addEventListener('error', (event) => {
      reject(new Error(event.message || 'the script that runs pairs could not be loaded'));
    });
  });
  // Nobody may be asking at that moment; whoever asks hears of it through the race above.
  broken.catch(() => {});
  return { worker, work: wrap<Work>(worker), broken };
}
