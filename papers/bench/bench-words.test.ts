import {
  answerReading,
  type BenchReading,
  beatAtHead,
  type Measured,
  type ReadingAnswer,
  rhythmOf,
} from '@fallwright/engine';
import { readTest, settingsOf } from '@fallwright/records';
import { describe, expect, test } from 'vitest';
import { beatStrip, rateInFigures, rhythmInWords } from './beat-words.ts';
import { doubtInWords } from './doubt-words.ts';
import { findings } from './findings.ts';
import { residualRows } from './reading-rows.ts';
import { beatsRecord, testRecord } from './records.ts';
import { gapInWords, shareInWords } from './share-words.ts';

const TEST = `
fallwright: test@1
rig: { fall: 2.06 m, drive: { pipe: galvanised steel DN25, length: 9.2 m } }
ram: DN25
readings:
  - { backPressure: 0.6 bar, beats: 120/min }
  - { backPressure: 0.9 bar, beats: 120/min }
  - { backPressure: 1.3 bar, beats: 120/min }
`;

const read = readTest(TEST);
if (!read.ok) throw new Error(JSON.stringify(read.problems));
const bench = read.test;
const settings = settingsOf(bench);

const of = (value: number, count = 3): Measured => ({
  value,
  spread: 0.01 * value,
  count,
  range: 0,
});

type Changes = Partial<Record<'beats' | 'delivered' | 'wasted' | 'peak', readonly number[]>>;

/** Readings that the cycle itself gives, each times a number by setting. */
function answered(changes: Changes): readonly ReadingAnswer[] {
  return settings.map(({ installation, reading, head }, index) => {
    const point = beatAtHead(installation, reading.lift.value, { reaches: 16, block: 24 });
    const by = (name: keyof Changes): number => changes[name]?.[index] ?? 1;
    const made: BenchReading = {
      ...reading,
      beatFrequency: of(point.beatFrequency * by('beats')),
      deliveryFlow: of(point.deliveryFlow * by('delivered')),
      wasteFlow: of(point.wasteFlow * by('wasted')),
      peakHead: of(point.peakHead * by('peak')),
    };
    return answerReading({ installation, reading: made, head });
  });
}

describe('shares in words', () => {
  test.each([
    [0.2, 'a fifth'],
    [-0.213, 'a fifth'],
    [0.5, 'half'],
    [0.33, 'a third'],
    [0.03, '3\u00a0%'],
    [0.29, '29\u00a0%'],
  ])('%s is %s', (share, words) => expect(shareInWords(share)).toBe(words));

  test('gaps', () => {
    const flow = { less: 'less', more: 'more', asMuch: 'much' };
    expect(gapInWords(-0.2, flow)).toBe('a fifth less than');
    expect(gapInWords(0.25, flow)).toBe('a quarter more than');
    expect(gapInWords(1.02, flow)).toBe('twice as much as');
    expect(gapInWords(2.4, flow)).toBe('3.4 times as much as');
  });
});

describe('findings', () => {
  const words = (changes: Changes) =>
    findings(answered(changes), 'metric').join(' ').replaceAll('\u00a0', ' ');

  test('a test that agrees says so and finds nothing', () => {
    expect(words({})).toBe(
      'Beats, delivery, waste and peak agree with the prediction at all 3 readings, within twice what they are good to.',
    );
  });

  test('a fifth less at high lift points at the delivery valve', () => {
    expect(words({ delivered: [1, 1, 0.8] })).toMatch(
      /^Delivers a fifth less than predicted at high lift \(13\.3 m\): look at the delivery valve: its seat/,
    );
  });

  test('a third less at every lift, with a weak hammer, points at air', () => {
    const found = words({ delivered: [0.67, 0.67, 0.67], peak: [0.7, 0.7, 0.7] });
    expect(found).toMatch(
      /^Delivers a third less than predicted at every lift: the hammer is weak/,
    );
  });

  test('faster with less waste is an early valve, slower with less waste a choked line; each is said once', () => {
    const early = words({ beats: [1.2, 1.2, 1.2], wasted: [0.8, 0.8, 0.8] });
    expect(early).toContain(
      'Beats a fifth faster than predicted at every lift: the waste valve shuts sooner',
    );
    expect(early.match(/shuts sooner/g)).toHaveLength(1);
    expect(words({ beats: [0.8, 0.8, 0.8], wasted: [0.8, 0.8, 0.8] })).toContain('choked strainer');
  });

  test('a setting at which the cycle does not run is told with its reason', () => {
    const [first] = settings;
    if (!first) throw new Error('no setting');
    const high = { ...first.reading, lift: of(300) };
    const answer = answerReading({ ...first, reading: high });
    expect(findings([answer], 'metric')[0]).toMatch(
      /At 300.m the simulation does not run: it beats and delivers nothing/,
    );
  });
});

describe('rows and records', () => {
  const answers = answered({ delivered: [1, 1, 0.8] });

  test('a gap that is off is marked, with its sign and what it is good to', () => {
    const rows = residualRows(answers[2] as ReadingAnswer, 'us');
    expect(rows.map(({ what }) => what)).toEqual(['beats', 'delivered', 'wasted', 'peak head']);
    expect(rows[1]).toMatchObject({ gap: '−20\u00a0%', agrees: false });
    expect(rows[1]?.measured).toContain('gpm');
    expect(rows[0]).toMatchObject({ agrees: true });
  });

  test('the record holds the same numbers with their units', () => {
    const record = testRecord(answers, bench, 'metric');
    expect(record.readings[2]?.residuals).toContainEqual(
      expect.objectContaining({ quantity: 'deliveryFlow', agrees: false, gapShare: -0.2 }),
    );
    const efficiency = record.readings[0]?.rankineEfficiency?.value ?? 0;
    expect(efficiency).toBeGreaterThan(0.3);
    expect(efficiency).toBeLessThan(0.9);
    expect(JSON.stringify(record)).not.toMatch(/\u00a0|NaN/);
  });
});

test('every doubt has words that say what to look at, in the reader’s units', () => {
  const numbers = { gap: 2e-5, allowed: 1e-5 };
  for (const kind of [
    'waterBalance',
    'moreOutThanIn',
    'energyFromNothing',
    'liftBelowFall',
    'vesselBelowLift',
    'peakBelowVessel',
    'moreThanLinePasses',
  ] as const) {
    expect(doubtInWords({ kind, ...numbers }, 'metric')).toMatch(/Check|Look|read/);
  }
  expect(doubtInWords({ kind: 'waterBalance', ...numbers }, 'us')).toContain('gpm');
  expect(doubtInWords({ kind: 'oneReading', quantity: 'wasteFlow' }, 'metric')).toContain(
    'wasted flow was read once',
  );
  expect(
    doubtInWords(
      { kind: 'repeatsDiffer', quantity: 'supplyFlow', gap: 0.3, allowed: 0.15 },
      'metric',
    ),
  ).toContain('30\u00a0%');
});

describe('beats', () => {
  const times = Array.from({ length: 12 }, (_, i) => 1 + i).filter((time) => time !== 6);
  const rhythm = rhythmOf(times, { timeSpread: 0.01 });
  if (!rhythm) throw new Error('no rhythm');
  const beats = times.map((time) => ({ time, confidence: time === 3 ? 0.4 : 0.9 }));

  test('stand on one line with what is missing, unsure and other', () => {
    const { line, from, to } = beatStrip({
      beats,
      others: [{ time: 2.5, confidence: 1 }],
      rhythm,
      width: 60,
    });
    expect(line).toHaveLength(60);
    expect(to - from).toBeCloseTo(12, 9);
    expect(line.replaceAll('·', '')).toBe('||+!||_||||||'.slice(0, 13));
    expect(line.split('|').length - 1).toBe(10);
  });

  test('of a long row the part with the first fault is shown, and never two in one cell', () => {
    const { line, from } = beatStrip({ beats, others: [], rhythm, width: 20 });
    expect(line).toContain('_');
    expect(from).toBeGreaterThan(2);
    expect(line).not.toMatch(/\|\|/);
  });

  test('in words: the rate with its spread, and what is missing', () => {
    const words = rhythmInWords(rhythm, 1).join(' ');
    expect(words).toMatch(/^60\.00 ± 0\.08 beats a minute, from 11 beats/);
    expect(words).toContain('One beat is missing');
    expect(words).toContain('One other sound stands');
    expect(rateInFigures(61.234, 1.6)).toBe('61.2 ± 1.6 beats');
    expect(rateInFigures(61.234, 12)).toBe('61 ± 12 beats');
    expect(rateInFigures(60, 0)).toBe('60.00 ± 0 beats');
  });

  test('few uneven beats are told to be doubtful, few even ones are not', () => {
    const uneven = [0, 1, 2.2, 3, 4.1, 5, 6.2].map((time) => 2 * time);
    const doubtful = rhythmOf(uneven, { timeSpread: 0.01 });
    expect(doubtful && rhythmInWords(doubtful, 0).join(' ')).toContain('may be chance');
    expect(rhythmInWords(rhythm, 0).join(' ')).not.toContain('may be chance');
  });

  test('for programs: every beat, or why there is none', () => {
    const record = beatsRecord({ kind: 'heard', beats, others: [], rhythm, clearness: 9 });
    expect(record).toMatchObject({ heard: true, beatsPerMinute: 60, missed: 1, log: null });
    expect(record.beats).toHaveLength(11);
    expect(beatsRecord({ kind: 'none', why: 'silent' })).toMatchObject({
      heard: false,
      whyNone: 'silent',
      beats: [],
    });
  });
});
