import { expect, test } from 'vitest';
import { createStore } from '../state/store.ts';
import { createHowSure, type HowSure } from './how-sure.ts';
import type { SiteAnswer, SiteAnswerState } from './site-answer.ts';

const SURE: HowSure = { low: 1, high: 2, words: { metric: ['sure'], us: ['sure'] } };

function answered(siteText: string): SiteAnswerState {
  return {
    phase: 'answered',
    // Only that there is one plays a part here.
    shown: { siteText, value: {} as SiteAnswer },
    changes: { changes: [], alternatives: [], materials: [], sentences: { metric: [], us: [] } },
    areChangesRunning: false,
    problems: [],
  };
}

const settled = (): Promise<unknown> => new Promise((resolve) => setTimeout(resolve, 0));

test('it is asked for when the answers rest, once for each input', async () => {
  const asked: string[] = [];
  const answer = createStore<SiteAnswerState>({ ...answered('a'), areChangesRunning: true });
  const sure = createHowSure(answer, {
    howSure: async (text) => {
      asked.push(text);
      return SURE;
    },
  });
  answer.update((state) => ({ ...state, problems: [] }));
  expect(asked).toEqual([]);
  answer.update(() => answered('a'));
  answer.update((state) => ({ ...state, problems: [] }));
  await settled();
  expect(asked).toEqual(['a']);
  expect(sure.get()).toEqual({ siteText: 'a', value: SURE });
});

test('what was left off for a key is asked for again, and an old place leaves nothing behind', async () => {
  const asked: string[] = [];
  const answer = createStore<SiteAnswerState>(answered('a'));
  const sure = createHowSure(answer, {
    howSure: async (text) => {
      asked.push(text);
      return asked.length === 1 ? undefined : SURE;
    },
  });
  answer.update((state) => ({ ...state, problems: [] }));
  await settled();
  answer.update((state) => ({ ...state, phase: 'running' }));
  answer.update(() => answered('a'));
  await settled();
  expect(asked).toEqual(['a', 'a']);
  expect(sure.get()?.siteText).toBe('a');
  answer.update(() => ({ phase: 'waiting', areChangesRunning: false, problems: [] }));
  expect(sure.get()).toBeUndefined();
});
