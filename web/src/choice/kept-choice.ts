/** The choice that was made last, kept while another leaf is shown. The workers that know it are kept with it. */
import type { Store } from '../state/store.ts';
import { createStore } from '../state/store.ts';
import type { ChoiceAsked } from './choice-request.ts';
import type { ChoiceRoom } from './choice-room.ts';
import type { Search, SearchState } from './search.ts';
import type { WishForm } from './wish-form.ts';

export interface KeptChoice {
  /** The opening of the place that it is for. */
  readonly opening: number;
  readonly form: WishForm;
  readonly room: ChoiceRoom;
  readonly search: Search<ChoiceAsked>;
  readonly state: Store<SearchState<number>>;
  /** What was asked, as text: other text is another choice. */
  readonly askedText?: string;
  /** The build that is looked at. */
  readonly chosenKey?: string;
}

/** Nothing is hired before the leaf is first turned to. */
export function createKeptChoice(): Store<KeptChoice | undefined> {
  return createStore<KeptChoice | undefined>(undefined);
}
