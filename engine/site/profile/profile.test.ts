/** Laws of profiles: crests, their air, pressures, filters. Expected numbers are exact and derived beside them. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ProfilePoint } from '../../cycle/installation.ts';
import { thinPolyline } from '../../numerics/thin-polyline.ts';
import { crestsAndSags, crestThreshold } from './crests-and-sags.ts';
import { fitToEnds, reversedProfile } from './fit-to-ends.ts';
import { groundDistance } from './ground-distance.ts';
import { groundProfile, levelProfile } from './ground-profile.ts';
import { readLine, type SurveyedLine } from './line-advice.ts';
import { clearingVelocity, pocketVolume } from './pocket-volume.ts';
import { smoothHeights } from './smooth-heights.ts';
import { staticPressure } from './static-pressure.ts';
import { thinProfile } from './thin-profile.ts';

const along = (...points: readonly (readonly [number, number])[]): readonly ProfilePoint[] =>
  points.map(([distance, elevation]) => ({ distance, elevation }));

/** Falls 2 m, with a crest of 0.4 m at 6 m and a sag at 3 m. */
const HUMP = along([0, 2], [3, 1], [6, 1.4], [14, 0]);

const line = (more: Partial<SurveyedLine> = {}): SurveyedLine => ({
  profile: HUMP,
  bores: [{ from: 0, bore: 0.03 }],
  surface: 2,
  heightSpread: 0,
  vents: [],
  ...more,
});

describe('crests and sags', () => {
  test('a hump is a sag and then a crest, each as high as its lesser side', () => {
    expect(crestsAndSags(HUMP, { threshold: 0.03 })).toMatchObject([
      { kind: 'sag', index: 1, distance: 3, elevation: 1 },
      { kind: 'crest', index: 2, distance: 6, elevation: 1.4 },
    ]);
    for (const turn of crestsAndSags(HUMP, { threshold: 0.03 })) {
      expect(turn.prominence).toBeCloseTo(0.4, 12);
    }
  });

  test('a rise below the threshold is none, and one just at it is one', () => {
    expect(crestsAndSags(HUMP, { threshold: 0.41 })).toEqual([]);
    expect(crestsAndSags(along([0, 1], [1, 0], [2, 0.5], [3, 0]), { threshold: 0.5 })).toHaveLength(
      2,
    );
    expect(crestThreshold({ bore: 0.03, heightSpread: 0.2 })).toBe(0.2);
    expect(crestThreshold({ bore: 0.03, heightSpread: 0 })).toBe(0.03);
  });

  test('a straight line, a flat line and two points have none', () => {
    for (const plain of [
      along([0, 2], [5, 1], [9, 0]),
      along([0, 1], [5, 1]),
      along([0, 0], [9, 3]),
    ]) {
      expect(crestsAndSags(plain, { threshold: 0.01 })).toEqual([]);
    }
  });

  test('whatever the line, crests and sags take turns and none is at an end; turned upside down they change places', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -9, max: 9, noNaN: true }), { minLength: 2, maxLength: 60 }),
        (heights) => {
          const profile = heights.map((elevation, i) => ({ distance: i, elevation }));
          const turns = crestsAndSags(profile, { threshold: 0.5 });
          for (const [i, turn] of turns.entries()) {
            expect(turn.kind).not.toBe(turns[i - 1]?.kind);
            expect(turn.index).toBeGreaterThan(turns[i - 1]?.index ?? 0);
            expect(turn.index).toBeLessThan(heights.length - 1);
          }
          const upsideDown = profile.map((p) => ({ ...p, elevation: -p.elevation }));
          expect(crestsAndSags(upsideDown, { threshold: 0.5 }).map(({ index }) => index)).toEqual(
            turns.map(({ index }) => index),
          );
        },
      ),
      { seed: 1, numRuns: 200 },
    );
  });
});

describe('air that a crest may hold', () => {
  test('two straight legs: half the section times the bore over each slope (exact)', () => {
    const D = 0.03;
    const [s1, s2] = [0.4 / 3, 1.4 / 8];
    const exact = 0.5 * (Math.PI / 4) * D ** 2 * D * (1 / s1 + 1 / s2);
    const found = pocketVolume(HUMP, { index: 2, from: 1, to: 3 }, D);
    expect(found / exact).toBeCloseTo(1, 9);
  });

  test('a level top adds the whole pipe for its length (exact)', () => {
    const D = 0.03;
    const flat = along([0, 1], [3, 1.4], [5, 1.4], [13, 0]);
    const wedges = pocketVolume(along([0, 1], [3, 1.4], [11, 0]), { index: 1, from: 0, to: 2 }, D);
    const found = pocketVolume(flat, { index: 1, from: 0, to: 3 }, D);
    expect(found - wedges).toBeCloseTo(2 * (Math.PI / 4) * D ** 2, 10);
  });

  test('a sag less than a bore below lets air slip out: less is held, and none over no rise', () => {
    const D = 0.1;
    const over = (rise: number): number =>
      pocketVolume(along([0, 2], [5, 1], [8, 1 + rise], [20, 0]), { index: 2, from: 1, to: 3 }, D);
    expect(over(0.099)).toBeLessThan(over(0.101));
    expect(over(0.02)).toBeLessThan(over(0.05));
    expect(over(1e-9)).toBeLessThan(1e-9);
  });

  test('flatter legs and wider pipes hold more', () => {
    const volume = (length: number, D: number): number =>
      pocketVolume(along([0, 0], [length, 1], [2 * length, 0]), { index: 1, from: 0, to: 2 }, D);
    expect(volume(20, 0.03)).toBeGreaterThan(volume(10, 0.03));
    // Twice the bore, eight times the air.
    expect(volume(10, 0.06) / volume(10, 0.03)).toBeCloseTo(8, 6);
  });

  test('a steeper leg and a larger pocket need a faster flow to be swept out', () => {
    const at = (slope: number, air: number): number =>
      clearingVelocity({ bore: 0.05, slope, air, gravity: 9.81 });
    expect(at(0.3, 1e-4)).toBeGreaterThan(at(0.1, 1e-4));
    expect(at(0.1, 1e-3)).toBeGreaterThan(at(0.1, 1e-6));
    // By the formula for a small pocket on a level leg: 1.1 · 0.45 √(9.81 · 0.05) (exact).
    expect(at(0, 1e-7)).toBeCloseTo(1.1 * 0.45 * Math.sqrt(9.81 * 0.05), 12);
  });
});

describe('a line read from end to end', () => {
  test('pressures at rest: least at the highest place, most at the lowest', () => {
    expect(staticPressure(HUMP, 2)).toEqual({
      lowest: { distance: 0, elevation: 2, pressureHead: 0 },
      highest: { distance: 14, elevation: 0, pressureHead: 2 },
    });
  });

  test('advice: a vent at the crest, or a straight run that has no crest left', () => {
    const { advice } = readLine(line());
    const ways = advice[0]?.ways ?? [];
    expect(ways[0]).toEqual({ kind: 'vent', at: 6 });
    const run = ways[1];
    if (run?.kind !== 'straighten') throw new Error('no straight run');
    // From the sag to where the leg lies 0.4 m below it: 1.4 − 0.6 = 0.8 m of 1.4 m over 8 m (exact).
    expect(run.from).toBe(3);
    expect(run.to).toBeCloseTo(6 + (0.8 / 1.4) * 8, 9);
    const straight = along([0, 2], [run.from, 1], [run.to, 0.6], [14, 0]);
    expect(readLine(line({ profile: straight })).crests).toEqual([]);
    expect(run.lowering).toBeGreaterThan(0.4);
  });

  test('on a rising line the run ends at the sag behind the crest', () => {
    const rising = along([0, 0], [20, 6], [40, 4], [80, 12]);
    const run = readLine(line({ profile: rising, surface: 12 })).advice[0]?.ways[1];
    expect(run).toMatchObject({ kind: 'straighten', to: 40 });
  });

  test('a vent near the top lets the air out; one elsewhere is idle', () => {
    expect(readLine(line({ vents: [6.1] })).crests[0]?.vent).toBe(6.1);
    expect(readLine(line({ vents: [6.1] })).advice).toEqual([]);
    expect(readLine(line({ vents: [9] }))).toMatchObject({ idleVents: [9], advice: [{}] });
  });

  test('a crest above the water that feeds it can only be laid lower', () => {
    const over = along([0, 1.9], [3, 1], [6, 2.2], [14, 0]);
    const { advice, pressure } = readLine(line({ profile: over }));
    expect(pressure.lowest.pressureHead).toBeCloseTo(-0.2, 12);
    expect(advice[0]?.ways).toEqual([{ kind: 'lower', at: 6, lowering: expect.closeTo(0.215, 9) }]);
  });

  test('heights known less well than the hump show no crest', () => {
    expect(readLine(line({ heightSpread: 0.5 }))).toMatchObject({ crests: [], sags: [] });
  });
});

describe('thinning', () => {
  const wave = Array.from({ length: 20_000 }, (_, i) => ({
    distance: i * 0.25,
    elevation: 20 * Math.sin(i / 900) - i * 0.003,
  }));

  test('the error told is the largest there is, and shrinks with more points', () => {
    for (const count of [10, 40, 200]) {
      const { profile, largestError } = thinProfile(wave, { count, threshold: 1 });
      expect(profile.length).toBeLessThanOrEqual(count);
      let worst = 0;
      let piece = 0;
      for (const { distance, elevation } of wave) {
        while (distance > (profile[piece + 1] as ProfilePoint).distance) piece += 1;
        const [a, b] = [profile[piece], profile[piece + 1]] as [ProfilePoint, ProfilePoint];
        const share = (distance - a.distance) / (b.distance - a.distance);
        worst = Math.max(
          worst,
          Math.abs(elevation - a.elevation - share * (b.elevation - a.elevation)),
        );
      }
      expect(largestError).toBeCloseTo(worst, 9);
    }
    const error = (count: number) => thinProfile(wave, { count, threshold: 1 }).largestError;
    expect(error(200)).toBeLessThan(error(40));
    expect(error(40)).toBeLessThan(error(10));
  });

  test('crests are kept', () => {
    const few = thinProfile(wave, { count: 12, threshold: 1 }).profile;
    expect(crestsAndSags(few, { threshold: 1 }).map(({ distance }) => distance)).toEqual(
      crestsAndSags(wave, { threshold: 1 }).map(({ distance }) => distance),
    );
  });

  test('a straight line needs two points', () => {
    expect(
      thinPolyline(
        [
          [0, 0],
          [1, 1],
          [2, 2],
          [3, 3],
        ],
        { count: 4 },
      ),
    ).toEqual({ kept: [0, 3], largestError: 0 });
  });
});

describe('ground', () => {
  test('a degree on the ground, within 0.01 %', () => {
    // Lengths of one degree on WGS 84, as widely printed (memory): 110,574 m and 111,320 m at the equator; 111,132 m
    // and 78,847 m at 45°. Taken over a thousandth of a degree, as a track does.
    const step = (latitude: number, north: number, east: number): number =>
      1000 *
      groundDistance(
        { latitude: latitude - north / 2, longitude: 7 },
        { latitude: latitude + north / 2, longitude: 7 + east },
      );
    for (const [latitude, north, east] of [
      [0, 110_574, 111_320],
      [45, 111_132, 78_847],
    ] as const) {
      expect(step(latitude, 1e-3, 0) / north).toBeCloseTo(1, 4);
      expect(step(latitude, 0, 1e-3) / east).toBeCloseTo(1, 4);
    }
  });

  test('the short way leads across the 180th meridian', () => {
    const d = groundDistance(
      { latitude: 0, longitude: 179.9995 },
      { latitude: 0, longitude: -179.9995 },
    );
    expect(d).toBeCloseTo(111.32, 1);
  });

  test('distance follows the slope', () => {
    const points = [0, 1, 2].map((i) => ({
      latitude: 46 + i * 1e-3,
      longitude: 7,
      height: i * 100,
    }));
    const { profile, levelLength } = groundProfile(points, 0);
    expect(profile.at(-1)?.distance).toBeCloseTo(Math.hypot(levelLength, 200), 6);
  });

  test('standing still adds one point of mean height', () => {
    const stand = (height: number) => ({ latitude: 46, longitude: 7, height });
    const walk = [stand(10), stand(12), stand(14), { latitude: 46.001, longitude: 7, height: 20 }];
    expect(levelProfile(walk).map(({ elevation }) => elevation)).toEqual([12, 20]);
  });

  test('filtering leaves a straight slope and the ends as they are, and takes jitter away', () => {
    const slope = Array.from({ length: 60 }, (_, i) => ({
      distance: i * 2,
      elevation: 50 - i * 0.3,
    }));
    expect(smoothHeights(slope, 20).largestChange).toBeLessThan(1e-9);
    const jitter = slope.map((p, i) => ({ ...p, elevation: p.elevation + (i % 2 ? 1 : -1) }));
    const { profile, typicalChange } = smoothHeights(jitter, 20);
    expect(profile[0]?.elevation).toBe(jitter[0]?.elevation);
    expect(profile.at(-1)?.elevation).toBe(jitter.at(-1)?.elevation);
    expect(Math.abs((profile[30]?.elevation ?? 0) - (slope[30]?.elevation ?? 0))).toBeLessThan(
      0.05,
    );
    expect(typicalChange).toBeGreaterThan(0.8);
  });

  test('ends are held, and the error is spread along the line', () => {
    const { profile, closingError } = fitToEnds(along([0, 640], [50, 646], [100, 653]), {
      start: 0,
      end: 12,
    });
    expect(closingError).toBe(-1);
    expect(profile.map(({ elevation }) => elevation)).toEqual([0, 5.5, 12]);
    expect(reversedProfile(along([0, 5], [3, 1]))).toEqual(along([0, 1], [3, 5]));
  });
});
