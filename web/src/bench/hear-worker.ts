/** The worker that counts beats: in recordings, in pressure logs, and in what a microphone brings block after block. */
import type { SoundFrames } from '@fallwright/engine';
import {
  beatsHeard,
  beatsInLog,
  logSummary,
  SOUND_TIME_SPREAD,
  SoundEar,
} from '@fallwright/engine';
import { readPressureLog, readWav } from '@fallwright/records';
import { formatQuantity, plainFigures, type System } from '@fallwright/units';
import { expose } from 'comlink';
import type { HeardView } from './heard-view.ts';
import { logTrace, soundTrace } from './heard-view.ts';

/** In a box: comlink’s types take a bare union apart. */
export interface Counted {
  readonly outcome:
    | { readonly kind: 'counted'; readonly view: HeardView }
    | { readonly kind: 'refused'; readonly reasons: readonly string[] };
}

/** Judgement: more than this share of samples cut off flattens the knocks. */
const CLIPPED = 1e-4;

/** What is heard now; another listening begins with another ear. */
let ear: SoundEar | undefined;

const refused = (problems: readonly { readonly line?: number; readonly message: string }[]) => ({
  outcome: {
    kind: 'refused' as const,
    reasons: problems.map(({ line, message }) =>
      line === undefined ? message : `Line ${line}: ${message}`,
    ),
  },
});

const work = {
  wav(bytes: ArrayBuffer): Counted {
    const read = readWav(new Uint8Array(bytes));
    if (!read.ok) return refused(read.problems);
    const { samples, sampleRate, notices } = read.value;
    return inSound(
      samples,
      sampleRate,
      notices.map(({ message }) => message),
    );
  },

  samples(samples: Float32Array, sampleRate: number): Counted {
    return inSound(samples, sampleRate, []);
  },

  log(text: string, system: System, column?: string): Counted {
    const read = readPressureLog(text, column === undefined ? {} : { column });
    if (!read.ok) return refused(read.problems);
    const { log, column: called, otherColumns, notices } = read.value;
    const heard = beatsInLog(log);
    const times = heard.kind === 'heard' ? heard.beats.map(({ time }) => time) : [];
    const { readings, lasts, lowest, highest, step, middlePeak } = logSummary(log, times);
    const head = (value: number): string => formatQuantity(value, 'head', system);
    const peaks =
      middlePeak === undefined ? '' : ` Half of the beats peak above ${head(middlePeak)}.`;
    return counted({
      of: 'log',
      heard,
      // Even between two readings. Source: a rectangular distribution, JCGM 100:2008, 4.3.7 (memory).
      timeSpread: step / Math.sqrt(12),
      trace: logTrace(log),
      about: `Log of ${plainFigures(lasts, 3)} s, ${readings.toLocaleString('en')} readings of “${called}”.`,
      notes: [
        ...notices.map(({ message }) => message),
        `Heads from ${head(lowest)} to ${head(highest)}.${peaks}`,
      ],
      column: called,
      otherColumns,
    });
  },

  begin(sampleRate: number): void {
    ear = new SoundEar(sampleRate);
  },

  hear(block: Float32Array): void {
    ear?.hear(block);
  },

  /** What was heard so far. */
  heard(): Counted {
    if (ear === undefined) throw new Error('a listening must be begun first');
    return viewOf(ear.heard(), 'Heard', []);
  },
};

function inSound(samples: Float32Array, sampleRate: number, notices: readonly string[]): Counted {
  const heard = new SoundEar(sampleRate);
  heard.hear(samples);
  return viewOf(heard.heard(), 'Recording of', notices);
}

function viewOf(frames: SoundFrames, called: string, notices: readonly string[]): Counted {
  return counted({
    of: 'sound',
    heard: beatsHeard(frames),
    timeSpread: SOUND_TIME_SPREAD,
    trace: soundTrace(frames),
    about: `${called} ${plainFigures(frames.lasts, 3)} s.`,
    notes: [
      ...notices,
      ...(frames.clipped > CLIPPED
        ? ['It is cut off at its loudest. Turn the recorder down, or hold it further away.']
        : []),
      ...(frames.start > 1 ? ['Only the last ten minutes of it are counted.'] : []),
    ],
  });
}

const counted = (view: HeardView): Counted => ({ outcome: { kind: 'counted', view } });

export type HearWork = typeof work;

expose(work);
