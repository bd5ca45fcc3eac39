import { describe, expect, test } from 'vitest';
import { seededStream } from '../../numerics/seeded-stream.ts';
import { type MadeRecording, madeRecording } from './fixtures/made-recording.ts';
import { scoreOf } from './fixtures/score.ts';
import { beatsHeard, beatsInSound } from './hear-beats.ts';
import { SoundEar } from './sound-ear.ts';

const made = ({ perMinute = 60, ...of }: Partial<MadeRecording> & { perMinute?: number }) =>
  madeRecording({ beatFrequency: perMinute / 60, lasts: 15, seed: 3, ...of });

describe('beats in made recordings', () => {
  test.each([
    { perMinute: 20, lasts: 40, noise: 'water', signalToNoise: 0 },
    { perMinute: 300, lasts: 10, noise: 'water', signalToNoise: 0 },
    { perMinute: 75, lasts: 20, noise: 'speech', signalToNoise: 0 },
    { perMinute: 130, noise: 'both', signalToNoise: 0 },
  ] as const)('$perMinute a minute beside $noise at $signalToNoise dB', (of) => {
    const score = scoreOf(made(of));
    expect(score.isHeard).toBe(true);
    expect(Math.abs(score.rateError)).toBeLessThan(0.01);
    expect(score.found).toBeGreaterThan(0.9);
    expect(score.right).toBeGreaterThan(0.9);
  });

  test('uneven beats keep their mean, and the spread of the periods is told', () => {
    const recording = made({
      perMinute: 80,
      lasts: 20,
      unevenness: 0.06,
      noise: 'water',
      signalToNoise: 6,
    });
    const heard = beatsInSound(recording.samples, recording.sampleRate);
    if (heard.kind !== 'heard') throw new Error(heard.why);
    expect(Math.abs(scoreOf(recording).rateError)).toBeLessThan(0.01);
    expect(heard.rhythm.periodSpread).toBeGreaterThan(0.045);
    expect(heard.rhythm.periodSpread).toBeLessThan(0.08);
  });

  test('missing beats are told and do not slow the rate', () => {
    const recording = made({
      perMinute: 90,
      lasts: 20,
      missing: 0.15,
      noise: 'water',
      signalToNoise: 6,
    });
    const heard = beatsInSound(recording.samples, recording.sampleRate);
    if (heard.kind !== 'heard') throw new Error(heard.why);
    expect(recording.missing).toBeGreaterThan(2);
    expect(Math.abs(heard.rhythm.missed - recording.missing)).toBeLessThanOrEqual(1);
    expect(60 * heard.rhythm.beatFrequency).toBeCloseTo(90, 0);
    expect(heard.rhythm.countedFrequency).toBeLessThan(0.95 * heard.rhythm.beatFrequency);
  });

  test('a valve that clicks again as it falls open is not counted twice', () => {
    const recording = made({ perMinute: 70, recoil: 0.8, noise: 'water', signalToNoise: 6 });
    const heard = beatsInSound(recording.samples, recording.sampleRate);
    if (heard.kind !== 'heard') throw new Error(heard.why);
    expect(60 * heard.rhythm.beatFrequency).toBeCloseTo(70, 0);
    expect(scoreOf(recording).right).toBeGreaterThan(0.95);
  });

  test('now and then a double beat: the rate stays, and the second sounds are told', () => {
    const recording = made({ perMinute: 70, lasts: 20, doubled: 0.15 });
    const heard = beatsInSound(recording.samples, recording.sampleRate);
    if (heard.kind !== 'heard') throw new Error(heard.why);
    expect(60 * heard.rhythm.beatFrequency).toBeCloseTo(70, 0);
    expect(recording.doubles.length).toBeGreaterThan(2);
    for (const double of recording.doubles) {
      expect(heard.others.some(({ time }) => Math.abs(time - double) < 0.05)).toBe(true);
    }
  });

  test('clear beats are sure ones', () => {
    const heard = beatsInSound(made({}).samples, 8000);
    if (heard.kind !== 'heard') throw new Error(heard.why);
    expect(Math.min(...heard.beats.map(({ confidence }) => confidence))).toBeGreaterThan(0.5);
  });
});

describe('where no ram beats none is heard', () => {
  test.each(['water', 'speech', 'both'] as const)('%s alone', (noise) => {
    const { samples, sampleRate } = made({ noBeats: true, noise });
    expect(beatsInSound(samples, sampleRate)).toEqual({ kind: 'none', why: 'noBeat' });
  });

  test('silence, hiss, hum, a steady level and one bang', () => {
    const count = 8000 * 5;
    const next = seededStream(1, 'hiss');
    expect(beatsInSound(new Float32Array(count), 8000)).toEqual({ kind: 'none', why: 'silent' });
    const quiet = new Float32Array(count).map(() => 1e-5 * (next() - 0.5));
    expect(beatsInSound(quiet, 8000)).toEqual({ kind: 'none', why: 'silent' });
    for (const sample of [
      () => 0.3 * (next() - 0.5),
      (i: number) => 0.5 * Math.sin((2 * Math.PI * 50 * i) / 8000),
      () => 0.4,
      (i: number) => (i === 20_000 ? 1 : 0),
    ]) {
      const samples = new Float32Array(count).map((_, i) => sample(i));
      expect(beatsInSound(samples, 8000)).toEqual({ kind: 'none', why: 'noBeat' });
    }
  });

  test('too short, empty, and full of numbers that are none', () => {
    expect(beatsInSound(new Float32Array(0), 8000)).toEqual({ kind: 'none', why: 'silent' });
    expect(beatsInSound(new Float32Array(900).fill(0.5), 8000)).toEqual({
      kind: 'none',
      why: 'tooShort',
    });
    const broken = new Float32Array(80_000).fill(Number.NaN);
    expect(beatsInSound(broken, 8000)).toEqual({ kind: 'none', why: 'silent' });
  });
});

describe('an ear', () => {
  test('hears the same whatever blocks the sound comes in, and at other sampling rates', () => {
    const { samples, sampleRate, beats } = made({ lasts: 8, sampleRate: 44_100 });
    const whole = new SoundEar(sampleRate);
    whole.hear(samples);
    const parts = new SoundEar(sampleRate);
    for (let from = 0; from < samples.length; from += 1237) {
      parts.hear(samples.subarray(from, from + 1237));
    }
    expect(parts.heard()).toEqual(whole.heard());
    const heard = beatsHeard(parts.heard());
    if (heard.kind !== 'heard') throw new Error(heard.why);
    expect(heard.beats).toHaveLength(beats.length);
    for (const [i, { time }] of heard.beats.entries()) {
      expect(Math.abs(time - (beats[i] as number))).toBeLessThan(0.02);
    }
  });

  test('gives the last part alone, with the times of the whole', () => {
    const { samples, sampleRate } = made({ lasts: 20 });
    const ear = new SoundEar(sampleRate);
    ear.hear(samples);
    const [whole, part] = [beatsHeard(ear.heard()), beatsHeard(ear.heard({ last: 10 }))];
    if (whole.kind !== 'heard' || part.kind !== 'heard') throw new Error('none heard');
    const late = whole.beats.filter(({ time }) => time > 10.1).map(({ time }) => time);
    expect(part.beats.map(({ time }) => time.toFixed(2))).toEqual(
      late.map((time) => time.toFixed(2)),
    );
  });

  test('says how loud it was and how much was cut off', () => {
    const ear = new SoundEar(8000);
    ear.hear(new Float32Array(100).map((_, i) => (i < 25 ? 1 : -0.5)));
    expect(ear.heard()).toMatchObject({ peak: 1, clipped: 0.25, lasts: 0.0125 });
  });

  test('keeps the last ten minutes of a long listening, with their times', () => {
    const ear = new SoundEar(4000);
    const block = new Float32Array(4000 * 10);
    for (let k = 0; k < 66; k++) ear.hear(block);
    const { start, step, count, lasts } = ear.heard();
    expect(lasts).toBe(660);
    expect(start).toBeGreaterThan(59);
    expect(start + step * count).toBeGreaterThan(659);
    expect(start + step * count).toBeLessThan(660.1);
  });

  test('refuses a rate of no recorder', () => {
    for (const rate of [0, 1000, 1e9, Number.NaN])
      expect(() => new SoundEar(rate)).toThrow(RangeError);
  });
});
