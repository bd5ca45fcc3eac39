/** Everything the screen stands on: the stores, and what may be done. Passed in through React's context. */
import { createContext, useContext } from 'react';
import type { SiteAnswerState } from '../answer/site-answer.ts';
import type { SiteFiles } from '../answer/site-files.ts';
import type { Saved } from '../state/keep-place.ts';
import type { Place } from '../state/place.ts';
import type { Settings } from '../state/settings.ts';
import type { Store } from '../state/store.ts';

export interface Notebook {
  readonly place: Store<Place>;
  readonly answer: Store<SiteAnswerState>;
  readonly settings: Store<Settings>;
  readonly saved: Store<Saved>;
  readonly files: SiteFiles;
}

export const NotebookContext = createContext<Notebook | undefined>(undefined);

export function useNotebook(): Notebook {
  const notebook = useContext(NotebookContext);
  if (notebook === undefined) throw new Error('a screen must stand inside a NotebookContext');
  return notebook;
}
