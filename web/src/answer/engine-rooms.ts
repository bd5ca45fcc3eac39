/**
 * The workers: one for answers, which is always free for the next key; one for what comes after, the pressures and the long
 * search for changes, which leaves off when nobody waits for its result any more; and one for files, hired only when a file
 * is touched. None is ended while it works: a new one would be slow for its first seconds.
 */
import type { Glance } from './glance.ts';
import type { SureRoom } from './how-sure.ts';
import type { ScribeWork } from './scribe-worker.ts';
import type { SiteEngineRoom } from './site-answer.ts';
import type { Scribe } from './site-files.ts';
import type { SiteWork } from './site-worker.ts';
import { room } from './worker-room.ts';

// Vite finds a worker by this very form of words, so each stands in full.
const newSiteWorker = (): Worker =>
  new Worker(new URL('./site-worker.ts', import.meta.url), { type: 'module' });
const newScribeWorker = (): Worker =>
  new Worker(new URL('./scribe-worker.ts', import.meta.url), { type: 'module' });

export interface ListRoom {
  readonly glance: (siteText: string) => Promise<Glance>;
}

export interface EngineRooms extends SiteEngineRoom, Scribe, ListRoom, SureRoom {
  /** Hires the worker for answers before the first question, so that its script is there when that comes. */
  readonly getReady: () => void;
}

export function openEngineRooms(): EngineRooms {
  const front = room<SiteWork>(newSiteWorker);
  const back = room<SiteWork>(newSiteWorker);
  const scribe = room<ScribeWork>(newScribeWorker);
  return {
    getReady: front.hire,
    answer: (siteText, depth) =>
      front.ask(async (work) => (await work.answer(siteText, depth)).outcome),
    complete: async (siteText, early) => ({
      ...early,
      ...(await back.ask((work) => work.pressures(siteText, early.answer))),
    }),
    changes: (siteText) => back.ask(async (work) => (await work.changes(siteText)).outcome),
    glance: (siteText) => front.ask(async (work) => (await work.glance(siteText)).outcome),
    howSure: (siteText) => back.ask(async (work) => (await work.howSure(siteText)).outcome),
    dropChanges: () => {
      if (back.isBusy()) back.ask((work) => work.dropChanges()).catch(() => {});
    },
    read: (fileText) => scribe.ask(async (work) => (await work.read(fileText)).outcome),
    write: (siteText) => scribe.ask((work) => work.write(siteText)),
  };
}
