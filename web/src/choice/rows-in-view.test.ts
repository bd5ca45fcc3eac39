import { expect, test } from 'vitest';
import { rowsInView } from './rows-in-view.ts';

const sheet = { height: 400, rowHeight: 40, total: 5000 };

test('only rows in view and a few beside them are asked for', () => {
  expect(rowsInView({ ...sheet, top: 0 })).toEqual({ from: 0, count: 30 });
  const { from, count } = rowsInView({ ...sheet, top: 40_000 });
  expect(from).toBeLessThanOrEqual(1000);
  expect(from + count).toBeGreaterThanOrEqual(1010);
  expect(count).toBeLessThan(60);
});

test('a short scroll asks for the same rows again', () => {
  expect(rowsInView({ ...sheet, top: 40_010 })).toEqual(rowsInView({ ...sheet, top: 40_050 }));
});

test('the end of the list is the end', () => {
  const { from, count } = rowsInView({ ...sheet, top: 5000 * 40 - 400 });
  expect(from + count).toBe(5000);
  expect(rowsInView({ ...sheet, top: 0, total: 3 })).toEqual({ from: 0, count: 3 });
  expect(rowsInView({ ...sheet, top: 0, total: 0 })).toEqual({ from: 0, count: 0 });
});
