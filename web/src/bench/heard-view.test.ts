import { beatsHeard, rhythmOf, SoundEar } from '@fallwright/engine';
import { expect, test } from 'vitest';
import { kindOfFile, logTrace, outlineBetween, soundTrace } from './heard-view.ts';
import { marksOf, nextToLookAt, spanFor } from './marks.ts';
import { rateEntry } from './rate-entry.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

test('a file is known by its first bytes, and a table by its name', () => {
  expect(kindOfFile('a.mp3', bytes('RIFF....WAVE'))).toBe('wav');
  expect(kindOfFile('log', bytes('time (s),pressure (bar)\n0,1\n'))).toBe('log');
  expect(kindOfFile('a.ogg', bytes('OggS'))).toBe('sound');
  expect(kindOfFile('a.mp3', new Uint8Array([0xff, 0xfb, 0x90, 0]))).toBe('sound');
  // A spreadsheet may save its table in two bytes a letter: its reader says what to do.
  expect(kindOfFile('log.CSV', new Uint8Array([0xff, 0xfe, 0x74, 0]))).toBe('log');
});

test('a knock stands out of the trace where it was', () => {
  const ear = new SoundEar(8000);
  const samples = new Float32Array(16_000);
  for (let i = 0; i < 400; i++) samples[8000 + i] = Math.exp(-i / 100) * Math.sin(i * 0.55);
  ear.hear(samples);
  const trace = soundTrace(ear.heard());
  const loudest = trace.high.indexOf(Math.max(...trace.high));
  expect(Math.abs(trace.start + loudest * trace.step - 1)).toBeLessThan(0.03);
  expect(trace.high[10]).toBe(0);
  expect(beatsHeard(ear.heard()).kind).toBe('none');
});

test('a log keeps a spike of one reading, however far one looks from', () => {
  const times = Array.from({ length: 10_000 }, (_, i) => i * 0.002);
  const trace = logTrace({ times, heads: times.map((_, i) => (i === 5000 ? 10 : 0)) });
  expect(Math.max(...trace.high)).toBe(1);
  const outline = outlineBetween(trace, { from: 0, to: 20, width: 100, height: 50 });
  expect(outline).toContain(' 0.0');
});

const times = [0, 1, 2, 4, 5, 6, 7, 8, 9, 10];
const rhythm = rhythmOf(times, { timeSpread: 0.003 });
const beats = times.map((time) => ({ time, confidence: time === 7 ? 0.5 : 1 }));
const row = { beats, others: [{ time: 5.4, confidence: 1 }], rhythm };

test('marks: beats, where one is missing, other sounds; each a finger wide', () => {
  expect(marksOf({ ...row, from: 2, to: 5.5 })).toEqual([
    { kind: 'beat', time: 2, isSure: true },
    { kind: 'missed', time: 3, isSure: true },
    { kind: 'beat', time: 4, isSure: true },
    { kind: 'beat', time: 5, isSure: true },
    { kind: 'other', time: 5.4, isSure: true },
  ]);
  expect(spanFor(440, rhythm)).toBeCloseTo(10, 6);
});

test('the next to look at is a gap or an unsure beat, and the first again at the end', () => {
  expect(nextToLookAt(row, 0)).toBe(3);
  expect(nextToLookAt(row, 3)).toBe(7);
  expect(nextToLookAt(row, 8)).toBe(3);
});

test('a rate is written with its spread as a reading holds it', () => {
  if (rhythm === undefined) throw new Error('a rhythm');
  expect(rateEntry(rhythm)).toMatch(/^60\.\d+\/min ± 0\.\d+\/min$/);
});
