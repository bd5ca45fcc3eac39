/** How sure it is, in words and for programs. */
import type { SampledAnswer } from '@fallwright/engine';
import { describe, expect, test } from 'vitest';
import { answerRecord } from './answer-record.ts';
import { answerOf, siteWith } from './fixtures/answers.ts';
import { howSureInWords, improveFirst } from './how-sure.ts';

const PER_DAY = 1e-3 / 86_400;
const band = (low: number, middle: number, high: number) => ({
  low: low * PER_DAY,
  middle: middle * PER_DAY,
  high: high * PER_DAY,
});

const SAMPLED: SampledAnswer = {
  samples: 300,
  seed: 7,
  chanceItRuns: 0.92,
  standardErrorOfChance: 0.0157,
  deliveryBand: band(381, 450, 512),
  bandWhenItRuns: band(395, 455, 515),
  chanceOfNeed: 0.03,
  counts: { runs: 276, starves: 20, staysOpen: 4 },
  shares: [
    { what: 'fall', share: 0.61 },
    { what: 'lift', share: 0.2 },
    { what: 'backFlow', share: 0.04 },
  ],
};

const site = siteWith('fall: 1.9 m', 'fall: 1.9 m ± 0.06 m');

function words(more: Partial<SampledAnswer> = {}, at = site, system: 'metric' | 'us' = 'metric') {
  return howSureInWords({ ...SAMPLED, ...more }, at, system)
    .join(' ')
    .replaceAll('\u00a0', ' ');
}

describe('in words', () => {
  test('chance, band, need and what to measure first', () => {
    expect(words()).toBe(
      'It runs in 92 % of 300 tries with the numbers as sure as they are; in the others it mostly starves. ' +
        'Likely 380 to 510 litres a day: one try in ten gives less, and one in ten more. ' +
        'What is needed, 900 L a day, is met in 3 %. ' +
        'The fall decides most of it (61 % of the spread): measure it to ± 20 mm first, and the band will be about 32 % narrower. ' +
        'The model’s own error comes on top, and so does air in a line that is called bled.',
    );
  });

  test('all and none are said as such, and never by rounding', () => {
    expect(words({ chanceItRuns: 1, counts: { runs: 300 } })).toMatch(/^It runs in all of 300/);
    expect(words({ chanceOfNeed: 1 })).toContain('is met in all.');
    expect(words({ chanceItRuns: 299 / 300, counts: { runs: 299, starves: 1 } })).toMatch(
      /^It runs in 99 % .*; in the other one it starves\./,
    );
    expect(words({ chanceItRuns: 1 / 300, counts: { runs: 1, staysShut: 299 } })).toMatch(
      /^It runs in 1 % /,
    );
    const { bandWhenItRuns: _, ...without } = SAMPLED;
    const none = howSureInWords(
      {
        ...without,
        chanceItRuns: 0,
        chanceOfNeed: 0,
        counts: { staysOpen: 300 },
        deliveryBand: band(0, 0, 0),
        shares: [{ what: 'fall', share: 0 }],
      },
      site,
      'metric',
    ).join(' ');
    expect(none).toMatch(/none of 300 tries .*: it stays open\. What is needed/);
    expect(none).not.toMatch(/Likely|measure/);
    expect(none).toContain('is met in none');
  });

  test('a band that begins with nothing says so, and what it gives when it runs', () => {
    expect(words({ deliveryBand: band(0, 400, 512) })).toContain(
      'Likely nothing to 510 litres a day; when it runs, 400 to 520 litres a day.',
    );
    expect(words({ deliveryBand: band(0, 0, 0) })).toContain(
      'When it runs, likely 400 to 520 litres a day.',
    );
    expect(words({ deliveryBand: band(449, 450, 451) })).toContain('about 450 litres a day');
  });

  test('a spread that nobody gave is told', () => {
    expect(words({}, siteWith())).toMatch(/No ± stands with it; ± \d+ mm was taken\./);
  });

  test('what no single measurement tells has other advice; what decides nothing has none', () => {
    const shares = [{ what: 'backFlow', share: 0.3 }] as const;
    expect(words({ shares })).toContain(
      'The water that runs back at each beat decides more of it than anything else (30 % of the spread): a trial of this ram at two lifts tells it.',
    );
    const spreadOut = { shares: [{ what: 'backFlow', share: 0.02 }] } as const;
    expect(words(spreadOut)).toContain('No single number decides it; several do together.');
    expect(words({ ...spreadOut, deliveryBand: band(0, 0, 0) })).not.toContain('decides');
    expect(improveFirst({ ...SAMPLED, shares: [] }, site)).toBeUndefined();
  });

  test('US units turn every number', () => {
    const us = words({}, site, 'us');
    expect(us).toContain('gallons a day');
    expect(us).toMatch(/to ± 0\.\d+ in first/);
    expect(us).not.toMatch(/litres|\bmm\b/);
  });
});

describe('for programs', () => {
  test('the fields stand in the record', () => {
    const record = answerRecord(answerOf('runs'), site, 'metric', SAMPLED);
    expect(record).toMatchObject({
      chanceItRuns: 0.92,
      deliveredLitresPerDayLow: 381,
      deliveredLitresPerDayMiddle: 450,
      deliveredLitresPerDayHigh: 512,
      chanceNeedIsMet: 0.03,
      improveFirst: { what: 'fall', share: 0.61, unit: 'm', measureTo: 0.02, isGiven: true },
      samples: 300,
      seed: 7,
    });
    expect(record.improveFirst?.spread).toBeCloseTo(0.06, 9);
    // Exact: a third of the ± leaves a ninth of its 61 % of the variance, and the band is as wide as the root of what is left.
    expect(record.improveFirst?.narrowerBy).toBeCloseTo(1 - Math.sqrt(1 - (0.61 * 8) / 9), 5);
    expect(JSON.stringify(record)).not.toContain('\u00a0');
  });

  test('they are null when nobody asked', () => {
    const record = answerRecord(answerOf('runs'), site, 'metric');
    const asked = answerRecord(answerOf('runs'), site, 'metric', SAMPLED);
    expect(Object.keys(record)).toEqual(Object.keys(asked));
    for (const field of ['chanceItRuns', 'improveFirst', 'samples', 'howSureInWords'] as const) {
      expect(record[field]).toBeNull();
    }
  });
});
