import { expect, test } from 'vitest';
import { withValue } from '../state/site-document.ts';
import {
  earlierRevisions,
  freeId,
  isRetired,
  placesOn,
  ramIndex,
  ramPath,
  ramsIn,
  referenceOf,
  withCopy,
  withNewRam,
  withNewRevision,
  withRetired,
} from './range-document.ts';

const RANGE = {
  fallwright: 'range@1',
  maker: 'Tarn Hollow workshop',
  rams: [
    { id: 'wren-20', name: 'Wren 20', ram: 'DN20', price: '210 GBP' },
    {
      id: 'swallow-25',
      name: 'Swallow 25',
      revision: 2,
      change: 'a larger vessel',
      ram: { bore: '25 mm', wasteValve: { seat: '25 mm', stroke: '3.2 mm', weight: '95 g' } },
      serials: ['S25-012 to S25-030'],
      price: '320 GBP',
      'x-drawing': 'sheet 7',
      earlier: [{ revision: 1, name: 'Swallow 25', ram: 'DN25' }],
    },
  ],
};

test('a new revision leaves the old one word for word among the earlier ones', () => {
  const [, before] = RANGE.rams;
  const ram = ramsIn(withNewRevision(RANGE, 1, '2026-05-01'))[1];
  expect(ram).toMatchObject({
    revision: 3,
    date: '2026-05-01',
    ram: before?.ram,
    price: '320 GBP',
  });
  expect(ram?.['x-drawing']).toBe('sheet 7');
  expect(ram).not.toHaveProperty('serials');
  expect(ram).not.toHaveProperty('change');
  expect(earlierRevisions(ram ?? {})).toEqual([
    {
      revision: 2,
      change: 'a larger vessel',
      name: 'Swallow 25',
      ram: before?.ram,
      serials: ['S25-012 to S25-030'],
    },
    { revision: 1, name: 'Swallow 25', ram: 'DN25' },
  ]);
});

test('what is written after a new revision does not reach the old one', () => {
  const revised = withNewRevision(RANGE, 1, '2026-05-01');
  const changed = withValue(revised, ramPath(1, 'ram', 'wasteValve', 'seat'), '27 mm');
  expect(ramsIn(changed)[1]?.ram).toMatchObject({ wasteValve: { seat: '27 mm' } });
  expect(earlierRevisions(ramsIn(changed)[1] ?? {})[0]?.ram).toMatchObject({
    wasteValve: { seat: '25 mm' },
  });
});

test('a copy stands beside its original as a ram of its own, with nothing built and no past', () => {
  const { document, id } = withCopy(RANGE, 1);
  expect(id).toBe('swallow-25-copy');
  expect(ramIndex(document, id)).toBe(2);
  const copy = ramsIn(document)[2];
  expect(copy).toMatchObject({ name: 'Swallow 25, copy', change: 'copied from swallow-25@2' });
  for (const gone of ['revision', 'serials', 'earlier']) expect(copy).not.toHaveProperty(gone);
  expect(withCopy(document, 1).id).toBe('swallow-25-copy-2');
});

test('new rams differ in id and name', () => {
  const first = withNewRam(RANGE, 'DN25');
  const second = withNewRam(first.document, 'DN25');
  expect([first.id, second.id]).toEqual(['ram-25', 'ram-25-2']);
  expect(ramsIn(second.document).map(({ name }) => name)).toEqual([
    'Wren 20',
    'Swallow 25',
    'Ram 25',
    'Ram 25 2',
  ]);
});

test('an id is made of plain letters, whatever the name is written in', () => {
  expect(freeId(RANGE, 'Grünspecht Ø 40!')).toBe('grunspecht-40');
  expect(freeId(RANGE, '水車')).toBe('ram');
  expect(freeId(RANGE, 'Wren 20')).toBe('wren-20-2');
});

test('a retired ram stays in the range and can be made again', () => {
  const retired = withRetired(RANGE, 0, true);
  expect(isRetired(ramsIn(retired)[0] ?? {})).toBe(true);
  expect(withRetired(retired, 0, false)).toEqual(RANGE);
});

test('the places on a revision are those that name it', () => {
  const on = (range: string) => ({ document: { ram: { range, bore: '25 mm' } } });
  const sites = [on('swallow-25@1'), on('swallow-25@2'), { document: { ram: 'DN20' } }];
  expect(placesOn(sites, referenceOf(RANGE.rams[1] ?? {}))).toEqual([sites[1]]);
});
