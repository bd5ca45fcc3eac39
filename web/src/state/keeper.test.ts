/** Places kept on the shelf in memory, which does as the browser's database does, by one tab and by two. */
import { expect, test } from 'vitest';
import { chosenFrom, differencesOf } from './differences.ts';
import type { KeyedKeep } from './journal.ts';
import { createJournal } from './journal.ts';
import type { Conflict, Saved, Standing } from './keeper.ts';
import { createKeeper } from './keeper.ts';
import { createMemoryShelf } from './memory-shelf.ts';
import type { Place } from './place.ts';
import { keepUnread, openPlace, putValue, redo, undo } from './place.ts';
import type { Shelf } from './shelf.ts';
import type { SiteRecord } from './site-record.ts';
import { createStore } from './store.ts';
import type { Line } from './tabs.ts';
import { createTabs } from './tabs.ts';
import { createWorkshop, listed, moveFirstPlace, saveLeft } from './workshop.ts';

const larkrise = { fallwright: 'site@1', name: 'Larkrise spring', fall: '1.9 m', lift: '12 m' };

const SITE: SiteRecord = {
  id: 'larkrise',
  document: larkrise,
  unread: {},
  order: 'answerFirst',
  isDemo: false,
  revision: 1,
  savedAt: 0,
  changed: 'begun',
};

/** A browser with one storage for all its tabs. */
function browser(shelf: Shelf = createMemoryShelf()) {
  const texts = new Map<string, string>();
  const keep: KeyedKeep = {
    getItem: (key) => texts.get(key) ?? null,
    setItem: (key, value) => void texts.set(key, value),
    removeItem: (key) => void texts.delete(key),
    keys: () => [...texts.keys()],
  };
  const lines: Line[] = [];
  const journal = createJournal(keep);
  let clock = 0;
  const now = (): number => ++clock;
  const newLine = (): Line => {
    const line: Line = {
      onmessage: null,
      postMessage: (data) => {
        for (const other of lines) {
          if (other !== line) other.onmessage?.({ data } as MessageEvent);
        }
      },
    };
    lines.push(line);
    return line;
  };
  const openTab = () => {
    const line = newLine();
    const tabs = createTabs(line, 1);
    const stores = {
      place: createStore<Place>(openPlace({})),
      saved: createStore<Saved>({ kind: 'saved' }),
      standing: createStore<Standing>({ kind: 'none' }),
      conflict: createStore<Conflict | undefined>(undefined),
    };
    // Saves only when it is told to: no test waits for a clock.
    const keeper = createKeeper(stores, { shelf, journal, tabs, now, rest: 1e6 });
    const write = (key: string, value: string): void =>
      stores.place.update((place) => putValue(place, { path: [key], value, called: `the ${key}` }));
    return { ...stores, keeper, tabs, write, kill: () => lines.splice(lines.indexOf(line), 1) };
  };
  return { shelf, journal, now, openTab };
}

type Tab = ReturnType<ReturnType<typeof browser>['openTab']>;

async function withLarkrise(tabs: 1 | 2) {
  const all = browser();
  await all.shelf.add(SITE);
  const opened: Tab[] = [];
  for (let n = 0; n < tabs; n++) {
    const tab = all.openTab();
    await tab.keeper.open('larkrise');
    opened.push(tab);
  }
  const [one, two] = opened;
  if (one === undefined) throw new Error('no tab was opened');
  return { ...all, one, two: two ?? one };
}

/** Messages between tabs make them read the shelf; that takes a few turns. */
const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 5));

test('each saved state is kept with its time, the newest first', async () => {
  const { shelf, one } = await withLarkrise(1);
  one.write('fall', '2 m');
  await one.keeper.flush();
  one.write('lift', '15 m');
  await one.keeper.flush();
  const history = await shelf.revisions('larkrise');
  expect(history.map(({ revision, changed }) => [revision, changed])).toEqual([
    [3, 'the lift'],
    [2, 'the fall'],
    [1, 'begun'],
  ]);
  expect(history[1]?.document.fall).toBe('2 m');
  expect(history[1]?.savedAt).toBeLessThan(history[0]?.savedAt ?? 0);
});

test('undo and redo go on after the place is closed and opened again', async () => {
  const { one, openTab } = await withLarkrise(1);
  one.write('fall', '2 m');
  one.write('lift', '15 m');
  one.place.update(undo);
  await one.keeper.close();
  const later = openTab();
  await later.keeper.open('larkrise');
  expect(later.place.get().document).toMatchObject({ fall: '2 m', lift: '12 m' });
  expect(redo(later.place.get()).document.lift).toBe('15 m');
  expect(undo(later.place.get()).document).toEqual(larkrise);
});

test('a tab closed in mid-word before anything was saved loses no letter', async () => {
  const { one, openTab, journal, shelf, now } = await withLarkrise(1);
  one.write('lift', '15 m');
  one.place.update((place) => keepUnread(place, ['fall'], '1.'));
  one.kill();
  const later = openTab();
  await saveLeft(shelf, journal, later.tabs, now);
  await later.keeper.open('larkrise');
  expect(later.place.get().document.lift).toBe('15 m');
  expect(later.place.get().unread).toEqual({ fall: { text: '1.' } });
  expect(undo(later.place.get()).document).toEqual(larkrise);
  expect(journal.entries()).toEqual([]);
});

test('what a living tab has in hand is not taken from it', async () => {
  const { one, openTab, journal, shelf, now } = await withLarkrise(1);
  one.write('lift', '15 m');
  const later = openTab();
  await saveLeft(shelf, journal, later.tabs, now);
  await later.keeper.open('larkrise');
  expect(later.place.get().document.lift).toBe('12 m');
  await one.keeper.flush();
  await settle();
  expect(later.place.get().document.lift).toBe('15 m');
});

test('a newer state from another tab is taken in where nothing is unsaved', async () => {
  const { one, two } = await withLarkrise(2);
  one.write('fall', '2 m');
  await one.keeper.flush();
  await settle();
  expect(two.place.get().document.fall).toBe('2 m');
  expect(two.conflict.get()).toBeUndefined();
});

test('two tabs that changed one field are both kept until one is chosen', async () => {
  const { one, two, shelf } = await withLarkrise(2);
  two.write('fall', '3 m');
  one.write('fall', '2 m');
  one.write('lift', '15 m');
  await one.keeper.flush();
  await settle();
  const conflict = two.conflict.get();
  if (conflict === undefined) throw new Error('there must be a choice');
  expect(two.saved.get().kind).toBe('toChoose');
  await two.keeper.flush();
  expect((await shelf.read('larkrise'))?.site.document.fall).toBe('2 m');

  const mine = two.place.get();
  const found = differencesOf(mine, conflict.theirs.site, conflict.base);
  expect(
    found.map(({ label, mine, theirs, changedBy }) => [label, mine, theirs, changedBy]),
  ).toEqual([
    ['Fall', '3 m', '2 m', 'both'],
    ['Lift', '12 m', '15 m', 'theirs'],
  ]);
  const chosen = chosenFrom(mine, conflict.theirs.site, [
    { difference: found[0] as never, side: 'mine' },
    { difference: found[1] as never, side: 'theirs' },
  ]);
  await two.keeper.settle(chosen);
  await settle();
  expect(two.saved.get().kind).toBe('saved');
  expect(one.place.get().document).toMatchObject({ fall: '3 m', lift: '15 m' });
  // Both states stand in the history, chosen or not.
  const kept = (await shelf.revisions('larkrise')).map(({ document }) => [
    document.fall,
    document.lift,
  ]);
  expect(kept).toEqual([
    ['3 m', '15 m'],
    ['3 m', '12 m'],
    ['2 m', '15 m'],
    ['1.9 m', '12 m'],
  ]);
});

test('a choice left open is asked again after the tab was closed', async () => {
  const { one, two, openTab, shelf, journal, now } = await withLarkrise(2);
  two.write('fall', '3 m');
  one.write('fall', '2 m');
  await one.keeper.flush();
  await settle();
  two.kill();
  const later = openTab();
  await saveLeft(shelf, journal, later.tabs, now);
  await later.keeper.open('larkrise');
  expect(later.conflict.get()?.theirs.site.document.fall).toBe('2 m');
  expect(later.place.get().document.fall).toBe('3 m');
});

test('a choice left open is asked again when one comes back from the list', async () => {
  const { one, two } = await withLarkrise(2);
  two.write('fall', '3 m');
  one.write('fall', '2 m');
  await one.keeper.flush();
  await settle();
  await two.keeper.close();
  await two.keeper.open('larkrise');
  expect(two.conflict.get()?.theirs.site.document.fall).toBe('2 m');
  expect(two.place.get().document.fall).toBe('3 m');
});

test('tabs that wrote the same need no choice', async () => {
  const { one, two } = await withLarkrise(2);
  two.write('fall', '2 m');
  one.write('fall', '2 m');
  await one.keeper.flush();
  await two.keeper.flush();
  expect(two.conflict.get()).toBeUndefined();
  expect(two.saved.get().kind).toBe('saved');
});

test('a full storage is told, not hidden, and the next save that works says so', async () => {
  const shelf = createMemoryShelf();
  await shelf.add(SITE);
  let isFull = true;
  const { openTab } = browser({
    ...shelf,
    save: async (change) => {
      if (isFull) throw new Error('quota exceeded');
      return shelf.save(change);
    },
  });
  const tab = openTab();
  await tab.keeper.open('larkrise');
  tab.write('fall', '2 m');
  await tab.keeper.flush();
  expect(tab.saved.get()).toEqual({ kind: 'notSaved', why: 'quota exceeded' });
  isFull = false;
  await tab.keeper.flush();
  expect(tab.saved.get()).toEqual({ kind: 'saved' });
  expect((await shelf.read('larkrise'))?.site.document.fall).toBe('2 m');
});

function workshopIn({ shelf, journal, now, openTab }: ReturnType<typeof browser>) {
  const { tabs } = openTab();
  const state = createStore({ phase: 'opening' } as const);
  return createWorkshop(state as never, { shelf, journal, tabs, now });
}

async function namesIn(workshop: ReturnType<typeof workshopIn>, sought = ''): Promise<unknown[]> {
  await workshop.refresh();
  const state = workshop.state.get();
  if (state.phase !== 'open') throw new Error('the list is not open');
  return listed(state.sites, sought).map(({ document }) => document.name);
}

test('a deleted place can be brought back with its history; other tabs hear of both', async () => {
  const all = await withLarkrise(1);
  const workshop = workshopIn(all);
  await workshop.takeOut(['larkrise']);
  await settle();
  expect(await namesIn(workshop)).toEqual([]);
  expect(all.one.standing.get().kind).toBe('deleted');
  await workshop.bringBack(['larkrise']);
  await settle();
  expect(await namesIn(workshop)).toEqual(['Larkrise spring']);
  expect(all.one.standing.get().kind).toBe('open');
  expect(await workshop.historyOf('larkrise')).toHaveLength(1);
});

test('a name given in the list reaches an open tab that was typing elsewhere as a choice of one', async () => {
  const all = await withLarkrise(1);
  const workshop = workshopIn(all);
  all.one.write('fall', '2 m');
  await workshop.rename('larkrise', 'Upper Larch');
  await settle();
  const conflict = all.one.conflict.get();
  if (conflict === undefined) throw new Error('there must be a choice');
  const found = differencesOf(all.one.place.get(), conflict.theirs.site, conflict.base);
  expect(found.map(({ label, changedBy }) => [label, changedBy])).toEqual([
    ['Name', 'theirs'],
    ['Fall', 'mine'],
  ]);
});

test('places are found by any of their words, whatever the case and the accents', async () => {
  const all = browser();
  const workshop = workshopIn(all);
  await workshop.begin({ name: 'Café du Moulin', owner: 'Hob Carver' });
  await workshop.begin({ name: 'Nettle Bank' });
  expect(await namesIn(workshop, 'carver CAFE')).toEqual(['Café du Moulin']);
  expect(await namesIn(workshop, 'mill')).toEqual([]);
});

test('the demo is loaded once, marked, and removed without touching other places', async () => {
  const all = browser();
  const workshop = workshopIn(all);
  await workshop.begin({ name: 'My own' });
  await workshop.loadDemo([{ name: 'A' }, { name: 'B' }]);
  await workshop.loadDemo([{ name: 'A' }, { name: 'B' }]);
  expect(await namesIn(workshop)).toHaveLength(3);
  const demo = (await all.shelf.list()).filter(({ isDemo }) => isDemo).map(({ id }) => id);
  await workshop.takeOut(demo);
  expect(await namesIn(workshop)).toEqual(['My own']);
});

test('the one place of earlier versions is moved once, and an example as it came is left', async () => {
  const { shelf } = browser();
  const first = { document: larkrise, unread: {}, order: 'answerFirst' as const };
  await moveFirstPlace({ ...first, isExample: true }, larkrise, shelf, 1);
  expect(await shelf.list()).toEqual([]);
  await moveFirstPlace({ ...first, isExample: false }, larkrise, shelf, 1);
  await moveFirstPlace({ ...first, isExample: false, document: {} }, larkrise, shelf, 2);
  expect((await shelf.list()).map(({ document }) => document)).toEqual([larkrise]);
});

test('a workshop has one range; a file that has another puts it on top, and undo and history have the first', async () => {
  const shop = browser();
  const workshop = workshopIn(shop);
  await workshop.beginShared('range');
  await workshop.beginShared('range');
  const first = { fallwright: 'range@1', rams: [{ id: 'swallow-25' }] };
  const second = { fallwright: 'range@1', rams: [{ id: 'swallow-40' }] };
  const asBrought = (document: typeof first) => [
    { site: { ...SITE, id: 'range', document }, revisions: [] },
  ];
  expect(await workshop.bring(asBrought(first))).toMatchObject({ replaced: ['range'] });
  expect(await workshop.bring(asBrought(second))).toMatchObject({ replaced: ['range'], beside: 0 });
  expect(await workshop.bring(asBrought(second))).toMatchObject({ replaced: [], same: 1 });
  const kept = await shop.shelf.read('range');
  expect(kept?.site.document).toEqual(second);
  expect(kept?.steps.past.at(-1)?.document).toEqual(first);
  expect((await workshop.historyOf('range')).map(({ document }) => document)).toContainEqual(first);
  expect(workshop.state.get()).toMatchObject({
    sites: [],
    shared: { range: { document: second } },
  });
  expect((await workshop.everything()).map(({ site }) => site.id)).toEqual(['range']);
});
