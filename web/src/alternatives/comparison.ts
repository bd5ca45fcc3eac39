/** The comparison as a person leaves it: what is compared, in which order, which pair is looked at. */
import type { Installation } from '@fallwright/engine';
import type { System } from '@fallwright/units';
import type { SiteDocument } from '../state/site-document.ts';
import type { Store } from '../state/store.ts';
import { createStore } from '../state/store.ts';
import type { Choices } from './choices.ts';
import { choicesFor, withOpened } from './choices.ts';
import { followingSheet } from './follow-sheet.ts';
import type { OpenedAlternative } from './opened.ts';
import type { Order } from './order.ts';

export interface Comparison {
  /** Absent until the place has had an answer. */
  readonly choices?: Choices;
  /** The place that the choices belong to; see `Place.opening`. */
  readonly opening?: number;
  readonly order: Order;
  readonly chosenKey?: string;
  /** Alternatives that wait for a place with an answer. */
  readonly waiting: readonly OpenedAlternative[];
}

export function createComparison(): Store<Comparison> {
  return createStore<Comparison>({ order: 'listed', waiting: [] });
}

/** Asks for an alternative from elsewhere on the page: it stands in the table from now on. */
export function withAlternative(state: Comparison, alternative: OpenedAlternative): Comparison {
  return state.choices === undefined
    ? { ...state, waiting: [...state.waiting, alternative] }
    : { ...state, choices: withOpened(state.choices, alternative) };
}

/** The comparison after the sheet's newest good answer: begun, or following the sheet. */
export function onSheet(
  state: Comparison,
  sheet: {
    readonly document: SiteDocument;
    readonly installation: Installation;
    readonly opening: number;
  },
  system: System,
): Comparison {
  const { document, installation, opening } = sheet;
  const isSamePlace = state.choices !== undefined && state.opening === opening;
  const begun =
    isSamePlace && state.choices !== undefined
      ? followingSheet(state.choices, document, installation, system)
      : choicesFor(document, installation, system);
  const choices = state.waiting.reduce(withOpened, begun);
  if (isSamePlace && choices === state.choices) return state;
  const { chosenKey, ...others } = state;
  return {
    ...others,
    ...(isSamePlace && chosenKey !== undefined ? { chosenKey } : {}),
    choices,
    opening,
    waiting: [],
  };
}

export function withChoices(state: Comparison, change: (choices: Choices) => Choices): Comparison {
  return state.choices === undefined ? state : { ...state, choices: change(state.choices) };
}
