/**
 * A recording as a WAV file holds it, mixed to one channel.
 *
 * The file comes from anyone: every size in it may be wrong, so what is there is counted and what is written is not believed.
 *
 * Source: Microsoft and IBM (1991), Multimedia Programming Interface and Data Specifications 1.0, RIFF WAVE; Microsoft (2001),
 * WAVE_FORMAT_EXTENSIBLE; EBU Tech 3306, RF64 (memory).
 */
import { LEAST_SAMPLE_RATE, MOST_SAMPLE_RATE } from '@fallwright/engine';
import type { Problem, ProblemKind } from '../problem.ts';

export interface Recording {
  /** −1 to 1, the mean of the channels. */
  readonly samples: Float32Array;
  /** In hertz. */
  readonly sampleRate: number;
  readonly channels: number;
  /** In seconds. */
  readonly lasts: number;
  readonly notices: readonly Problem[];
}

export type WavRead =
  | { readonly ok: true; readonly value: Recording }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Judgement: ten minutes of two channels at 96 kHz and 24 bits is 346 MB; a longer file holds more than a test. */
export const LONGEST_RECORDING = 400 * 1024 * 1024;
/** Judgement: recorders of two or a few channels; a larger number is a broken file. */
const MOST_CHANNELS = 32;

const PCM = 1;
const FLOAT = 3;
const EXTENSIBLE = 0xfffe;
/** Other codes that recorders write, in words. */
const OTHER_CODES: Readonly<Record<number, string>> = {
  2: 'ADPCM',
  6: 'A-law',
  7: 'µ-law',
  17: 'IMA ADPCM',
  80: 'MPEG',
  85: 'MP3',
};

interface Format {
  readonly code: number;
  readonly channels: number;
  readonly sampleRate: number;
  readonly bits: number;
}

export function readWav(bytes: Uint8Array): WavRead {
  if (bytes.length > LONGEST_RECORDING) {
    return refusal(
      'outOfRange',
      `This recording is longer than ${LONGEST_RECORDING / 1024 / 1024} MB. Cut out the minute or two that matter.`,
    );
  }
  const other = anotherFile(bytes);
  if (other !== undefined) return refusal('wrongFormat', other);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let format: Format | undefined;
  for (let at = 12; at + 8 <= bytes.length; ) {
    const name = nameAt(bytes, at);
    const written = view.getUint32(at + 4, true);
    const from = at + 8;
    const there = bytes.length - from;
    if (name === 'fmt ') {
      const read = formatAt(view, from, Math.min(written, there));
      if (typeof read === 'string') return refusal('wrongFormat', read);
      format = read;
    }
    if (name === 'data') {
      if (!format) {
        return refusal(
          'unreadable',
          'The sound stands before its format here. Save it anew as WAV.',
        );
      }
      return sound(view, { from, there, written }, format);
    }
    // Chunks begin at even places.
    at = from + written + (written % 2);
  }
  return refusal(
    'unreadable',
    format
      ? 'This file ends before its sound begins. Copy it from the recorder again.'
      : 'This file ends before it says how its sound is written. Copy it from the recorder again.',
  );
}

function sound(
  view: DataView,
  size: { readonly from: number; readonly there: number; readonly written: number },
  { code, channels, sampleRate, bits }: Format,
): WavRead {
  const width = bits / 8;
  const frame = channels * width;
  // A recorder that writes as it goes leaves nought or the largest number until it is stopped.
  const isOpen = size.written === 0 || size.written === 0xffffffff;
  const bytes = isOpen ? size.there : Math.min(size.written, size.there);
  const count = Math.floor(bytes / frame);
  if (count === 0) {
    return refusal(
      'unreadable',
      'There is no sound in this file. Was the recorder stopped at once?',
    );
  }
  const notices: Problem[] = [];
  if (!isOpen && size.written > size.there) {
    const share = Math.round((100 * size.there) / size.written);
    notices.push(
      notice(
        `The file is cut short: ${share} % of the sound that it announces is there, and was read.`,
      ),
    );
  }
  const sample = reader(view, code, bits);
  const samples = new Float32Array(count);
  let broken = 0;
  for (let i = 0; i < count; i++) {
    let sum = 0;
    for (let channel = 0; channel < channels; channel++) {
      sum += sample(size.from + i * frame + channel * width);
    }
    const mean = sum / channels;
    if (Number.isFinite(mean)) samples[i] = mean;
    else broken += 1;
  }
  if (broken > 0) {
    notices.push(notice(`${broken} samples are no numbers; they are taken as silence.`));
  }
  return {
    ok: true,
    value: { samples, sampleRate, channels, lasts: count / sampleRate, notices },
  };
}

/** One sample as −1 to 1. */
function reader(view: DataView, code: number, bits: number): (at: number) => number {
  if (code === FLOAT) {
    return bits === 32 ? (at) => view.getFloat32(at, true) : (at) => view.getFloat64(at, true);
  }
  switch (bits) {
    case 8:
      // Eight bits alone are counted from nought up.
      return (at) => (view.getUint8(at) - 128) / 128;
    case 16:
      return (at) => view.getInt16(at, true) / 2 ** 15;
    case 24:
      return (at) => (view.getUint16(at, true) + view.getInt8(at + 2) * 2 ** 16) / 2 ** 23;
    default:
      return (at) => view.getInt32(at, true) / 2 ** 31;
  }
}

/** The format, or why it cannot be read. */
function formatAt(view: DataView, from: number, size: number): Format | string {
  if (size < 16)
    return 'This file is cut short before its sound begins. Copy it from the recorder again.';
  let code = view.getUint16(from, true);
  if (code === EXTENSIBLE && size >= 26) code = view.getUint16(from + 24, true);
  const channels = view.getUint16(from + 2, true);
  const sampleRate = view.getUint32(from + 4, true);
  const bits = view.getUint16(from + 14, true);
  if (code !== PCM && code !== FLOAT) {
    const word = OTHER_CODES[code] ?? `in a way of its own (code ${code})`;
    return `The sound in this file is packed: ${word}. Save it as WAV with plain samples, 16 bits (PCM).`;
  }
  if (!(channels >= 1 && channels <= MOST_CHANNELS)) {
    return `This file says that it has ${channels} channels. Save it anew with one or two.`;
  }
  if (!(sampleRate >= LEAST_SAMPLE_RATE && sampleRate <= MOST_SAMPLE_RATE)) {
    return `This file says that it has ${sampleRate} samples a second; ${LEAST_SAMPLE_RATE} to ${MOST_SAMPLE_RATE} can be read. 44100 is usual.`;
  }
  const widths = code === FLOAT ? [32, 64] : [8, 16, 24, 32];
  if (!widths.includes(bits)) {
    return `This file says that a sample has ${bits} bits. Save it anew with 16.`;
  }
  return { code, channels, sampleRate, bits };
}

const OTHER_FILES: readonly (readonly [start: string, at: number, called: string])[] = [
  ['ID3', 0, 'an MP3 file'],
  ['OggS', 0, 'an Ogg file'],
  ['fLaC', 0, 'a FLAC file'],
  ['ftyp', 4, 'an M4A or MP4 file'],
  ['FORM', 0, 'an AIFF file'],
  ['RIFX', 0, 'a WAV file of the rarer kind, with its bytes turned round'],
  ['\u001aE\u00df\u00a3', 0, 'a WebM file'],
  ['#!AMR', 0, 'an AMR file'],
];

function anotherFile(bytes: Uint8Array): string | undefined {
  if (bytes.length === 0) return 'This file is empty. Choose a recording saved as WAV.';
  const start = nameAt(bytes, 0);
  if ((start === 'RIFF' || start === 'RF64') && nameAt(bytes, 8) === 'WAVE') return undefined;
  const known = OTHER_FILES.find(([letters, at]) =>
    [...letters].every((letter, i) => bytes[at + i] === letter.codePointAt(0)),
  );
  const isMp3 = bytes[0] === 0xff && ((bytes[1] ?? 0) & 0xe0) === 0xe0;
  const called = known?.[2] ?? (isMp3 ? 'an MP3 file' : undefined);
  if (called !== undefined) return `This is ${called}. Save the recording as WAV (PCM, 16 bits).`;
  return 'This is no WAV file. Save the recording as WAV (PCM, 16 bits).';
}

function nameAt(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + 4));
}

function notice(message: string): Problem {
  return { kind: 'unusual', field: '', message };
}

function refusal(kind: ProblemKind, message: string): WavRead {
  return { ok: false, problems: [{ kind, field: '', message }] };
}
