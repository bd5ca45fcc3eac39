/**
 * Pressure logs of the laboratory ram of 2019.
 *
 * No licence stands beside the logs, so they are not part of this project: they are read from beside the clone
 * when somebody has put them there, and the rows that need them are skipped, in sight, when nobody has.
 */
import { existsSync, readFileSync } from 'node:fs';
import { parseCsv } from './read-table.ts';

const LOGS = new URL('../../shared/reference/ram/logs/', import.meta.url);

/** Why rows of a log are skipped when it is not there. */
export const LOG_ABSENT = 'the log is not beside the clone (../shared/reference/ram/logs)';

export interface PressureLog {
  readonly time: readonly number[];
  /** Head at the waste valve. */
  readonly head: readonly number[];
}

/** A log by the id of its row, or nothing when it is not there. */
export function pressureLog(id: 'AC19-R1' | 'AC19-R3'): PressureLog | undefined {
  const file = new URL(`${id}.csv`, LOGS);
  if (!existsSync(file)) return undefined;
  const [, ...lines] = parseCsv(readFileSync(file, 'utf8'));
  return {
    time: lines.map(([time]) => Number(time)),
    head: lines.map(([, head]) => Number(head)),
  };
}

/** Judgement: hammer stands clear of 8 m and the open valve never above 3 m; half a beat is longer than 0.1 s. */
const HAMMER = 8;
const SHORTEST_BEAT = 0.1;

/** Beats of a log: each begins where the head first rises through the hammer's threshold. */
export function beatsOf({ time, head }: PressureLog): {
  readonly starts: readonly number[];
  readonly medianPeriod: number;
  readonly beatsPerMinute: number;
  readonly medianPeak: number;
} {
  const starts: number[] = [];
  for (let i = 1; i < head.length; i++) {
    const rises = (head[i - 1] as number) < HAMMER && (head[i] as number) >= HAMMER;
    const last = starts.at(-1);
    const isApart =
      last === undefined || (time[i] as number) - (time[last] as number) > SHORTEST_BEAT;
    if (rises && isApart) starts.push(i);
  }
  const periods: number[] = [];
  const peaks: number[] = [];
  for (let k = 1; k < starts.length; k++) {
    const [from, to] = [starts[k - 1] as number, starts[k] as number];
    periods.push((time[to] as number) - (time[from] as number));
    peaks.push(Math.max(...head.slice(from, to)));
  }
  const whole = periods.reduce((sum, period) => sum + period, 0);
  return {
    starts: starts.map((i) => time[i] as number),
    medianPeriod: median(periods),
    beatsPerMinute: (60 * periods.length) / whole,
    medianPeak: median(peaks),
  };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  const upper = sorted[half] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? Number.NaN) + upper) / 2;
}
