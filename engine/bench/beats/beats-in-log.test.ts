import { describe, expect, test } from 'vitest';
import { seededStream } from '../../numerics/seeded-stream.ts';
import { beatsInLog, logSummary } from './beats-in-log.ts';

/** Heads of a ram that beats: low while open, a spike that rings, then a recoil; read at uneven steps. */
function madeLog({
  period = 0.8,
  lasts = 40,
  step = 0.004,
  noise = 0.3,
  skip = [] as readonly number[],
  seed = 1,
}) {
  const next = seededStream(seed, 'log');
  const times: number[] = [];
  const heads: number[] = [];
  for (let time = 5; time < 5 + lasts; time += step * (0.6 + 0.8 * next())) {
    const since = time - 5.1;
    const beat = Math.floor(since / period);
    const t = since - beat * period;
    const rings =
      since >= 0 && !skip.includes(beat)
        ? 14 * Math.exp(-t / 0.03) * (1 + Math.cos(2 * Math.PI * 60 * t)) -
          4 * Math.exp(-(((t - 0.13) / 0.02) ** 2))
        : 0;
    times.push(time);
    heads.push(1 + rings + noise * (next() - 0.5));
  }
  return { times, heads };
}

describe('beats in a pressure log', () => {
  test.each([0.2, 0.35, 0.8, 3])('one every %s s, read at uneven steps', (period) => {
    const heard = beatsInLog(madeLog({ period, lasts: Math.max(20, 12 * period) }));
    if (heard.kind !== 'heard') throw new Error(heard.why);
    expect(Math.abs(heard.rhythm.period / period - 1)).toBeLessThan(0.002);
    expect(heard.rhythm).toMatchObject({ missed: 0, doubles: 0, isUneven: false });
  });

  test('beats that are missing are told', () => {
    const heard = beatsInLog(madeLog({ skip: [9, 20, 21] }));
    if (heard.kind !== 'heard') throw new Error(heard.why);
    expect(heard.rhythm.missed).toBe(3);
    expect(60 * heard.rhythm.beatFrequency).toBeCloseTo(75, 1);
  });

  test('the unit does not matter, nor where nought is', () => {
    const { times, heads } = madeLog({});
    const inMetres = beatsInLog({ times, heads });
    const shifted = beatsInLog({ times, heads: heads.map((head) => head + 10.2) });
    if (inMetres.kind !== 'heard' || shifted.kind !== 'heard') throw new Error('none heard');
    expect(shifted.beats.length).toBe(inMetres.beats.length);
  });

  test('read only ten times a second its beats of a second and a half are still counted', () => {
    const heard = beatsInLog(madeLog({ period: 1.5, step: 0.1, lasts: 120 }));
    // A spike of 30 ms falls between readings more often than not: what counts is that no wrong rate is told.
    if (heard.kind === 'heard') expect(heard.rhythm.period).toBeCloseTo(1.5, 1);
  });

  test('says how high it went, and what the readings were', () => {
    const log = madeLog({ noise: 0 });
    const heard = beatsInLog(log);
    if (heard.kind !== 'heard') throw new Error(heard.why);
    const summary = logSummary(
      log,
      heard.beats.map(({ time }) => time),
    );
    expect(summary.highest).toBe(Math.max(...log.heads));
    expect(summary.lowest).toBe(Math.min(...log.heads));
    // The spike is of 29 m; read every 4 ms a part of it is missed.
    expect(summary.middlePeak).toBeGreaterThan(20);
    expect(summary.middlePeak).toBeLessThanOrEqual(29);
    expect(summary.step).toBeCloseTo(0.004, 3);
    // Two readings and one: 2 m for 1 s, then 2 m to 4 m over 3 s.
    expect(logSummary({ times: [0, 1, 4], heads: [2, 2, 4] }, []).mean).toBeCloseTo(2.75, 12);
  });

  test('a flat log, noise, a gauge that drifts and a log of three readings have no beats', () => {
    const next = seededStream(2, 'flat');
    const times = Array.from({ length: 6000 }, (_, i) => 0.005 * i);
    const none = (head: (i: number) => number) =>
      beatsInLog({ times, heads: times.map((_, i) => head(i)) });
    expect(none(() => 2.5)).toEqual({ kind: 'none', why: 'silent' });
    expect(none((i) => i / 100)).toEqual({ kind: 'none', why: 'noBeat' });
    expect(none(() => next())).toEqual({ kind: 'none', why: 'noBeat' });
    expect(none((i) => Math.sin(i / 2000) + 0.1 * next())).toEqual({ kind: 'none', why: 'noBeat' });
    expect(beatsInLog({ times: [0, 1, 2], heads: [1, 2, 1] })).toEqual({
      kind: 'none',
      why: 'tooShort',
    });
    expect(beatsInLog({ times: [], heads: [] })).toEqual({ kind: 'none', why: 'tooShort' });
  });

  test('a log that is none is a mistake of the caller', () => {
    expect(() => beatsInLog({ times: [0, 1], heads: [1] })).toThrow(/as many/);
    expect(() => beatsInLog({ times: [0, 1, 0.5], heads: [1, 1, 1] })).toThrow(/fall/);
    expect(() => beatsInLog({ times: [0, Number.NaN], heads: [1, 1] })).toThrow(/finite/);
  });
});
