/** The charts of need and tank: what is drawn is what the plan says, and words stand clear of one another. */
import type { Emptying, WaterPlan } from '@fallwright/engine';
import { describe, expect, test } from 'vitest';
import { answerOf, siteWith } from '../fixtures/answers.ts';
import { waterPlanOf } from '../water-plan-of.ts';
import { besideEnds, type Chart, type ChartWord, roundTicks } from './chart.ts';
import { dayChart, PLAN_CHART_HEIGHTS, yearChart, yearChartInWords } from './plan-charts.ts';
import { surfaceChart, surfaceChartInWords } from './surface-chart.ts';

const ASKED = { width: 320, system: 'metric' } as const;
const WIDE = { width: 600, system: 'metric' } as const;

function planOf(demand: string): WaterPlan {
  const plan = waterPlanOf(answerOf('runs'), siteWith('demand: 900 L/day', demand));
  if (!plan) throw new Error('a plan');
  return plan;
}

const farm = planOf(
  'demand: { people: 6, perPerson: 100 L/day, garden: { area: 200 m2, perArea: 5 mm/day, season: apr to sep } }\ntank: { volume: 400 L }',
);

function shapesOf(chart: Chart, kind: string, matter: string) {
  return chart.shapes.filter((shape) => shape.kind === kind && shape.matter === matter);
}

describe('the year', () => {
  test('draws need and delivery to one scale from nought', () => {
    const chart = yearChart(farm, WIDE);
    const [need] = shapesOf(chart, 'line', 'need');
    const [comes] = shapesOf(chart, 'line', 'water');
    const base = Math.max(...chart.axes.slice(0, 1).map(({ from }) => from.y));
    const heightIn = (line: typeof need, month: number): number =>
      base - (line?.points[2 * month]?.y ?? Number.NaN);
    // 600 L in January, 1,600 L in July, and 1,063 L come in both.
    expect(heightIn(need, 6) / heightIn(need, 0)).toBeCloseTo(1600 / 600, 6);
    expect(heightIn(comes, 6) / heightIn(need, 0)).toBeCloseTo(1063 / 600, 6);
  });

  test('counts the days met under each month, and marks those that are not whole', () => {
    const words = yearChart(farm, WIDE).words;
    const days = words.filter(({ text }) => /^\d+$/.test(text)).map(({ text }) => text);
    for (const { metCount } of farm.year.months) expect(days).toContain(String(metCount));
    expect(words.filter(({ matter }) => matter === 'missing')).toHaveLength(6);
  });

  test('stays inside its room on a phone, with one letter a month', () => {
    const chart = yearChart(farm, ASKED);
    expect(chart.height).toBe(PLAN_CHART_HEIGHTS.year);
    for (const { points } of chart.shapes) {
      for (const { x, y } of points) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(ASKED.width);
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(chart.height);
      }
    }
    const letters = chart.words.filter(({ text }) => /^[JFMASOND]$/.test(text));
    expect(letters).toHaveLength(24);
    expect(yearChart(farm, WIDE).words.some(({ text }) => text === 'Jan')).toBe(true);
  });

  test('leaves the tank out where the day asks for none', () => {
    const none: WaterPlan = { ...farm, volume: 0 };
    expect(yearChart(none, WIDE).words.some(({ text }) => text.startsWith('In the tank'))).toBe(
      false,
    );
    expect(dayChart(none, WIDE).words.some(({ text }) => text === 'full')).toBe(false);
  });

  test('is told in a sentence for those who do not see it', () => {
    const words = yearChartInWords(farm, 'metric').replaceAll('\u00a0', ' ');
    expect(words).toContain(`met on ${farm.year.metCount} of 365 days`);
    expect(words).toContain('1,600 L a day are needed');
  });
});

describe('the day', () => {
  test('what is missing fills the gap between drawn and wanted, hour by hour', () => {
    const chart = dayChart(farm, WIDE);
    const short = farm.day.steps.filter(({ shortfall }) => shortfall > 1e-12);
    expect(short.length).toBeGreaterThan(0);
    const missing = shapesOf(chart, 'area', 'missing');
    expect(missing).toHaveLength(short.length);
    expect(chart.words.filter(({ text }) => text === 'missing')).toHaveLength(1);
    // Areas are as the volumes: of two hours as wide, heights are as what is missing.
    const heights = missing.map(({ points }) => (points[0]?.y ?? 0) - (points[1]?.y ?? 0));
    const [first, last] = [short[0], short.at(-1)];
    expect((heights[0] ?? 0) / (heights.at(-1) ?? 1)).toBeCloseTo(
      (first?.shortfall ?? 0) / (last?.shortfall ?? 1),
      6,
    );
  });

  test('a day that is met has nothing missing in it', () => {
    const plenty = dayChart(planOf('demand: 300 L/day'), WIDE);
    expect(shapesOf(plenty, 'area', 'missing')).toEqual([]);
    expect(plenty.words.some(({ text }) => text === 'missing')).toBe(false);
  });
});

describe('a store', () => {
  const drained: Emptying = {
    end: 'intakeUncovers',
    time: 7200,
    drop: 0.6,
    delivered: 0.05,
    dailyVolume: 0.05,
    meanDelivery: 6e-7,
    fromFull: [
      { time: 0, drop: 0 },
      { time: 7200, drop: 0.6 },
    ],
    overADay: [
      { time: 0, drop: 0 },
      { time: 7200, drop: 0.6 },
      { time: 20_000, drop: 0 },
      { time: 86_400, drop: 0 },
    ],
  };

  test('is drawn over a day with its refilling, down to the intake', () => {
    const chart = surfaceChart(drained, 0.6, WIDE);
    const [line] = shapesOf(chart, 'line', 'water');
    const [start, lowest] = line?.points ?? [];
    expect(line?.points).toHaveLength(4);
    expect(lowest?.y).toBe(chart.axes[0]?.from.y);
    expect(start?.y).toBeLessThan(lowest?.y ?? 0);
    expect(chart.words.map(({ text }) => text)).toContain('draws air after 2\u00a0hours');
    expect(surfaceChartInWords(drained, 0.6, 'metric')).toContain('then the store fills again');
  });

  test('one that sinks to a level and stays is drawn from the brim on', () => {
    const kept: Emptying = {
      ...drained,
      end: 'keepsUp',
      time: Infinity,
      drop: 0.3,
      fromFull: [
        { time: 0, drop: 0 },
        { time: 5000, drop: 0.3 },
      ],
    };
    const chart = surfaceChart(kept, 0.6, WIDE);
    const [line] = shapesOf(chart, 'line', 'water');
    expect(line?.points.at(-1)?.y).toBe(line?.points.at(-2)?.y);
    expect(line?.points.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))).toBe(true);
    expect(chart.words.map(({ text }) => text)).toContain('stays here');
    expect(surfaceChartInWords(kept, 0.6, 'metric')).toContain('stays there');
  });

  test('nothing runs in: it is taken as filled once a day', () => {
    const rain = { ...drained, overADay: [...drained.fromFull, { time: 86_400, drop: 0.6 }] };
    expect(surfaceChartInWords(rain, 0.6, 'metric')).toContain('filled once a day');
  });
});

test('ticks are round in the reader’s unit and reach over the most', () => {
  const perDay = 1e-3 / 86_400;
  expect(roundTicks(832 * perDay, 'daily', 'metric').map(({ text }) => text)).toEqual([
    '0',
    '500',
    '1,000',
  ]);
  expect(roundTicks(0, 'daily', 'metric')).toEqual([{ value: 0, text: '0' }]);
  // 220 gallons in steps of at least 55: of a hundred each.
  const gallons = roundTicks(832 * perDay, 'daily', 'us');
  expect(gallons.at(-1)?.value).toBeGreaterThanOrEqual(832 * perDay);
  expect(gallons.at(-1)?.text).toBe('300');
});

test('words beside the ends of lines never stand on one another', () => {
  const word = (text: string, y: number): ChartWord => ({
    text,
    x: 0,
    y,
    anchor: 'start',
    matter: 'axis',
  });
  const placed = besideEnds([word('a', 100), word('b', 98), word('c', 99)], {
    top: 0,
    bottom: 110,
  });
  const ys = placed.map(({ y }) => y).sort((a, b) => a - b);
  expect((ys[1] ?? 0) - (ys[0] ?? 0)).toBeGreaterThanOrEqual(14);
  expect((ys[2] ?? 0) - (ys[1] ?? 0)).toBeGreaterThanOrEqual(14);
  expect(Math.max(...ys)).toBeLessThanOrEqual(110);
});
