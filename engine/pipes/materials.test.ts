import { expect, test } from 'vitest';
import { minimumBendRadius } from './bend-radius.ts';
import { creepCompliance, HDPE_CREEP } from './creep.ts';
import { deratedRating } from './derated-rating.ts';
import { findPipe } from './find-pipe.ts';
import { FITTINGS, findFitting, fittingNames } from './fittings.ts';
import { deratingFactor, MATERIALS, type MaterialName } from './materials.ts';
import type { Pipe } from './pipe.ts';

const NAMES = Object.keys(MATERIALS) as MaterialName[];
const pipeNamed = (name: string): Pipe => {
  const result = findPipe(name);
  if (!result.ok) throw new Error(name);
  return result.pipe;
};

test('every stated value lies in the range of its sources', () => {
  const values = [
    ...NAMES.flatMap((name) => {
      const { youngsModulus, poissonRatio, roughness } = MATERIALS[name];
      return [youngsModulus, poissonRatio, roughness];
    }),
    ...Object.values(FITTINGS),
  ];
  for (const { value, low, high, source } of values) {
    expect(value).toBeGreaterThanOrEqual(low);
    expect(value).toBeLessThanOrEqual(high);
    expect(source).not.toBe('');
  }
});

test('warmth never makes a pipe stronger, over all the water that the engine takes', () => {
  for (const name of NAMES) {
    for (let degree = 1; degree <= 40; degree += 1) {
      expect(deratingFactor(name, degree)).toBeLessThanOrEqual(deratingFactor(name, degree - 1));
    }
  }
});

test('warm plastic carries less than its rating, steel and cold plastic carry it all', () => {
  const plastic = pipeNamed('PE100 SDR11 32');
  expect(deratedRating(plastic, 10)).toBe(plastic.rating);
  expect(deratedRating(plastic, 30)).toBeLessThan(0.9 * (plastic.rating ?? 0));
  const copper = pipeNamed('copper L 1 in');
  expect(deratedRating(copper, 35)).toBe(copper.rating);
  expect(deratedRating(pipeNamed('garden hose 1/2 in'), 10)).toBeUndefined();
  expect(() => deratedRating(plastic, 41)).toThrow(/at most 40 °C/);
});

test('a thin wall bends less tightly than a thick one', () => {
  const thick = minimumBendRadius(pipeNamed('PE100 SDR11 32'));
  const thin = minimumBendRadius(pipeNamed('PE100 SDR17 32'));
  expect(thick).toBeLessThan(thin ?? 0);
  expect(minimumBendRadius(pipeNamed('steel sch 40 1 in'))).toBeUndefined();
});

test('a plastic wall gives at once what its modulus says, then creeps towards the sum of its elements', () => {
  const total = HDPE_CREEP.elements.reduce((sum, { compliance }) => sum + compliance, 0);
  expect(creepCompliance(HDPE_CREEP, 0)).toBe(HDPE_CREEP.instantCompliance);
  expect(creepCompliance(HDPE_CREEP, 1e4)).toBeCloseTo(HDPE_CREEP.instantCompliance + total, 15);
  let before = 0;
  for (const time of [0, 0.01, 0.1, 1, 10, 100]) {
    const compliance = creepCompliance(HDPE_CREEP, time);
    expect(compliance).toBeGreaterThan(before);
    before = compliance;
  }
  expect(() => creepCompliance(HDPE_CREEP, -1)).toThrow(RangeError);
});

test('fittings are found by name however it is written, and near misses get suggestions', () => {
  for (const name of fittingNames()) {
    const found = findFitting(name.toUpperCase().replaceAll(',', ' -'));
    expect(found.ok && found.name).toBe(name);
  }
  const missed = findFitting('elbow 90 glued');
  expect(missed.ok ? [] : missed.suggestions).toContain('elbow 90, flanged or glued');
});
