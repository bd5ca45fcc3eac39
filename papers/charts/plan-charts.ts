/** The plan of a place's water drawn: the year month by month, and the hardest day hour by hour. */
import { inMonth, type WaterPlan } from '@fallwright/engine';
import { formatNumber, formatQuantity, type System, unitShown } from '@fallwright/units';
import { monthName } from '../month-words.ts';
import {
  besideEnds,
  type Chart,
  type ChartPoint,
  type ChartWord,
  filledTo,
  joined,
  type Panel,
  panel,
  roundTicks,
  steps,
  withTicks,
} from './chart.ts';

/** Room for figures at the left and for words at the right, over a panel for its title, and under it for the axis. */
const LEFT = 46;
const RIGHT = 70;
const TITLE = 24;
const AMOUNTS_HEIGHT = 120;
const TANK_HEIGHT = 70;
/** Judgement: narrower than this a month's three letters do not fit at 12 px. */
const WIDE_MONTH = 26;
/** Half of the word `missing` at 12 px. */
const HALF_WORD = 23;
/** What rounding leaves of an hour that is met. */
const ROUNDING = 1e-9;
/** Judgement: a dip of less than two pixels of the tank is not seen. */
const SEEN = 0.03;

/** Heights that do not depend on what is drawn, so that the room can be kept free before. */
export const PLAN_CHART_HEIGHTS = {
  year: TITLE + AMOUNTS_HEIGHT + 42 + TITLE + TANK_HEIGHT + 22,
  day: TITLE + AMOUNTS_HEIGHT + 22 + TITLE + TANK_HEIGHT + 26,
} as const;

interface Asked {
  readonly width: number;
  readonly system: System;
}

/** Needed and delivered, days met, and the tank, month by month. */
export function yearChart(plan: WaterPlan, { width, system }: Asked): Chart {
  const needed = plan.months.map((month) => month.needed);
  const delivered = plan.months.map((month) => month.delivered);
  const ticks = roundTicks(Math.max(...needed, ...delivered), 'daily', system);
  const sides = { left: LEFT, right: width - RIGHT };
  const amounts = panel(
    { ...sides, top: TITLE, bottom: TITLE + AMOUNTS_HEIGHT },
    ticks.at(-1)?.value ?? 0,
  );
  const xAt = (month: number): number => amounts.left + (month * (sides.right - LEFT)) / 12;
  const isWide = xAt(1) - xAt(0) >= WIDE_MONTH;
  const monthsAt = (y: number): readonly ChartWord[] =>
    plan.months.map((_, month) => ({
      text: monthName(month).slice(0, isWide ? 3 : 1),
      x: (xAt(month) + xAt(month + 1)) / 2,
      y,
      anchor: 'middle',
      matter: 'axis',
    }));
  const comes = steps(delivered, xAt, amounts.y);
  const need = steps(needed, xAt, amounts.y);
  const daysAt = amounts.bottom + 32;
  const tank = panel(
    { ...sides, top: daysAt + 10 + TITLE, bottom: daysAt + 10 + TITLE + TANK_HEIGHT },
    plan.volume,
  );
  return joined({ width, height: PLAN_CHART_HEIGHTS.year }, [
    withTicks(amounts, ticks),
    {
      shapes: [
        { kind: 'area', matter: 'water', points: filledTo(comes, amounts.bottom) },
        { kind: 'line', matter: 'water', points: comes },
        { kind: 'line', matter: 'need', points: need },
      ],
      words: [
        title(unitShown('daily', system), amounts),
        ...besideEnds(
          [endWord('comes', 'water', comes, amounts), endWord('needed', 'need', need, amounts)],
          amounts,
        ),
        ...monthsAt(amounts.bottom + 15),
        ...plan.year.months.map(
          ({ metCount, dayCount }, month): ChartWord => ({
            text: String(metCount),
            x: (xAt(month) + xAt(month + 1)) / 2,
            y: daysAt,
            anchor: 'middle',
            matter: metCount < dayCount ? 'missing' : 'axis',
          }),
        ),
        { text: 'days met', x: sides.right + 6, y: daysAt, anchor: 'start', matter: 'axis' },
      ],
    },
    ...(plan.volume > 0 ? [tankOverYear(plan, tank, xAt, system)] : []),
    ...(plan.volume > 0 ? [{ words: monthsAt(tank.bottom + 15) }] : []),
  ]);
}

function tankOverYear(
  { year, volume }: WaterPlan,
  tank: Panel,
  xAt: (month: number) => number,
  system: System,
): Partial<Chart> {
  const line: readonly ChartPoint[] = [
    { x: xAt(0), y: tank.y(year.start) },
    ...year.months.map(({ stored }, month) => ({ x: xAt(month + 1), y: tank.y(stored) })),
  ];
  const lowest = year.months.map((month) => month.lowest);
  // Within a month the tank may go lower than it ends: worth a line only where one would see it.
  const dips = year.months.some(
    ({ lowest: least, stored }, month) =>
      Math.min(stored, year.months[month - 1]?.stored ?? year.start) - least > SEEN * volume,
  );
  const least = lowest.map((volumeLeft, month) =>
    steps([volumeLeft], (step) => xAt(month + step), tank.y),
  );
  return withBrim(tank, volume, line, system, dips ? least : undefined);
}

/** What comes and what is drawn in each hour, and the tank at its end. */
export function dayChart(plan: WaterPlan, { width, system }: Asked): Chart {
  const { day } = plan;
  const wanted = day.steps.map((step) => step.wanted);
  const drawn = day.steps.map((step) => step.drawn);
  const delivered = day.steps.map((step) => step.delivered);
  const ticks = roundTicks(Math.max(...wanted, ...delivered), 'volume', system);
  const sides = { left: LEFT, right: width - RIGHT };
  const amounts = panel(
    { ...sides, top: TITLE, bottom: TITLE + AMOUNTS_HEIGHT },
    ticks.at(-1)?.value ?? 0,
  );
  const xAt = (hour: number): number => sides.left + (hour * (sides.right - sides.left)) / 24;
  const comes = steps(delivered, xAt, amounts.y);
  const want = steps(wanted, xAt, amounts.y);
  const tankTop = amounts.bottom + 22 + TITLE;
  const tank = panel({ ...sides, top: tankTop, bottom: tankTop + TANK_HEIGHT }, plan.volume);
  const missing = day.steps.flatMap(({ shortfall }, hour) =>
    shortfall > ROUNDING * (wanted[hour] ?? 0)
      ? [
          {
            kind: 'area' as const,
            matter: 'missing' as const,
            points: [
              { x: xAt(hour), y: amounts.y(drawn[hour] ?? 0) },
              { x: xAt(hour), y: amounts.y(wanted[hour] ?? 0) },
              { x: xAt(hour + 1), y: amounts.y(wanted[hour] ?? 0) },
              { x: xAt(hour + 1), y: amounts.y(drawn[hour] ?? 0) },
            ],
          },
        ]
      : [],
  );
  const line: readonly ChartPoint[] = [
    { x: xAt(0), y: tank.y(day.start) },
    ...day.steps.map(({ stored }, hour) => ({ x: xAt(hour + 1), y: tank.y(stored) })),
  ];
  return joined({ width, height: PLAN_CHART_HEIGHTS.day }, [
    withTicks(amounts, ticks),
    {
      shapes: [
        { kind: 'area', matter: 'water', points: filledTo(comes, amounts.bottom) },
        ...missing,
        { kind: 'line', matter: 'water', points: comes },
        { kind: 'line', matter: 'need', points: want },
      ],
      words: [
        title(`${unitShown('volume', system)} in each hour`, amounts),
        ...besideEnds(
          [endWord('comes', 'water', comes, amounts), endWord('wanted', 'need', want, amounts)],
          amounts,
        ),
        ...missingWords(plan, xAt, amounts),
        ...hoursAt(xAt, amounts.bottom + 15),
      ],
    },
    ...(plan.volume > 0
      ? [withBrim(tank, plan.volume, line, system), { words: hoursAt(xAt, tank.bottom + 15) }]
      : []),
  ]);
}

/** Over the hour in which most is missing. */
function missingWords(
  { day }: WaterPlan,
  xAt: (hour: number) => number,
  { y, left, right }: Panel,
): readonly ChartWord[] {
  const shortfalls = day.steps.map(({ shortfall }) => shortfall);
  const most = Math.max(...shortfalls);
  const highest = Math.max(...day.steps.map(({ wanted }) => wanted));
  if (!(most > ROUNDING * highest)) return [];
  const hour = shortfalls.indexOf(most);
  const x = Math.min(right - HALF_WORD, Math.max(left + HALF_WORD, xAt(hour + 0.5)));
  const top = y(day.steps[hour]?.wanted ?? 0);
  return [{ text: 'missing', x, y: top - 5, anchor: 'middle', matter: 'missing' }];
}

function hoursAt(xAt: (hour: number) => number, y: number): readonly ChartWord[] {
  return [0, 6, 12, 18, 24].map((hour) => ({
    text: hour === 24 ? '24 h' : String(hour),
    x: xAt(hour),
    y,
    anchor: 'middle',
    matter: 'axis',
  }));
}

/** A tank's surface under its brim. */
function withBrim(
  tank: Panel,
  volume: number,
  line: readonly ChartPoint[],
  system: System,
  least: readonly (readonly ChartPoint[])[] = [],
): Partial<Chart> {
  const brim = [
    { x: tank.left, y: tank.top },
    { x: tank.right, y: tank.top },
  ];
  return {
    axes: [{ from: { x: tank.left, y: tank.bottom }, to: { x: tank.right, y: tank.bottom } }],
    shapes: [
      { kind: 'area', matter: 'water', points: filledTo(line, tank.bottom) },
      { kind: 'line', matter: 'limit', points: brim },
      ...least.map((points) => ({ kind: 'line' as const, matter: 'least' as const, points })),
      { kind: 'line', matter: 'water', points: line },
    ],
    words: [
      title(`In the tank, ${unitShown('volume', system)}`, tank),
      axisWord(formatNumber(volume, 'volume', system), tank.left, tank.top),
      axisWord('0', tank.left, tank.bottom),
      ...besideEnds(
        [
          { text: 'full', x: tank.right + 6, y: tank.top + 4, anchor: 'start', matter: 'limit' },
          ...least.slice(-1).map((points) => endWord('least', 'least', points, tank)),
        ],
        tank,
      ),
    ],
  };
}

function axisWord(text: string, left: number, y: number): ChartWord {
  return { text, x: left - 6, y: y + 4, anchor: 'end', matter: 'axis' };
}

function title(text: string, { top }: Panel): ChartWord {
  return { text, x: 0, y: top - 10, anchor: 'start', matter: 'title' };
}

function endWord(
  text: string,
  matter: ChartWord['matter'],
  points: readonly ChartPoint[],
  { right, top }: Panel,
): ChartWord {
  return { text, x: right + 6, y: (points.at(-1)?.y ?? top) + 4, anchor: 'start', matter };
}

/** The year in one sentence, for those who do not see it. */
export function yearChartInWords(plan: WaterPlan, system: System): string {
  const { needed, delivered } = inMonth(plan.months, plan.hardestMonth);
  const show = (flow: number): string => formatQuantity(flow, 'daily', system);
  return `Needed and delivered in each month, days met, and the tank: in ${monthName(plan.hardestMonth)} ${show(delivered)} come and ${show(needed)} are needed; the need is met on ${plan.year.metCount} of 365 days. The numbers stand in the table below.`;
}

export function dayChartInWords(plan: WaterPlan, system: System): string {
  const least = Math.min(plan.day.start, ...plan.day.steps.map(({ stored }) => stored));
  const show = (volume: number): string => formatQuantity(volume, 'volume', system);
  return `A day in ${monthName(plan.hardestMonth)}, hour by hour: ${show(plan.day.total.delivered)} come and ${show(plan.day.total.wanted)} are wanted; the tank of ${show(plan.volume)} holds at least ${show(least)}. The numbers stand in the table below.`;
}
