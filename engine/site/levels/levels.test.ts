/** Heights from a level book, hops, a gauge and coarse instruments. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coarseHeight, isTooCoarse } from './coarse-height.ts';
import { gaugeHead } from './gauge-head.ts';
import { heightByHops } from './hops.ts';
import { heightBetween, levelBook, levelBookFaults, levelsByInstrument } from './level-book.ts';

/** Out and back over four set-ups. Worked by hand: ΣBS = 4.185, ΣFS = 4.179, so it closes 6 mm high. */
const LOOP = [
  { at: 'water', back: 0.412 },
  { at: 'peg', fore: 1.633, back: 0.655 },
  { at: 'ram', fore: 1.501, back: 1.498 },
  { at: 'peg 2', fore: 0.64, back: 1.62 },
  { at: 'water', fore: 0.405 },
];

describe('a level book that comes back', () => {
  const book = levelBook(LOOP);

  test('has a closing error of the back sights less the fore sights', () => {
    const sum = (key: 'back' | 'fore') => LOOP.reduce((all, one) => all + (one[key] ?? 0), 0);
    expect(book.closingError).toBeCloseTo(sum('back') - sum('fore'), 12);
    expect(book.closingError).toBeCloseTo(0.006, 12);
    // 5 mm for each root of four set-ups.
    expect(book.allowedError).toBeCloseTo(0.01, 12);
  });

  test('shares it out by set-ups, so that it ends where it began', () => {
    // Worked by hand: −1.221, −2.067, −1.209, +0.006, less 1.5 mm for each set-up.
    const expected = [0, -1.2225, -2.07, -1.2135, 0];
    for (const [i, { adjusted }] of book.stations.entries()) {
      expect(adjusted).toBeCloseTo(expected[i] as number, 12);
    }
    expect(book.sharedBy).toBe('setUps');
  });

  test('shares it out by distance where each leg has one', () => {
    const legs = [undefined, 10, 30, 30, 10];
    const walked = levelBook(LOOP.map((one, i) => ({ ...one, distance: legs[i] })));
    expect(walked.sharedBy).toBe('distance');
    // 6 mm × 40/80 at the ram, × 10/80 at the first peg.
    expect(walked.stations[2]?.adjusted).toBeCloseTo(-2.067 - 0.003, 12);
    expect(walked.stations[1]?.adjusted).toBeCloseTo(-1.221 - 0.00075, 12);
    expect(walked.stations.at(-1)?.adjusted).toBeCloseTo(0, 12);
  });

  test('gives the height between two points, better than a book that stops there', () => {
    const closed = heightBetween(book, { upper: 0, lower: 2 });
    expect(closed.height).toBeCloseTo(2.07, 12);
    const open = heightBetween(levelBook(LOOP.slice(0, 3).map(endOf(2))), { upper: 0, lower: 2 });
    expect(open.height).toBeCloseTo(2.067, 12);
    // Exact: 2 set-ups of two readings at 2 mm; half of that variance in the middle of a loop of four. This loop closes
    // 6 mm out, and √8 readings of 2 mm explain 5.66 mm, so a reading counts for 6/√8 mm.
    expect(open.spread).toBeCloseTo(0.002 * Math.sqrt(4), 12);
    expect(closed.spread).toBeCloseTo((0.006 / Math.sqrt(8)) * Math.sqrt(2), 12);
  });

  test('one that closes worse than its readings explain is less sure by as much', () => {
    const bad = levelBook([...LOOP.slice(0, 4), { at: 'water', fore: 0.355 }]);
    expect(bad.closingError).toBeCloseTo(0.056, 12);
    expect(bad.readingSpread).toBeCloseTo(0.056 / Math.sqrt(8), 12);
    expect(Math.abs(bad.closingError ?? 0)).toBeGreaterThan(bad.allowedError ?? 0);
  });
});

function endOf(last: number) {
  return (one: (typeof LOOP)[number], index: number) =>
    index === last ? { at: one.at, fore: one.fore } : one;
}

describe('both ways of working a book out', () => {
  const sight = fc.integer({ min: 0, max: 4000 }).map((thousandths) => thousandths / 1000);
  const station = fc.oneof(
    fc.record({ inter: sight }),
    fc.record({ fore: sight, back: sight, distance: fc.constantFrom(5, 20) }),
  );

  test('rise and fall and height of instrument agree on any book', () => {
    fc.assert(
      fc.property(sight, fc.array(station, { maxLength: 12 }), sight, (back, middle, fore) => {
        const stations = [{ at: 'a', back }, ...middle, { at: 'z', fore, distance: 9 }];
        expect(levelBookFaults(stations)).toEqual([]);
        const byInstrument = levelsByInstrument(stations);
        for (const [i, { level }] of levelBook(stations).stations.entries()) {
          expect(level).toBeCloseTo(byInstrument[i] as number, 9);
        }
      }),
      { seed: 11, numRuns: 200 },
    );
  });

  test('two intermediate sights of one set-up are two readings apart', () => {
    const book = levelBook(
      [
        { at: 'peg', back: 1 },
        { at: 'water', inter: 0.4 },
        { at: 'ram', inter: 2.3 },
      ],
      0.002,
    );
    expect(heightBetween(book, { upper: 1, lower: 2 })).toEqual({
      height: expect.closeTo(1.9, 12),
      spread: expect.closeTo(0.002 * Math.SQRT2, 12),
    });
    expect(book.closingError).toBeUndefined();
  });
});

test('the spread of a level run is that of a sum of independent readings', () => {
  // Exact value σ √(2m) against 4000 runs of five set-ups with readings drawn from a seeded generator.
  const random = seeded(7);
  const sigma = 0.003;
  const heights = Array.from({ length: 4000 }, () => {
    const noisy = (value: number) => value + sigma * gaussian(random);
    const run = [
      { back: noisy(0.5) },
      ...[1, 2, 3, 4].map(() => ({ fore: noisy(1.5), back: noisy(0.5) })),
      { fore: noisy(1.5) },
    ];
    const book = levelBook(run, sigma);
    return heightBetween(book, { upper: 0, lower: 5 });
  });
  const mean = heights.reduce((sum, { height }) => sum + height, 0) / heights.length;
  const variance =
    heights.reduce((sum, { height }) => sum + (height - mean) ** 2, 0) / (heights.length - 1);
  expect(heights[0]?.spread).toBeCloseTo(sigma * Math.sqrt(10), 12);
  // A standard deviation from 4000 draws is good to 1.1 %.
  expect(Math.sqrt(variance) / (sigma * Math.sqrt(10))).toBeCloseTo(1, 1);
  expect(mean).toBeCloseTo(5, 2);
});

test('the way back makes the middle of a loop surer by the root of two', () => {
  const random = seeded(3);
  const sigma = 0.003;
  const noisy = (value: number) => value + sigma * gaussian(random);
  const errors = Array.from({ length: 4000 }, () => {
    const loop = [
      { at: 'a', back: noisy(0.5) },
      { fore: noisy(1.5), back: noisy(0.5) },
      { fore: noisy(1.5), back: noisy(1.5) },
      { fore: noisy(0.5), back: noisy(1.5) },
      { at: 'a', fore: noisy(0.5) },
    ];
    return heightBetween(levelBook(loop, sigma), { upper: 0, lower: 2 }).height - 2;
  });
  const rms = Math.sqrt(errors.reduce((sum, e) => sum + e ** 2, 0) / errors.length);
  // Exact: σ √(2·2·2/4).
  expect(rms / (sigma * Math.SQRT2)).toBeCloseTo(1, 1);
});

test('a book that cannot be worked out says at which station', () => {
  expect(levelBookFaults([{ back: 1 }])).toEqual([{ kind: 'tooShort' }]);
  expect(levelBookFaults([{ fore: 1 }, { fore: 2 }])).toEqual([{ kind: 'noBack', station: 0 }]);
  expect(levelBookFaults([{ back: 1 }, { fore: 2 }, { fore: 2 }])).toEqual([
    { kind: 'noBack', station: 1 },
  ]);
  expect(levelBookFaults([{ back: 1 }, { back: 2 }, { fore: 2 }])).toEqual([
    { kind: 'noReading', station: 1 },
  ]);
  expect(levelBookFaults([{ back: 1 }, { inter: 2, fore: 1 }])).toEqual([
    { kind: 'twoReadings', station: 1 },
  ]);
  expect(levelBookFaults([{ back: 1 }, { fore: 1, back: 2 }])).toEqual([
    { kind: 'openEnd', station: 1 },
  ]);
  expect(() => levelBook([{ back: 1 }])).toThrow('tooShort');
});

test('hops add up, and their spreads by the root of their squares', () => {
  const { height, spread } = heightByHops(
    [{ value: 1.62 }, { value: 1.58 }, { value: 0.44 }],
    0.02,
  );
  expect(height).toBeCloseTo(3.64, 12);
  expect(spread).toBeCloseTo(0.02 * Math.sqrt(3), 12);
  expect(
    heightByHops([
      { value: 1, spread: 0.03 },
      { value: 1, spread: 0.04 },
    ]).spread,
  ).toBeCloseTo(0.05, 12);
});

test('a gauge is as good as its class of its full scale, whatever it reads', () => {
  const gauge = { accuracyClass: 0.016, fullScale: 2.5e5, gaugeHeight: { value: 0.2 } };
  const low = gaugeHead({ ...gauge, pressure: { value: 0.19e5 } });
  // Exact: 19 000/9806.65 + 0.2; 4000/9806.65/√3.
  expect(low.height).toBeCloseTo(1.9375 + 0.2, 3);
  expect(low.spread).toBeCloseTo(0.408 / Math.sqrt(3), 3);
  expect(gaugeHead({ ...gauge, pressure: { value: 2e5 } }).spread).toBeCloseTo(low.spread, 12);
  expect(() => gaugeHead({ ...gauge, fullScale: 0, pressure: { value: 1 } })).toThrow('fullScale');
});

test('satellite heights are too coarse for a fall and good enough for a high lift', () => {
  const fall = coarseHeight('satellite', { upper: { value: 312 }, lower: { value: 309 } });
  expect(fall).toEqual({ height: 3, spread: 5 * Math.SQRT2 });
  expect(isTooCoarse(fall)).toBe(true);
  expect(
    isTooCoarse(coarseHeight('barometric', { upper: { value: 380 }, lower: { value: 300 } })),
  ).toBe(false);
  expect(
    coarseHeight('barometric', { upper: { value: 3 }, lower: { value: 1 }, each: 0.1 }).spread,
  ).toBeCloseTo(0.1 * Math.SQRT2, 12);
});

/** Mulberry32: a small generator that repeats itself from its seed. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Box and Muller. */
function gaussian(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
