/**
 * Has the pairs run and keeps what is done. New wishes take the place of old ones at once; what was run for those is kept and
 * not run again. It knows nothing of workers or screens.
 */
import type { Store } from '../state/store.ts';
import type { Job, Pair, PairResults } from './pairs.ts';
import { jobsFor } from './pairs.ts';
import type { KeyedResult } from './sweep-pairs.ts';

export interface SweepRoom {
  readonly begin: (jobs: readonly Job[]) => Promise<void>;
  readonly next: () => Promise<{
    readonly results: readonly KeyedResult[];
    readonly isOver: boolean;
  }>;
}

export interface SweepState {
  readonly phase: 'idle' | 'running' | 'stopped' | 'done' | 'failed';
  readonly results: PairResults;
  /** Pairs wanted, and how many of them are done. */
  readonly wanted: number;
  readonly done: number;
  /** Seconds since this run began, and the seconds that are left at its pace; absent until there is a pace. */
  readonly elapsed: number;
  readonly left?: number;
  readonly failure?: string;
}

export const NOTHING_RUN: SweepState = {
  phase: 'idle',
  results: new Map(),
  wanted: 0,
  done: 0,
  elapsed: 0,
};

export interface Sweep {
  readonly want: (pairs: readonly Pair[]) => void;
  /** Ends the run and keeps what is done. */
  readonly stop: () => void;
  /** Runs what a stop or a failure left undone. */
  readonly goOn: () => void;
}

/** Judgement: more results than anyone compares; those of places long gone are then let go. */
const MOST_KEPT = 2000;

/** `now` tells the time in milliseconds. */
export function createSweep(room: SweepRoom, store: Store<SweepState>, now: () => number): Sweep {
  let pairs: readonly Pair[] = [];
  let newest = 0;

  const count = (results: PairResults): number =>
    pairs.filter(({ key }) => results.has(key)).length;

  const want = (wanted: readonly Pair[]): void => {
    const isSame =
      wanted.length === pairs.length && wanted.every(({ key }, i) => key === pairs[i]?.key);
    pairs = wanted;
    if (isSame) return;
    store.update((state) => ({ ...state, results: pruned(state.results, pairs) }));
    goOn();
  };

  const goOn = (): void => {
    newest += 1;
    const { results } = store.get();
    const jobs = jobsFor(pairs, results);
    const progress = { wanted: pairs.length, done: count(results), elapsed: 0 };
    store.update(({ failure: _failure, left: _left, ...state }) => ({
      ...state,
      ...progress,
      phase: jobs.length === 0 ? 'done' : 'running',
    }));
    if (jobs.length > 0) void run(jobs, newest);
  };

  const run = async (jobs: readonly Job[], mine: number): Promise<void> => {
    const begun = now();
    const before = store.get().done;
    try {
      await room.begin(jobs);
      while (mine === newest) {
        const { results, isOver } = await room.next();
        if (mine === newest) take(results, begun, before, isOver);
        else keepLate(results);
        if (isOver) return;
      }
    } catch (error) {
      if (mine !== newest) return;
      const failure = error instanceof Error ? error.message : String(error);
      store.update((state) => ({ ...state, phase: 'failed', failure }));
    }
  };

  const take = (
    fresh: readonly KeyedResult[],
    begun: number,
    before: number,
    isOver: boolean,
  ): void => {
    store.update(({ left: _left, ...state }) => {
      const results = new Map([...state.results, ...fresh]);
      const done = count(results);
      const elapsed = (now() - begun) / 1000;
      const pace = (done - before) / elapsed;
      return {
        ...state,
        results,
        done,
        elapsed,
        phase: isOver ? 'done' : 'running',
        ...(isOver || !(pace > 0) ? {} : { left: (pairs.length - done) / pace }),
      };
    });
  };

  /** What was under way at a stop, or when newer wishes came, is run all the same and need not be lost. */
  const keepLate = (fresh: readonly KeyedResult[]): void => {
    store.update((state) => {
      const results = new Map([...state.results, ...fresh]);
      return { ...state, results, done: count(results) };
    });
  };

  const stop = (): void => {
    newest += 1;
    store.update(({ left: _left, ...state }) =>
      state.phase === 'running' ? { ...state, phase: 'stopped' } : state,
    );
  };

  return { want, stop, goOn };
}

/** Results without the oldest ones that nobody wants, once there are too many. */
function pruned(results: PairResults, wanted: readonly Pair[]): PairResults {
  if (results.size <= MOST_KEPT) return results;
  const keys = new Set(wanted.map(({ key }) => key));
  return new Map([...results].filter(([key]) => keys.has(key)));
}
