import { expect, test } from 'vitest';
import type { Saved } from './keep-place.ts';
import { keepPlace, readPlace } from './keep-place.ts';
import { keepUnread, openPlace, putValue, replacePlace, tellFault, undo } from './place.ts';
import { createSettings, readSettings } from './settings.ts';
import { createStore } from './store.ts';

const larkrise = { fallwright: 'site@1', name: 'Larkrise spring', fall: '1.9 m', lift: '12 m' };

function keepInMemory() {
  const kept = new Map<string, string>();
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
  };
}

test('text that cannot be read never reaches the document', () => {
  const place = keepUnread(openPlace(larkrise), ['fall'], '12');
  expect(place.document).toBe(larkrise);
  expect(place.unread).toEqual({ fall: { text: '12' } });
});

test('a fault is told on leaving the field, and goes when the text can be read', () => {
  const left = tellFault(keepUnread(openPlace(larkrise), ['fall'], '12'), ['fall'], '12 what?');
  expect(left.unread.fall?.fault).toBe('12 what?');
  const mended = putValue(left, { path: ['fall'], value: '12 ft', called: 'the fall' });
  expect(mended.unread).toEqual({});
  expect(mended.document.fall).toBe('12 ft');
});

test('keys typed in one field are one step back', () => {
  let place = openPlace(larkrise);
  for (const value of ['2 m', '2.1 m', '2.15 m']) {
    place = putValue(place, { path: ['fall'], value, called: 'the fall' });
  }
  place = putValue(place, { path: ['lift'], value: '15 m', called: 'the lift' });
  expect(undo(place).document).toMatchObject({ fall: '2.15 m', lift: '12 m' });
  expect(undo(undo(place)).document).toEqual(larkrise);
});

test('beginning an empty place can be taken back', () => {
  const place = openPlace(larkrise, true);
  const empty = replacePlace(place, {
    document: { fallwright: 'site@1' },
    isExample: false,
    order: 'fieldsFirst',
  });
  expect(empty.document.name).toBeUndefined();
  expect(undo(empty)).toMatchObject({ document: larkrise, isExample: true });
});

test('what was typed comes back after the tab is closed, readable or not', () => {
  const keep = keepInMemory();
  const store = createStore(openPlace(larkrise));
  keepPlace(keep, store, createStore<Saved>({ kind: 'saved' }));
  store.update((place) => putValue(place, { path: ['lift'], value: '15 m', called: 'the lift' }));
  store.update((place) => keepUnread(place, ['fall'], '1.'));
  const back = readPlace(keep);
  expect(back?.document.lift).toBe('15 m');
  expect(back?.unread).toEqual({ fall: { text: '1.' } });
});

test('a full storage is told, not hidden', () => {
  const saved = createStore<Saved>({ kind: 'saved' });
  const store = createStore(openPlace(larkrise));
  const full = {
    getItem: () => null,
    setItem: () => {
      throw new Error('quota exceeded');
    },
  };
  keepPlace(full, store, saved);
  store.update((place) => keepUnread(place, ['fall'], '1.'));
  expect(saved.get()).toEqual({ kind: 'notSaved', why: 'quota exceeded' });
});

test('a kept place that was damaged is not read as a place', () => {
  expect(readPlace({ getItem: () => '{"document":', setItem: () => {} })).toBeUndefined();
  expect(readPlace({ getItem: () => '[1,2]', setItem: () => {} })).toBeUndefined();
});

test('a reader in the United States starts with feet and gallons, everyone else with metres', () => {
  expect(readSettings(keepInMemory(), 'en-US').system).toBe('us');
  expect(readSettings(keepInMemory(), 'en-GB').system).toBe('metric');
  expect(readSettings(keepInMemory(), 'sw').system).toBe('metric');
});

test('a chosen theme and unit system are kept', () => {
  const keep = keepInMemory();
  createSettings(keep, 'en-GB').update(() => ({ system: 'us', theme: 'night' }));
  expect(readSettings(keep, 'en-GB')).toEqual({ system: 'us', theme: 'night' });
});

test('each place opened has its own number, and one brought back has its old one', () => {
  const next = { document: {}, isExample: false, order: 'fieldsFirst' } as const;
  const first = openPlace(larkrise);
  const second = replacePlace(first, next);
  expect(second.opening).not.toBe(first.opening);
  expect(undo(second).opening).toBe(first.opening);
  expect(replacePlace(second, next).opening).not.toBe(second.opening);
});
