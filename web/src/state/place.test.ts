import { expect, test } from 'vitest';
import { readFirstPlace } from './first-place.ts';
import { keepUnread, openPlace, putValue, putWhole, redo, tellFault, undo } from './place.ts';
import { createSettings, readSettings } from './settings.ts';

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

test('a step taken back can be taken again, until something else is written', () => {
  const changed = putValue(openPlace(larkrise), {
    path: ['fall'],
    value: '2 m',
    called: 'the fall',
  });
  const back = undo(changed);
  expect(redo(back).document.fall).toBe('2 m');
  expect(undo(redo(back)).document.fall).toBe('1.9 m');
  const other = putValue(back, { path: ['lift'], value: '15 m', called: 'the lift' });
  expect(redo(other)).toBe(other);
});

test('a whole place put in can be taken back with the text that waited in its boxes', () => {
  const waiting = keepUnread(openPlace(larkrise), ['fall'], '1.');
  const whole = putWhole(waiting, { document: { fallwright: 'site@1' }, unread: {} }, 'all of it');
  expect(whole.unread).toEqual({});
  expect(undo(whole)).toMatchObject({ document: larkrise, unread: { fall: { text: '1.' } } });
});

test('the place of earlier versions is read with what stood in its boxes', () => {
  const kept = {
    document: larkrise,
    unread: { fall: { text: '1.' } },
    isExample: false,
    order: 'fieldsFirst',
  };
  expect(readFirstPlace({ getItem: () => JSON.stringify(kept) })).toEqual(kept);
});

test('a kept place that was damaged is not read as a place', () => {
  expect(readFirstPlace({ getItem: () => '{"document":' })).toBeUndefined();
  expect(readFirstPlace({ getItem: () => '[1,2]' })).toBeUndefined();
  expect(readFirstPlace({ getItem: () => null })).toBeUndefined();
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
