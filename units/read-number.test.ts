import { expect, test } from 'vitest';
import { readNumber } from './read-number.ts';

const AS_WRITTEN: readonly (readonly [string, number])[] = [
  ['12', 12],
  ['12.5', 12.5],
  ['.5', 0.5],
  ['12,5', 12.5],
  ['12,55', 12.55],
  ['1,000', 1000],
  ['0,500', 0.5],
  ['1,0000', 1],
  ['1,234,567', 1234567],
  ['1,234.5', 1234.5],
  ['1.234,5', 1234.5],
  ['12 000', 12000],
  ['12\u202f000', 12000],
  ['1/2', 0.5],
  ['1 1/2', 1.5],
  ['1-1/2', 1.5],
  ['½', 0.5],
  ['1½', 1.5],
  ['1 ¾', 1.75],
  ['−3', -3],
  ['-3', -3],
  ['1e3', 1000],
  ['+2', 2],
];

for (const [text, value] of AS_WRITTEN) {
  test(`${text} is ${value}`, () => {
    expect(readNumber(text)).toEqual({ value, rest: '' });
  });
}

for (const text of [
  '',
  'm',
  'twelve',
  '1,23,4',
  '1.2.3',
  '1/0',
  'NaN',
  'Infinity',
  '1e999',
  '--3',
]) {
  test(`${text || 'nothing'} is no number`, () => {
    expect(readNumber(text)).toBeUndefined();
  });
}

test('what stands after the number is kept', () => {
  expect(readNumber('14 L/min')).toEqual({ value: 14, rest: 'L/min' });
  expect(readNumber(`6'3"`)).toEqual({ value: 6, rest: `'3"` });
});
