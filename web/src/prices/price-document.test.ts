import { readPrices } from '@fallwright/records';
import { expect, test } from 'vitest';
import { freeCode, priceCsv, priceDocument, readPriceDocument, rowsIn } from './price-document.ts';
import { groupOf, PRICE_GROUPS } from './price-groups.ts';

const PIPE = {
  code: 'PE25',
  kind: 'pipe',
  name: 'black PE 25',
  size: 'PE100 SDR11 25',
  unit: 'm',
  price: '1.40',
};
const LIST = {
  fallwright: 'prices@1',
  currency: 'GBP',
  rows: [
    PIPE,
    { code: 'GV', kind: 'gate valve', name: '=valve, "full" bore', price: '12.50', note: '# one' },
    { code: 'TR', kind: 'trench', name: 'trench', price: 'left out' },
  ],
};

test('what stands on the page goes out as CSV and comes in again as it was', () => {
  const read = readPrices(priceCsv(LIST));
  expect(read.ok).toBe(true);
  if (!read.ok) return;
  const again = priceDocument(read.list);
  expect(again.currency).toBe('GBP');
  expect(rowsIn(again)).toMatchObject(LIST.rows);
  expect(priceCsv(again)).toBe(priceCsv(priceDocument(read.list)));
});

test('each fault is told at its own row, and the other rows are read', () => {
  const faulty = {
    ...LIST,
    rows: [
      { ...PIPE, size: 'PE 25 of some kind' },
      ...LIST.rows.slice(1, 2),
      { code: 'X', kind: 'vlave' },
    ],
  };
  const { list, faults } = readPriceDocument(faulty);
  expect(list?.rows.map(({ code }) => code)).toEqual(['GV']);
  expect(faults.map(({ row, column }) => [row, column])).toEqual([
    [0, 'size'],
    [2, 'kind'],
  ]);
});

test('a currency that is none is told once, for the whole list', () => {
  const { list, faults } = readPriceDocument({ ...LIST, currency: 'pounds' });
  expect(list).toBeUndefined();
  expect(faults).toHaveLength(1);
  expect(faults[0]).not.toHaveProperty('row');
});

test('a list that was only begun has no faults', () => {
  expect(readPriceDocument({ fallwright: 'prices@1' })).toEqual({ faults: [] });
});

test('every kind has a group, and a word that is no kind stands where it can be put right', () => {
  expect(groupOf({ kind: 'labour' }).id).toBe('work');
  expect(groupOf({ kind: 'tank' }).id).toBe('containers');
  expect(groupOf({ kind: 'vlave' }).id).toBe('parts');
  const kinds = PRICE_GROUPS.flatMap((group) => group.kinds);
  expect(new Set(kinds).size).toBe(kinds.length);
});

test('a new row has a code of its own', () => {
  expect(freeCode([{ code: 'P2' }, { code: 'P4' }], 'P')).toBe('P3');
  expect(freeCode([{ code: 'P2' }], 'P')).toBe('P3');
});
