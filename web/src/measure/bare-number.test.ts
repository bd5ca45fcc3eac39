import { expect, test } from 'vitest';
import { withUnitOfOthers } from './bare-number.ts';

test('a bare number takes the unit of the reading before it, and never one that is not there', () => {
  expect(withUnitOfOthers('8.4', ['8.2 s'], 'time')).toBe('8.4 s');
  expect(withUnitOfOthers('0.52', ['0.5 L/min'], 'sourceFlow')).toBe('0.52 L/min');
  expect(withUnitOfOthers('127', ['128.1/min ± 0.4/min'], 'beats')).toBe('127/min');
  expect(withUnitOfOthers('127', [], 'beats')).toBeUndefined();
  expect(withUnitOfOthers('0.52', ['8 s'], 'sourceFlow')).toBeUndefined();
  expect(withUnitOfOthers('8.4 L', ['8.2 s'], 'time')).toBeUndefined();
});
