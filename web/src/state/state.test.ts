import { expect, test, vi } from 'vitest';
import { entryOf, originOf, textOf } from './entry.ts';
import {
  pipesOf,
  withListedLines,
  withoutEmptyPipes,
  withoutPipe,
  withPipeAdded,
} from './lines.ts';
import { otherRamParts, ramPart, withRamPart } from './ram-entry.ts';
import { pathText, valueAt, withValue } from './site-document.ts';
import { withStore } from './source-entry.ts';
import { createStore } from './store.ts';

test('a store tells its watchers of a change, and only of a change', () => {
  const store = createStore({ count: 0 });
  const watcher = vi.fn();
  const stop = store.subscribe(watcher);
  store.update((state) => state);
  expect(watcher).not.toHaveBeenCalled();
  store.update((state) => ({ count: state.count + 1 }));
  expect(watcher).toHaveBeenCalledTimes(1);
  stop();
  store.update(() => ({ count: 9 }));
  expect(watcher).toHaveBeenCalledTimes(1);
});

const site = {
  fallwright: 'site@1',
  fall: '1.9 m',
  drive: [{ pipe: 'PE100 SDR11 25', length: '14 m' }],
  'x-notes': { by: 'Joss' },
};

test('a value is put at its path and everything else stays as it was', () => {
  const changed = withValue(site, ['drive', 0, 'length'], '20 m');
  expect(changed).toEqual({ ...site, drive: [{ pipe: 'PE100 SDR11 25', length: '20 m' }] });
  expect(changed['x-notes']).toBe(site['x-notes']);
});

test('records and lists on the way are made where there are none', () => {
  expect(withValue({}, ['source', 'flow'], '14 L/min')).toEqual({ source: { flow: '14 L/min' } });
  expect(withValue({}, ['drive', 0, 'length'], '9 m')).toEqual({ drive: [{ length: '9 m' }] });
});

test('taking the last entry out of a record takes the record out', () => {
  expect(
    withValue({ fall: '1 m', source: { flow: '3 gpm' } }, ['source', 'flow'], undefined),
  ).toEqual({
    fall: '1 m',
  });
});

test('a pipe is taken out of its line', () => {
  const two = { drive: [{ length: '1 m' }, { length: '2 m' }] };
  expect(withValue(two, ['drive', 0], undefined)).toEqual({ drive: [{ length: '2 m' }] });
});

test('what is not there reads as undefined', () => {
  expect(valueAt(site, ['drive', 3, 'length'])).toBeUndefined();
  expect(valueAt(site, ['fall', 'value'])).toBeUndefined();
});

test('a path is written as a problem writes it', () => {
  expect(pathText(['drive', 0, 'length'])).toBe('drive[0].length');
});

test('a quantity keeps where it comes from, and the usual origin is not written', () => {
  expect(entryOf('1.9 m', 'stated')).toBe('1.9 m');
  expect(entryOf('1.9 m', 'measured')).toEqual({ value: '1.9 m', origin: 'measured' });
  expect(originOf({ value: '1.9 m', origin: 'measured' })).toBe('measured');
  expect(originOf('1.9 m')).toBe('stated');
  expect(textOf({ value: '1.9 m', origin: 'table' })).toBe('1.9 m');
  expect(textOf(undefined)).toBe('');
});

test('a line written as one map is listed, and its pipe spelled out flat', () => {
  const listed = withListedLines({
    drive: { pipe: { material: 'steel', bore: '26 mm' }, length: '12 m' },
    delivery: [{ pipe: 'PE100 SDR11 20', length: '160 m' }],
  });
  expect(listed).toEqual({
    drive: [{ material: 'steel', bore: '26 mm', length: '12 m' }],
    delivery: [{ pipe: 'PE100 SDR11 20', length: '160 m' }],
  });
});

test('a pipe is added behind the others and can be taken out again', () => {
  const two = withPipeAdded(site, 'drive');
  expect(pipesOf(two, 'drive')).toHaveLength(2);
  expect(withoutPipe(two, 'drive', 1)).toEqual(site);
});

test('an emptied pipe stays in its line until it is taken out', () => {
  const emptied = withValue({ drive: [{ length: '1 m' }] }, ['drive', 0, 'length'], undefined);
  expect(emptied).toEqual({ drive: [{}] });
});

test('a ram with a part of its own becomes a map, and a bare size again when the part goes', () => {
  const own = withRamPart({ ram: 'DN20' }, ['stroke'], '3 mm');
  expect(own).toEqual({ ram: { typical: 'DN20', stroke: '3 mm' } });
  expect(withRamPart(own, ['stroke'], undefined)).toEqual({ ram: 'DN20' });
});

test('parts that the page does not ask for are kept and named', () => {
  const file = { ram: { typical: 'DN20', airVessel: { volume: '1.5 L', index: 1.3 } } };
  expect(otherRamParts(file)).toEqual(['airVessel.index']);
  expect(withRamPart(file, ['typical'], 'DN25')).toEqual({
    ram: { typical: 'DN25', airVessel: { volume: '1.5 L', index: 1.3 } },
  });
});

test('a stroke is read and changed where the file has it', () => {
  const file = { ram: { bore: '25 mm', wasteValve: { seat: '27 mm', stroke: '3 mm' } } };
  expect(ramPart(file, ['stroke'])).toBe('3 mm');
  expect(withRamPart(file, ['stroke'], '4 mm')).toEqual({
    ram: { bore: '25 mm', wasteValve: { seat: '27 mm', stroke: '4 mm' } },
  });
});

test('changing a spring to a spring box and back keeps the water that was measured', () => {
  const boxed = withStore({ source: { flow: '14 L/min' } }, 'spring box');
  expect(boxed).toEqual({ source: { store: 'spring box', inflow: '14 L/min' } });
  expect(withStore(boxed, undefined)).toEqual({ source: { flow: '14 L/min' } });
});

test('a pipe of which nothing is known yet is not asked about', () => {
  expect(withoutEmptyPipes({ drive: [{ length: '1 m' }, {}], delivery: [{}] })).toEqual({
    drive: [{ length: '1 m' }],
  });
});
