/** Puts the stores together: what was kept, what is asked of the engine, what is written down again. */
import { createComparison } from '../alternatives/kept-comparison.ts';
import { createAnswerer, NO_ANSWER_YET } from '../answer/answerer.ts';
import { openEngineRooms } from '../answer/engine-rooms.ts';
import { createHowSure } from '../answer/how-sure.ts';
import type { SiteAnswerState } from '../answer/site-answer.ts';
import { siteFiles } from '../answer/site-files.ts';
import { createKeptChoice } from '../choice/kept-choice.ts';
import { createInstall } from '../offline/install.ts';
import { askToLast } from '../offline/lasting-storage.ts';
import { createOffline } from '../offline/offline.ts';
import { FIRST_PLACE_KEY, readFirstPlace } from '../state/first-place.ts';
import { createJournal } from '../state/journal.ts';
import { withoutEmptyPipes } from '../state/lines.ts';
import { createSettings } from '../state/settings.ts';
import { createStore } from '../state/store.ts';
import { createTabs } from '../state/tabs.ts';
import { createWatches } from '../state/watches.ts';
import type { WorkshopState } from '../state/workshop.ts';
import { createWorkshop, moveFirstPlace, saveLeft } from '../state/workshop.ts';
import { LARKRISE } from '../workshop/demo.ts';
import { createGlances } from '../workshop/glances.ts';
import { browserShelf, browserStorage, lineToOtherTabs } from './browser-storage.ts';
import type { Notebook } from './notebook.ts';
import type { Desk } from './open-desk.ts';
import { openDesk } from './open-desk.ts';
import { showTheme } from './theme.ts';

export async function openNotebook(): Promise<Notebook> {
  const install = createInstall();
  const keep = browserStorage();
  const settings = createSettings(keep, navigator.language);
  showTheme(settings.get().theme);
  settings.subscribe(() => showTheme(settings.get().theme));

  const rooms = openEngineRooms();
  if (isPlaceAddress(window.location.pathname)) rooms.getReady();

  const { shelf, notKept } = await browserShelf();
  const journal = createJournal(keep);
  const tabs = createTabs(lineToOtherTabs());
  const now = Date.now;
  const first = notKept === undefined ? readFirstPlace(keep) : undefined;
  if (first !== undefined) {
    await moveFirstPlace(first, LARKRISE, shelf, now());
    keep.removeItem(FIRST_PLACE_KEY);
  }

  const needs = { shelf, journal, tabs, now };
  const desk = openDesk('site', needs);
  const shared = { range: openDesk('range', needs), prices: openDesk('prices', needs) };
  const bench = openDesk('test', needs);
  const desks: readonly Desk[] = [desk, bench, shared.range, shared.prices];
  const { place, standing } = desk;
  const workshop = createWorkshop(createStore<WorkshopState>({ phase: 'opening' }), needs);
  if (notKept !== undefined) for (const { saved } of desks) keepTelling(saved, notKept);
  else askToLast(workshop.state, keep, navigator.storage, now);
  const flush = async (): Promise<void> => {
    await Promise.all(desks.map((one) => one.keeper.flush()));
  };
  const look = async (): Promise<void> => {
    await Promise.all(desks.map((one) => one.keeper.look()));
  };
  const offline = createOffline(async () => {
    await flush();
    return desks.every(({ saved }) => saved.get().kind !== 'notSaved');
  });

  const answer = createStore<SiteAnswerState>(NO_ANSWER_YET);
  standing.subscribe(() => {
    if (standing.get().kind === 'opening') rooms.getReady();
  });
  const howSure = createHowSure(answer, rooms);
  const { ask, forget } = createAnswerer(rooms, answer);
  let { opening } = place.get();
  place.subscribe(() => {
    const state = place.get();
    if (state.opening !== opening) {
      opening = state.opening;
      forget();
    }
    ask(JSON.stringify(withoutEmptyPipes(state.document)));
  });

  window.addEventListener('pagehide', () => void flush());
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void flush();
    else void look();
  });
  window.addEventListener('focus', () => void look());

  // What cannot be saved now stays in the journal, and comes back when its place is opened.
  await saveLeft(shelf, journal, tabs, now).catch(() => {});
  void workshop.refresh();

  const files = siteFiles(rooms);
  const comparison = createComparison();
  const glances = createGlances(rooms.glance);
  const watches = createWatches(keep, now);
  return {
    ...desk,
    shared,
    bench,
    answer,
    howSure,
    settings,
    workshop,
    comparison,
    choice: createKeptChoice(),
    glances,
    watches,
    files,
    offline,
    install,
  };
}

/** Whether an answer will be wanted as soon as the page stands. */
export function isPlaceAddress(path: string): boolean {
  return path.startsWith('/places/');
}

/** Nothing that is saved from now on outlasts the page, whatever a save says. */
function keepTelling(saved: Desk['saved'], why: string): void {
  const tell = (): void =>
    saved.update((state) => (state.kind === 'saved' ? { kind: 'notSaved', why } : state));
  saved.subscribe(tell);
  tell();
}
