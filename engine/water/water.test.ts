import { expect, test } from 'vitest';
import { GRAVITY } from '../quantities.ts';
import { atmosphericPressure, pressureAtGeopotentialHeight } from './atmosphere.ts';
import { isentropicBulkModulus, isothermalBulkModulus } from './bulk-modulus.ts';
import { waterDensity } from './density.ts';
import { waterSoundSpeed } from './sound-speed.ts';
import { specificVolume } from './specific-volume.ts';
import { waterAt } from './water.ts';

const TEMPERATURES = Array.from({ length: 41 }, (_, degree) => degree);

test('water is heaviest at about 4 °C', () => {
  const heaviest = TEMPERATURES.reduce((a, b) => (waterDensity(b) > waterDensity(a) ? b : a));
  expect(heaviest).toBe(4);
});

test('warmer water flows more easily, boils at a higher pressure and carries sound faster', () => {
  for (const degree of TEMPERATURES.slice(1)) {
    const cold = waterAt({ temperature: degree - 1, altitude: 0 });
    const warm = waterAt({ temperature: degree, altitude: 0 });
    expect(warm.kinematicViscosity).toBeLessThan(cold.kinematicViscosity);
    expect(warm.vapourPressure).toBeGreaterThan(cold.vapourPressure);
    expect(waterSoundSpeed(degree)).toBeGreaterThan(waterSoundSpeed(degree - 1));
  }
});

test('a quick squeeze never finds water softer than a slow one', () => {
  for (const degree of TEMPERATURES) {
    expect(isentropicBulkModulus(degree)).toBeGreaterThanOrEqual(isothermalBulkModulus(degree));
  }
});

test('the stated change of volume with temperature is the slope of the volume itself', () => {
  const step = 1e-3;
  for (const degree of [1, 10, 25, 39]) {
    const slope =
      (specificVolume(degree + step).volume - specificVolume(degree - step).volume) / (2 * step);
    expect(specificVolume(degree).byTemperature).toBeCloseTo(slope, 11);
  }
});

test('the air gets thinner with altitude, and its pressure falls by the weight of the air passed', () => {
  for (let altitude = -2000; altitude < 11_000; altitude += 500) {
    expect(atmosphericPressure(altitude + 500)).toBeLessThan(atmosphericPressure(altitude));
  }
  // dp/dh = −ρ g with the gas law's density at 15 °C − 6.5 K/km, at 1000 m of geopotential height.
  const slope = (pressureAtGeopotentialHeight(1001) - pressureAtGeopotentialHeight(999)) / 2;
  const density = (pressureAtGeopotentialHeight(1000) * 0.0289644) / (8.31432 * 281.65);
  expect(slope / (-density * GRAVITY)).toBeCloseTo(1, 6);
});

test('high and warm places leave less suction before the column breaks', () => {
  const low = waterAt({ temperature: 10, altitude: 0 });
  const high = waterAt({ temperature: 10, altitude: 3000 });
  const warm = waterAt({ temperature: 35, altitude: 0 });
  expect(low.vapourHead).toBeLessThan(high.vapourHead);
  expect(low.vapourHead).toBeLessThan(warm.vapourHead);
  expect(low.vapourHead).toBeGreaterThan(-low.atmosphericHead);
});

test('ice, steam, the deep sea and the stratosphere are refused with the value named', () => {
  expect(() => waterAt({ temperature: -1, altitude: 0 })).toThrow(/between 0 and 40 °C, got -1 °C/);
  expect(() => waterAt({ temperature: 41, altitude: 0 })).toThrow(RangeError);
  expect(() => waterAt({ temperature: Number.NaN, altitude: 0 })).toThrow(RangeError);
  expect(() => waterAt({ temperature: 10, altitude: 12_000 })).toThrow(/11000 m, got 12000 m/);
  expect(() => waterAt({ temperature: 10, altitude: -2001 })).toThrow(RangeError);
});
