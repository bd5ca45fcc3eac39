/**
 * The front of cost and water: money across, water up. The front is a line of steps, as between two builds more money buys no
 * more water; beside it stand, small, those that lie near it. Without prices water alone is drawn, a bar for each build.
 */
import type { System } from '@fallwright/units';
import { formatNumber, formatQuantity, readQuantity, unitShown } from '@fallwright/units';
import { moneyInWords } from '../choice/reader.ts';
import type { Anchor, Drawing, Point, Shape } from './shapes.ts';
import { area, box, line } from './shapes.ts';
import { spreadLabels } from './spread-labels.ts';
import { roundTicks } from './ticks.ts';

export interface PlottedBuild {
  readonly key: string;
  /** In the currency's smallest unit. */
  readonly cost?: number;
  /** Flow at the tank. */
  readonly water: number;
  readonly isOnFront: boolean;
  /** Written beside it; empty for most. */
  readonly label: string;
}

export interface PlacedBuild {
  readonly key: string;
  readonly at: Point;
  readonly isOnFront: boolean;
  readonly isNamed: boolean;
}

export interface FrontPlot extends Drawing {
  /** Quantity and unit of the axis that goes up. */
  readonly title: string;
  /** Where the price axis begins, when not at nought. */
  readonly costFrom?: string;
  /** The builds on the front first, as the line goes. */
  readonly builds: readonly PlacedBuild[];
  /** Names of builds, to be drawn over the marks of the builds. */
  readonly labels: readonly Shape[];
}

interface Sheet {
  readonly width: number;
  readonly system: System;
  readonly currency: string;
  readonly need?: number;
}

const LEFT = 58;
const RIGHT = 18;
const TOP = 14;
const BOTTOM = 44;
const LETTER_WIDTH = 6.8;
/** Judgement: a little lower than wide, as a plot is read from left to right. */
const HEIGHT_PER_WIDTH = 0.56;
const HEIGHTS = { least: 230, most: 420 } as const;

export function frontPlot(builds: readonly PlottedBuild[], sheet: Sheet): FrontPlot {
  const { width, system, currency, need } = sheet;
  const height = Math.min(HEIGHTS.most, Math.max(HEIGHTS.least, HEIGHT_PER_WIDTH * width));
  const frame = { left: LEFT, right: width - RIGHT, top: TOP, bottom: height - BOTTOM };
  const costs = costAxis(
    builds.map(({ cost = 0 }) => cost),
    Math.max(2, Math.floor(width / 130)),
  );
  const mostWater = 1.15 * Math.max(1e-9, need ?? 0, ...builds.map(({ water }) => water));
  const across = (cost: number): number =>
    frame.left + ((cost - costs.from) / (costs.to - costs.from)) * (frame.right - frame.left);
  const up = (water: number): number =>
    frame.bottom - (water / mostWater) * (frame.bottom - frame.top);
  const daily = perShownUnit(system);
  const placed = builds.map(({ key, cost = 0, water, isOnFront, label }) => ({
    key,
    at: { x: across(cost), y: up(water) },
    isOnFront,
    isNamed: label !== '',
    label,
  }));
  const front = placed.filter(({ isOnFront }) => isOnFront).sort((a, b) => a.at.x - b.at.x);
  const waterTicks = roundTicks(mostWater / daily, 5).map((value) => value * daily);
  return {
    width,
    height,
    title: `${capital(unitShown('daily', system))} at the tank`,
    ...(costs.from > 0 ? { costFrom: wholeMoney(costs.from, currency) } : {}),
    builds: [...front, ...placed.filter(({ isOnFront }) => !isOnFront)].map(
      ({ label: _label, ...build }) => build,
    ),
    shapes: [
      ...waterTicks.flatMap((water): Shape[] => [
        line('grid', { x: frame.left, y: up(water) }, { x: frame.right, y: up(water) }),
        words(
          'tick',
          'end',
          { x: frame.left - 6, y: up(water) + 4 },
          formatNumber(water, 'daily', system),
        ),
      ]),
      ...costs.ticks.flatMap((cost, i): Shape[] => [
        line(
          'axis',
          { x: across(cost), y: frame.bottom },
          { x: across(cost), y: frame.bottom + 4 },
        ),
        words(
          'tick',
          i === 0 ? 'start' : 'middle',
          { x: across(cost), y: frame.bottom + 17 },
          wholeMoney(cost, currency),
        ),
      ]),
      line(
        'axis',
        { x: frame.left, y: frame.top },
        { x: frame.left, y: frame.bottom },
        { x: frame.right, y: frame.bottom },
      ),
      words('strong', 'end', { x: frame.right, y: height - 8 }, `price, ${currency}`),
      ...needLine(need, { frame, up, system }),
      ...(front.length === 0 ? [] : [line('front', ...steps(front, frame.right))]),
    ],
    labels: labelsBeside(placed, frame),
  };
}

/** Judgement: where even the cheapest takes up half of an axis from nought, that half would show nothing. */
const MOST_EMPTY = 0.5;

/** From nought, or where all prices lie far from it, from a round sum below the cheapest. */
function costAxis(
  costs: readonly number[],
  count: number,
): { readonly from: number; readonly to: number; readonly ticks: readonly number[] } {
  const least = Math.min(...costs);
  const most = Math.max(1, ...costs);
  if (costs.length === 0 || least < MOST_EMPTY * most) {
    const to = 1.06 * most;
    return { from: 0, to, ticks: roundTicks(to, count) };
  }
  const spread = Math.max(most - least, 0.05 * most);
  const [, step = spread] = roundTicks(1.5 * spread, count);
  const from = Math.max(0, Math.floor((least - 0.25 * spread) / step) * step);
  const to = most + 0.12 * spread;
  const ticks = Math.floor((to - from) / step + 1e-9);
  return { from, to, ticks: Array.from({ length: ticks + 1 }, (_, i) => from + i * step) };
}

/** Across to the price of the next build, then up to its water; on to the edge after the last. */
function steps(front: readonly { readonly at: Point }[], right: number): Point[] {
  const points = front.flatMap(({ at }, i): Point[] => {
    const before = front[i - 1];
    return before === undefined ? [at] : [{ x: at.x, y: before.at.y }, at];
  });
  const last = front.at(-1);
  return last === undefined ? [] : [...points, { x: right, y: last.at.y }];
}

interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function needLine(
  need: number | undefined,
  {
    frame,
    up,
    system,
  }: {
    readonly frame: Frame;
    readonly up: (water: number) => number;
    readonly system: System;
  },
): Shape[] {
  if (need === undefined) return [];
  const y = up(need);
  return [
    line('need', { x: frame.left, y }, { x: frame.right, y }),
    area('ink', [
      { x: frame.left, y },
      { x: frame.left - 9, y: y - 5.5 },
      { x: frame.left - 9, y: y + 5.5 },
    ]),
    words(
      'plain',
      'start',
      { x: frame.left + 6, y: y - 6 },
      `needed: ${formatNumber(need, 'daily', system)}`,
    ),
  ];
}

const LABEL_HEIGHT = 17;
/** Clear of the marks of neighbours on the front. */
const BELOW = 30;

/**
 * Under its build, where the front leaves room, on the side with more of it; where they crowd they spread up and down. The
 * two sides keep out of each other's way only where they meet.
 */
function labelsBeside(
  placed: readonly { readonly at: Point; readonly label: string }[],
  frame: Frame,
): Shape[] {
  const middle = (frame.left + frame.right) / 2;
  const named = placed
    .filter(({ label }) => label !== '')
    .map(({ at, label }) => {
      const width = label.length * LETTER_WIDTH;
      return at.x > middle
        ? {
            at,
            label,
            side: 'end' as const,
            edge: Math.max(frame.left + 4 + width, at.x - 6),
            width,
          }
        : {
            at,
            label,
            side: 'start' as const,
            edge: Math.min(frame.right - 4 - width, at.x + 6),
            width,
          };
    });
  const onLeft = named.filter(({ side }) => side === 'end');
  const onRight = named.filter(({ side }) => side === 'start');
  const reach = Math.max(...onRight.map(({ edge, width }) => edge + width));
  const isMeeting = onLeft.some(({ edge, width }) => edge - width < reach);
  return (isMeeting ? [named] : [onLeft, onRight]).flatMap((own) => {
    const middles = spreadLabels(
      own.map(({ at }) => ({ wanted: at.y + BELOW, height: LABEL_HEIGHT })),
      { from: frame.top, to: frame.bottom - 2, gap: 1 },
    );
    return own.flatMap(({ at, label, side, edge }, i): Shape[] => {
      const y = middles[i] as number;
      return [
        line('leader', at, { x: edge + (side === 'end' ? 3 : -3), y }),
        words('strong', side, { x: edge, y: y + 4 }, label),
      ];
    });
  });
}

const BAR = { height: 22, gap: 26, most: 12 } as const;

/** Water alone: a bar for each build, most water first; its name above it. */
export function waterBars(
  builds: readonly (PlottedBuild & { readonly what: string })[],
  { width, system, need }: Omit<Sheet, 'currency'>,
): FrontPlot {
  const shown = builds.slice(0, BAR.most);
  const most = 1.12 * Math.max(1e-9, need ?? 0, ...shown.map(({ water }) => water));
  const frame = { left: 16, right: width - 70, top: TOP, bottom: 0 };
  const across = (water: number): number =>
    frame.left + (water / most) * (frame.right - frame.left);
  const rowTop = (i: number): number => frame.top + i * (BAR.height + BAR.gap) + BAR.gap - 6;
  const bottom = rowTop(Math.max(0, shown.length - 1)) + BAR.height + 8;
  const daily = perShownUnit(system);
  const ticks = roundTicks(most / daily, Math.max(2, Math.floor(width / 140))).map(
    (value) => value * daily,
  );
  const longest = Math.floor((width - frame.left - 8) / LETTER_WIDTH);
  return {
    width,
    height: bottom + 24,
    title: `${capital(unitShown('daily', system))} at the tank`,
    builds: shown.map(({ key, isOnFront, label }, i) => ({
      key,
      at: { x: frame.left, y: rowTop(i) + BAR.height / 2 },
      isOnFront,
      isNamed: label !== '',
    })),
    labels: [],
    shapes: [
      ...ticks.flatMap((water): Shape[] => [
        line('grid', { x: across(water), y: frame.top }, { x: across(water), y: bottom }),
        words(
          'tick',
          'middle',
          { x: across(water), y: bottom + 16 },
          formatNumber(water, 'daily', system),
        ),
      ]),
      ...shown.flatMap(({ water, what, label }, i): Shape[] => {
        const y = rowTop(i);
        const name = label === '' ? what : `${label}: ${what}`;
        return [
          words(
            label === '' ? 'plain' : 'strong',
            'start',
            { x: frame.left, y: y - 6 },
            name.length > longest ? `${name.slice(0, longest - 1)}…` : name,
          ),
          area('water', box({ x: frame.left, y }, { x: across(water), y: y + BAR.height })),
          line('surface', { x: across(water), y }, { x: across(water), y: y + BAR.height }),
          words(
            'strong',
            'start',
            { x: across(water) + 6, y: y + BAR.height / 2 + 4.5 },
            formatNumber(water, 'daily', system),
          ),
        ];
      }),
      line(
        'axis',
        { x: frame.left, y: frame.top },
        { x: frame.left, y: bottom },
        { x: frame.right, y: bottom },
      ),
      ...(need === undefined
        ? []
        : [
            line('need', { x: across(need), y: frame.top - 2 }, { x: across(need), y: bottom }),
            words(
              'plain',
              'middle',
              { x: across(need), y: frame.top - 3 },
              `needed: ${formatQuantity(need, 'daily', system)}`,
            ),
          ]),
    ],
  };
}

function words(tone: 'plain' | 'strong' | 'tick', anchor: Anchor, at: Point, text: string): Shape {
  return { kind: 'words', tone, anchor, at, lines: [text] };
}

/** Flow of one of the unit that is shown, such as one litre a day: ticks are round in it. */
function perShownUnit(system: System): number {
  const read = readQuantity(system === 'metric' ? '1 L/day' : '1 gal/day', 'daily');
  if (!read.ok) throw new Error('one of a unit must read');
  return read.value.value;
}

/** Ticks are whole sums, so their pence are nought and left away. */
function wholeMoney(cost: number, currency: string): string {
  return moneyInWords(Math.round(cost), { system: 'metric', currency }).replace(
    /[.,]0+(?=\D*$)/,
    '',
  );
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
