import { describe, expect, test } from 'vitest';
import { answerRecord } from './answer-record.ts';
import { answerOf, siteWith } from './fixtures/answers.ts';
import { levelBookRows, measuredInWords } from './measured.ts';
import { reasonsInWords } from './reasons.ts';
import { fromFullStoreInWords } from './start-up-words.ts';

const FLOW = '{ flow: 14 L/min }';
const BUCKET = '{ method: bucket, volume: 10 L, times: [42 s, 44.5 s, 43 s], date: 2026-08-19 }';
const BOOK =
  'fall: { levels: [ { at: water, back: 0.4 m }, { at: ram, fore: 2.31 m, back: 2.33 m }, { at: water, fore: 0.416 m } ], between: [water, ram] }';

function words(from: string, to: string): string {
  return measuredInWords(siteWith(from, to), 'metric').join('\n').replaceAll('\u00a0', ' ');
}

describe('what was measured, in words', () => {
  test('nothing when the file holds quantities only', () => {
    expect(measuredInWords(siteWith(), 'metric')).toEqual([]);
    expect(answerRecord(answerOf('runs'), siteWith(), 'metric').measured).toEqual({
      flow: null,
      supply: null,
      fall: null,
      lift: null,
    });
  });

  test('one method, with its readings', () => {
    expect(words(FLOW, `{ gauging: [ ${BUCKET} ] }`)).toBe(
      'The flow, 13.90 ± 0.36 L/min, was measured by a timed container on 2026-08-19: the mean of three fillings, 43.2 s, which scatter by 1.3 s.',
    );
  });

  test('the written flow is said to be used when there is one', () => {
    expect(words(FLOW, `{ flow: 14 L/min, gauging: [ ${BUCKET} ] }`)).toContain(
      'The flow that is written, 14 L/min, is used in its place.',
    );
  });

  test('which limit binds', () => {
    expect(words(FLOW, '{ flow: 14 L/min, drySeason: 9 L/min, share: 50 % }')).toBe(
      'The dry-season flow, 9 L/min, limits the supply, as it is less than 14 L/min. Of that, 50 % may be taken, so the ram is counted on 4.5 L/min.',
    );
    expect(words(FLOW, '{ flow: 14 L/min, drySeason: 20 L/min }')).toContain('does not limit');
    expect(words(FLOW, '{ flow: 14 L/min, share: 50 % }')).toBe(
      'Of the flow, 14 L/min, 50 % may be taken, so the ram is counted on 7 L/min.',
    );
  });

  test('a level book, with its closing error', () => {
    // Closes 0.4 − 2.31 + 2.33 − 0.416 = 4 mm out; 5 mm √2 are allowed; half of it at the ram.
    expect(words('fall: 1.9 m', BOOK)).toBe(
      'The fall, 1.912 ± 0.002 m, is from a level book of 3 points and two set-ups, which closes 4 mm out (7.1 mm are allowed); that was shared out by set-ups.',
    );
    const rows = levelBookRows(siteWith('fall: 1.9 m', BOOK).fall, 'metric');
    expect(rows.map(({ level }) => level)).toEqual(['0.000', '−1.910', '0.004']);
    expect(rows.map(({ adjusted }) => adjusted)).toEqual(['0.000', '−1.912', '0.000']);
    expect(rows.map(({ instrument }) => instrument)).toEqual(['0.400', '0.420', '']);
  });

  test('coarse heights are called so', () => {
    expect(words('fall: 1.9 m', 'fall: { satellite: [312 m, 310 m] }')).toBe(
      'The fall, 2.0 ± 7.1 m, is the difference of two heights by satellite. That is too coarse to choose a ram by.',
    );
    expect(words('lift: 12 m', 'lift: { hops: [4 m, 4 m, 4 m], each: 1 cm }')).toBe(
      'The lift, 12.000 ± 0.017 m, is the sum of three hops.',
    );
    expect(words('fall: 1.9 m', 'fall: { gauge: 0.19 bar, class: 1 %, range: 0.4 bar }')).toBe(
      'The fall, 1.937 ± 0.024 m, is from a gauge that read 0.19 bar, 1.94 m of water over it; its class alone lets it err by 0.041 m.',
    );
  });

  test('the record has the same with units in its names', () => {
    const site = siteWith(FLOW, `{ gauging: [ ${BUCKET} ], share: 50 % }`);
    const { measured } = answerRecord(answerOf('runs'), site, 'metric');
    expect(measured.flow).toMatchObject({
      litresPerMinute: 13.8996,
      methods: [{ method: 'bucket', readings: 3, outside: [], doubts: [] }],
    });
    expect(measured.supply).toEqual({ litresPerMinute: 6.94981, limitedBy: 'flow', share: 0.5 });
    expect(JSON.parse(JSON.stringify(measured))).toEqual(measured);
  });
});

test('a store says how it ends and what it gives over a day', () => {
  const emptying = {
    end: 'intakeUncovers',
    time: 7200,
    drop: 0.5,
    delivered: 0.088,
    dailyVolume: 0.072,
    meanDelivery: 0.072 / 86_400,
    fromFull: [],
    overADay: [],
  } as const;
  const plain = (text: string | undefined) => text?.replaceAll('\u00a0', ' ');
  const sinking = answerOf('starves', { drainTime: 7200, emptying });
  expect(plain(fromFullStoreInWords(sinking, 'metric'))).toBe(
    'From full, the store lasts about 2 hours, in which 88 L reach the tank. Then the intake comes out of the water. Left to fill again and started once a day, the ram brings 72 L a day, 0.05 L/min on average.',
  );
  const record = answerRecord(sinking, siteWith(), 'metric');
  expect(record).toMatchObject({
    deliveredFromFullStoreLitres: 88,
    storeEnd: 'intakeUncovers',
    averageFromStoreLitresPerDay: 72,
  });
  const needs = plain(reasonsInWords(sinking, siteWith(), 'metric').at(-1));
  expect(needs).toBe(
    '900 L a day are needed, and 72 L a day come when it is started once a day: 8 % of the need.',
  );
  const kept = answerOf('runs', { emptying: { ...emptying, end: 'keepsUp', time: Infinity } });
  expect(plain(fromFullStoreInWords(kept, 'metric'))).toMatch(/^From full, the surface sinks by/);
});
