import { expect, test } from 'vitest';
import { decimate, firstAtOrAfter } from './decimate.ts';

const COUNT = 20_000;
const time = Float64Array.from({ length: COUNT }, (_, i) => i / 1000);
/** A slow swing with one spike, one sample wide. */
const SPIKE = 12_345;
const values = time.map((t, i) => (i === SPIKE ? 50 : Math.sin(t)));
const WHOLE = { from: 0, to: (COUNT - 1) / 1000 };

test('20,000 points become at most two a column, and a spike one sample wide stays', () => {
  const { times, values: kept } = decimate({ time, values }, { ...WHOLE, columns: 500 });
  expect(times.length).toBeLessThanOrEqual(2 * 501);
  expect(Math.max(...kept)).toBe(50);
  expect(times[kept.indexOf(50)]).toBe(SPIKE / 1000);
});

test('the lowest and the highest of every column are kept', () => {
  const columns = 200;
  const shown = decimate({ time, values }, { ...WHOLE, columns });
  const columnOf = (t: number): number => Math.floor((t / WHOLE.to) * columns);
  const extremes = (ts: ArrayLike<number>, vs: ArrayLike<number>): string[] => {
    const found = new Map<number, [number, number]>();
    for (let i = 0; i < ts.length; i++) {
      const [low, high] = found.get(columnOf(ts[i] as number)) ?? [Infinity, -Infinity];
      const v = vs[i] as number;
      found.set(columnOf(ts[i] as number), [Math.min(low, v), Math.max(high, v)]);
    }
    return [...found].map(([column, [low, high]]) => `${column}: ${low} ${high}`);
  };
  expect(extremes(shown.times, shown.values)).toEqual(extremes(time, values));
});

test('time never runs back', () => {
  const { times } = decimate({ time, values }, { from: 3.2, to: 17.9, columns: 333 });
  expect([...times].sort((a, b) => a - b)).toEqual([...times]);
});

test('few points are all kept, with one beyond each end', () => {
  const { times } = decimate({ time, values }, { from: 1, to: 1.01, columns: 500 });
  expect(times[0]).toBeLessThan(1);
  expect(times.at(-1)).toBeGreaterThan(1.01);
  expect(times).toHaveLength(13);
});

test('a moment is found among rising ones', () => {
  const rising = Float64Array.from([0, 1, 2, 2.5, 4]);
  expect(firstAtOrAfter(rising, -1)).toBe(0);
  expect(firstAtOrAfter(rising, 2)).toBe(2);
  expect(firstAtOrAfter(rising, 2.1)).toBe(3);
  expect(firstAtOrAfter(rising, 9)).toBe(5);
});
