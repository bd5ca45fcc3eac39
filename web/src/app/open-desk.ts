/** A record that lies open for writing, with all that keeps it: the place, the bench test, the range and the price list each have a desk. */
import type { Journal } from '../state/journal.ts';
import type { Conflict, Keeper, Saved, Standing } from '../state/keeper.ts';
import { createKeeper } from '../state/keeper.ts';
import type { Place } from '../state/place.ts';
import { openPlace } from '../state/place.ts';
import type { RecordKind } from '../state/record-kind.ts';
import { emptyDocument } from '../state/record-kind.ts';
import type { Shelf } from '../state/shelf.ts';
import type { Store } from '../state/store.ts';
import { createStore } from '../state/store.ts';
import type { Tabs } from '../state/tabs.ts';

export interface Desk {
  readonly place: Store<Place>;
  readonly saved: Store<Saved>;
  readonly standing: Store<Standing>;
  readonly conflict: Store<Conflict | undefined>;
  readonly keeper: Keeper;
}

export interface DeskNeeds {
  readonly shelf: Shelf;
  readonly journal: Journal;
  readonly tabs: Tabs;
  readonly now: () => number;
}

export function openDesk(kind: RecordKind, needs: DeskNeeds): Desk {
  const stores = {
    place: createStore(openPlace(emptyDocument(kind))),
    saved: createStore<Saved>({ kind: 'saved' }),
    standing: createStore<Standing>({ kind: 'none' }),
    conflict: createStore<Conflict | undefined>(undefined),
  };
  return { ...stores, keeper: createKeeper(stores, needs) };
}
