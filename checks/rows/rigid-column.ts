/**
 * How the flow grows in a pipe that is opened: final velocity, time constant, times to a share of it.
 *
 * Each number is checked twice: the closed formula, and (`/line`) the elastic line that a ram beats on, opened at its end. The
 * elastic line climbs in small steps, one for each return of a wave, so it is allowed one return of the wave besides.
 */
import {
  finalVelocity,
  growthTime,
  LineSurge,
  timeToVelocity,
  velocityAfter,
} from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import { lineOfSpeed } from '../line-of-speed.ts';
import { readTable, type TableRow } from '../read-table.ts';
import { identity, type Ours, rowsOf, withOurs } from './table-rows.ts';

/** Wave speed of a small steel pipe. */
const WAVE_SPEED = 1400;
const REACHES = 8;

export function rows(): readonly CheckRow[] {
  return [
    ...rowsOf('rigid_column', byFormula),
    ...readTable('hydraulics/rigid_column').flatMap((row) => {
      const line = byLine(row);
      // The line has no formula for a time constant; its times are rows of their own.
      if (!line) return [];
      const same = identity('rigid_column', row);
      const returnTime = (2 * row.number('length_m')) / WAVE_SPEED;
      const isTime = row.text('unit') === 's';
      return {
        ...same,
        id: `${same.id}/line`,
        quantity: row.text('quantity'),
        unit: row.text('unit'),
        published: row.number('value'),
        // Judgement: 0.1 % for velocities, since the mean along the line is smooth to second order.
        ...(isTime ? { toleranceAbsolute: returnTime } : { toleranceRelative: 1e-3 }),
        note: `elastic line at ${WAVE_SPEED} m/s; allowed one return of its wave, or 0.1 %`,
        ...withOurs(line),
      };
    }),
  ];
}

/** What is asked, read from the quantity's name. */
function timeAsked(
  row: TableRow,
): { readonly share: number; readonly startVelocity: number } | undefined {
  const found = /^time_to_(\d+)pct(?:_from_([\d.]+)_m\/s)?$/.exec(row.text('quantity'));
  if (!found) return undefined;
  const [, percent, start = '0'] = found;
  return { share: Number(percent) / 100, startVelocity: Number(start) };
}

function finalVelocityOf(row: TableRow): number {
  return finalVelocity({
    head: row.number('head_m'),
    length: row.number('length_m'),
    innerDiameter: row.number('diameter_m'),
    darcyFriction: row.number('darcy_f'),
    lossCoefficient: row.number('minor_K_total'),
  });
}

function byFormula(row: TableRow): Ours {
  const [head, length] = [row.number('head_m'), row.number('length_m')];
  const final = finalVelocityOf(row);
  const column = {
    growthTime: growthTime({ head, length, finalVelocity: final }),
    finalVelocity: final,
  };
  const asked = timeAsked(row);
  if (asked) {
    const { share, startVelocity } = asked;
    return { ours: () => timeToVelocity({ ...column, velocity: share * final, startVelocity }) };
  }
  switch (row.text('quantity')) {
    case 'final_velocity':
      return { ours: () => final };
    case 'time_constant_LV0_over_gH':
      return { ours: () => column.growthTime };
    case 'velocity_at_one_time_constant':
      return { ours: () => velocityAfter({ ...column, time: column.growthTime }) };
    default:
      return { skip: `nothing of ours answers to ${row.text('quantity')}` };
  }
}

/** The line opened to the air, every loss but the wall's at its mouth; velocities are means along the line. */
function byLine(row: TableRow): Ours | undefined {
  const innerDiameter = row.number('diameter_m');
  const darcy = row.number('darcy_f');
  const area = (Math.PI / 4) * innerDiameter ** 2;
  const opened = (startVelocity: number): LineSurge =>
    new LineSurge({
      ...lineOfSpeed({
        length: row.number('length_m'),
        innerDiameter,
        waveSpeed: WAVE_SPEED,
        entranceLoss: row.number('minor_K_total'),
      }),
      fall: row.number('head_m'),
      end: { kind: 'head', head: 0 },
      initialFlow: startVelocity * area,
      reaches: REACHES,
      friction: () => darcy,
    });
  const velocityOf = (line: LineSurge): number => line.meanFlow / area;
  /** Steps until something holds; gives the values before and after the step in which it came to hold. */
  const until = (line: LineSurge, holds: () => boolean) => {
    let before = { time: line.time, velocity: velocityOf(line) };
    let after = before;
    while (!holds()) {
      before = after;
      line.advance();
      after = { time: line.time, velocity: velocityOf(line) };
    }
    return { before, after };
  };
  const final = finalVelocityOf(row);
  const [head, length] = [row.number('head_m'), row.number('length_m')];
  const timeConstant = growthTime({ head, length, finalVelocity: final });
  const asked = timeAsked(row);
  if (asked) {
    return {
      ours: () => {
        const line = opened(asked.startVelocity);
        const wanted = asked.share * final;
        const { after } = until(
          line,
          () => velocityOf(line) >= wanted || line.time > 20 * timeConstant,
        );
        return after.time;
      },
    };
  }
  switch (row.text('quantity')) {
    case 'final_velocity':
      return {
        ours: () => {
          const line = opened(0);
          return until(line, () => line.time >= 10 * timeConstant).after.velocity;
        },
      };
    case 'velocity_at_one_time_constant':
      return {
        ours: () => {
          const line = opened(0);
          const { before, after } = until(line, () => line.time >= timeConstant);
          const share = (timeConstant - before.time) / (after.time - before.time);
          return before.velocity + share * (after.velocity - before.velocity);
        },
      };
    default:
      return undefined;
  }
}
