/** The workers of a choice: one in which the search goes on, and a runner for each core. */
import type { System } from '@fallwright/units';
import type { Remote } from 'comlink';
import { wrap } from 'comlink';
import type { ChoiceAsked } from './choice-request.ts';
import type { ChoiceView, ProposalView, WhyNotPage } from './choice-view.ts';
import type { ChooserWork } from './chooser-worker.ts';
import type { RunnerWork } from './runner-worker.ts';
import type { Chooser, Runner } from './search.ts';

/** A finished choice, looked at a part at a time. */
export interface ChoiceLook {
  readonly look: (system: System) => Promise<ChoiceView>;
  readonly proposal: (key: string, system: System) => Promise<ProposalView>;
  readonly whyNot: (
    sought: string,
    view: { readonly from: number; readonly count: number; readonly system: System },
  ) => Promise<WhyNotPage>;
}

export interface ChoiceRoom extends ChoiceLook {
  readonly chooser: Chooser<ChoiceAsked, number>;
  readonly runners: readonly Runner<ChoiceAsked>[];
  readonly close: () => void;
}

/** Judgement: beyond this runners wait for the one that hands out. */
const MOST_RUNNERS = 8;

export function openChoiceRoom(cores = navigator.hardwareConcurrency || 2): ChoiceRoom {
  const chooser = hire<ChooserWork>(
    new Worker(new URL('./chooser-worker.ts', import.meta.url), { type: 'module' }),
  );
  const runners = Array.from({ length: Math.min(MOST_RUNNERS, Math.max(1, cores)) }, () =>
    hire<RunnerWork>(
      new Worker(new URL('./runner-worker.ts', import.meta.url), { type: 'module' }),
    ),
  );
  return {
    chooser: {
      begin: async (asked) => (await chooser.ask((work) => work.begin(asked))).step,
      next: async (reply) => (await chooser.ask((work) => work.next(reply))).step,
    },
    runners: runners.map(({ ask }) => ({
      prepare: (asked) => ask((work) => work.prepare(asked)),
      perform: (tasks) => ask((work) => work.perform(tasks)),
    })),
    look: (system) => chooser.ask((work) => work.look(system)),
    proposal: (key, system) => chooser.ask((work) => work.proposal(key, system)),
    whyNot: (sought, view) => chooser.ask((work) => work.whyNot(sought, view)),
    close: () => {
      for (const { end } of [chooser, ...runners]) end();
    },
  };
}

function hire<Work>(worker: Worker) {
  // Whoever asks hears of a script that cannot load or breaks outside a question.
  const broken = new Promise<never>((_, reject) => {
    worker.addEventListener('error', (event) => {
      reject(new Error(event.message || 'the script that chooses could not be loaded'));
    });
  });
  broken.catch(() => {});
  const work = wrap<Work>(worker);
  return {
    ask: <Value>(question: (asked: Remote<Work>) => Promise<Value>): Promise<Value> =>
      Promise.race([question(work), broken]),
    end: () => worker.terminate(),
  };
}
