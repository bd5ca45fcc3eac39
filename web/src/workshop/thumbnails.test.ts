import { expect, test } from 'vitest';
import { DEMO_PLACES } from './demo.ts';
import { boxFor, HEIGHT, outlineOf, thumbnailOf, WIDTH } from './thumbnails.ts';

test('all places are drawn on one scale that holds the largest of them', () => {
  const outlines = DEMO_PLACES.map(outlineOf);
  const box = boxFor(outlines);
  // Tarn Hollow is the largest: 18 m and 240 m of pipe, lifted 21 m.
  expect(box).toEqual({ length: 300, height: 25 });
  for (const outline of outlines) {
    const { tank, ram } = thumbnailOf(outline, box);
    for (const point of [ram, ...(tank === undefined ? [] : [tank])]) {
      expect(point.x).toBeGreaterThanOrEqual(0);
      expect(point.x).toBeLessThan(WIDTH);
      expect(point.y).toBeGreaterThan(0);
      expect(point.y).toBeLessThan(HEIGHT);
    }
  }
});

test('a usual place fits the usual box', () => {
  expect(boxFor([outlineOf(DEMO_PLACES[0] ?? {})])).toEqual({ length: 200, height: 15 });
});

test('what is not known is not drawn', () => {
  const { source, tank } = thumbnailOf(outlineOf({ lift: '12 m' }), boxFor([]));
  expect(source).toBeUndefined();
  expect(tank).toBeUndefined();
});
