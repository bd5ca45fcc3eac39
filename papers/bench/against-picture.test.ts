import { expect, test } from 'vitest';
import {
  type AgainstPoint,
  againstInWords,
  curveLifts,
  ramPicture,
  testPicture,
} from './against-picture.ts';

const LITRE_A_MINUTE = 1e-3 / 60;
const point = (label: string, lift: number, measured: number, predicted: number): AgainstPoint => ({
  label,
  lift,
  measured: measured * LITRE_A_MINUTE,
  spread: 0.02 * measured * LITRE_A_MINUTE,
  predicted: predicted * LITRE_A_MINUTE,
  agrees: Math.abs(measured / predicted - 1) < 0.05,
});
const POINTS = [point('1', 6, 1.53, 1.56), point('2', 13, 0.37, 0.47)];
const SHEET = { width: 328, system: 'metric' } as const;

function middles(drawing: ReturnType<typeof testPicture>, matter: string) {
  return drawing.shapes.flatMap((shape) =>
    shape.kind === 'area' && shape.of === matter
      ? [
          {
            x: shape.outline.reduce((sum, { x }) => sum + x, 0) / shape.outline.length,
            y: shape.outline.reduce((sum, { y }) => sum + y, 0) / shape.outline.length,
          },
        ]
      : [],
  );
}

test('less delivered at a higher lift stands lower and to the right, and what is off is told', () => {
  const drawing = testPicture({ points: POINTS, curves: [] }, SHEET);
  const [good] = middles(drawing, 'measured');
  const [off] = middles(drawing, 'measuredOff');
  expect((off?.x ?? 0) > (good?.x ?? 0) && (off?.y ?? 0) > (good?.y ?? 0)).toBe(true);
  const words = drawing.shapes.flatMap((shape) => (shape.kind === 'words' ? shape.lines : []));
  expect(words).toContain('2, off');
});

test('a reading as predicted stands on the line of a ram', () => {
  const drawing = ramPicture([point('1', 6, 1, 1), point('2', 8, 0.5, 0.5)], SHEET);
  const line = drawing.shapes.find((shape) => shape.kind === 'line' && shape.of === 'front');
  const [from, to] = line?.kind === 'line' ? line.points : [];
  if (from === undefined || to === undefined) throw new Error('a line');
  for (const { x, y } of middles(drawing, 'measured')) {
    expect((y - from.y) / (x - from.x)).toBeCloseTo((to.y - from.y) / (to.x - from.x), 6);
  }
});

test('the picture stays on a sheet as wide as a phone', () => {
  const curve = curveLifts([6, 13], 2).map((lift) => ({
    lift,
    delivered: 1e-4 / lift,
    spread: 1e-6,
  }));
  const { shapes, height } = testPicture(
    { points: POINTS, curves: [{ label: '', points: curve }] },
    SHEET,
  );
  for (const shape of shapes) {
    const points =
      shape.kind === 'line' ? shape.points : shape.kind === 'area' ? shape.outline : [shape.at];
    for (const { x, y } of points) {
      expect(x >= 0 && x <= SHEET.width && y >= 0 && y <= height).toBe(true);
    }
  }
});

test('lifts of the line lie about the readings and above the fall', () => {
  const lifts = curveLifts([2.4, 13], 2);
  expect(lifts[0]).toBeGreaterThan(2);
  expect(lifts[0]).toBeLessThan(2.4);
  expect(lifts.at(-1)).toBeGreaterThan(13);
});

test('the picture is told in a sentence', () => {
  expect(againstInWords(POINTS, 'metric').replaceAll('\u00a0', ' ')).toContain(
    '2: at 13 m 0.37 L/min delivered, 0.47 L/min predicted, off',
  );
});
