import { expect, test } from 'vitest';
import { PowerSpectrum } from './power-spectrum.ts';
import { seededStream } from './seeded-stream.ts';

const SIZE = 64;

function spectrum(samples: readonly number[]): Float64Array {
  const power = new Float64Array(SIZE / 2 + 1);
  new PowerSpectrum(SIZE).of(samples, 0, power);
  return power;
}

test('agrees with the sum that defines it', () => {
  const next = seededStream(1, 'spectrum');
  const samples = Array.from({ length: SIZE }, () => next() - 0.5);
  const power = spectrum(samples);
  for (let k = 0; k <= SIZE / 2; k++) {
    let [re, im] = [0, 0];
    for (const [i, sample] of samples.entries()) {
      const windowed = sample * (0.5 - 0.5 * Math.cos((2 * Math.PI * i) / SIZE));
      re += windowed * Math.cos((2 * Math.PI * k * i) / SIZE);
      im -= windowed * Math.sin((2 * Math.PI * k * i) / SIZE);
    }
    expect(power[k]).toBeCloseTo(re ** 2 + im ** 2, 9);
  }
});

test('a tone stands at its own frequency, whatever stood in the buffers before', () => {
  const one = new PowerSpectrum(SIZE);
  const power = new Float64Array(SIZE / 2 + 1);
  const tone = (cycles: number) =>
    Array.from({ length: SIZE }, (_, i) => Math.sin((2 * Math.PI * cycles * i) / SIZE));
  one.of(tone(5), 0, power);
  one.of(tone(20), 0, power);
  expect(power.indexOf(Math.max(...power))).toBe(20);
  expect(power[5]).toBeLessThan(1e-20 * SIZE ** 2 + 1e-20);
});

test('refuses a size that is no power of two', () => {
  for (const size of [0, 2, 48, Number.NaN])
    expect(() => new PowerSpectrum(size)).toThrow(RangeError);
});
