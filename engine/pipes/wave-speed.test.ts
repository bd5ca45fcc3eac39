import { expect, test } from 'vitest';
import { GRAVITY } from '../quantities.ts';
import { waterSoundSpeed } from '../water/sound-speed.ts';
import { waterAt } from '../water/water.ts';
import { findPipe } from './find-pipe.ts';
import { joukowskyHead, joukowskyPressure } from './joukowsky.ts';
import type { PipeSegment } from './pipe.ts';
import { thickWallFactor, thinWallFactor } from './wall-stretch.ts';
import { airFreeWaveSpeed, waveSpeed } from './wave-speed.ts';

const WATER = waterAt({ temperature: 15, altitude: 0 });
const segmentOf = (name: string, freeAirFraction = 0): PipeSegment => {
  const result = findPipe(name);
  if (!result.ok) throw new Error(name);
  return {
    pipe: result.pipe,
    length: 10,
    fittingsLoss: 0,
    restraint: 'anchoredThroughout',
    freeAirFraction,
  };
};
const speedIn = (name: string) => waveSpeed(segmentOf(name), WATER);

test('the stiffer the pipe, the faster the wave: steel, copper, PVC, PE, hose', () => {
  const speeds = [
    'steel sch 40 1 in',
    'copper L 1 in',
    'PVC sch 40 1 in',
    'PE100 SDR11 32',
    'PVC hose 25',
    'rubber hose 25',
  ].map(speedIn);
  expect([...speeds].sort((a, b) => b - a)).toEqual(speeds);
});

// Common practice, no source: the bands that people expect of each kind of pipe.
test('waves run at 1350–1450 m/s in steel, 350–650 in PVC, 250–400 in PE and 40–200 in hose', () => {
  const within = (low: number, high: number, names: readonly string[]) => {
    for (const name of names) {
      expect(speedIn(name), name).toBeGreaterThan(low);
      expect(speedIn(name), name).toBeLessThan(high);
    }
  };
  within(1350, 1450, ['steel sch 40 1/2 in', 'steel sch 40 2 in', 'galvanised steel DN50']);
  within(350, 650, ['PVC sch 40 1/2 in', 'PVC sch 80 2 in', 'PVC-U PN16 50', 'PVC-U PN10 63']);
  within(250, 400, ['PE100 SDR11 25', 'PE100 SDR17 63', 'PE SIDR 7 1/2 in', 'PE SIDR 15 2 in']);
  within(40, 200, ['garden hose 1/2 in', 'PVC hose 50', 'rubber hose 19']);
});

test('a rigid pipe carries a wave at the speed of sound in open water', () => {
  const { bulkModulus, density } = WATER;
  const speed = airFreeWaveSpeed({ bulkModulus, density, wallCompliance: 0 });
  expect(speed).toBeCloseTo(waterSoundSpeed(15), 8);
});

test('a little free air slows the wave a lot, and pressure brings most of it back', () => {
  const [bled, bubbly] = [segmentOf('steel sch 40 1 in'), segmentOf('steel sch 40 1 in', 1e-3)];
  const slow = waveSpeed(bubbly, WATER);
  expect(slow).toBeLessThan(0.3 * waveSpeed(bled, WATER));
  const squeezed = waveSpeed(bubbly, WATER, 30);
  expect(squeezed).toBeGreaterThan(2.5 * slow);
  expect(squeezed).toBeLessThan(waveSpeed(bled, WATER, 30));
});

test('with a trace of air the speed runs smoothly into that of bled water', () => {
  const bled = waveSpeed(segmentOf('PE100 SDR11 32'), WATER);
  expect(waveSpeed(segmentOf('PE100 SDR11 32', 1e-12), WATER)).toBeCloseTo(bled, 4);
});

test('a pipe held along its length is never slower than one free to move', () => {
  for (const name of ['steel sch 40 1 in', 'PE100 SDR11 32', 'rubber hose 25']) {
    const held = segmentOf(name);
    const free = { ...held, restraint: 'expansionJoints' } as const;
    expect(waveSpeed(held, WATER)).toBeGreaterThan(waveSpeed(free, WATER));
  }
});

test('the factor of a thick wall goes over into that of a thin one as the wall thins', () => {
  for (const restraint of ['anchoredUpstream', 'anchoredThroughout', 'expansionJoints'] as const) {
    const thick = thickWallFactor({
      restraint,
      poissonRatio: 0.3,
      innerDiameter: 1,
      wallThickness: 1e-7,
    });
    expect(thick).toBeCloseTo(thinWallFactor({ restraint, poissonRatio: 0.3 }), 5);
  }
});

test('the hammer as a pressure is the weight of the hammer as a head', () => {
  const speed = speedIn('steel sch 40 1 in');
  const pressure = joukowskyPressure({
    density: WATER.density,
    waveSpeed: speed,
    velocityChange: 0.5,
  });
  expect(pressure / (WATER.density * GRAVITY)).toBeCloseTo(joukowskyHead(speed, 0.5), 9);
});

test('nonsense is refused by name', () => {
  const segment = segmentOf('PE100 SDR11 32');
  const without = { ...segment, pipe: { ...segment.pipe, wallThickness: 0 } };
  expect(() => waveSpeed(without, WATER)).toThrow(/wallThickness must be above zero/);
  expect(() => waveSpeed({ ...segment, freeAirFraction: -1 }, WATER)).toThrow(/freeAirFraction/);
  expect(() => waveSpeed(segment, WATER, -11)).toThrow(/gaugeHead/);
  expect(() => joukowskyHead(0, 1)).toThrow(/waveSpeed/);
  expect(() => thinWallFactor({ restraint: 'expansionJoints', poissonRatio: 0.6 })).toThrow(
    RangeError,
  );
});
