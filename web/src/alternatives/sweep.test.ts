import { expect, test } from 'vitest';
import { createStore } from '../state/store.ts';
import type { Job, Pair } from './pairs.ts';
import { createSweep, NOTHING_RUN } from './sweep.ts';
import type { KeyedResult } from './sweep-pairs.ts';

const pair = (row: string, column: string): Pair => ({
  key: `${row} ${column}`,
  row: { key: row, name: row, details: [], changes: [], site: {}, isOnSheet: false },
  column: { key: column, entry: column, name: column, detail: '', isOnSheet: false },
});

const PAIRS = ['a', 'b'].flatMap((row) => ['x', 'y'].map((column) => pair(row, column)));

/** A room that runs one pair for each word of the test, and takes one second for each. */
function roomByHand() {
  let clock = 0;
  let waiting: string[] = [];
  const begun: Job[][] = [];
  const asked: { go: () => void; fail: (why: string) => void }[] = [];
  const store = createStore(NOTHING_RUN);
  const sweep = createSweep(
    {
      begin: async (jobs) => {
        begun.push([...jobs]);
        waiting = jobs.flatMap(({ rams }) => rams.map(({ key }) => key));
      },
      next: () =>
        new Promise((resolve, reject) => {
          const key = waiting.shift();
          const isOver = waiting.length === 0;
          asked.push({
            go: () => {
              clock += 1000;
              const results: KeyedResult[] =
                key === undefined ? [] : [[key, { kind: 'refused', message: key }]];
              resolve({ results, isOver });
            },
            fail: (why) => reject(new Error(why)),
          });
        }),
    },
    store,
    () => clock,
  );
  const turn = async (act: (question: (typeof asked)[number]) => void): Promise<void> => {
    await settled();
    const question = asked.shift();
    if (question === undefined) throw new Error('nothing was asked of the room');
    act(question);
    await settled();
  };
  return { sweep, store, begun, asked, turn };
}

/** Lets everything that waits on settled promises happen. */
const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

test('counts what is done and tells how long the rest will take', async () => {
  const { sweep, store, turn } = roomByHand();
  sweep.want(PAIRS);
  expect(store.get()).toMatchObject({ phase: 'running', wanted: 4, done: 0 });
  await turn(({ go }) => go());
  expect(store.get()).toMatchObject({ done: 1, elapsed: 1, left: 3 });
  for (let i = 0; i < 3; i++) await turn(({ go }) => go());
  expect(store.get()).toMatchObject({ phase: 'done', done: 4 });
  expect(store.get().left).toBeUndefined();
});

test('a stop keeps what is done and what was under way, and going on runs only the rest', async () => {
  const { sweep, store, begun, asked, turn } = roomByHand();
  sweep.want(PAIRS);
  await turn(({ go }) => go());
  sweep.stop();
  await turn(({ go }) => go());
  expect(store.get()).toMatchObject({ phase: 'stopped', done: 2 });
  expect(asked).toEqual([]);
  sweep.goOn();
  await settled();
  expect(begun[1]?.flatMap(({ rams }) => rams.map(({ key }) => key))).toEqual(['b x', 'b y']);
});

test('new wishes take the place of old ones; a late result of those is kept and not counted among them', async () => {
  const { sweep, store, begun, turn } = roomByHand();
  sweep.want(PAIRS);
  await turn(({ go }) => go());
  sweep.want([...PAIRS.slice(0, 1), pair('c', 'x')]);
  expect(store.get()).toMatchObject({ wanted: 2, done: 1, phase: 'running' });
  await turn(({ go }) => go());
  await turn(({ go }) => go());
  expect(begun.at(-1)?.map(({ driveName }) => driveName)).toEqual(['c']);
  expect(store.get()).toMatchObject({ wanted: 2, done: 2, phase: 'done' });
  expect(store.get().results.has('a y')).toBe(true);
});

test('wishes that are all known need no run', async () => {
  const { sweep, store, begun, turn } = roomByHand();
  sweep.want(PAIRS.slice(0, 1));
  await turn(({ go }) => go());
  sweep.want([]);
  sweep.want(PAIRS.slice(0, 1));
  expect(store.get()).toMatchObject({ phase: 'done', done: 1 });
  expect(begun).toHaveLength(1);
});

test('a room that breaks is told, and the rest can be tried again', async () => {
  const { sweep, store, begun, turn } = roomByHand();
  sweep.want(PAIRS);
  await turn(({ go }) => go());
  await turn(({ fail }) => fail('out of memory'));
  expect(store.get()).toMatchObject({ phase: 'failed', failure: 'out of memory', done: 1 });
  sweep.goOn();
  await settled();
  expect(begun[1]?.flatMap(({ rams }) => rams)).toHaveLength(3);
  expect(store.get().failure).toBeUndefined();
});
