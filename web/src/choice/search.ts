/**
 * Goes through a choice with as many runners as there are: hands out what is to be computed, takes results in whatever order
 * they come, tells how far it is, and stops when told to. It knows nothing of workers or screens.
 *
 * The proposal does not depend on the number of runners: the engine hands out the same tasks and minds no order.
 */
import type { ChoiceProgress, ChoiceReply, ChoiceResult, ChoiceTask } from '@fallwright/engine';
import type { Store } from '../state/store.ts';

/** What comes next: work for the runners, or the end. */
export type SearchStep<Proposal> =
  | {
      readonly kind: 'work';
      readonly tasks: readonly ChoiceTask[];
      readonly progress: ChoiceProgress;
    }
  | { readonly kind: 'over'; readonly proposal: Proposal }
  | { readonly kind: 'refused'; readonly reasons: readonly string[] };

/** Where the search itself goes on. */
export interface Chooser<Asked, Proposal> {
  readonly begin: (asked: Asked) => Promise<SearchStep<Proposal>>;
  readonly next: (reply: ChoiceReply) => Promise<SearchStep<Proposal>>;
}

/** Who computes one thing after another. */
export interface Runner<Asked> {
  /** What the tasks to come are about. */
  readonly prepare: (asked: Asked) => Promise<void>;
  readonly perform: (tasks: readonly ChoiceTask[]) => Promise<readonly ChoiceResult[]>;
}

export interface SearchState<Proposal> {
  readonly phase: 'idle' | 'running' | 'stopping' | 'done' | 'stopped' | 'refused' | 'failed';
  /** What is being done: going through combinations, or what follows for those near the front. */
  readonly doing: 'run' | 'judge' | 'quote';
  readonly done: number;
  readonly wanted: number;
  /** Seconds since it began, and what is left at its pace; absent until there is a pace. */
  readonly elapsed: number;
  readonly left?: number;
  readonly progress?: ChoiceProgress;
  readonly proposal?: Proposal;
  /** Why nothing could be begun, or what broke. */
  readonly reasons: readonly string[];
}

export const NOT_ASKED = {
  phase: 'idle',
  doing: 'run',
  done: 0,
  wanted: 0,
  elapsed: 0,
  reasons: [],
} as const satisfies SearchState<never>;

export interface Search<Asked> {
  readonly ask: (asked: Asked) => Promise<void>;
  /** Ends the search with what is done. */
  readonly stop: () => void;
  /** Forgets the search and its proposal. */
  readonly forget: () => void;
}

/** Judgement: a handful of runs, some tens of milliseconds, between two messages. A judgement is long enough for one. */
const RUNS_AT_ONCE = 4;

/** `now` tells the time in milliseconds. */
export function createSearch<Asked, Proposal>(
  {
    chooser,
    runners,
  }: { readonly chooser: Chooser<Asked, Proposal>; readonly runners: readonly Runner<Asked>[] },
  store: Store<SearchState<Proposal>>,
  now: () => number,
): Search<Asked> {
  let newest = 0;

  const ask = async (asked: Asked): Promise<void> => {
    newest += 1;
    const mine = newest;
    const begun = now();
    const tell = (change: Partial<SearchState<Proposal>>): void => {
      if (mine !== newest) return;
      store.update(({ left: _left, ...state }) => ({
        ...state,
        elapsed: (now() - begun) / 1000,
        ...change,
      }));
    };
    store.update(({ proposal }) => ({
      ...NOT_ASKED,
      phase: 'running',
      // The proposal before stays in sight until there is another.
      ...(proposal === undefined ? {} : { proposal }),
    }));
    try {
      await Promise.all(runners.map((runner) => runner.prepare(asked)));
      let step = await chooser.begin(asked);
      const pace = paceMeter(now);
      while (mine === newest) {
        if (step.kind === 'refused') return tell({ phase: 'refused', reasons: step.reasons });
        if (step.kind === 'over') {
          const isStopped = store.get().phase === 'stopping';
          return tell({ phase: isStopped ? 'stopped' : 'done', proposal: step.proposal });
        }
        const { tasks, progress } = step;
        const doing = tasks[0]?.kind ?? 'run';
        const decided = progress.rejected + progress.pruned + progress.decided;
        const count =
          doing === 'run'
            ? (done: number) => ({ done: decided + done, wanted: progress.combinations })
            : (done: number) => ({ done, wanted: tasks.length });
        const isStopped = (): boolean => mine !== newest || store.get().phase === 'stopping';
        const results = await share(tasks, runners, isStopped, (done) => {
          const counted = count(done);
          const left = pace(doing, counted);
          tell({ doing, progress, ...counted, ...(left === undefined ? {} : { left }) });
        });
        if (mine !== newest) return;
        step = await chooser.next({ results, ...(isStopped() ? { stop: true } : {}) });
      }
    } catch (error) {
      tell({ phase: 'failed', reasons: [error instanceof Error ? error.message : String(error)] });
    }
  };

  return {
    ask,
    stop: () =>
      store.update((state) =>
        state.phase === 'running' ? { ...state, phase: 'stopping' } : state,
      ),
    forget: () => {
      newest += 1;
      store.update(() => NOT_ASKED);
    },
  };
}

/** Each runner takes the next tasks as soon as it is free, so that a slow one keeps no other waiting. */
async function share<Asked>(
  tasks: readonly ChoiceTask[],
  runners: readonly Runner<Asked>[],
  isStopped: () => boolean,
  told: (done: number) => void,
): Promise<ChoiceResult[]> {
  const results: ChoiceResult[] = [];
  let next = 0;
  told(0);
  await Promise.all(
    runners.map(async (runner) => {
      while (next < tasks.length && !isStopped()) {
        const atOnce = tasks[next]?.kind === 'run' ? RUNS_AT_ONCE : 1;
        const mine = tasks.slice(next, next + atOnce);
        next += mine.length;
        results.push(...(await runner.perform(mine)));
        told(results.length);
      }
    }),
  );
  return results;
}

/** Seconds left of what is being done, at the pace since that began. */
function paceMeter(now: () => number) {
  let doing: SearchState<never>['doing'] | undefined;
  let begun = 0;
  let first = 0;
  return (
    what: SearchState<never>['doing'],
    { done, wanted }: { readonly done: number; readonly wanted: number },
  ): number | undefined => {
    if (what !== doing) {
      doing = what;
      begun = now();
      first = done;
    }
    const elapsed = (now() - begun) / 1000;
    const pace = (done - first) / elapsed;
    return pace > 0 && elapsed > 1 ? (wanted - done) / pace : undefined;
  };
}
