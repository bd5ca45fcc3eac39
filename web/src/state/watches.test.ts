import { expect, test } from 'vitest';
import type { KeyedKeep } from './journal.ts';
import { createWatches, runsInside, watchName } from './watches.ts';

function keepOf(kept: Map<string, string>): KeyedKeep {
  return {
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, value) => void kept.set(key, value),
    removeItem: (key) => void kept.delete(key),
    keys: () => [...kept.keys()],
  };
}

const HOUR = 3600 * 1000;
const FIRST = watchName('larkrise', 'source.gauging[0]');

test('a watch goes on when the page comes back, until it is stopped or forgotten', () => {
  const kept = new Map<string, string>();
  createWatches(keepOf(kept), () => 0).start(FIRST, 5);
  const back = createWatches(keepOf(kept), () => 3 * HOUR);
  expect(back.running.get()).toEqual({ [FIRST]: 5 });
  expect(runsInside(back.running.get(), watchName('larkrise', 'source.gauging'))).toBe(true);
  expect(runsInside(back.running.get(), watchName('high-fold', 'source.gauging'))).toBe(false);
  expect(createWatches(keepOf(new Map(kept)), () => 25 * HOUR).running.get()).toEqual({});
  back.stop(FIRST);
  expect(kept.size).toBe(0);
});

test('a watch keeps to its measurement when one before it is taken out', () => {
  const kept = new Map<string, string>();
  const watches = createWatches(keepOf(kept), () => 100);
  const list = watchName('larkrise', 'source.gauging');
  watches.start(`${list}[0]`, 1);
  watches.start(`${list}[2]`, 2);
  watches.start(watchName('high-fold', 'source.gauging[0]'), 3);
  watches.takenOut(list, 0);
  expect(watches.running.get()).toEqual({
    [`${list}[1]`]: 2,
    [watchName('high-fold', 'source.gauging[0]')]: 3,
  });
  expect(createWatches(keepOf(kept), () => 100).running.get()).toEqual(watches.running.get());
});

test('where nothing can be kept a watch runs as long as its page', () => {
  const refuse = (): never => {
    throw new Error('forbidden');
  };
  const watches = createWatches(
    { getItem: refuse, setItem: refuse, removeItem: refuse, keys: refuse },
    () => 0,
  );
  watches.start(FIRST, 1);
  expect(watches.running.get()).toEqual({ [FIRST]: 1 });
});
