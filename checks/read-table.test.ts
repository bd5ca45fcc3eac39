import { expect, test } from 'vitest';
import { parseCsv, readTable } from './read-table.ts';

test('commas and quotes inside quotes belong to the cell', () => {
  expect(parseCsv('a,b,c\n1,"x, ""y""",\n')).toEqual([
    ['a', 'b', 'c'],
    ['1', 'x, "y"', ''],
  ]);
});

test('a cell that should be a number and is not is named with its place', () => {
  const row = readTable('hydraulics/joukowsky')[0];
  expect(row?.number('wave_speed_ms')).toBe(1493.52);
  expect(() => row?.number('density_kgm3')).toThrow(
    /joukowsky, row 1: density_kgm3 must be a number/,
  );
  expect(() => row?.text('colour')).toThrow(/no column colour/);
});
