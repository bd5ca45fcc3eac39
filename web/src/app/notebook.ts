/** Everything the screens stand on: the stores, and what may be done. Passed in through React's context. */
import { createContext, useContext } from 'react';
import type { Comparison } from '../alternatives/kept-comparison.ts';
import type { HowSureState } from '../answer/how-sure.ts';
import type { SiteAnswerState } from '../answer/site-answer.ts';
import type { SiteFiles } from '../answer/site-files.ts';
import type { Install } from '../offline/install.ts';
import type { Offline } from '../offline/offline.ts';
import type { Conflict, Keeper, Saved, Standing } from '../state/keeper.ts';
import type { Place } from '../state/place.ts';
import type { Settings } from '../state/settings.ts';
import type { Store } from '../state/store.ts';
import type { Workshop } from '../state/workshop.ts';
import type { Glances } from '../workshop/glances.ts';

export interface Notebook {
  readonly place: Store<Place>;
  readonly answer: Store<SiteAnswerState>;
  readonly howSure: Store<HowSureState | undefined>;
  readonly settings: Store<Settings>;
  readonly saved: Store<Saved>;
  readonly standing: Store<Standing>;
  readonly conflict: Store<Conflict | undefined>;
  readonly keeper: Keeper;
  readonly workshop: Workshop;
  /** Answers beside the places in the list. */
  readonly glances: Glances;
  /** What is compared on the leaf of pipes, kept while another leaf is shown. */
  readonly comparison: Store<Comparison>;
  readonly files: SiteFiles;
  readonly offline: Offline;
  readonly install: Install;
}

export const NotebookContext = createContext<Notebook | undefined>(undefined);

export function useNotebook(): Notebook {
  const notebook = useContext(NotebookContext);
  if (notebook === undefined) throw new Error('a screen must stand inside a NotebookContext');
  return notebook;
}
