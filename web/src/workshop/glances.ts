/**
 * Answers beside the places in the list, worked out one after another while the list is looked at. What is known is kept
 * for as long as the page is open: a place that was not changed is not asked about again.
 */
import type { Glance } from '../answer/glance.ts';
import { withoutEmptyPipes } from '../state/lines.ts';
import type { SiteDocument } from '../state/site-document.ts';
import type { SiteRecord } from '../state/site-record.ts';
import type { Store } from '../state/store.ts';
import { createStore } from '../state/store.ts';

/** By the text that was asked about. */
export type KnownGlances = ReadonlyMap<string, Glance>;

export interface Glances {
  readonly known: Store<KnownGlances>;
  /** Works through these places; gives what stops it. A later call takes the place of an earlier one. */
  readonly workThrough: (sites: readonly Pick<SiteRecord, 'document'>[]) => () => void;
}

/** What an answer depends on: two places with the same text have the same answer. */
export function askedText(document: SiteDocument): string {
  const { name: _name, owner: _owner, place: _place, notes: _notes, ...asked } = document;
  return JSON.stringify(withoutEmptyPipes(asked));
}

export function createGlances(ask: (siteText: string) => Promise<Glance>): Glances {
  const known = createStore<KnownGlances>(new Map());
  let current = 0;
  const workThrough = (sites: readonly Pick<SiteRecord, 'document'>[]): (() => void) => {
    current += 1;
    const mine = current;
    void (async () => {
      for (const { document } of sites) {
        const text = askedText(document);
        if (known.get().has(text)) continue;
        // A place that breaks the computation has no mark in the list; its own sheet says what broke.
        const glance = await ask(text).catch(() => undefined);
        if (glance !== undefined) known.update((all) => new Map(all).set(text, glance));
        if (mine !== current) return;
      }
    })();
    return () => {
      if (mine === current) current += 1;
    };
  };
  return { known, workThrough };
}
