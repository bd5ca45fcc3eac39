/**
 * The comparison as a person leaves it: what is compared, in which order, which pair is looked at. It is kept while another
 * leaf is shown, and any leaf may ask for an alternative; so it knows nothing of pipes and rams, which come with their leaf.
 */
import type { Store } from '../state/store.ts';
import { createStore } from '../state/store.ts';
import type { Choices } from './choices.ts';
import type { OpenedAlternative } from './opened.ts';
import type { Order } from './order.ts';

export interface Comparison {
  /** Absent until the place has had an answer. */
  readonly choices?: Choices;
  /** The place that the choices belong to; see `Place.opening`. */
  readonly opening?: number;
  readonly order: Order;
  readonly chosenKey?: string;
  /** Alternatives that were asked for on another leaf and stand in no table yet. */
  readonly waiting: readonly OpenedAlternative[];
  /** The one that was asked for last: it is looked at until a person chooses another. */
  readonly asked?: OpenedAlternative;
}

export function createComparison(): Store<Comparison> {
  return createStore<Comparison>({ order: 'listed', waiting: [] });
}

/** Asks for an alternative from elsewhere on the page: it stands in the table when that leaf is turned to. */
export function withAsked(state: Comparison, asked: OpenedAlternative): Comparison {
  const { chosenKey: _chosen, ...others } = state;
  return { ...others, asked, waiting: [...state.waiting, asked] };
}
