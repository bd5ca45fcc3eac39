/** How the comparison follows the sheet, and what a person changes of it. */
import type { Installation } from '@fallwright/engine';
import type { System } from '@fallwright/units';
import type { SiteDocument } from '../state/site-document.ts';
import type { Choices } from './choices.ts';
import { choicesFor, withOpened } from './choices.ts';
import { followingSheet } from './follow-sheet.ts';
import type { Comparison } from './kept-comparison.ts';

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
  const { chosenKey, asked, ...others } = state;
  // What was asked for on a sheet belongs to the place of that sheet, even when this is the first table of it.
  const isAskedHere = asked !== undefined && (isSamePlace || state.waiting.includes(asked));
  return {
    ...others,
    ...(isSamePlace && chosenKey !== undefined ? { chosenKey } : {}),
    ...(isAskedHere ? { asked } : {}),
    choices,
    opening,
    waiting: [],
  };
}

export function withChoices(state: Comparison, change: (choices: Choices) => Choices): Comparison {
  return state.choices === undefined ? state : { ...state, choices: change(state.choices) };
}
