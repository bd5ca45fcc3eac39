/** Questions that take a while, asked one after another and kept: what is asked again is known at once. */
import type { Store } from '../state/store.ts';
import { createStore } from '../state/store.ts';

export type Outcome<Value> =
  | { readonly kind: 'known'; readonly value: Value }
  | { readonly kind: 'failed'; readonly why: string };

export interface WorkList<Value> {
  readonly outcomes: Store<ReadonlyMap<string, Outcome<Value>>>;
  /** What is wanted now, the most urgent first; what was wanted before and is not begun is forgotten. */
  readonly want: (keys: readonly string[]) => void;
  readonly end: () => void;
}

/** Judgement: the pause between two words, so that no half-typed number is run. */
const REST = 350;
/** Judgement: all readings of some fifty tests. */
const MOST_KEPT = 1000;

export function createWorkList<Value>(
  ask: (key: string) => Promise<Value>,
  rest = REST,
): WorkList<Value> {
  const outcomes = createStore<ReadonlyMap<string, Outcome<Value>>>(new Map());
  let wanted: readonly string[] = [];
  let isBusy = false;
  let resting: ReturnType<typeof setTimeout> | undefined;

  const put = (key: string, outcome: Outcome<Value>): void =>
    outcomes.update((known) => new Map([...known].slice(-MOST_KEPT + 1)).set(key, outcome));

  const goOn = async (): Promise<void> => {
    if (isBusy) return;
    isBusy = true;
    for (;;) {
      const key = wanted.find((one) => !outcomes.get().has(one));
      if (key === undefined) break;
      try {
        put(key, { kind: 'known', value: await ask(key) });
      } catch (error) {
        put(key, { kind: 'failed', why: error instanceof Error ? error.message : String(error) });
      }
    }
    isBusy = false;
  };

  return {
    outcomes,
    want: (keys) => {
      wanted = keys;
      clearTimeout(resting);
      resting = setTimeout(() => void goOn(), rest);
    },
    end: () => {
      wanted = [];
      clearTimeout(resting);
    },
  };
}
