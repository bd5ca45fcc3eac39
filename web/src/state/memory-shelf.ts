/** Places kept in memory alone: for a browser that forbids storage. They last as long as the page. */
import type { Shelf } from './shelf.ts';
import { historyWith, savedFrom } from './shelf.ts';
import type { KeptSite, Revision } from './site-record.ts';
import { NO_STEPS } from './site-record.ts';

export function createMemoryShelf(): Shelf {
  const sites = new Map<string, KeptSite>();
  const revisions = new Map<string, readonly Revision[]>();
  return {
    list: async () => [...sites.values()].map(({ site }) => site),
    read: async (id) => sites.get(id),
    add: async (site, history = []) => {
      if (sites.has(site.id)) return false;
      sites.set(site.id, { site, steps: NO_STEPS });
      revisions.set(site.id, historyWith(site, history));
      return true;
    },
    save: async (change) => {
      const { id, revision } = change.site;
      const kept = sites.get(id);
      if (kept === undefined) return { kind: 'gone' };
      if (kept.site.revision !== revision) return { kind: 'newer', kept };
      const { site, revisions: added } = savedFrom(kept.site, change);
      sites.set(id, { site, steps: change.steps });
      revisions.set(id, [...(revisions.get(id) ?? []), ...added]);
      return { kind: 'saved', site };
    },
    revisions: async (id) => [...(revisions.get(id) ?? [])].reverse(),
    remove: async (id) => {
      sites.delete(id);
      revisions.delete(id);
    },
  };
}
