/**
 * A store: one value, changed by pure functions, watched by whoever asks.
 *
 * Our own forty lines, because the state must run and be tested without a view library.
 */
export interface Store<State> {
  readonly get: () => State;
  /** Puts `change(state)` in the place of the state. Watchers hear of it only when it is another object. */
  readonly update: (change: (state: State) => State) => void;
  /** Calls `watcher` after each change; returns what stops it. */
  readonly subscribe: (watcher: () => void) => () => void;
}

export function createStore<State>(initial: State): Store<State> {
  let state = initial;
  const watchers = new Set<() => void>();
  return {
    get: () => state,
    update: (change) => {
      const next = change(state);
      if (Object.is(next, state)) return;
      state = next;
      for (const watcher of [...watchers]) watcher();
    },
    subscribe: (watcher) => {
      watchers.add(watcher);
      return () => {
        watchers.delete(watcher);
      };
    },
  };
}
