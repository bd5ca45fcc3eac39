import { expect, test } from 'vitest';
import { waterAt } from '../water/water.ts';
import { churchillFriction } from './churchill-friction.ts';
import { colebrookFriction, colebrookSlope } from './colebrook-friction.ts';
import { findPipe } from './find-pipe.ts';
import { darcyFriction, LAMINAR_END, TURBULENT_START } from './friction.ts';
import { frictionHeadLoss } from './friction-head-loss.ts';
import { haalandFriction } from './haaland-friction.ts';
import { hazenWilliamsGradient } from './hazen-williams.ts';
import { laminarFriction } from './laminar-friction.ts';
import type { Pipe } from './pipe.ts';

const ROUGHNESSES = [0, 1e-6, 1e-4, 1e-3, 1e-2, 0.05];
/** From `low` to `high` in equal ratios. */
const ratios = (low: number, high: number, count: number) =>
  Array.from({ length: count + 1 }, (_, i) => low * (high / low) ** (i / count));
const pipeNamed = (name: string): Pipe => {
  const result = findPipe(name);
  if (!result.ok) throw new Error(name);
  return result.pipe;
};

test('the Colebrook–White factor satisfies its own equation to the last digits', () => {
  for (const relativeRoughness of ROUGHNESSES) {
    for (const reynolds of ratios(1000, 1e8, 60)) {
      const x = colebrookFriction({ reynolds, relativeRoughness }) ** -0.5;
      const right = -2 * Math.log10(relativeRoughness / 3.7 + (2.51 * x) / reynolds);
      expect(Math.abs(right / x - 1)).toBeLessThan(1e-13);
    }
  }
});

test('the stated slope is the slope of the Colebrook–White law', () => {
  for (const relativeRoughness of ROUGHNESSES) {
    for (const reynolds of [4000, 1e5, 1e7]) {
      const [below, above] = [reynolds * 0.9999, reynolds * 1.0001].map((Re) =>
        Math.log(colebrookFriction({ reynolds: Re, relativeRoughness })),
      );
      const slope = ((above ?? 0) - (below ?? 0)) / Math.log(1.0001 / 0.9999);
      expect(colebrookSlope({ reynolds, relativeRoughness })).toBeCloseTo(slope, 7);
    }
  }
});

test('more flow always loses more head, through every regime', () => {
  for (const relativeRoughness of [...ROUGHNESSES, 0.1]) {
    let before = 0;
    for (const reynolds of ratios(1, 1e8, 4000)) {
      const loss = darcyFriction(reynolds, relativeRoughness) * reynolds ** 2;
      expect(loss).toBeGreaterThan(before);
      before = loss;
    }
  }
});

test('between laminar and turbulent the factor lies between the two laws and joins them without a jump or kink', () => {
  for (const relativeRoughness of [...ROUGHNESSES, 0.1]) {
    for (const reynolds of ratios(LAMINAR_END * 1.0001, TURBULENT_START * 0.9999, 200)) {
      const factor = darcyFriction(reynolds, relativeRoughness);
      expect(factor).toBeGreaterThan(laminarFriction(reynolds));
      expect(factor).toBeLessThan(colebrookFriction({ reynolds, relativeRoughness }));
    }
    for (const joint of [LAMINAR_END, TURBULENT_START]) {
      const at = (ratio: number) => Math.log(darcyFriction(joint * ratio, relativeRoughness));
      const step = 1e-5;
      expect(Math.abs(at(1 - step) - at(1 + step))).toBeLessThan(1e-4);
      const [before, after] = [at(1) - at(1 - step), at(1 + step) - at(1)];
      expect(Math.abs(after - before) / step).toBeLessThan(1e-2);
    }
  }
});

test('a rougher wall never loses less', () => {
  for (const reynolds of [500, 2500, 3500, 5000, 1e5, 1e7]) {
    const factors = ROUGHNESSES.map((relativeRoughness) =>
      darcyFriction(reynolds, relativeRoughness),
    );
    expect([...factors].sort((a, b) => a - b)).toEqual(factors);
  }
});

test('the formulas without iteration stay as near to Colebrook–White as their comments say', () => {
  let haaland = 0;
  let churchill = 0;
  for (const relativeRoughness of [0, ...ratios(1e-6, 0.05, 20)]) {
    for (const reynolds of ratios(4000, 1e8, 100)) {
      const exact = colebrookFriction({ reynolds, relativeRoughness });
      const gap = (factor: number) => Math.abs(factor / exact - 1);
      if (relativeRoughness > 0) {
        haaland = Math.max(haaland, gap(haalandFriction({ reynolds, relativeRoughness })));
      }
      if (relativeRoughness <= 0.03) {
        churchill = Math.max(churchill, gap(churchillFriction({ reynolds, relativeRoughness })));
      }
    }
  }
  expect(haaland).toBeLessThan(0.015);
  expect(churchill).toBeLessThan(0.032);
});

test('slow flow loses head in proportion, and fast flow in a rough pipe nearly as its square', () => {
  const water = waterAt({ temperature: 10, altitude: 0 });
  const pipe = pipeNamed('galvanised steel DN25');
  const loss = (flow: number) => frictionHeadLoss({ pipe, water, length: 10, flow });
  expect(loss(2e-5) / loss(1e-5)).toBeCloseTo(2, 10);
  expect(loss(8e-3) / loss(4e-3)).toBeGreaterThan(3.9);
  expect(loss(8e-3) / loss(4e-3)).toBeLessThan(4);
  expect(loss(0)).toBe(0);
  expect(loss(-1e-3)).toBe(-loss(1e-3));
});

test('cold water loses more than warm, and a garden hose far more than the next pipe up', () => {
  const pipe = pipeNamed('garden hose 1/2 in');
  const at = (temperature: number, of: Pipe) =>
    frictionHeadLoss({
      pipe: of,
      water: waterAt({ temperature, altitude: 0 }),
      length: 30,
      flow: 1e-4,
    });
  expect(at(5, pipe)).toBeGreaterThan(at(25, pipe));
  expect(at(10, pipe)).toBeGreaterThan(4 * at(10, pipeNamed('PE100 SDR11 25')));
});

test('the older formula agrees with the friction law to a tenth where it was made for', () => {
  const water = waterAt({ temperature: 15, altitude: 0 });
  const pipe = pipeNamed('PVC sch 40 2 in');
  const flow = 1.5 * (Math.PI / 4) * pipe.innerDiameter ** 2;
  const gradient = hazenWilliamsGradient({
    innerDiameter: pipe.innerDiameter,
    coefficient: 150,
    flow,
  });
  expect(gradient / frictionHeadLoss({ pipe, water, length: 1, flow })).toBeCloseTo(1, 1);
});

test('nonsense is refused by name', () => {
  expect(() => darcyFriction(0, 0)).toThrow(/reynolds/);
  expect(() => darcyFriction(100, 0.2)).toThrow(/relativeRoughness/);
  expect(() => darcyFriction(100, -1)).toThrow(RangeError);
  expect(() => colebrookFriction({ reynolds: 900, relativeRoughness: 0 })).toThrow(/at least 1000/);
  expect(() => hazenWilliamsGradient({ innerDiameter: 0.1, coefficient: 150, flow: -1 })).toThrow(
    /flow/,
  );
  const water = waterAt({ temperature: 15, altitude: 0 });
  const pipe = pipeNamed('copper L 1 in');
  expect(() => frictionHeadLoss({ pipe, water, length: -1, flow: 0 })).toThrow(/length/);
  expect(() => frictionHeadLoss({ pipe, water, length: 1, flow: Number.NaN })).toThrow(/flow/);
  const flat = { ...pipe, innerDiameter: 0 };
  expect(() => frictionHeadLoss({ pipe: flat, water, length: 1, flow: 0 })).toThrow(
    /innerDiameter/,
  );
});
