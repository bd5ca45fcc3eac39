/** Puts the stores together: what was kept, what is asked of the engine, what is written down again. */
import { createAnswerer, NO_ANSWER_YET } from '../answer/answerer.ts';
import { openEngineRooms } from '../answer/engine-rooms.ts';
import type { SiteAnswerState } from '../answer/site-answer.ts';
import { siteFiles } from '../answer/site-files.ts';
import type { Saved } from '../state/keep-place.ts';
import { keepPlace, readPlace } from '../state/keep-place.ts';
import { withoutEmptyPipes } from '../state/lines.ts';
import { openPlace } from '../state/place.ts';
import type { Keep } from '../state/settings.ts';
import { createSettings } from '../state/settings.ts';
import { createStore } from '../state/store.ts';
import { EXAMPLE } from './example.ts';
import type { Notebook } from './notebook.ts';
import { showTheme } from './theme.ts';

export function openNotebook(): Notebook {
  const keep = browserStorage();
  const settings = createSettings(keep, navigator.language);
  const place = createStore(readPlace(keep) ?? openPlace(EXAMPLE, true));
  const saved = createStore<Saved>({ kind: 'saved' });
  const answer = createStore<SiteAnswerState>(NO_ANSWER_YET);
  const rooms = openEngineRooms();
  const { ask, forget } = createAnswerer(rooms, answer);

  keepPlace(keep, place, saved);
  showTheme(settings.get().theme);
  settings.subscribe(() => showTheme(settings.get().theme));

  let opening = place.get().opening;
  const askAboutPlace = (): void => {
    const state = place.get();
    if (state.opening !== opening) {
      opening = state.opening;
      forget();
    }
    ask(JSON.stringify(withoutEmptyPipes(state.document)));
  };
  place.subscribe(askAboutPlace);
  askAboutPlace();

  return { place, answer, settings, saved, files: siteFiles(rooms) };
}

/** Even naming the storage throws where a browser forbids it. */
function browserStorage(): Keep {
  try {
    return window.localStorage;
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return {
      getItem: () => null,
      setItem: () => {
        throw new Error(why);
      },
    };
  }
}
