/** The browser's storage, where it allows any: even naming it throws in some. */
import { openIndexedShelf } from '../state/indexed-shelf.ts';
import type { KeyedKeep } from '../state/journal.ts';
import { createMemoryShelf } from '../state/memory-shelf.ts';
import type { Shelf } from '../state/shelf.ts';
import type { Line } from '../state/tabs.ts';

export function browserStorage(): KeyedKeep {
  try {
    const storage = window.localStorage;
    return {
      getItem: (key) => storage.getItem(key),
      setItem: (key, value) => storage.setItem(key, value),
      removeItem: (key) => storage.removeItem(key),
      keys: () => Object.keys(storage),
    };
  } catch (error) {
    const why = reasonOf(error);
    return {
      getItem: () => null,
      setItem: () => {
        throw new Error(why);
      },
      removeItem: () => {},
      keys: () => [],
    };
  }
}

export interface OpenedShelf {
  readonly shelf: Shelf;
  /** Why places last only as long as the page. */
  readonly notKept?: string;
}

export async function browserShelf(): Promise<OpenedShelf> {
  try {
    return { shelf: await openIndexedShelf() };
  } catch (error) {
    return { shelf: createMemoryShelf(), notKept: reasonOf(error) };
  }
}

/** Absent in old browsers: then tabs find out about one another when they save or come to the front. */
export function lineToOtherTabs(): Line | undefined {
  return typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel('fallwright');
}

function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
