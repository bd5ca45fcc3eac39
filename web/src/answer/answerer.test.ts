import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createStore } from '../state/store.ts';
import type { AnswerState, EngineRoom, Outcome } from './answerer.ts';
import { createAnswerer, NO_ANSWER_YET } from './answerer.ts';

type Reply = Outcome<string, string>;

/** A room in which the test decides when each computation ends. */
function roomByHand() {
  const asked: {
    text: string;
    depth: string;
    finish: (reply: Reply) => void;
    fail: (error: Error) => void;
  }[] = [];
  const completed: { early: string; finish: (whole: string) => void; fail: (e: Error) => void }[] =
    [];
  const searched: { text: string; finish: (changes: string) => void }[] = [];
  const dropChanges = vi.fn();
  const room: EngineRoom<string, string, string> = {
    answer: (text, depth) =>
      new Promise((resolve, reject) => asked.push({ text, depth, finish: resolve, fail: reject })),
    complete: (_text, early) =>
      new Promise((resolve, reject) => completed.push({ early, finish: resolve, fail: reject })),
    changes: (text) => new Promise((resolve) => searched.push({ text, finish: resolve })),
    dropChanges,
  };
  const store = createStore<AnswerState<string, string, string>>(NO_ANSWER_YET);
  return { ...createAnswerer(room, store), asked, completed, searched, dropChanges, store };
}

const good = (value: string): Reply => ({ ok: true, value });
const early = (value: string): Reply => ({ ok: true, value, isEarly: true });
const flush = (): Promise<unknown> => vi.advanceTimersByTimeAsync(0);

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

test('a key is asked about at once; of those typed meanwhile only the newest is', async () => {
  const { ask, asked } = roomByHand();
  for (const text of ['1', '1.', '1.9']) ask(text);
  expect(asked.map(({ text }) => text)).toEqual(['1']);
  asked[0]?.finish(good('answer to 1'));
  await flush();
  expect(asked.map(({ text }) => text)).toEqual(['1', '1.9']);
});

/** A room in which one input has its whole answer and the next one its early answer. */
async function roomWithEarly() {
  const room = roomByHand();
  room.ask('old');
  room.asked[0]?.finish(good('answer to old'));
  await flush();
  room.ask('new');
  room.asked[1]?.finish(early('early answer to new'));
  await flush();
  return room;
}

test('an early answer stands beside the whole one before, until its own is whole', async () => {
  const { completed, store } = await roomWithEarly();
  expect(store.get()).toMatchObject({
    phase: 'early',
    early: 'early answer to new',
    shown: { value: 'answer to old', siteText: 'old' },
  });
  expect(completed[0]?.early).toBe('early answer to new');
  completed[0]?.finish('whole answer to new');
  await flush();
  expect(store.get()).toMatchObject({
    phase: 'answered',
    shown: { value: 'whole answer to new', siteText: 'new' },
  });
  expect(store.get().early).toBeUndefined();
});

test('newer input is asked about instead of what an early answer lacks', async () => {
  const { ask, asked, completed, store } = await roomWithEarly();
  ask('newest');
  completed[0]?.finish('whole answer to new');
  await flush();
  expect(store.get()).toMatchObject({ phase: 'running', shown: { value: 'answer to old' } });
  asked[2]?.finish({ ok: false, problems: ['the lift is below the fall'] });
  await flush();
  expect(store.get()).toMatchObject({ phase: 'refused', shown: { value: 'answer to old' } });
  expect(store.get().early).toBeUndefined();
});

test('an early answer that cannot be made whole is taken back, and the fault is told', async () => {
  const { completed, store } = await roomWithEarly();
  completed[0]?.fail(new Error('the grid is too coarse'));
  await flush();
  expect(store.get()).toMatchObject({
    phase: 'failed',
    failure: 'the grid is too coarse',
    shown: { value: 'answer to old' },
  });
  expect(store.get().early).toBeUndefined();
});

test('the first answer of a place is asked for whole, those after it early', async () => {
  const { asked } = await roomWithEarly();
  expect(asked.map(({ depth }) => depth)).toEqual(['whole', 'early']);
});

test('the newest input wins: an answer to an older one is never shown', async () => {
  const { ask, asked, store } = roomByHand();
  ask('old');
  await vi.advanceTimersByTimeAsync(100);
  ask('new');
  await vi.advanceTimersByTimeAsync(100);
  asked[0]?.finish(good('answer to old'));
  await flush();
  expect(store.get().shown).toBeUndefined();
  asked[1]?.finish(good('answer to new'));
  await flush();
  expect(store.get().shown?.value).toBe('answer to new');
  expect(asked).toHaveLength(2);
});

test('input that is refused keeps the last good answer and says why', async () => {
  const { ask, asked, store } = roomByHand();
  ask('good');
  await vi.advanceTimersByTimeAsync(100);
  asked[0]?.finish(good('runs'));
  await flush();
  ask('bad');
  await vi.advanceTimersByTimeAsync(100);
  asked[1]?.finish({ ok: false, problems: ['the lift is below the fall'] });
  await flush();
  expect(store.get()).toMatchObject({
    phase: 'refused',
    problems: ['the lift is below the fall'],
    shown: { value: 'runs', siteText: 'good' },
  });
});

test('the verdict comes before what would change it', async () => {
  const { ask, asked, searched, store } = roomByHand();
  ask('site');
  await vi.advanceTimersByTimeAsync(100);
  asked[0]?.finish(good('runs'));
  await flush();
  expect(store.get()).toMatchObject({ phase: 'answered', areChangesRunning: true });
  await vi.advanceTimersByTimeAsync(300);
  searched[0]?.finish('changes');
  await flush();
  expect(store.get()).toMatchObject({ changes: 'changes', areChangesRunning: false });
});

test('new input stops the search for changes of the old one, and its late result is not shown', async () => {
  const { ask, asked, searched, dropChanges, store } = roomByHand();
  ask('old');
  await vi.advanceTimersByTimeAsync(100);
  asked[0]?.finish(good('runs'));
  await vi.advanceTimersByTimeAsync(300);
  dropChanges.mockClear();
  ask('new');
  expect(dropChanges).toHaveBeenCalledTimes(1);
  searched[0]?.finish('changes of old');
  await flush();
  expect(store.get().changes).toBeUndefined();
});

test('a long run says so, a short one does not', async () => {
  const { ask, asked, store } = roomByHand();
  ask('short');
  await vi.advanceTimersByTimeAsync(100);
  asked[0]?.finish(good('runs'));
  await vi.advanceTimersByTimeAsync(1000);
  expect(store.get().phase).toBe('answered');
  ask('long');
  await vi.advanceTimersByTimeAsync(500);
  expect(store.get().phase).toBe('slow');
});

test('a computation that breaks is told, and the next input is computed as ever', async () => {
  const { ask, asked, store } = roomByHand();
  ask('breaks');
  await vi.advanceTimersByTimeAsync(100);
  asked[0]?.fail(new Error('waveSpeed must be above zero'));
  await flush();
  expect(store.get()).toMatchObject({ phase: 'failed', failure: 'waveSpeed must be above zero' });
  ask('fine');
  await vi.advanceTimersByTimeAsync(100);
  asked[1]?.finish(good('runs'));
  await flush();
  expect(store.get().phase).toBe('answered');
  expect(store.get().failure).toBeUndefined();
});

test('another place does not begin with the answer of the one before, however late that comes', async () => {
  const { ask, forget, asked, store } = roomByHand();
  ask('first place');
  await vi.advanceTimersByTimeAsync(100);
  forget();
  ask('second place');
  await vi.advanceTimersByTimeAsync(100);
  asked[0]?.finish(good('answer to the first'));
  await flush();
  expect(store.get().shown).toBeUndefined();
  asked[1]?.finish({ ok: false, problems: ['the fall is missing'] });
  await flush();
  expect(store.get()).toMatchObject({ phase: 'refused' });
  expect(store.get().shown).toBeUndefined();
});

test('the search for changes waits until the keys rest', async () => {
  const { ask, asked, searched } = roomByHand();
  ask('first');
  await vi.advanceTimersByTimeAsync(100);
  asked[0]?.finish(good('runs'));
  await vi.advanceTimersByTimeAsync(100);
  ask('second');
  await vi.advanceTimersByTimeAsync(100);
  asked[1]?.finish(good('runs'));
  await vi.advanceTimersByTimeAsync(300);
  expect(searched.map(({ text }) => text)).toEqual(['second']);
});
