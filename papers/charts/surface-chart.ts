/** A store that a ram draws down: where its surface stands, from the brim to the end or over a day. */
import type { Emptying, SurfaceAt } from '@fallwright/engine';
import { formatQuantity, plainFigures, type System, unitShown } from '@fallwright/units';
import { duration } from '../answered.ts';
import {
  besideEnds,
  type Chart,
  type ChartWord,
  filledTo,
  joined,
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
  const stops = course.findIndex(({ drop }) => Math.abs(drop - lowestOf(course)) < 1e-9);
  const stop = course[stops];
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
        ...(stop === undefined ? [] : [stopWord(emptying, stop, xAt, frame)]),
        ...timesAt(longest, xAt, frame.bottom + 15),
      ],
    },
  ]);
}

const lowestOf = (course: readonly SurfaceAt[]): number =>
  Math.max(...course.map(({ drop }) => drop));

/** What happens at the lowest point, beside it, over the water where there is room. */
function stopWord(
  { end }: Emptying,
  { time }: SurfaceAt,
  xAt: (time: number) => number,
  frame: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  },
): ChartWord {
  const text =
    end === 'keepsUp'
      ? 'stays here'
      : `${end === 'intakeUncovers' ? 'draws air' : 'stops'} after ${duration(time)}`;
  const isLeft = xAt(time) < (frame.left + frame.right) / 2;
  return {
    text,
    x: xAt(time) + (isLeft ? 6 : -6),
    y: frame.bottom - 8,
    anchor: isLeft ? 'start' : 'end',
    matter: 'strong',
  };
}

function timesAt(longest: number, xAt: (time: number) => number, y: number): readonly ChartWord[] {
  const [unit, word] =
    longest > 2 * DAY ? [DAY, 'days'] : longest > 2 * HOUR ? [HOUR, 'h'] : [60, 'min'];
  const count = longest / unit;
  const step = [1, 2, 3, 6, 12, 24, 48, 120, 240].find((size) => count / size <= 6) ?? count / 5;
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
  return `The surface sinks by ${height(emptying.drop)} of the ${height(depth)} over the intake, and after ${duration(emptying.time)} ${ends}${isOverADay(emptying) ? '; then the store fills again' : ''}.`;
}
