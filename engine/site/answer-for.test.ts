/** The whole answer for one place. */
import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import {
  driveOf,
  NUMBERS_OF_A_PLACE,
  placeFrom,
  plainPlace,
} from '../cycle/fixtures/made-installation.ts';
import { delivers, operatingPoint } from '../cycle/operating-point.ts';
import { typicalRam } from '../machine/typical-ram.ts';
import { type AnswerOptions, answerFor } from './answer-for.ts';
import { kindOf } from './verdict.ts';

const SEED = 20260207;
const IS_LONG = process.env.FALLWRIGHT_LONG === '1';
const RUNS = IS_LONG ? 200 : 20;
// A busy machine may need longer than a test usually has.
vi.setConfig({ testTimeout: IS_LONG ? 3_600_000 : 60_000 });

const places = fc
  .array(fc.integer({ min: 0, max: NUMBERS_OF_A_PLACE.largest }), {
    minLength: NUMBERS_OF_A_PLACE.count,
    maxLength: NUMBERS_OF_A_PLACE.count,
  })
  .map(placeFrom);

const QUICK: AnswerOptions = { changes: false };

/** Freezes a record to the bottom, so that whoever writes into it throws. */
function frozen<T>(record: T): T {
  if (typeof record === 'object' && record !== null) {
    for (const value of Object.values(record)) frozen(value);
    Object.freeze(record);
  }
  return record;
}

/** Names of the numbers in a record that are not finite. */
function notFinite(record: object): string[] {
  return Object.entries(record).flatMap(([name, value]) =>
    typeof value === 'number'
      ? Number.isFinite(value)
        ? []
        : [`${name} is ${value}`]
      : value !== null && typeof value === 'object'
        ? notFinite(value)
        : [],
  );
}

test('any place has an answer, of numbers that are numbers', () => {
  fc.assert(
    fc.property(places, (place) => {
      expect(notFinite(answerFor(place, QUICK))).toEqual([]);
    }),
    { seed: SEED, numRuns: RUNS },
  );
});

test('the same question has the same answer, and the question is not touched', () => {
  fc.assert(
    fc.property(places, (place) => {
      const copy = frozen(structuredClone(place));
      expect(answerFor(copy, QUICK)).toEqual(answerFor(place, QUICK));
    }),
    { seed: SEED, numRuns: Math.ceil(RUNS / 5) },
  );
  const whole = frozen(structuredClone(plainPlace()));
  expect(answerFor(whole, { demand: 1e-5 })).toEqual(answerFor(plainPlace(), { demand: 1e-5 }));
});

test('the answer does not depend on the order in which options or fields are written', () => {
  const { water, source, fall, driveLine, ram, lift, deliveryLine } = plainPlace();
  const turned = { deliveryLine, lift, ram, driveLine, fall, source, water };
  expect(answerFor(turned, { startUp: true, changes: false, demand: 1e-5 })).toEqual(
    answerFor(plainPlace(), { demand: 1e-5, changes: false, startUp: true }),
  );
});

test('what is not asked for is left out, and changes nothing else', () => {
  const whole = answerFor(plainPlace(), QUICK);
  const bare = answerFor(plainPlace(), { changes: false, startUp: false, pressures: false });
  expect(bare.startUp).toBeUndefined();
  expect(bare.startUpOpen).toBeUndefined();
  expect(bare.pressureCheck).toBeUndefined();
  expect(bare.changes).toEqual([]);
  expect(bare.materials).toEqual([]);
  expect(bare.demand).toBeUndefined();
  expect(bare.operatingPoint).toEqual(whole.operatingPoint);
  expect(bare.terminalFlow).toBe(whole.terminalFlow);
  expect(bare.closingFlow).toBe(whole.closingFlow);
  expect(whole.startUp).toBeDefined();
  expect(whole.startUpOpen).toBeDefined();
  expect(whole.pressureCheck).toBeDefined();
});

test('a ram that does not lift has no operating point to quote and no start to follow', () => {
  const answer = answerFor(
    plainPlace({
      fall: 1.2,
      lift: 6,
      ram: typicalRam('DN15'),
      driveLine: driveOf('garden hose 1/2 in', 30),
    }),
    { ...QUICK, demand: 1e-6 },
  );
  expect(answer.verdict.kind).toBe('staysOpen');
  expect(answer.operatingPoint).toBeUndefined();
  expect(answer.startUp).toBeUndefined();
  expect(answer.pressureCheck).toBeUndefined();
  expect(answer.demand).toEqual({ needed: 1e-6, isMet: false });
});

test('a demand is met by just what comes, and not by less', () => {
  const { operatingPoint: point } = answerFor(plainPlace(), QUICK);
  const flow = point?.deliveryFlow as number;
  const metAt = (demand: number) => answerFor(plainPlace(), { ...QUICK, demand }).demand?.isMet;
  expect(metAt(flow)).toBe(true);
  expect(metAt(1.001 * flow)).toBe(false);
});

test('a starving ram still says what it would take', () => {
  const answer = answerFor(plainPlace({ source: { kind: 'steady', yield: 3e-5 } }), QUICK);
  expect(answer.verdict.kind).toBe('starves');
  expect(answer.operatingPoint?.supplyFlow).toBeGreaterThan(3e-5);
});

test('a store lasts for a finite time, unless what runs in keeps up', () => {
  const bucket = { kind: 'store', surfaceArea: 0.06, inflow: 0, depthOverIntake: 0.3 } as const;
  const draining = answerFor(plainPlace({ source: bucket }), QUICK);
  expect(draining.drainTime).toBeGreaterThan(0);
  expect(draining.drainTime).toBeLessThan(3600);
  const kept = answerFor(plainPlace({ source: { ...bucket, inflow: 1e-3 } }), QUICK);
  expect(kept.drainTime).toBeUndefined();
  expect(kept.verdict.kind).toBe('runs');
  // The beat is told at the brim for both.
  expect(draining.operatingPoint?.deliveryFlow).toBe(kept.operatingPoint?.deliveryFlow);
});

test('the beat that is quoted agrees with the one from which the choice is made', () => {
  const quoted = answerFor(plainPlace(), QUICK).operatingPoint;
  const chosen = operatingPoint(plainPlace());
  expect(delivers(chosen)).toBe(true);
  // Blocks agree to 2 %, and these are blocks of 8 and of 24 beats.
  expect(Math.abs((quoted?.deliveryFlow ?? 0) / chosen.deliveryFlow - 1)).toBeLessThan(0.03);
  expect(kindOf(plainPlace(), chosen)).toBe('runs');
});

test('changes and materials come with the answer, in order of trying', () => {
  const answer = answerFor(plainPlace({ lift: 25, driveLine: driveOf('garden hose 3/4 in', 12) }), {
    startUp: false,
    pressures: false,
  });
  expect(answer.verdict.kind).toBe('doesNotLift');
  const trouble = { free: 0, small: 1, large: 2 };
  const efforts = answer.changes.map((c) => trouble[c.effort]);
  expect(efforts).toEqual([...efforts].sort((a, b) => a - b));
  expect(answer.materials.find((m) => m.material === 'steel')?.verdict).toBe('runs');
});
