import { expect, test } from 'vitest';
import { withUnitOfOthers } from './bare-number.ts';
import {
  flowContradiction,
  flowResult,
  gaugingResult,
  heightContradiction,
  heightResult,
} from './results.ts';

const BUCKET = { method: 'bucket', volume: '10 L', times: ['42 s', '44.5 s', '43 s'] };
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

test('one measurement is told with its mean, its spread and its readings', () => {
  const result = gaugingResult(BUCKET, 'metric');
  if (result.kind !== 'known') throw new Error(result.faults.join());
  expect(plain(result.figure)).toBe('13.90 ± 0.36 L/min');
  expect(plain(result.how)).toMatch(/^By a timed container: the mean of three fillings, 43.2 s,/);
  expect(result.doubts).toEqual([]);
});

test('one reading alone is used, and said to be one', () => {
  const result = gaugingResult({ ...BUCKET, times: ['42 s'] }, 'metric');
  expect(result.kind === 'known' && result.doubts).toEqual([
    expect.stringMatching(/one reading says nothing of how far readings scatter/),
  ]);
});

test('a weir outside its range is worked out, with each condition named', () => {
  const result = gaugingResult(
    { method: 'v-notch', angle: '90°', head: ['20 mm', '21 mm', '20 mm'], crestHeight: '0.05 m' },
    'metric',
  );
  expect(result.kind === 'known' && plain(result.doubts.join(' '))).toMatch(
    /the head is 20 mm, and under 50 mm water clings.*the crest stands 0.05 m over the bed/,
  );
});

test('what a measurement lacks is said while it is taken', () => {
  const result = gaugingResult({ method: 'bucket', times: ['42 s'] }, 'metric');
  expect(result.kind === 'waits' && result.faults.join()).toBe(
    'Still needed: what it holds to the mark.',
  );
});

test('measurements that contradict make a wider figure and a warning of their own', () => {
  const quicker = { ...BUCKET, times: ['30 s', '30.5 s', '30 s'] };
  const unfinished = { method: 'float' };
  const document = { source: { gauging: [unfinished, BUCKET, quicker] } };
  const result = flowResult(document, 'metric');
  expect(result?.count).toBe(2);
  expect(result?.doubts).toEqual([expect.stringMatching(/further apart than the two spreads/)]);
  expect(result?.how).toMatch(/the spread is wider for it/);
});

test('a written flow that the readings contradict is told', () => {
  const document = { source: { flow: '25 L/min', gauging: [BUCKET] } };
  expect(flowContradiction(document, 'flow', 'metric').join()).toMatch(/The written one is used/);
});

const LOOP = {
  levels: [
    { at: 'water', back: '0.412 m' },
    { at: 'ram', fore: '2.300 m', back: '2.310 m' },
    { at: 'water', fore: '0.416 m' },
  ],
};

test('a level book that closes asks between which points, then shares its error out', () => {
  const open = heightResult({ fall: LOOP }, 'fall', 'metric').result;
  expect(open.kind === 'waits' && open.faults.join()).toMatch(/comes back to water/);
  const { result, rows } = heightResult(
    { fall: { value: '1.9 m', ...LOOP, between: ['water', 'ram'] } },
    'fall',
    'metric',
  );
  if (result.kind !== 'known') throw new Error(result.faults.join());
  expect(plain(result.figure)).toBe('1.891 ± 0.003 m');
  expect(plain(result.how)).toMatch(/closes 6 mm out \(7.1 mm are allowed\).*by set-ups/);
  expect(rows.map(({ level, adjusted }) => [level, adjusted])).toEqual([
    ['0.000', '0.000'],
    ['−1.888', '−1.891'],
    ['0.006', '0.000'],
  ]);
});

test('heights by satellite are told to be too coarse, and a far written height to disagree', () => {
  const { result, isCoarse } = heightResult(
    { lift: { satellite: ['312 m', '288 m'] } },
    'lift',
    'metric',
  );
  expect(isCoarse).toBe(true);
  expect(result.kind === 'known' && result.doubts).toEqual([
    expect.stringMatching(/too coarse to choose a ram by/),
  ]);
  const fall = { value: '3 m', hops: ['1.2 m', '0.72 m'] };
  expect(heightContradiction({ fall }, 'fall', 'metric')).toHaveLength(1);
});

test('a bare number takes the unit of the reading before it, and nothing is guessed without one', () => {
  expect(withUnitOfOthers('44.5', ['42 s', ''], 'time')).toBe('44.5 s');
  expect(withUnitOfOthers('-0.3', ['1.2 m'], 'staff')).toBe('-0.3 m');
  expect(withUnitOfOthers('44.5', [], 'time')).toBeUndefined();
  expect(withUnitOfOthers('44 min', ['42 s'], 'time')).toBeUndefined();
  expect(withUnitOfOthers('quick', ['42 s'], 'time')).toBeUndefined();
});
