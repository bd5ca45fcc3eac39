/** The worker that runs the pairs, a slice at a time: between two slices it can be told to begin with others. */
import { expose } from 'comlink';
import type { Job } from './pairs.ts';
import type { KeyedResult } from './sweep-pairs.ts';
import { sweepPairs } from './sweep-pairs.ts';

export interface Slice {
  readonly results: readonly KeyedResult[];
  readonly isOver: boolean;
}

/** Judgement: 60 ms between two words of progress is smooth enough and costs next to nothing. */
const SLICE = 60;

let sweep: ReturnType<typeof sweepPairs> | undefined;

const work = {
  /** Forgets what was begun before. */
  begin(jobs: readonly Job[]): void {
    sweep = sweepPairs(jobs);
  },

  next(): Slice {
    const results: KeyedResult[] = [];
    const end = performance.now() + SLICE;
    do {
      const step = sweep?.next();
      if (step === undefined || step.done === true) return { results, isOver: true };
      results.push(step.value);
    } while (performance.now() < end);
    return { results, isOver: false };
  },
};

export type AlternativesWork = typeof work;

expose(work);
