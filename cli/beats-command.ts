/** Counts the beats in a recording or a pressure log. */
import { styleText } from 'node:util';
import {
  type BeatsHeard,
  beatsHeard,
  beatsInLog,
  type LogSummary,
  logSummary,
  SoundEar,
} from '@fallwright/engine';
import {
  beatStrip,
  beatsRecord,
  NONE_IN_WORDS,
  rateInFigures,
  rhythmInWords,
} from '@fallwright/papers';
import {
  LONGEST_LOG,
  LONGEST_RECORDING,
  type Problem,
  readPressureLog,
  readWav,
} from '@fallwright/records';
import { formatQuantity, plainFigures, type System, toBeatsPerMinute } from '@fallwright/units';
import { BadInput } from './bad-input.ts';
import { bytesOf, nameOf } from './read-file.ts';
import { pageWidth, wrapped } from './wrap.ts';

interface Counted {
  readonly of: 'sound' | 'log';
  readonly heard: BeatsHeard;
  readonly about: string;
  readonly notes: readonly string[];
  readonly log?: LogSummary;
}

/** Judgement: more than this share of samples cut off flattens the knocks. */
const CLIPPED = 1e-4;

export async function beatsCommand(
  file: string,
  options: { readonly json?: boolean; readonly column?: string; readonly units?: System },
): Promise<void> {
  const bytes = await bytesOf(file, { longest: LONGEST_RECORDING, called: 'recording or log' });
  const system = options.units ?? 'metric';
  const counted = isText(bytes)
    ? inLog(nameOf(file), bytes, options.column, system)
    : inSound(nameOf(file), bytes);
  const output = options.json
    ? JSON.stringify(beatsRecord(counted.heard, counted.log), null, 2)
    : page(counted).replaceAll('\u00a0', ' ');
  process.stdout.write(`${output}\n`);
}

/** A log is text, a recording never is. */
function isText(bytes: Uint8Array): boolean {
  const start = bytes.subarray(0, 512);
  return (
    start.length > 0 &&
    start.every((byte) => byte >= 32 || byte === 9 || byte === 10 || byte === 13) &&
    !startsAsRecording(start)
  );
}

function startsAsRecording(start: Uint8Array): boolean {
  return /^(RIFF|RF64|ID3|OggS|fLaC|FORM)/.test(String.fromCharCode(...start.subarray(0, 4)));
}

function inSound(name: string, bytes: Uint8Array): Counted {
  const read = readWav(bytes);
  if (!read.ok) throw new BadInput(name, read.problems);
  const { samples, sampleRate, lasts, channels, notices } = read.value;
  const ear = new SoundEar(sampleRate);
  ear.hear(samples);
  const frames = ear.heard();
  const clipped =
    frames.clipped > CLIPPED
      ? [
          'The recording is cut off at its loudest. Turn the recorder down, or hold it further away.',
        ]
      : [];
  const long = frames.start > 1 ? [`Only the last ten minutes of it are counted.`] : [];
  const sort = channels === 1 ? 'one channel' : `${channels} channels mixed to one`;
  return {
    of: 'sound',
    heard: beatsHeard(frames),
    about: `Recording of ${plainFigures(lasts, 3)} s, ${plainFigures(sampleRate, 6)} samples a second, ${sort}.`,
    notes: [...messages(notices), ...clipped, ...long],
  };
}

function inLog(
  name: string,
  bytes: Uint8Array,
  column: string | undefined,
  system: System,
): Counted {
  const text = new TextDecoder().decode(bytes.subarray(0, LONGEST_LOG + 1));
  const read = readPressureLog(text, column === undefined ? {} : { column });
  if (!read.ok) throw new BadInput(name, read.problems);
  const { log, column: called, notices } = read.value;
  const heard = beatsInLog(log);
  const times = heard.kind === 'heard' ? heard.beats.map(({ time }) => time) : [];
  const summary = logSummary(log, times);
  const head = (value: number): string => formatQuantity(value, 'head', system);
  const peaks =
    summary.middlePeak === undefined
      ? ''
      : ` Half of the beats peak above ${head(summary.middlePeak)}.`;
  return {
    of: 'log',
    heard,
    log: summary,
    about: `Log of ${plainFigures(summary.lasts, 3)} s, ${summary.readings.toLocaleString('en')} readings of “${called}”, one each ${plainFigures(1000 * summary.step, 3)} ms.`,
    notes: [
      ...messages(notices),
      `Heads from ${head(summary.lowest)} to ${head(summary.highest)}.${peaks} Spikes between two readings are not seen, so ratings are judged by more than this.`,
    ],
  };
}

function messages(notices: readonly Problem[]): readonly string[] {
  return notices.map(({ message }) => message);
}

function page({ of, heard, about, notes }: Counted): string {
  const item = (text: string): readonly string[] =>
    wrapped(text, { first: '  - ', indent: '    ' });
  if (heard.kind === 'none') {
    return [
      styleText(['bold', 'red'], 'No beats.'),
      ...wrapped(NONE_IN_WORDS[of][heard.why]),
      '',
      ...wrapped(about),
      ...notes.flatMap(item),
    ].join('\n');
  }
  const { rhythm, beats, others } = heard;
  const rate = rateInFigures(
    toBeatsPerMinute(rhythm.beatFrequency),
    toBeatsPerMinute(rhythm.spread),
  );
  const strip = beatStrip({ beats, others, rhythm, width: pageWidth() });
  const [, ...sentences] = rhythmInWords(rhythm, others.length);
  return [
    styleText(['bold', 'blue'], `${rate} a minute`),
    ...wrapped(`${beats.length} beats, one each ${plainFigures(rhythm.period, 3)} s on the whole.`),
    ...sentences.flatMap(item),
    '',
    strip.line,
    ...wrapped(
      `From ${seconds(strip.from)} to ${seconds(strip.to)}: | beat, ! beat that is not sure, + other sound, _ missing.`,
    ),
    '',
    ...wrapped(about),
    ...notes.flatMap(item),
    ...(of === 'sound' ? item(MUSIC) : []),
  ].join('\n');
}

/** What regular sound there is will be counted: a person must know that it was the ram. */
const MUSIC =
  'Music and machines beat regularly too and are counted as a ram would be. Record with none near.';

function seconds(time: number): string {
  return `${Math.max(0, time).toFixed(1)} s`;
}
