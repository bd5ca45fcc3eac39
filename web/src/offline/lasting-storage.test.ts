import { expect, test } from 'vitest';
import { emptyDocument } from '../state/record-kind.ts';
import type { SiteRecord } from '../state/site-record.ts';
import { createStore } from '../state/store.ts';
import type { WorkshopState } from '../state/workshop.ts';
import { askToLast } from './lasting-storage.ts';

const DAY = 24 * 3_600_000;
const SITE: SiteRecord = {
  id: 'tarn',
  document: emptyDocument('site'),
  unread: {},
  order: 'answerFirst',
  isDemo: false,
  revision: 1,
  savedAt: 0,
  changed: 'begun',
};

/** A browser that refuses until it is asked `yesAfter` times. */
function browser(yesAfter = 1) {
  const kept = new Map<string, string>();
  const asked = { times: 0 };
  return {
    asked,
    keep: {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => void kept.set(key, value),
    },
    storage: {
      persisted: async () => asked.times >= yesAfter,
      persist: async () => {
        asked.times += 1;
        return asked.times >= yesAfter;
      },
    },
  };
}

/** One visit at a time of day; the list is read a moment after the page opened. */
async function visit(
  { keep, storage }: ReturnType<typeof browser>,
  sites: readonly SiteRecord[],
  time = 10 * DAY,
): Promise<void> {
  const workshop = createStore<WorkshopState>({ phase: 'opening' });
  askToLast(workshop, keep, storage, () => time);
  workshop.update(() => ({ phase: 'open', sites, tests: [], shared: {} }));
  workshop.update(() => ({ phase: 'open', sites: [...sites], tests: [], shared: {} }));
  await new Promise((resolve) => setTimeout(resolve));
}

test('nothing is asked while there is nothing, or only the demo as it came', async () => {
  const mine = browser();
  await visit(mine, []);
  await visit(mine, [{ ...SITE, isDemo: true }]);
  expect(mine.asked.times).toBe(0);
});

test.each([
  ['a place of one’s own', SITE],
  ['a place of the demo that was changed', { ...SITE, isDemo: true, revision: 2 }],
])('%s makes the page ask once', async (_what, site) => {
  const mine = browser();
  await visit(mine, [site]);
  expect(mine.asked.times).toBe(1);
  await visit(mine, [site], 100 * DAY);
  expect(mine.asked.times).toBe(1);
});

test('after a refusal it asks again a week later, not at the next visit', async () => {
  const mine = browser(5);
  await visit(mine, [SITE], 10 * DAY);
  await visit(mine, [SITE], 11 * DAY);
  expect(mine.asked.times).toBe(1);
  await visit(mine, [SITE], 18 * DAY);
  expect(mine.asked.times).toBe(2);
});

test('a storage that is forbidden breaks nothing', async () => {
  const mine = browser();
  const keep = {
    getItem: () => null,
    setItem: () => {
      throw new Error('forbidden');
    },
  };
  await visit({ ...mine, keep }, [SITE]);
  expect(mine.asked.times).toBe(0);
});
