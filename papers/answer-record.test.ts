import { describe, expect, test } from 'vitest';
import { answerRecord } from './answer-record.ts';
import { answerOf, siteWith, VERDICTS } from './fixtures/answers.ts';

const site = siteWith();

/** Issue 2, section 3: a program may count on these. */
const KEYS = [
  'verdict',
  'handStrokes',
  'beatsPerMinute',
  'deliveredLitresPerDay',
  'wastedLitresPerMinute',
  'supplyLitresPerMinute',
  'rankineEfficiency',
  'daubuissonEfficiency',
  'closingFlowLitresPerMinute',
  'terminalFlowLitresPerMinute',
  'peakHeadMetres',
  'lowestHeadMetres',
  'reasons',
  'changes',
  'assumptions',
];

describe.each(VERDICTS)('%s', (kind) => {
  const record = answerRecord(answerOf(kind), site, 'metric');

  test('has every promised key, and survives JSON', () => {
    expect(Object.keys(record)).toEqual(expect.arrayContaining(KEYS));
    expect(JSON.parse(JSON.stringify(record))).toEqual(record);
    expect(record.verdict).toBe(kind);
  });

  test('has the numbers of a running ram only if it runs', () => {
    const runs = kind === 'runs' || kind === 'runsAfterHandStart';
    expect(record.deliveredLitresPerDay === null).toBe(!runs);
    expect(record.rankineEfficiency === null).toBe(!runs);
    expect(record.handStrokes === null).toBe(!runs);
    expect(record.whileWaterLasts === null).toBe(kind !== 'starves');
  });
});

test('units stand in the names', () => {
  const record = answerRecord(answerOf('runs'), site, 'us');
  expect(record.deliveredLitresPerDay).toBe(1063);
  expect(record.wastedLitresPerMinute).toBe(10.4);
  expect(record.beatsPerMinute).toBe(62);
  expect(record.changes[0]).toMatchObject({
    what: 'fall',
    unit: 'm',
    now: 1.9,
    runsFrom: 1.31,
    runsTo: 4.2,
  });
  expect(record.handStrokes).toBe(0);
});

test('words for programs have plain spaces', () => {
  expect(JSON.stringify(answerRecord(answerOf('runs'), site, 'metric'))).not.toContain('\u00a0');
});

test('a number that is not finite is never let out', () => {
  expect(() => answerRecord(answerOf('runs', { closingFlow: Number.NaN }), site, 'metric')).toThrow(
    'finite',
  );
});
