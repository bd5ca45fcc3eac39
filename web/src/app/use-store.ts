import { useSyncExternalStore } from 'react';
import type { Store } from '../state/store.ts';

/** One part of a store's state, watched. `select` must give the same object while that part has not changed. */
export function useStore<State, Part>(store: Store<State>, select: (state: State) => Part): Part {
  return useSyncExternalStore(store.subscribe, () => select(store.get()));
}
