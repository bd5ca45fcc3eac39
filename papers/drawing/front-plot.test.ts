import { expect, test } from 'vitest';
import { frontPlot, type PlottedBuild, waterBars } from './front-plot.ts';
import type { Area, Line, Words } from './shapes.ts';
import { roundTicks } from './ticks.ts';

const PER_DAY = 1e-3 / 86_400;

const build = (key: string, cost: number, litres: number, isOnFront = true): PlottedBuild => ({
  key,
  cost,
  water: litres * PER_DAY,
  isOnFront,
  label: '',
});

const BUILDS = [
  build('a', 90_000, 500),
  build('b', 150_000, 800),
  build('c', 210_000, 1200),
  build('d', 190_000, 700, false),
];
const SHEET = { width: 700, system: 'metric', currency: 'GBP', need: 600 * PER_DAY } as const;

const lines = (plot: { readonly shapes: readonly object[] }, of: string): Line[] =>
  plot.shapes.filter((shape): shape is Line => (shape as Line).of === of);
const texts = (plot: { readonly shapes: readonly object[] }): string[] =>
  plot.shapes
    .filter((shape): shape is Words => (shape as Words).kind === 'words')
    .flatMap((words) => words.lines);

test('more money stands further right and more water higher, to one scale', () => {
  const { builds } = frontPlot(BUILDS, SHEET);
  const at = (key: string) => builds.find((one) => one.key === key)?.at ?? { x: 0, y: 0 };
  expect((at('c').x - at('b').x) / (at('b').x - at('a').x)).toBeCloseTo(1, 9);
  expect((at('b').y - at('c').y) / (at('a').y - at('b').y)).toBeCloseTo(4 / 3, 9);
});

test('the front goes up in steps from build to build, and past none that lies beside it', () => {
  const plot = frontPlot(BUILDS, SHEET);
  const [front] = lines(plot, 'front');
  const points = front?.points ?? [];
  for (const [i, point] of points.entries()) {
    const next = points[i + 1];
    if (next === undefined) continue;
    expect(next.x === point.x || next.y === point.y).toBe(true);
    expect(next.x).toBeGreaterThanOrEqual(point.x);
    expect(next.y).toBeLessThanOrEqual(point.y);
  }
  for (const { at, isOnFront } of plot.builds) {
    const isOnLine = points.some(({ x, y }) => x === at.x && y === at.y);
    expect(isOnLine).toBe(isOnFront);
  }
  expect(plot.builds.map(({ key }) => key)).toEqual(['a', 'b', 'c', 'd']);
});

test('the need is a line at its water, with its figure', () => {
  const plot = frontPlot([...BUILDS, build('e', 100_000, 600, false)], SHEET);
  const [need] = lines(plot, 'need');
  expect(need?.points[0]?.y).toBe(plot.builds.find(({ key }) => key === 'e')?.at.y);
  expect(texts(plot)).toContain('needed: 600');
});

test('prices begin at nought, or say where they begin', () => {
  expect(frontPlot(BUILDS, SHEET).costFrom).toBeUndefined();
  const dear = [build('a', 400_000, 500), build('b', 420_000, 800)];
  const plot = frontPlot(dear, SHEET);
  expect(plot.costFrom).toMatch(/^£3,[5-9]\d\d$/);
  expect(texts(plot)).toContain(plot.costFrom);
});

test('everything stays on the sheet, however narrow, in yen as in pounds', () => {
  for (const width of [300, 460, 900]) {
    for (const currency of ['GBP', 'JPY', 'KWD']) {
      const named = BUILDS.map((one) => ({ ...one, label: 'cheapest that does' }));
      const { builds, shapes, labels, height } = frontPlot(named, {
        ...SHEET,
        width,
        currency,
      });
      const points = [...shapes, ...labels].flatMap((shape) =>
        shape.kind === 'area' ? shape.outline : shape.kind === 'line' ? shape.points : [shape.at],
      );
      for (const { x, y } of [...points, ...builds.map(({ at }) => at)]) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(width);
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(height);
      }
    }
  }
});

test('without prices each build is a bar as long as its water', () => {
  const bars = waterBars(
    BUILDS.map((one) => ({ ...one, what: `build ${one.key}` })),
    SHEET,
  );
  const lengths = bars.shapes
    .filter((shape): shape is Area => shape.kind === 'area' && shape.of === 'water')
    .map(({ outline }) => {
      const xs = outline.map(({ x }) => x);
      return Math.max(...xs) - Math.min(...xs);
    });
  expect(lengths.map((length) => length / (lengths[0] ?? 1))).toEqual(
    [1, 1.6, 2.4, 1.4].map((ratio) => expect.closeTo(ratio, 9)),
  );
});

test('ticks are round, from nought, and not beyond the end', () => {
  expect(roundTicks(4200, 5)).toEqual([0, 1000, 2000, 3000, 4000]);
  expect(roundTicks(7, 4)).toEqual([0, 2, 4, 6]);
  expect(roundTicks(0, 4)).toEqual([0]);
});

test('labels left and right of the middle keep off one another on a narrow sheet', () => {
  const dear = [
    { ...build('a', 421_200, 3860), label: 'cheapest' },
    { ...build('b', 431_800, 4100), label: 'most water' },
    { ...build('c', 451_800, 4450), label: 'most forgiving' },
  ];
  const { labels } = frontPlot(dear, { ...SHEET, width: 330 });
  const rows = labels
    .filter((shape): shape is Words => shape.kind === 'words')
    .map(({ at }) => at.y)
    .sort((one, other) => one - other);
  expect(rows).toHaveLength(3);
  for (const [i, y] of rows.entries()) {
    if (i > 0) expect(y - (rows[i - 1] ?? 0)).toBeGreaterThanOrEqual(17);
  }
});
