/** A store that a ram draws down: where its surface stands, from the brim to the end or over a day. */
import type { Emptying, SurfaceAt } from '@fallwright/engine';
import { formatQuantity, plainFigures, type System, unitShown } from '@fallwright/units';
import { duration } from '../answered.ts';
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
  withTicks,
} from './chart.ts';

const LEFT = 46;
const RIGHT = 70;
const TOP = 40;
const HEIGHT = 130;
const DAY = 86_400;
const HOUR = 3600;

export const SURFACE_CHART_HEIGHT = TOP + HEIGHT + 26;

/**
 * A store that is used up within a day is drawn over the day, with its refilling; one that lasts longer, or sinks to a level
 * that its inflow keeps, from the brim on.
 */
export function isOverADay({ end, time }: Emptying): boolean {
  return end !== 'keepsUp' && time < DAY;
}

function courseOf(emptying: Emptying): readonly SurfaceAt[] {
  if (isOverADay(emptying)) return emptying.overADay;
  const { fromFull, end } = emptying;
  const last = fromFull.at(-1);
  if (end !== 'keepsUp' || !last) return fromFull;
  // The level that is kept, shown for as long again as it took to come down to it.
  return [...fromFull, { time: Math.max(2 * last.time, HOUR), drop: last.drop }];
}

export function surfaceChart(
  emptying: Emptying,
  depth: number,
  { width, system }: { readonly width: number; readonly system: System },
): Chart {
  const course = courseOf(emptying);
  const longest = isOverADay(emptying) ? DAY : (course.at(-1)?.time ?? HOUR);
  const ticks = roundTicks(depth, 'waterDepth', system);
  const top = Math.max(ticks.at(-1)?.value ?? depth, depth);
  const frame = panel({ left: LEFT, right: width - RIGHT, top: TOP, bottom: TOP + HEIGHT }, top);
  const xAt = (time: number): number => LEFT + (time / longest) * (frame.right - LEFT);
  const line = course.map(({ time, drop }) => ({ x: xAt(time), y: frame.y(depth - drop) }));
  const brim = frame.y(depth);
  const lowest = Math.max(...line.map(({ y }) => y));
  const stop = line.find(({ y }) => y > lowest - 1e-6);
  return joined({ width, height: SURFACE_CHART_HEIGHT }, [
    withTicks(frame, ticks),
    {
      shapes: [
        { kind: 'area', matter: 'water', points: filledTo(line, frame.bottom) },
        {
          kind: 'line',
          matter: 'limit',
          points: [
            { x: frame.left, y: brim },
            { x: frame.right, y: brim },
          ],
        },
        { kind: 'line', matter: 'water', points: line },
      ],
      words: [
        {
          text: `Water over the intake, ${unitShown('waterDepth', system)}`,
          x: 0,
          y: 14,
          anchor: 'start',
          matter: 'title',
        },
        ...besideEnds(
          [
            { text: 'full', x: frame.right + 6, y: brim + 4, anchor: 'start', matter: 'limit' },
            {
              text: 'intake',
              x: frame.right + 6,
              y: frame.bottom + 4,
              anchor: 'start',
              matter: 'limit',
            },
          ],
          { top: frame.top, bottom: frame.bottom + 4 },
        ),
        ...timesAt(longest, xAt, frame.bottom + 15),
      ],
    },
    ...(stop === undefined ? [] : [stopWord(emptying, stop, frame)]),
  ]);
}

/** What happens at the lowest point: over the brim, with a line down to it, or over the level that is kept. */
function stopWord(
  { end, time }: Emptying,
  { x, y }: ChartPoint,
  { left, right, top }: Panel,
): Pick<Chart, 'words' | 'grid'> {
  const isLeft = x < (left + right) / 2;
  if (end === 'keepsUp') {
    return {
      grid: [],
      words: [{ text: 'stays here', x: right - 6, y: y - 6, anchor: 'end', matter: 'strong' }],
    };
  }
  return {
    grid: [{ from: { x, y: top - 4 }, to: { x, y } }],
    words: [
      {
        text: `${end === 'intakeUncovers' ? 'draws air' : 'stops'} after ${duration(time)}`,
        x,
        y: top - 9,
        anchor: isLeft ? 'start' : 'end',
        matter: 'strong',
      },
    ],
  };
}

const MINUTES = { unit: 60, word: 'min', steps: [1, 2, 5, 10, 20, 30] };
const TIME_UNITS = [
  { unit: DAY, word: 'days', steps: [1, 2, 5, 10, 20, 50, 100, 200] },
  { unit: HOUR, word: 'h', steps: [1, 2, 3, 6, 12] },
  MINUTES,
];

function timesAt(longest: number, xAt: (time: number) => number, y: number): readonly ChartWord[] {
  const { unit, word, steps } = TIME_UNITS.find((one) => longest > 2 * one.unit) ?? MINUTES;
  const count = longest / unit;
  const step = steps.find((size) => count / size <= 6) ?? count / 5;
  const marks = Array.from({ length: Math.floor(count / step + 1e-9) + 1 }, (_, i) => i * step);
  return marks.map((mark, index) => ({
    text: index === marks.length - 1 ? `${plainFigures(mark, 3)} ${word}` : plainFigures(mark, 3),
    x: xAt(mark * unit),
    y,
    anchor: 'middle',
    matter: 'axis',
  }));
}

export function surfaceChartInWords(emptying: Emptying, depth: number, system: System): string {
  const height = (metres: number): string => formatQuantity(metres, 'waterDepth', system);
  if (emptying.end === 'keepsUp') {
    return `The surface sinks by ${height(emptying.drop)} of the ${height(depth)} over the intake and stays there.`;
  }
  const ends = emptying.end === 'intakeUncovers' ? 'the intake draws air' : 'the ram stops';
  return `The surface sinks by ${height(emptying.drop)} of the ${height(depth)} over the intake, and after ${duration(emptying.time)} ${ends}${afterwards(emptying)}.`;
}

function afterwards(emptying: Emptying): string {
  if (!isOverADay(emptying)) return '';
  const fills = (emptying.overADay.at(-1)?.drop ?? 0) < emptying.drop;
  return fills
    ? '; then the store fills again'
    : '; nothing runs in, so it is taken as filled once a day';
}
