/** What was heard, ready to be drawn and corrected: how loud it was, or how high the head stood, along the seconds. */
import type { BeatsHeard, PressureLog, SoundFrames } from '@fallwright/engine';

export interface Trace {
  /** Middle of the first step. */
  readonly start: number;
  readonly step: number;
  /** From 0 to 1. A sound has its height alone, a log the least and the most of each step. */
  readonly high: Float32Array;
  readonly low?: Float32Array;
}

export interface HeardView {
  readonly of: 'sound' | 'log';
  readonly heard: BeatsHeard;
  /** How near each time is to its beat. */
  readonly timeSpread: number;
  readonly trace: Trace;
  /** Words on what was read, and what is worth knowing of it. */
  readonly about: string;
  readonly notes: readonly string[];
  /** The column of a log that was read, and those that could be read in its place. */
  readonly column?: string;
  readonly otherColumns?: readonly string[];
}

/** Judgement: what is 50 dB under the loudest is not seen beside it. */
const SHOWN_RANGE = 50;
/** Judgement: a finer step of a log is narrower than a pixel. */
const LOG_STEP = 0.005;

/** Loudness of each frame, on a scale of decibels under the loudest. */
export function soundTrace({ start, step, bands, count, power }: SoundFrames): Trace {
  const high = new Float32Array(count);
  let loudest = -Infinity;
  for (let frame = 0; frame < count; frame++) {
    let sum = 0;
    for (let band = 0; band < bands; band++) sum += power[frame * bands + band] ?? 0;
    const level = 10 * Math.log10(sum + 1e-20);
    high[frame] = level;
    loudest = Math.max(loudest, level);
  }
  for (let frame = 0; frame < count; frame++) {
    high[frame] = Math.max(0, 1 + ((high[frame] ?? 0) - loudest) / SHOWN_RANGE);
  }
  return { start, step, high };
}

/** Least and most head of each step; a step without a reading stays as the one before. */
export function logTrace({ times, heads }: PressureLog): Trace {
  const first = times[0] ?? 0;
  const lasts = (times.at(-1) ?? first) - first;
  const step = Math.max(LOG_STEP, lasts / 200_000);
  const count = Math.max(1, Math.ceil(lasts / step) + 1);
  const [high, low] = [
    new Float32Array(count).fill(-Infinity),
    new Float32Array(count).fill(Infinity),
  ];
  let [most, least] = [-Infinity, Infinity];
  for (const [i, time] of times.entries()) {
    const at = Math.floor((time - first) / step);
    const head = heads[i] ?? 0;
    high[at] = Math.max(high[at] ?? -Infinity, head);
    low[at] = Math.min(low[at] ?? Infinity, head);
    most = Math.max(most, head);
    least = Math.min(least, head);
  }
  const range = most > least ? most - least : 1;
  let before = { high: heads[0] ?? 0, low: heads[0] ?? 0 };
  for (let at = 0; at < count; at++) {
    const here = Number.isFinite(high[at]) ? { high: high[at] ?? 0, low: low[at] ?? 0 } : before;
    before = here;
    // The list is of single precision: what is least may come out a little under nought.
    high[at] = Math.max(0, (here.high - least) / range);
    low[at] = Math.max(0, (here.low - least) / range);
  }
  return { start: first + step / 2, step, high, low };
}

/** The trace between two times as a closed outline, one column a pixel at most. `y` is 0 at the top. */
export function outlineBetween(
  { start, step, high, low }: Trace,
  {
    from,
    to,
    width,
    height,
  }: {
    readonly from: number;
    readonly to: number;
    readonly width: number;
    readonly height: number;
  },
): string {
  const columns = Math.max(1, Math.round(width));
  const upper: string[] = [];
  const lower: string[] = [];
  const indexAt = (time: number): number => Math.round((time - start) / step);
  for (let column = 0; column <= columns; column++) {
    const begin = indexAt(from + (column / columns) * (to - from));
    const end = Math.max(begin + 1, indexAt(from + ((column + 1) / columns) * (to - from)));
    let [most, least] = [-1, 2];
    for (let at = Math.max(0, begin); at < Math.min(end, high.length); at++) {
      most = Math.max(most, high[at] ?? 0);
      least = Math.min(least, low === undefined ? 0 : (low[at] ?? 0));
    }
    if (most < 0) continue;
    const x = ((column / columns) * width).toFixed(1);
    upper.push(`${x} ${(height * (1 - most)).toFixed(1)}`);
    lower.push(`${x} ${(height * (1 - least)).toFixed(1)}`);
  }
  return upper.length === 0 ? '' : `M${[...upper, ...lower.reverse()].join('L')}Z`;
}

export type FileKind = 'wav' | 'log' | 'sound';

/** By its first bytes: text is a log, and sound that our own reader does not know goes to the browser. What calls itself a table is read as one. */
export function kindOfFile(name: string, start: Uint8Array): FileKind {
  const letters = String.fromCharCode(...start.subarray(0, 4));
  if (letters === 'RIFF' || letters === 'RF64') return 'wav';
  const isText =
    start.length > 0 &&
    start.every((byte) => byte >= 32 || byte === 9 || byte === 10 || byte === 13) &&
    !/^(ID3|OggS|fLaC|FORM)/.test(letters);
  return isText || /\.(csv|tsv|txt)$/i.test(name) ? 'log' : 'sound';
}
