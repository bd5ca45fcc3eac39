/**
 * Beats counted in the two pressure logs of the laboratory ram of 2019 (source AC-SU19), against the figures that stand with the
 * logs and against a plain count of crossings of a level that a person set by eye.
 */
import { type BeatsHeard, beatsInLog, logSummary } from '@fallwright/engine';
import { toMetresOfWater } from '@fallwright/units';
import { expect, test } from 'vitest';
import { expectWithin } from './expect-within.ts';
import { beatsOf, LOG_ABSENT, type PressureLog, pressureLog } from './pressure-log.ts';

const r1 = pressureLog('AC19-R1');
const r3 = pressureLog('AC19-R3');
const ABSENT = r1 && r3 ? '' : ` (skipped: ${LOG_ABSENT})`;

function heardIn({ time, head }: PressureLog): Extract<BeatsHeard, { kind: 'heard' }> {
  const heard = beatsInLog({ times: time, heads: head });
  if (heard.kind !== 'heard') throw new Error(`no beats were found: ${heard.why}`);
  return heard;
}

test.skipIf(!r3)(`R3, an even ram: rate, period and peak of the log${ABSENT}`, () => {
  const log = r3 as PressureLog;
  const { rhythm, beats } = heardIn(log);
  // Logs' own README: about 217 a minute, median period 0.276 s, per-beat peak 276 kPa median.
  expectWithin(
    60 * rhythm.beatFrequency,
    217,
    { toleranceRelative: 0.01 },
    'a window of a run that keeps its step',
  );
  expectWithin(rhythm.periods.middle, 0.276, { toleranceRelative: 0.01 }, 'read every 2 ms');
  const { middlePeak } = logSummary(
    { times: log.time, heads: log.head },
    beats.map(({ time }) => time),
  );
  expectWithin(
    middlePeak ?? 0,
    toMetresOfWater(276e3),
    { toleranceRelative: 0.15 },
    'a shorter window of a run that drifts',
  );
  expect(rhythm).toMatchObject({ isUneven: false, missed: 0, doubles: 0 });
});

test.skipIf(!r1)(`R1, whose beats are of two lengths: each is counted once${ABSENT}`, () => {
  const log = r1 as PressureLog;
  const { rhythm, beats } = heardIn(log);
  const plain = beatsOf(log);
  expect(beats).toHaveLength(plain.starts.length);
  for (const [i, { time }] of beats.entries()) {
    expect(Math.abs(time - (plain.starts[i] as number))).toBeLessThan(0.03);
  }
  expect(rhythm.isUneven).toBe(true);
  // Logs' own README: about 229 a minute, median period 0.245 s, over a longer stretch of the run.
  expectWithin(
    60 * rhythm.beatFrequency,
    229,
    { toleranceRelative: 0.05 },
    'a shorter window of an uneven run',
  );
  expectWithin(
    rhythm.periods.middle,
    0.245,
    { toleranceRelative: 0.1 },
    'a shorter window of an uneven run',
  );
});
