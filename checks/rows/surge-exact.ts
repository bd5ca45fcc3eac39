/**
 * Exact solutions of a frictionless line whose end is shut: at once (a square wave for ever), or evenly over a time.
 * They are run on the nodes that a ram beats on. A wave crosses one reach in one step, so the grid makes no error of its own.
 */
import { LineSurge } from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import { lineOfSpeed } from '../line-of-speed.ts';
import type { TableRow } from '../read-table.ts';
import { halfLastDigit, type Ours, rowsOf } from './table-rows.ts';

/** Even, so that there is a node in the middle. */
const REACHES = 40;
/** The solutions do not depend on the bore. */
const BORE = 0.05;

export function rows(): readonly CheckRow[] {
  const printed = new Map<string, string>();
  const found = rowsOf('surge_exact', (row) => {
    printed.set(row.text('id'), row.text('value'));
    return oursFor(row);
  });
  return found.map((row) => {
    const rounding = halfLastDigit(printed.get(row.id) ?? '') / Math.abs(row.published);
    if (!('toleranceRelative' in row) || row.toleranceRelative >= rounding) return row;
    // Periods are printed with eight figures under a tolerance of 10⁻⁹.
    return {
      ...row,
      toleranceRelative: rounding,
      note: 'tolerance is half of the last digit printed',
    };
  });
}

/** The line of a row, with its end shut over a time; 0 for at once. */
export function closingLine(row: TableRow, closureTime: number): LineSurge {
  const { driveLine, water } = lineOfSpeed({
    length: row.number('length_m'),
    innerDiameter: BORE,
    waveSpeed: row.number('wave_speed_ms'),
  });
  const initialFlow = row.number('initial_velocity_ms') * (Math.PI / 4) * BORE ** 2;
  const flowAt = (time: number): number =>
    closureTime > 0 ? initialFlow * Math.max(0, 1 - time / closureTime) : 0;
  return new LineSurge({
    driveLine,
    water,
    fall: row.number('static_head_m'),
    end: { kind: 'flow', flowAt },
    initialFlow,
    reaches: REACHES,
    friction: () => 0,
  });
}

function oursFor(row: TableRow): Ours {
  const staticHead = row.number('static_head_m');
  const closureTime = row.number('closure_time_s');
  const isMiddle = row.number('x_over_L') === 0.5;
  const headAt = (time: number): number => {
    const line = closingLine(row, closureTime);
    const steps = Math.round(time / line.grid.timeStep) + 1;
    for (let i = 0; i < steps; i++) line.advance();
    return isMiddle ? line.headAt(REACHES / 2) : line.headAtEnd;
  };
  switch (row.text('quantity')) {
    case 'head':
      return { ours: () => headAt(row.number('time_s')) };
    case 'head_rise':
      return { ours: () => headAt(row.number('time_s')) - staticHead };
    case 'max_head_rise':
      return {
        ours: () => {
          const line = closingLine(row, closureTime);
          let highest = -Infinity;
          while (line.time < 2 * closureTime) {
            line.advance();
            highest = Math.max(highest, line.headAtEnd);
          }
          return highest - staticHead;
        },
      };
    case 'period':
      return { ours: () => timeOfChange(row, 'rise') };
    case 'critical_time':
      return { ours: () => timeOfChange(row, 'fall') };
    default:
      return { skip: `nothing of ours answers to ${row.text('quantity')}` };
  }
}

/** When the head at an end that was shut at once first falls, and when it next rises again. */
function timeOfChange(row: TableRow, wanted: 'rise' | 'fall'): number {
  const line = closingLine(row, 0);
  line.advance();
  const jump = line.headAtEnd - row.number('static_head_m');
  for (let i = 0; i < 8 * REACHES; i++) {
    const before = line.headAtEnd;
    line.advance();
    const change = line.headAtEnd - before;
    if (wanted === 'fall' ? change < -jump : change > jump) return line.time;
  }
  return Number.NaN;
}
