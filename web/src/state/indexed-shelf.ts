/**
 * Places kept in the browser's own database. The light records, the steps of undo and the history lie apart, so that the
 * list of places never loads a history.
 */
import type { DBSchema, IDBPDatabase } from 'idb';
import { openDB } from 'idb';
import type { Shelf } from './shelf.ts';
import { historyWith, savedFrom } from './shelf.ts';
import type { Revision, SiteRecord, Steps } from './site-record.ts';
import { NO_STEPS } from './site-record.ts';

interface Workshop extends DBSchema {
  sites: { key: string; value: SiteRecord };
  steps: { key: string; value: Steps };
  revisions: { key: [string, number]; value: Revision };
}

const STORES = ['sites', 'steps', 'revisions'] as const;

export async function openIndexedShelf(name = 'fallwright'): Promise<Shelf> {
  /** Why the database has let go of this page. */
  let closedBecause: string | undefined;
  const opening = openDB<Workshop>(name, 1, {
    upgrade: (made) => {
      made.createObjectStore('sites', { keyPath: 'id' });
      made.createObjectStore('steps');
      made.createObjectStore('revisions', { keyPath: ['siteId', 'revision'] });
    },
    // A newer page wants to change the layout: this one lets go at once, so that nothing is ever blocked for long, and says
    // so when it next reads or saves. What is typed until then is in the journal, and the page finds it there again.
    blocking: () => {
      closedBecause =
        'a newer Fallwright in another tab took the places over; load this page again';
      void opening.then((database) => database.close());
    },
    terminated: () => {
      closedBecause = 'the browser closed its storage; load this page again';
    },
  });
  const database = await opening.catch((error: unknown) => {
    if (error instanceof DOMException && error.name === 'VersionError') {
      throw new Error('the places here were kept by a newer Fallwright; load this page again');
    }
    throw error;
  });
  return shelfIn(() => {
    if (closedBecause !== undefined) throw new Error(closedBecause);
    return database;
  });
}

/** `open` gives the database, or throws why it is not to be had. */
function shelfIn(open: () => IDBPDatabase<Workshop>): Shelf {
  return {
    list: async () => open().getAll('sites'),
    read: async (id) => {
      const reading = open().transaction(['sites', 'steps']);
      const [site, steps] = await Promise.all([
        reading.objectStore('sites').get(id),
        reading.objectStore('steps').get(id),
      ]);
      return site === undefined ? undefined : { site, steps: steps ?? NO_STEPS };
    },
    add: async (site, history = []) => {
      const writing = open().transaction(STORES, 'readwrite');
      const sites = writing.objectStore('sites');
      if ((await sites.get(site.id)) !== undefined) return false;
      const revisions = writing.objectStore('revisions');
      const entries = historyWith(site, history);
      await Promise.all([sites.put(site), ...entries.map((entry) => revisions.put(entry))]);
      await writing.done;
      return true;
    },
    save: async (change) => {
      const { id, revision } = change.site;
      const writing = open().transaction(STORES, 'readwrite');
      const sites = writing.objectStore('sites');
      const steps = writing.objectStore('steps');
      const current = await sites.get(id);
      if (current === undefined) return { kind: 'gone' };
      if (current.revision !== revision) {
        const kept = { site: current, steps: (await steps.get(id)) ?? NO_STEPS };
        return { kind: 'newer', kept };
      }
      const { site, revisions } = savedFrom(current, change);
      await Promise.all([
        sites.put(site),
        steps.put(change.steps, id),
        ...revisions.map((entry) => writing.objectStore('revisions').put(entry)),
      ]);
      await writing.done;
      return { kind: 'saved', site };
    },
    revisions: async (id) => {
      const all = await open().getAll('revisions', historyOf(id));
      return all.reverse();
    },
    remove: async (id) => {
      const writing = open().transaction(STORES, 'readwrite');
      await Promise.all([
        writing.objectStore('sites').delete(id),
        writing.objectStore('steps').delete(id),
        writing.objectStore('revisions').delete(historyOf(id)),
      ]);
      await writing.done;
    },
  };
}

function historyOf(id: string): IDBKeyRange {
  return IDBKeyRange.bound([id, 0], [id, Number.POSITIVE_INFINITY]);
}
