/**
 * Where places are kept. Two implementations: the browser's database, and plain memory for browsers that forbid one.
 *
 * `save` names the revision that the change began from. When the shelf holds another one, it changes nothing and hands
 * that one back: whoever saves decides with the person what becomes of both.
 */
import type { KeptSite, Revision, SiteRecord, Steps } from './site-record.ts';
import { isSameWritten, revisionOf } from './site-record.ts';

export type SaveOutcome =
  | { readonly kind: 'saved'; readonly site: SiteRecord }
  /** Somebody else saved in between. */
  | { readonly kind: 'newer'; readonly kept: KeptSite }
  /** It is not on the shelf any more. */
  | { readonly kind: 'gone' };

export interface Change {
  /** `revision` in it is the one that the change began from. */
  readonly site: SiteRecord;
  readonly steps: Steps;
  /** A state that was not chosen but stays in the history, before this one. */
  readonly alsoKeep?: SiteRecord;
}

export interface Shelf {
  readonly list: () => Promise<readonly SiteRecord[]>;
  readonly read: (id: string) => Promise<KeptSite | undefined>;
  /** False, and nothing changed, when one of that id is there already. */
  readonly add: (site: SiteRecord, history?: readonly Revision[]) => Promise<boolean>;
  readonly save: (change: Change) => Promise<SaveOutcome>;
  /** Newest first. */
  readonly revisions: (id: string) => Promise<readonly Revision[]>;
  readonly remove: (id: string) => Promise<void>;
}

/** What a save writes: pure, so that both shelves do the same. */
export function savedFrom(
  current: SiteRecord,
  { site, alsoKeep }: Change,
): { readonly site: SiteRecord; readonly revisions: readonly Revision[] } {
  const kept =
    alsoKeep === undefined
      ? []
      : [revisionOf({ ...alsoKeep, id: site.id, revision: current.revision + 1 })];
  const next = { ...site, revision: current.revision + 1 + kept.length };
  // A told fault or a new place in the list is no new state of what was written.
  const isNew = kept.length > 0 || !isSameWritten(current, next);
  return { site: next, revisions: isNew ? [...kept, revisionOf(next)] : kept };
}

/** A history that comes with an added place, and the place itself as its newest entry. */
export function historyWith(site: SiteRecord, history: readonly Revision[]): readonly Revision[] {
  const before = history
    .filter((entry) => entry.revision < site.revision)
    .map((entry) => ({ ...entry, siteId: site.id }));
  return [...before, revisionOf(site)];
}
