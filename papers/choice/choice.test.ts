import {
  chooseHere,
  installationOfParts,
  missesOf,
  type Reason,
  whatWouldChange,
} from '@fallwright/engine';
import { describe, expect, test } from 'vitest';
import { choiceRequest, items, pipeOffer, ramOffer } from '../fixtures/choice.ts';
import { brokenAdvice } from './advice-words.ts';
import { deliveryPipesInWords } from './delivery-pipe-words.ts';
import { frontRows } from './front-rows.ts';
import { chanceInWords, leastMarginInWords, marginRows } from './margin-words.ts';
import { changesNeeded, missesInWords, shortfallInWords } from './nothing-works.ts';
import { proposals } from './pick-words.ts';
import { moneyInWords, sizeInWords } from './reader.ts';
import { reasonInWords, whyNotRow } from './why-not.ts';

const POUNDS = { system: 'metric', currency: 'GBP' } as const;

function plain(text: string | undefined): string {
  return (text ?? '').replaceAll('\u00a0', ' ');
}

/** No word of a program, and no number that is none. */
function expectWords(text: string): void {
  expect(text).not.toMatch(/undefined|NaN|Infinity|\[object|\.\.|,\.| {2}/);
}

describe('money', () => {
  test('is written with the digits that its currency has', () => {
    expect(moneyInWords(123_456, POUNDS)).toBe('£1,234.56');
    expect(moneyInWords(0, POUNDS)).toBe('£0.00');
    expect(moneyInWords(1235, { ...POUNDS, currency: 'JPY' })).toBe('¥1,235');
    expect(plain(moneyInWords(1_234_567, { ...POUNDS, currency: 'KWD' }))).toBe('KWD 1,234.567');
    expect(
      plain(moneyInWords(123_456, { system: 'metric', currency: 'EUR', language: 'de' })),
    ).toBe('1.234,56 €');
  });

  test('that is not whole, or in no currency, is a mistake', () => {
    expect(() => moneyInWords(0.5, POUNDS)).toThrow(/whole smallest units of GBP, got 0.5/);
    expect(() => moneyInWords(1, { ...POUNDS, currency: 'pound' })).toThrow(RangeError);
  });

  test('sizes go by DN or by inches', () => {
    expect(plain(sizeInWords(0.025, POUNDS))).toBe('DN 25');
    expect(plain(sizeInWords(0.032, { ...POUNDS, system: 'us' }))).toBe('1-1/4 in');
  });
});

describe('a choice in words', () => {
  const request = choiceRequest({ wish: { driveLengths: [13], mostRams: 2, need: 3e-6 } });
  const choice = chooseHere(request, { quotes: false });
  const found = proposals(request, choice.priced, POUNDS);

  test('each pick says what it is, gives and costs, and its rows add up to its price', () => {
    expect(found.length).toBeGreaterThan(0);
    expect(found.flatMap(({ names }) => names).sort()).toEqual([
      'cheapest that meets the need',
      'most forgiving',
      'most water',
    ]);
    for (const { summary, total, list, key, missing, parts, margins, sizes } of found) {
      expectWords(summary);
      expect(missing).toEqual([]);
      expect(list.total).toBe(choice.candidate(key)?.cost);
      expect(total).toBe(moneyInWords(list.total as number, POUNDS));
      expect(summary).toContain(total);
      // Pence of all rows as they are printed.
      const sum = parts.reduce((all, { sum: text }) => all + pence(text), 0);
      expect(sum).toBe(list.total);
      expect(margins.length).toBeGreaterThan(4);
      for (const row of [...parts, ...sizes]) expectWords(Object.values(row).join('|'));
    }
  });

  test('bars are told with how they are cut, and what has to hold says what', () => {
    const steel = found.find(({ list }) => list.rows.some((r) => r.name?.startsWith('steel')));
    const rows = steel?.parts ?? [];
    const bars = rows.find(({ what }) => what.startsWith('steel'));
    expect(plain(bars?.quantity)).toMatch(/^[35] × 6 m$/);
    expect(plain(bars?.note)).toContain('× 6 m for drive line');
    expect(plain(bars?.note)).toContain('over');
    expect(plain(rows.find(({ what }) => what === 'Oddmill footing')?.note)).toMatch(
      /^to hold [\d,]+ N each$/,
    );
    expect(plain(rows.find(({ what }) => what === 'Oddmill vent')?.note)).toBe('');
    expect(plain(rows.find(({ what }) => what === 'Oddmill labour')?.quantity)).toMatch(/^[36] h$/);
  });

  test('delivery pipes on offer are told by friction against cost, and what is too weak says so', () => {
    const weak = { ...pipeOffer('PE100 SDR11 20', 90) };
    const soft = { ...weak, key: 'soft', name: 'soft pipe', pipe: { ...weak.pipe, rating: 5e4 } };
    const { deliveryPipes } = request.offers;
    const offers = { ...request.offers, deliveryPipes: [...deliveryPipes, weak, soft] };
    const [contender] = choice.priced.front;
    if (!contender) throw new Error('a front was expected');
    const rows = deliveryPipesInWords({ ...request, offers }, contender, POUNDS);
    expect(rows.map(({ pipe, cost, isChosen }) => [pipe, cost, isChosen])).toEqual([
      ['PE100 SDR11 20', '£90.00', false],
      ['soft pipe', '£90.00', false],
      ['PE100 SDR11 25', '£210.00', true],
    ]);
    expect(plain(rows[0]?.carries)).toBe('carries 16 bar');
    expect(plain(rows[1]?.carries)).toMatch(/^too weak for 1\.\d+ bar$/);
    // The narrower pipe costs less and loses more.
    expect(Number.parseFloat(rows[0]?.friction ?? '')).toBeGreaterThan(
      Number.parseFloat(rows[2]?.friction ?? ''),
    );
  });

  test('the front is the cheapest first, with its picks named', () => {
    const rows = frontRows(choice.priced, request.wish, POUNDS);
    const costs = rows.map(({ cost }) => pence(cost));
    expect(costs).toEqual([...costs].sort((a, b) => a - b));
    expect(rows.map(({ pickedAs }) => pickedAs).join()).toContain('most water');
    for (const row of rows) expectWords(Object.values(row).join('|'));
  });

  test('every other combination has one sentence why not', () => {
    const onFront = new Set(choice.priced.front.map((c) => c.candidate.key));
    let lost = 0;
    for (const key of choice.keys()) {
      const row = whyNotRow(choice, key, POUNDS);
      expect(row.why === '').toBe(onFront.has(key));
      if (row.why === '') continue;
      lost++;
      expectWords(row.why);
      expect(row.why).toMatch(/^[A-Z].*\.$/);
    }
    expect(lost).toBeGreaterThan(0);
    expect(() => whyNotRow(choice, 'no such key', POUNDS)).toThrow(/key must be/);
  });

  test('US readers read gallons and inches', () => {
    const [first] = proposals(request, choice.priced, { system: 'us', currency: 'USD' });
    expect(plain(first?.summary)).toMatch(/gal a day, taking [\d.]+ gpm from the source, for \$/);
  });
});

test('every reason has a sentence with its numbers', () => {
  const choice = chooseHere(choiceRequest(), { quotes: false });
  const [key] = choice.keys();
  const reasons: Reason[] = [
    { kind: 'lengthDoesNotFit', length: 9, route: 12 },
    { kind: 'lengthDoesNotFit', length: 40, route: 12 },
    { kind: 'noPieceLongEnough', name: 'garden hose', length: 30, longest: 25 },
    { kind: 'tankTooSmall', volume: 0.2, needs: 1 },
    { kind: 'staysOpen', terminalFlow: 2e-4, closingFlow: 3e-4 },
    { kind: 'overRated', part: 'ram', name: 'Swallow 20', pressure: 2e6, rating: 1e6 },
    { kind: 'liftTooHigh', reaches: 40, needs: 50 },
    { kind: 'standpipeDry', level: 0.4, ground: 1.2 },
    {
      kind: 'verdict',
      verdict: 'staysShut',
      decidedBy: { kind: 'recoil', has: 3, needs: 4, margin: -0.25 },
    },
    {
      kind: 'verdict',
      verdict: 'doesNotLift',
      decidedBy: { kind: 'hammer', has: 30, needs: 20, margin: 0.5 },
    },
    { kind: 'belowNeed', need: 1e-5, water: 5e-6 },
    { kind: 'belowNeed', need: 1e-5, atMost: 6e-6 },
    { kind: 'pulse', share: 0.4, largest: 0.2 },
    { kind: 'pulse', share: Infinity, largest: 0.2 },
    {
      kind: 'beaten',
      by: key as string,
      byCost: 90_000,
      byWater: 2e-5,
      cost: 100_000,
      atMost: 1e-5,
    },
    { kind: 'failsWhenQuoted', why: 'overRated' },
    { kind: 'failsWhenQuoted', why: 'flutters' },
    { kind: 'notTried' },
  ];
  const words = reasons.map((reason) => plain(reasonInWords(reason, choice, POUNDS)));
  for (const sentence of words) {
    expectWords(sentence);
    expect(sentence).toMatch(/^[A-Z].*\.$/);
  }
  expect(new Set(words).size).toBe(words.length);
  expect(words).toContain(
    'It stays open: the line can pass 12 L/min at most, and the waste valve shuts at 18 L/min.',
  );
  expect(words).toContain(
    'It stays shut: the air vessel stands at 3 m, the recoil needs about 4 m.',
  );
  expect(words.find((w) => w.includes('£1,000.00'))).toMatch(
    /^It gives 864 L a day at most for £1,000.00; 1,730 L a day for £900.00 come from /,
  );
});

test('what lacks a price is named, and no sum is printed', () => {
  const { cost: _, ...noPrice } = items().find((i) => i.kind === 'union') as {
    cost?: number;
  } & ReturnType<typeof items>[number];
  const list = items().filter((i) => i.kind !== 'union' && i.kind !== 'footing');
  const request = choiceRequest({
    wish: { driveLengths: [13], mostRams: 1 },
    offers: { items: [...list, noPrice] },
  });
  const choice = chooseHere(request, { quotes: false });
  expect(choice.priced.front).toEqual([]);
  const [first] = proposals(request, choice.unpriced, POUNDS);
  expect(first?.total).toBeUndefined();
  expect(first?.missing.map(plain).sort()).toEqual(
    ['Oddmill union: no price', 'footing with bolts: none on the price list that fits'].sort(),
  );
  expect(plain(first?.summary)).toContain('; not all of it has a price.');
  expect(first?.parts.find(({ what }) => what === 'Oddmill union')?.sum).toBe('');
});

test('margins are told the tightest first, and short of a limit as short', () => {
  const margins = { closingFlow: 1.4, recoil: 0.1, pulse: -0.05, least: -0.05 };
  expect(
    marginRows(margins).map(({ what, margin, isTight }) => [what, plain(margin), isTight]),
  ).toEqual([
    ['pulse in the air vessel', '5 % short', true],
    ['head that the recoil needs', '10 % to spare', true],
    ['flow that shuts the waste valve', '2.4 times what it takes', false],
  ]);
  expect(plain(leastMarginInWords(margins))).toBe(
    'It is close: 5 % short by the pulse in the air vessel. Measure again before buying.',
  );
});

test('the chance and the band are those of all rams together', () => {
  const request = choiceRequest({ wish: { driveLengths: [13], mostRams: 2, need: 5e-6 } });
  const { priced } = chooseHere(request, { quotes: false }, () => ({
    chance: 0.9,
    low: 1e-6,
    high: 4e-6,
  }));
  const two = priced.contenders.find((c) => c.candidate.parts.count === 2 && c.judgement);
  if (!two) throw new Error('a pair of rams was expected');
  expect(plain(chanceInWords(two, request.wish, POUNDS))).toBe(
    'The chance that it gives the 432 L a day that are needed is 90 %. In eight cases of ten it gives between 170 L a day and 690 L a day.',
  );
});

test('a rule of the trade that is not kept is told with its source, and none that is', () => {
  const row = { id: 'RT08', source: 'a handbook', range: { high: 200 } };
  expect(
    brokenAdvice(
      [
        { ...row, rule: 'largestLift', value: 250, isWithin: false },
        { ...row, rule: 'largestLift', value: 20, isWithin: true },
        { ...row, rule: 'rigidDrivePipe', range: { low: 1 }, value: 0, isWithin: false },
        { ...row, rule: 'beatRate', range: { low: 2 / 3, high: 2 }, value: 3, isWithin: false },
      ],
      POUNDS,
    ).map(plain),
  ).toEqual([
    'The lift is 250 m; usual is up to 200 m (a handbook).',
    'The drive pipe is not of metal; a stiff one is usual (a handbook).',
    'The beat is 180 a minute; usual is 40 a minute to 120 a minute (a handbook).',
  ]);
});

test('when nothing works, the bounds that failed are told with how far, and what would change it', () => {
  // 0.25 m of fall cannot shut either valve, nor would its hammer lift 12 m.
  const request = choiceRequest({
    place: { fall: 0.25 },
    wish: { driveLengths: [13], need: 1e-6 },
    offers: {
      rams: [ramOffer('Swallow 20', 'DN20', 30_000)],
      drivePipes: [pipeOffer('steel sch 40 3/4 in', 1400), pipeOffer('PE100 SDR11 32', 310)],
    },
  });
  const choice = chooseHere(request, { quotes: false });
  expect(choice.priced.front).toEqual([]);
  const misses = missesOf(choice);
  expect(misses.length).toBeGreaterThan(0);
  expect(misses.reduce((sum, { count }) => sum + count, 0)).toBe(choice.progress.combinations);
  const words = missesInWords(choice, POUNDS).map(plain);
  for (const sentence of words) expectWords(sentence);
  expect(words[0]).toMatch(/combinations, nearest Swallow 20, on 13 m of/);
  expect(words[0]).toMatch(/It is short by \d+ %\./);
  expect(plain(shortfallInWords(choice.priced, POUNDS))).toBe(
    'Nothing on offer works here, so none of the 86.4 L a day come.',
  );
  const [nearest] = misses;
  const parts = nearest && choice.candidate(nearest.key)?.parts;
  if (!nearest || !parts) throw new Error('a nearest miss was expected');
  const search = whatWouldChange(installationOfParts(request.place, parts));
  let step = search.next();
  while (!step.done) step = search.next();
  const changes = step.value;
  const needed = changesNeeded(choice, nearest, changes, POUNDS).map(plain);
  expect(needed[0]).toContain('Each of these alone would make it run:');
  expect(needed.slice(1).join(' ')).toMatch(/Lift: runs from [\d.]+ m to/);
  expect(needed.join(' ')).not.toContain('does not make it run');
  expect(changesNeeded(choice, nearest, { changes: [], materials: [] }, POUNDS)[0]).toContain(
    'several have to go together',
  );
});

function pence(text: string): number {
  return Math.round(Number(text.replace(/[£,]/g, '') || 0) * 100);
}
