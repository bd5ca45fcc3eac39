import { describe, expect, test } from 'vitest';
import { inverseNormal } from '../../numerics/inverse-normal.ts';
import { seededStream } from '../../numerics/seeded-stream.ts';
import { correctedBeats } from './corrected-beats.ts';
import { rhythmOf } from './rhythm.ts';
import { TAP_SPREAD, tappedBeats } from './tapped-beats.ts';

const even = (count: number, period: number): number[] =>
  Array.from({ length: count }, (_, i) => 3 + i * period);
const exact = { timeSpread: 0 };

describe('a row of beats', () => {
  test('in perfect step has its rate to the last digit and nothing missed', () => {
    const rhythm = rhythmOf(even(31, 0.75), exact);
    expect(rhythm?.beatFrequency).toBeCloseTo(1 / 0.75, 12);
    expect(rhythm?.countedFrequency).toBeCloseTo(1 / 0.75, 12);
    expect(rhythm).toMatchObject({ beats: 31, missed: 0, doubles: 0, isUneven: false });
    expect(rhythm?.spread).toBeLessThan(1e-12);
  });

  test('with beats missing keeps its rate, and says how many are missing and where', () => {
    const times = even(40, 0.5).filter((_, i) => ![7, 8, 20].includes(i));
    const rhythm = rhythmOf(times, exact);
    expect(rhythm?.beatFrequency).toBeCloseTo(2, 12);
    expect(rhythm?.missed).toBe(3);
    // 36 periods of 39 were counted.
    expect(rhythm?.countedFrequency).toBeCloseTo((2 * 36) / 39, 12);
    expect(rhythm?.gaps.filter(({ kind }) => kind === 'missed')).toMatchObject([
      { periods: 3 },
      { periods: 2 },
    ]);
  });

  test('with doubles keeps its rate, and counts no beat twice', () => {
    const times = [...even(30, 0.6), 3 + 5 * 0.6 + 0.2, 3 + 12 * 0.6 + 0.25].sort((a, b) => a - b);
    const rhythm = rhythmOf(times, exact);
    expect(rhythm?.beatFrequency).toBeCloseTo(1 / 0.6, 12);
    expect(rhythm).toMatchObject({ beats: 30, doubles: 2, missed: 0 });
  });

  test('that pauses does not count the pause', () => {
    const times = [...even(20, 0.5), ...even(20, 0.5).map((time) => time + 60)];
    expect(rhythmOf(times, exact)?.beatFrequency).toBeCloseTo(2, 12);
  });

  test('that mixes short beats with long ones is counted as it beats, and none is called missed', () => {
    const next = seededStream(1, 'mixed');
    const times = [0];
    for (let i = 0; i < 100; i++) {
      const long = next() < 0.3;
      times.push((times.at(-1) as number) + (long ? 0.38 : 0.21 + 0.07 * Math.round(next())));
    }
    const rhythm = rhythmOf(times, exact);
    expect(rhythm).toMatchObject({ isUneven: true, missed: 0 });
    expect(rhythm?.beatFrequency).toBeCloseTo(100 / (times.at(-1) as number), 9);
  });

  test('of too few beats says nothing, and a row that does not rise is a mistake', () => {
    expect(rhythmOf([1, 2, 3], exact)).toBeUndefined();
    expect(rhythmOf([], exact)).toBeUndefined();
    expect(() => rhythmOf([1, 2, 2, 3], exact)).toThrow(/rise/);
    expect(() => rhythmOf(even(9, 1), { timeSpread: -1 })).toThrow(/timeSpread/);
  });
});

/** How often the true rate lies within 1.645 spreads: nine times in ten when the spread is honest. */
function covered(make: (normal: () => number) => readonly number[], rate: number): number {
  let inside = 0;
  for (let seed = 0; seed < 300; seed++) {
    const next = seededStream(seed, 'taps');
    const rhythm = rhythmOf(
      make(() => inverseNormal(next() * 0.999998 + 1e-6)),
      {
        timeSpread: 0.01,
      },
    );
    if (rhythm && Math.abs(rhythm.beatFrequency - rate) < 1.645 * rhythm.spread) inside += 1;
  }
  return inside / 300;
}

describe('the spread of the rate', () => {
  test('holds the truth nine times in ten when each tap errs by itself', () => {
    const share = covered((normal) => even(40, 0.9).map((time) => time + 0.03 * normal()), 1 / 0.9);
    expect(share).toBeGreaterThan(0.85);
  });

  test('holds the truth nine times in ten when the ram itself wanders', () => {
    const share = covered((normal) => {
      let time = 0;
      return even(40, 0.9).map(() => {
        time += 0.9 + 0.03 * normal();
        return time;
      });
    }, 1 / 0.9);
    expect(share).toBeGreaterThan(0.85);
    expect(share).toBeLessThan(0.97);
  });
});

describe('taps', () => {
  test('in any order, with a key that bounces, give the rate and what it is good to', () => {
    const taps = even(21, 0.8).flatMap((time, i) => (i === 4 ? [time + 0.02, time] : [time]));
    const { rhythm, bounces, beats } = tappedBeats(taps.reverse());
    expect(bounces).toBe(1);
    expect(beats).toHaveLength(21);
    expect(rhythm?.beatFrequency).toBeCloseTo(1.25, 9);
    // Two ends, each good to a tap: √2 s/(n T²).
    expect(rhythm?.spread).toBeCloseTo((Math.SQRT2 * TAP_SPREAD) / 20 / 0.8 ** 2, 9);
  });

  test('three taps are too few', () => {
    expect(tappedBeats([1, 2, 3]).rhythm).toBeUndefined();
  });
});

describe('a person corrects what was heard', () => {
  const heard = even(20, 0.5).map((time) => ({ time, confidence: 0.8 }));

  test('a beat is taken out and put in again', () => {
    const without = correctedBeats(heard, [{ kind: 'remove', time: 5.04 }], exact);
    expect(without.beats).toHaveLength(19);
    expect(without.rhythm?.missed).toBe(1);
    const back = correctedBeats(without.beats, [{ kind: 'add', time: 5 }], exact);
    expect(back.beats.map(({ time }) => time)).toEqual(heard.map(({ time }) => time));
    expect(back.beats[4]?.confidence).toBe(1);
    expect(back.rhythm).toEqual(rhythmOf(even(20, 0.5), exact));
  });

  test('what points at nothing, or at a beat that is there, changes nothing and is told', () => {
    const corrections = [
      { kind: 'remove', time: 5.25 },
      { kind: 'add', time: 5.001 },
      { kind: 'add', time: Number.NaN },
    ] as const;
    const { beats, unused } = correctedBeats(heard, corrections, exact);
    expect(beats).toEqual(heard);
    expect(unused).toEqual(corrections);
  });
});
