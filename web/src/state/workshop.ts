/** All records of this browser: places and tests begun, named, copied, taken out and brought back; one range and one price list. */

import { textOf } from './entry.ts';
import type { FirstPlace } from './first-place.ts';
import { FIRST_PLACE_ID } from './first-place.ts';
import type { Journal } from './journal.ts';
import type { Place } from './place.ts';
import { openPlace, putValue, putWhole } from './place.ts';
import type { SharedKind } from './record-kind.ts';
import { emptyDocument, isSharedKind, kindOf, SHARED_KINDS } from './record-kind.ts';
import type { Shelf } from './shelf.ts';
import type { SiteDocument } from './site-document.ts';
import type { KeptSite, Revision, SiteRecord, Steps } from './site-record.ts';
import { isSame, isSameWritten, newId } from './site-record.ts';
import type { Store } from './store.ts';
import type { Tabs } from './tabs.ts';

export type WorkshopState =
  | { readonly phase: 'opening' }
  | {
      readonly phase: 'open';
      readonly sites: readonly SiteRecord[];
      /** Bench tests, deleted ones too. */
      readonly tests: readonly SiteRecord[];
      /** The range and the price list, where they have been begun. */
      readonly shared: Readonly<Partial<Record<SharedKind, SiteRecord>>>;
    }
  | { readonly phase: 'failed'; readonly why: string };

/** A record from a workshop file, with its history. */
export interface BroughtSite {
  readonly site: SiteRecord;
  readonly revisions: readonly Revision[];
}

/** What became of the records in a file. */
export interface Brought {
  readonly added: number;
  /** Here already, word for word. */
  readonly same: number;
  /** Here in another form; added beside it. */
  readonly beside: number;
  /** What a workshop has once and had in another form: the file's is on top, the other one in its history. */
  readonly replaced: readonly SharedKind[];
}

export interface Workshop {
  readonly state: Store<WorkshopState>;
  readonly refresh: () => Promise<void>;
  /** Gives the id of the new place. */
  readonly begin: (document?: SiteDocument) => Promise<string>;
  /** Gives the id of the new test; `changed` says where it comes from. */
  readonly beginTest: (document: SiteDocument, changed: string) => Promise<string>;
  /** Makes sure that the workshop has a range, or a price list, and gives its id. One that was taken out is begun anew. */
  readonly beginShared: (kind: SharedKind) => Promise<string>;
  readonly rename: (id: string, name: string) => Promise<void>;
  readonly duplicate: (id: string) => Promise<string>;
  readonly takeOut: (ids: readonly string[]) => Promise<void>;
  readonly bringBack: (ids: readonly string[]) => Promise<void>;
  readonly removeForGood: (ids: readonly string[]) => Promise<void>;
  /** Adds what is not here yet; a range or a price list of one's own is left alone. */
  readonly loadDemo: (documents: readonly SiteDocument[]) => Promise<void>;
  readonly bring: (sites: readonly BroughtSite[]) => Promise<Brought>;
  /** All places and tests in their lists, all that were deleted, the range and the price list, with their history, for one file. */
  readonly everything: () => Promise<readonly BroughtSite[]>;
  readonly historyOf: (id: string) => Promise<readonly Revision[]>;
}

export function createWorkshop(
  state: Store<WorkshopState>,
  {
    shelf,
    journal,
    tabs,
    now,
  }: {
    readonly shelf: Shelf;
    readonly journal: Journal;
    readonly tabs: Tabs;
    readonly now: () => number;
  },
): Workshop {
  const refresh = async (): Promise<void> => {
    try {
      const all = await shelf.list();
      const sites = all.filter(isSite);
      const tests = all.filter(isTest);
      const shared = Object.fromEntries(
        all
          .filter((record) => isShared(record) && record.deletedAt === undefined)
          .map((record) => [record.id, record]),
      );
      state.update(() => ({ phase: 'open', sites, tests, shared }));
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      state.update(() => ({ phase: 'failed', why }));
    }
  };

  const newSite = (document: SiteDocument, given: Partial<SiteRecord> = {}): SiteRecord => ({
    id: newId(),
    document,
    unread: {},
    order: 'answerFirst',
    isDemo: false,
    revision: 1,
    savedAt: now(),
    changed: 'begun',
    ...given,
  });

  const add = async (site: SiteRecord, history: readonly Revision[] = []): Promise<boolean> => {
    const isAdded = await shelf.add(site, history);
    if (isAdded) tabs.tellSaved({ siteId: site.id, revision: site.revision });
    return isAdded;
  };

  /** One field or mark of a place that need not be open. Begun anew when another tab was quicker: no value is lost. */
  const change = async (id: string, changed: (kept: KeptSite) => KeptSite): Promise<void> => {
    let kept = await shelf.read(id);
    while (kept !== undefined) {
      const { site, steps } = changed(kept);
      const outcome = await shelf.save({ site: { ...site, savedAt: now() }, steps });
      if (outcome.kind === 'saved') {
        tabs.tellSaved({ siteId: id, revision: outcome.site.revision });
        return;
      }
      kept = outcome.kind === 'newer' ? outcome.kept : undefined;
    }
    throw new Error('this place is not kept here any more');
  };

  /** The range or the price list, where there is none; on top of the one that was taken out, which stays in its history. */
  const addShared = async (
    document: SiteDocument,
    given: Pick<SiteRecord, 'isDemo' | 'changed'>,
  ): Promise<boolean> => {
    const id = kindOf(document);
    if (await add(newSite(document, { id, ...given }))) return true;
    const here = await shelf.read(id);
    if (here?.site.deletedAt === undefined) return false;
    await change(id, (kept) => {
      const { deletedAt: _then, ...site } = kept.site;
      const put = putOnTop({ ...kept, site }, { document, unread: {} }, given.changed);
      return { ...put, site: { ...put.site, isDemo: given.isDemo } };
    });
    return true;
  };

  const forEach = async (
    ids: readonly string[],
    act: (id: string) => Promise<void>,
  ): Promise<void> => {
    for (const id of ids) await act(id);
    await refresh();
  };

  tabs.onSaved(() => void refresh());

  return {
    state,
    refresh,
    begin: async (document) => {
      const site = newSite(
        document ?? emptyDocument('site'),
        document === undefined ? { order: 'fieldsFirst' } : { changed: 'opened from a file' },
      );
      await add(site);
      await refresh();
      return site.id;
    },
    beginTest: async (document, changed) => {
      const test = newSite(document, { changed });
      await add(test);
      await refresh();
      return test.id;
    },
    beginShared: async (kind) => {
      if (await addShared(emptyDocument(kind), { isDemo: false, changed: 'begun' })) {
        await refresh();
      }
      return kind;
    },
    rename: (id, name) =>
      forEach([id], () =>
        change(id, (kept) => {
          const value = name.trim() === '' ? undefined : name.trim();
          const named = putValue(asPlace(kept), { path: ['name'], value, called: 'the name' });
          return {
            site: { ...kept.site, document: named.document, changed: 'the name' },
            steps: { past: named.past, future: named.future },
          };
        }),
      ),
    duplicate: async (id) => {
      const kept = await shelf.read(id);
      if (kept === undefined) throw new Error('this place is not kept here any more');
      const { document, unread, order } = kept.site;
      const name = nameOf(kept.site);
      const copy = newSite(
        { ...document, name: name === '' ? 'A copy' : `${name}, copy` },
        { unread, order, changed: 'copied' },
      );
      await add(copy);
      await refresh();
      return copy.id;
    },
    takeOut: (ids) =>
      forEach(ids, (id) =>
        change(id, ({ site, steps }) => ({ site: { ...site, deletedAt: now() }, steps })),
      ),
    bringBack: (ids) =>
      forEach(ids, (id) =>
        change(id, ({ site: { deletedAt: _then, ...site }, steps }) => ({ site, steps })),
      ),
    removeForGood: (ids) =>
      forEach(ids, async (id) => {
        await shelf.remove(id);
        for (const entry of journal.entries()) if (entry.siteId === id) journal.strike(entry);
      }),
    loadDemo: async (documents) => {
      const here = (await shelf.list()).filter(
        (record) => !isShared(record) && record.isDemo && record.deletedAt === undefined,
      );
      // The list begins with the newest, so the first of them is a moment newer than the next.
      const loadedAt = now();
      for (const shared of documents.filter((demo) => isSharedKind(kindOf(demo)))) {
        await addShared(shared, { isDemo: true, changed: 'loaded' });
      }
      const missing = documents.filter(
        (demo) =>
          !isSharedKind(kindOf(demo)) &&
          !here.some(
            (site) => kindOf(site.document) === kindOf(demo) && nameOf(site) === textOf(demo.name),
          ),
      );
      for (const [index, document] of missing.entries()) {
        await add(
          newSite(document, { isDemo: true, changed: 'loaded', savedAt: loadedAt - index }),
        );
      }
      await refresh();
    },
    bring: async (sites) => {
      const brought = { added: 0, same: 0, beside: 0, replaced: [] as SharedKind[] };
      for (const { site, revisions } of sites) {
        const here = await shelf.read(site.id);
        if (here === undefined) {
          await add(site, revisions);
          brought.added += 1;
        } else if (
          isSameWritten(here.site, site) &&
          (here.site.deletedAt === undefined || site.deletedAt !== undefined)
        ) {
          brought.same += 1;
        } else if (isShared(site)) {
          await change(site.id, (kept) => putOnTop(kept, site, 'brought in from a file'));
          brought.replaced.push(...SHARED_KINDS.filter((kind) => kind === site.id));
        } else {
          await add({ ...site, id: newId() }, revisions);
          brought.beside += 1;
        }
      }
      await refresh();
      return brought;
    },
    everything: async () => {
      const all = await shelf.list();
      const sites = all.filter(isSite);
      const tests = all.filter(isTest);
      const deleted = [...sites, ...tests].filter(({ deletedAt }) => deletedAt !== undefined);
      const shared = all.filter(isShared);
      return Promise.all(
        [...listed(sites, ''), ...listed(tests, ''), ...deleted, ...shared].map(async (site) => ({
          site,
          revisions: [...(await shelf.revisions(site.id))].reverse(),
        })),
      );
    },
    historyOf: shelf.revisions,
  };
}

function isSite({ document }: SiteRecord): boolean {
  return kindOf(document) === 'site';
}

function isTest({ document }: SiteRecord): boolean {
  return kindOf(document) === 'test';
}

function isShared({ document }: SiteRecord): boolean {
  return isSharedKind(kindOf(document));
}

/** What comes from elsewhere, as one more step on what is here. */
function putOnTop(
  kept: KeptSite,
  { document, unread }: Pick<SiteRecord, 'document' | 'unread'>,
  called: string,
): KeptSite {
  const { past, future } = putWhole(asPlace(kept), { document, unread }, called);
  return { site: { ...kept.site, document, unread, changed: called }, steps: { past, future } };
}

/** The place that earlier versions kept alone. The example as it came is left behind: the demo workshop has it. */
export async function moveFirstPlace(
  first: FirstPlace,
  example: SiteDocument,
  shelf: Shelf,
  now: number,
): Promise<void> {
  const { isExample, document, unread, order } = first;
  if (isExample && isSame(document, example) && Object.keys(unread).length === 0) return;
  await shelf.add({
    id: FIRST_PLACE_ID,
    document,
    unread,
    order,
    isDemo: isExample,
    revision: 1,
    savedAt: now,
    changed: 'moved here',
  });
}

/** What closed tabs left in the journal goes to the shelf, where no one has changed the place since. */
export async function saveLeft(
  shelf: Shelf,
  journal: Journal,
  tabs: Tabs,
  now: () => number,
): Promise<void> {
  const left = journal.entries();
  if (left.length === 0) return;
  const others = await tabs.others();
  for (const entry of left) {
    if (others.has(entry.tab) || entry.tab === tabs.mine) continue;
    const kept = await shelf.read(entry.siteId);
    // Changed since by another tab: the person chooses when the place is opened.
    if (kept === undefined || kept.site.revision !== entry.base) continue;
    const { document, unread, changed } = entry;
    const outcome = await shelf.save({
      site: { ...kept.site, document, unread, changed, savedAt: now() },
      steps: stepsAfter(kept, document),
    });
    if (outcome.kind === 'saved') journal.strike(entry);
  }
}

/** Letters in a box are no step of their own; a changed document is one. */
function stepsAfter({ site, steps }: KeptSite, document: SiteDocument): Steps {
  if (isSame(site.document, document)) return steps;
  const before = { document: site.document, unread: site.unread };
  return { past: [...steps.past, before], future: [] };
}

export function nameOf({ document }: Pick<SiteRecord, 'document'>): string {
  return textOf(document.name);
}

/** The places in the list: those not taken out, the one changed last first, and those that fit all words sought. */
export function listed(sites: readonly SiteRecord[], sought: string): readonly SiteRecord[] {
  const words = folded(sought)
    .split(/\s+/)
    .filter((word) => word !== '');
  return sites
    .filter(({ deletedAt }) => deletedAt === undefined)
    .filter((site) => {
      const text = folded(
        ['name', 'owner', 'place', 'notes'].map((key) => textOf(site.document[key])).join(' '),
      );
      return words.every((word) => text.includes(word));
    })
    .sort((a, b) => b.savedAt - a.savedAt);
}

/** Case and accents play no part when one searches. */
function folded(text: string): string {
  return text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
}

function asPlace({ site, steps }: KeptSite): Place {
  return {
    ...openPlace(site.document, site.id),
    unread: site.unread,
    past: steps.past,
    future: steps.future,
  };
}
