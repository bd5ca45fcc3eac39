/** Everything the screens stand on: the stores, and what may be done. Passed in through React's context. */
import { createContext, useContext } from 'react';
import type { Comparison } from '../alternatives/kept-comparison.ts';
import type { HowSureState } from '../answer/how-sure.ts';
import type { SiteAnswerState } from '../answer/site-answer.ts';
import type { SiteFiles } from '../answer/site-files.ts';
import type { KeptChoice } from '../choice/kept-choice.ts';
import type { Install } from '../offline/install.ts';
import type { Offline } from '../offline/offline.ts';
import type { SharedKind } from '../state/record-kind.ts';
import type { Settings } from '../state/settings.ts';
import type { Store } from '../state/store.ts';
import type { Watches } from '../state/watches.ts';
import type { Workshop } from '../state/workshop.ts';
import type { Glances } from '../workshop/glances.ts';
import type { Desk } from './open-desk.ts';

/** What lies open is on the notebook itself, so that every field writes into it, whichever record it is. */
export interface Notebook extends Desk {
  /** The records that a workshop has once. Their screens pass on a notebook with one of these desks as its own. */
  readonly shared: Readonly<Record<SharedKind, Desk>>;
  /** The bench test that lies open; its screens pass it on as the shared ones do. */
  readonly bench: Desk;
  readonly answer: Store<SiteAnswerState>;
  readonly howSure: Store<HowSureState | undefined>;
  readonly settings: Store<Settings>;
  readonly workshop: Workshop;
  /** Answers beside the places in the list. */
  readonly glances: Glances;
  /** What is compared on the leaf of pipes, kept while another leaf is shown. */
  readonly comparison: Store<Comparison>;
  /** Stopwatches that run, at whatever place. */
  readonly watches: Watches;
  /** What was chosen for the place that lies open. */
  readonly choice: Store<KeptChoice | undefined>;
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
