/**
 * Keeps the open place: each change goes into the journal at once and to the shelf when the keys rest.
 *
 * The keeper knows the revision that the page stands on. When another tab has saved a newer one, it is taken in if this
 * tab holds nothing unsaved. If both hold changes, both are kept and saving waits until the person has chosen.
 */
import type { Journal, JournalEntry } from './journal.ts';
import type { Place, Remembered } from './place.ts';
import { putWhole } from './place.ts';
import type { Shelf } from './shelf.ts';
import type { KeptSite, SiteRecord, Steps, Written } from './site-record.ts';
import { isSame, isSameWritten } from './site-record.ts';
import type { Store } from './store.ts';
import type { Tabs } from './tabs.ts';

export type Saved =
  | { readonly kind: 'saved' }
  | { readonly kind: 'toChoose' }
  | { readonly kind: 'notSaved'; readonly why: string };

/** Whether the place that was asked for stands on the page. */
export type Standing =
  | { readonly kind: 'none' }
  | { readonly kind: 'opening' | 'open' | 'missing' | 'deleted'; readonly id: string }
  | { readonly kind: 'failed'; readonly id: string; readonly why: string };

/** Two tabs changed one place: what the other saved, and what both began from when that is known. */
export interface Conflict {
  readonly theirs: KeptSite;
  readonly base: Written | undefined;
}

export interface KeeperStores {
  readonly place: Store<Place>;
  readonly saved: Store<Saved>;
  readonly standing: Store<Standing>;
  readonly conflict: Store<Conflict | undefined>;
}

export interface Keeper {
  readonly open: (id: string) => Promise<void>;
  /** Saves what is left and lets the place go. */
  readonly close: () => Promise<void>;
  readonly flush: () => Promise<void>;
  /** Looks whether the shelf holds a newer revision, when a message may have been missed. */
  readonly look: () => Promise<void>;
  /** The person has chosen between two states; the one of this tab stays in the history. */
  readonly settle: (chosen: Remembered) => Promise<void>;
}

/** Judgement: the pause between two words. Until then the journal has it. */
const REST = 300;

export function createKeeper(
  { place, saved, standing, conflict }: KeeperStores,
  {
    shelf,
    journal,
    tabs,
    now,
    rest = REST,
  }: {
    readonly shelf: Shelf;
    readonly journal: Journal;
    readonly tabs: Tabs;
    readonly now: () => number;
    readonly rest?: number;
  },
): Keeper {
  /** What the shelf holds of the open place, as far as this tab knows. */
  let site: SiteRecord | undefined;
  let isTaking = false;
  let isSaving: Promise<void> | undefined;
  let resting: ReturnType<typeof setTimeout> | undefined;
  /** Set when a state that was not chosen must go into the history with the next save. */
  let alsoKeep: SiteRecord | undefined;

  const written = (): SiteRecord | undefined => {
    if (site === undefined) return undefined;
    const { document, unread, order, lastChanged } = place.get();
    const changed =
      document === site.document
        ? 'text that cannot be read yet'
        : (lastChanged ?? 'a step back or forth');
    return { ...site, document, unread, order, changed };
  };

  const isUnsaved = (): boolean => {
    const { document, unread } = place.get();
    return site !== undefined && (document !== site.document || unread !== site.unread);
  };

  const entryNow = (mine: SiteRecord): JournalEntry => ({
    tab: tabs.mine,
    siteId: mine.id,
    base: mine.revision,
    changed: mine.changed,
    document: mine.document,
    unread: mine.unread,
  });

  const strike = (): void => {
    if (site !== undefined) journal.strike({ tab: tabs.mine, siteId: site.id });
  };

  /** The page shows what the shelf holds. Its own answer goes stale, it is not forgotten. */
  const show = ({ site: kept, steps }: KeptSite, isOtherPlace: boolean): void => {
    site = kept;
    isTaking = true;
    place.update((state) => placeOf({ site: kept, steps }, state.opening + (isOtherPlace ? 1 : 0)));
    isTaking = false;
    strike();
    saved.update(() => ({ kind: 'saved' }));
    standing.update(() => ({
      kind: kept.deletedAt === undefined ? 'open' : 'deleted',
      id: kept.id,
    }));
  };

  const takeNewer = (theirs: KeptSite): void => {
    const mine = written();
    if (site === undefined || mine === undefined) return;
    const base = conflict.get()?.base ?? site;
    if (!isUnsaved() && alsoKeep === undefined) {
      conflict.update(() => undefined);
      show(theirs, false);
    } else if (isSameWritten(theirs.site, mine)) {
      conflict.update(() => undefined);
      show(theirs, false);
    } else if (isSameWritten(theirs.site, base)) {
      // Only its place in the list was changed, such as deleted and brought back: nothing written is at stake.
      conflict.update(() => undefined);
      site = theirs.site;
      journal.write(entryNow({ ...mine, revision: theirs.site.revision }));
      standing.update(() => ({
        kind: theirs.site.deletedAt === undefined ? 'open' : 'deleted',
        id: theirs.site.id,
      }));
      schedule();
    } else {
      conflict.update(() => ({ theirs, base }));
      saved.update(() => ({ kind: 'toChoose' }));
    }
  };

  const schedule = (): void => {
    clearTimeout(resting);
    resting = setTimeout(() => void flush(), rest);
  };

  const save = async (): Promise<void> => {
    const mine = written();
    if (mine === undefined || conflict.get() !== undefined) return;
    if (!isUnsaved() && alsoKeep === undefined) return strike();
    const { past, future } = place.get();
    const steps: Steps = { past, future };
    const kept = alsoKeep;
    try {
      const outcome = await shelf.save({
        site: { ...mine, savedAt: now() },
        steps,
        ...(kept === undefined ? {} : { alsoKeep: kept }),
      });
      if (outcome.kind === 'newer') return takeNewer(outcome.kept);
      if (outcome.kind === 'gone') {
        throw new Error('it was deleted for good in another tab');
      }
      if (alsoKeep === kept) alsoKeep = undefined;
      site = outcome.site;
      tabs.tellSaved({ siteId: site.id, revision: site.revision });
      if (isUnsaved()) {
        // Typed while the shelf was writing: the journal goes on from the new revision.
        const newer = written();
        if (newer !== undefined) journal.write(entryNow(newer));
        schedule();
      } else strike();
      saved.update((state) => (state.kind === 'saved' ? state : { kind: 'saved' }));
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      saved.update(() => ({ kind: 'notSaved', why }));
    }
  };

  const flush = async (): Promise<void> => {
    clearTimeout(resting);
    while (isSaving !== undefined) await isSaving;
    isSaving = save().finally(() => {
      isSaving = undefined;
    });
    await isSaving;
  };

  place.subscribe(() => {
    if (isTaking || site === undefined || !isUnsaved()) return;
    const mine = written();
    if (mine === undefined) return;
    // Against a newer revision the journal keeps the one that this tab began from.
    journal.write(entryNow(mine));
    if (conflict.get() === undefined) schedule();
  });

  const look = async (): Promise<void> => {
    if (site === undefined) return;
    while (isSaving !== undefined) await isSaving;
    const before = site;
    const kept = await shelf.read(before.id);
    if (site !== before || kept === undefined) return;
    if (kept.site.revision > before.revision) takeNewer(kept);
  };

  tabs.onSaved(({ siteId, revision }) => {
    if (siteId === site?.id && revision > site.revision) void look();
  });

  /** What a closed tab left in the journal comes back as a change of this one. */
  const takeLeft = async (kept: KeptSite): Promise<void> => {
    const left = journal.entries().filter((entry) => entry.siteId === kept.site.id);
    if (left.length === 0) return;
    const others = await tabs.others();
    const mine = left.find(({ tab }) => !others.has(tab));
    if (mine === undefined || site?.id !== kept.site.id) return;
    if (isSameWritten(mine, kept.site)) return journal.strike(mine);
    place.update((state) =>
      isSame(state.document, mine.document)
        ? { ...state, unread: mine.unread }
        : putWhole(state, mine, mine.changed),
    );
    // Written down by this tab before the other's entry goes.
    if (mine.base !== kept.site.revision) {
      const began = (await shelf.revisions(kept.site.id)).find((r) => r.revision === mine.base);
      const now = written();
      if (now !== undefined) journal.write(entryNow({ ...now, revision: mine.base }));
      clearTimeout(resting);
      conflict.update(() => ({ theirs: kept, base: began }));
      saved.update(() => ({ kind: 'toChoose' }));
    } else await flush();
    if (mine.tab !== tabs.mine && saved.get().kind !== 'notSaved') journal.strike(mine);
  };

  let asked = 0;
  const open = async (id: string): Promise<void> => {
    asked += 1;
    const mine = asked;
    standing.update(() => ({ kind: 'opening', id }));
    await flush();
    let kept: KeptSite | undefined;
    try {
      kept = await shelf.read(id);
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      if (mine === asked) standing.update(() => ({ kind: 'failed', id, why }));
      return;
    }
    if (mine !== asked) return;
    site = undefined;
    alsoKeep = undefined;
    conflict.update(() => undefined);
    if (kept === undefined) {
      standing.update(() => ({ kind: 'missing', id }));
      return;
    }
    const isLeft = journal.entries().some((entry) => entry.siteId === id);
    site = kept.site;
    if (!isLeft) return show(kept, true);
    isTaking = true;
    place.update((state) => placeOf(kept, state.opening + 1));
    isTaking = false;
    saved.update(() => ({ kind: 'saved' }));
    await takeLeft(kept);
    if (mine === asked) {
      standing.update(() => ({ kind: kept.site.deletedAt === undefined ? 'open' : 'deleted', id }));
    }
  };

  return {
    open,
    flush,
    look,
    close: async () => {
      asked += 1;
      standing.update(() => ({ kind: 'none' }));
      await flush();
      if (standing.get().kind !== 'none') return;
      site = undefined;
      conflict.update(() => undefined);
    },
    settle: async (chosen) => {
      const now = conflict.get();
      const mine = written();
      if (now === undefined || mine === undefined) return;
      const called = 'a choice between two tabs';
      alsoKeep = { ...mine, changed: 'this tab, before the choice' };
      site = now.theirs.site;
      conflict.update(() => undefined);
      place.update((state) => putWhole(state, chosen, called));
      await flush();
    },
  };
}

function placeOf({ site, steps }: KeptSite, opening: number): Place {
  const { id, document, unread, isDemo, order } = site;
  return { id, document, unread, isDemo, order, opening, past: steps.past, future: steps.future };
}
