import { expect, test } from 'vitest';
import { madeFilm } from './fixtures/made-film.ts';
import { vesselAir, waterLevel } from './vessel.ts';

const shape = { radius: 90, shoulder: 172, floor: 340 };

test('water stands at the floor of a vessel full of air and at the crown of one without', () => {
  expect(waterLevel(1, shape)).toBeCloseTo(340, 6);
  expect(waterLevel(0, shape)).toBeCloseTo(82, 6);
});

test('the level holds back as much air as it is told, in the dome and below it', () => {
  // Exact: slices of a cylinder under half a ball, added up from the crown.
  for (const share of [0.02, 0.1, 0.2, 0.263, 0.5, 0.9]) {
    const level = waterLevel(share, shape);
    expect(airAbove(level) / airAbove(shape.floor)).toBeCloseTo(share, 4);
  }
});

test('the dome and the cylinder meet without a jump', () => {
  const dome = 60 / 228;
  expect(waterLevel(dome - 1e-9, shape)).toBeCloseTo(waterLevel(dome + 1e-9, shape), 4);
});

test('air gives way while water comes in faster than it leaves, and is back at the end of the beat', () => {
  const film = madeFilm({
    opening: [1, 1, 0, 0, 1],
    deliveryFlow: [0, 0, 4e-4, 0, 0],
    vesselHead: 10,
  });
  const air = vesselAir(film, place(1e-3, 1));
  expect(air[2]).toBeLessThan(air[1] as number);
  expect(air[4]).toBeCloseTo(air[0] as number, 12);
  // Boyle: 10 m over an atmosphere of 10 m halves it.
  expect(air.reduce((a, b) => a + b, 0) / 5).toBeCloseTo(0.5e-3, 12);
});

test('without a beat nothing is taken to leave', () => {
  const film = madeFilm({ opening: [1, 0, 0], deliveryFlow: [0, 1e-3, 0], beatFrequency: 0 });
  const air = vesselAir(film, place(1e-3, 1));
  expect((air[0] as number) - (air[2] as number)).toBeCloseTo(1e-5, 12);
});

function airAbove(level: number): number {
  const slices = 20_000;
  const crown = shape.shoulder - shape.radius;
  const thickness = (level - crown) / slices;
  let air = 0;
  for (let i = 0; i < slices; i++) {
    const y = crown + (i + 0.5) * thickness;
    const over = Math.max(0, shape.shoulder - y);
    air += (shape.radius ** 2 - over ** 2) * thickness;
  }
  return air;
}

function place(volume: number, airShare: number): Parameters<typeof vesselAir>[1] {
  return {
    ram: { airVessel: { volume, airShare, polytropicIndex: 1.2 } },
    water: { atmosphericHead: 10 },
  };
}
