import { expect, test } from 'vitest';
import { placeNames } from './line-labels.ts';

const frame = { left: 0, right: 600, top: 0, bottom: 200 };
const level = (y: number): number[] => Array.from({ length: 101 }, () => y);

test('a name stands close to its line and in the frame', () => {
  const [name] = placeNames([{ name: 'fall 1.9 m', heights: level(100) }], frame);
  expect(Math.abs((name?.y ?? 0) - 100)).toBeLessThan(20);
  expect(name?.x).toBeGreaterThanOrEqual(0);
});

test('names of two lines close together stand on their outer sides', () => {
  const [upper, lower] = placeNames(
    [
      { name: 'delivered', heights: level(100) },
      { name: 'to waste', heights: level(110) },
    ],
    frame,
  );
  expect(upper?.y).toBeLessThan(100);
  expect(lower?.y).toBeGreaterThan(110);
});

test('a name keeps away from the steep part of its line', () => {
  const heights = level(180).map((y, i) => (i < 80 ? y - 150 * Math.abs(Math.sin(i)) : y));
  const [name] = placeNames([{ name: 'drive line', heights }], frame);
  expect(name?.x).toBeGreaterThan(79 * 6);
});

test('the name of an amount stands in its ground', () => {
  const heights = Array.from({ length: 101 }, (_, i) => (i > 40 && i < 80 ? 60 : 148));
  const [name] = placeNames([{ name: 'to waste', heights, ground: 150 }], frame);
  expect(name?.y).toBeGreaterThan(60 + 10);
  expect(name?.y).toBeLessThan(150);
  expect(name?.x).toBeGreaterThan(40 * 6);
});

test('a line at the frame’s edge is named inside it', () => {
  const [name] = placeNames([{ name: 'in the vessel 12.1 m', heights: level(4) }], frame);
  expect(name?.y).toBeGreaterThan(4);
});
