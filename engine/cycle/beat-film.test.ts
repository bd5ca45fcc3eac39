import { expect, test } from 'vitest';
import { waterAt } from '../water/water.ts';
import { filmBeat } from './beat-film.ts';
import { driveOf, plainPlace } from './fixtures/made-installation.ts';
import type { Installation } from './installation.ts';

const place = plainPlace({
  water: waterAt({ temperature: 10, altitude: 0 }),
  fall: 1.9,
  driveLine: driveOf('steel EN 10255 DN20', 14),
  deliveryLine: { segments: [] },
});

test('a film of one beat sees the waste valve shut and wide open, and water delivered', () => {
  const film = filmBeat(place);
  expect(Math.min(...film.opening)).toBe(0);
  expect(Math.max(...film.opening)).toBe(place.ram.wasteValve.stroke);
  expect(Math.max(...film.deliveryFlow)).toBeGreaterThan(0);
});

test('a film lasts as many beats as were asked for', () => {
  const film = filmBeat(place, { beats: 3 });
  const last = film.time.at(-1) as number;
  // The last frame stands one frame before the end.
  expect(last * film.point.beatFrequency).toBeGreaterThan(2.98);
  expect(last * film.point.beatFrequency).toBeLessThanOrEqual(3);
});

test('in every frame the line begins near the source’s level and ends in the body', () => {
  const film = filmBeat(place);
  for (let frame = 0; frame < film.frames; frame++) {
    const first = film.lineHead[frame * film.nodes] as number;
    const last = film.lineHead[(frame + 1) * film.nodes - 1] as number;
    // Entrance loss and velocity head at 0.6 m/s are below 0.05 m.
    expect(Math.abs(first - place.fall)).toBeLessThan(0.05);
    expect(last).toBe(Math.fround(film.bodyHead[frame] as number));
  }
});

test('nowhere in a film does the head fall below that at which the water boils', () => {
  // A fall of 8 m and a lift of 46 m part the water column in the line.
  const steep: Installation = { ...place, fall: 8, lift: 46 };
  const { lineHead } = filmBeat(steep, { beats: 2 });
  const lowest = lineHead.reduce((least, head) => Math.min(least, head), Infinity);
  // The line lies above the ram's level, so it boils a little before the body would; float32 rounds.
  expect(lowest).toBeGreaterThanOrEqual(place.water.vapourHead - 1e-4);
  expect(lowest).toBeLessThan(0);
});

test('a valve that stays open is filmed too', () => {
  const ram = place.ram;
  const heavy = { ...ram, wasteValve: { ...ram.wasteValve, submergedWeight: 40 } };
  const film = filmBeat({ ...place, ram: heavy as Installation['ram'] });
  expect(film.point.end.outcome).toBe('staysOpen');
  expect(film.frames).toBeGreaterThan(100);
});

test('no beats cannot be filmed', () => {
  expect(() => filmBeat(place, { beats: 0 })).toThrow('beats must be at least 1, got 0');
});
