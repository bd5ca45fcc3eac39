import { describe, expect, test } from 'vitest';
import type { Purpose } from './purposes.ts';
import { readQuantity } from './read-quantity.ts';

/** Exact: 1 ft = 0.3048 m, 1 in = 25.4 mm, 1 US gal = 231 in³, 1 lb = 0.45359237 kg, by definition. */
const GALLON = 231 * 0.0254 ** 3;
const OUNCE = 0.45359237 / 16;
const PSI = (0.45359237 * 9.80665) / 0.0254 ** 2;

const AS_WRITTEN: readonly (readonly [string, Purpose, number, number?])[] = [
  ['4 ft', 'height', 1.2192],
  ['1.2 m', 'height', 1.2],
  ['1.2m', 'height', 1.2],
  ['120 cm', 'height', 1.2],
  ['6 ft 3 in', 'height', 1.905],
  [`6'3"`, 'height', 1.905],
  [`6' 3 1/2"`, 'height', 1.9177],
  ['6 ft 3', 'height', 1.905],
  ['2 bar', 'height', 2e5 / 9806.65],
  ['40 psi', 'height', (40 * PSI) / 9806.65],
  ['1.9 m ± 0.1 m', 'height', 1.9, 0.1],
  ['1.9 ± 0.1 m', 'height', 1.9, 0.1],
  ['1.9 m +/- 5 %', 'height', 1.9, 0.095],
  ['1.9 m (± 10 cm)', 'height', 1.9, 0.1],
  ['1.9 m ±0.1', 'height', 1.9, 0.1],
  ['6 ft ± 3 in', 'height', 1.8288, 0.0762],
  ['14 L/min', 'sourceFlow', 14e-3 / 60],
  ['14 litres per minute', 'sourceFlow', 14e-3 / 60],
  ['12,5 l/min', 'sourceFlow', 12.5e-3 / 60],
  ['3 gpm', 'sourceFlow', (3 * GALLON) / 60],
  ['3 US gal/min', 'sourceFlow', (3 * GALLON) / 60],
  ['3 imp gal/min', 'sourceFlow', (3 * 4.54609e-3) / 60],
  ['900 L/day', 'daily', 0.9 / 86400],
  ['0.9 m3/d', 'daily', 0.9 / 86400],
  ['0.9 m³ a day', 'daily', 0.9 / 86400],
  ['240 gal a day', 'daily', (240 * GALLON) / 86400],
  ['1/2 in', 'bore', 0.0127],
  ['4 mm/day', 'watering', 4e-3 / 86400],
  ['4 L/m² a day', 'watering', 4e-3 / 86400],
  ['4 l/m2/day', 'watering', 4e-3 / 86400],
  ['0.2 in a day', 'watering', (0.2 * 0.0254) / 86400],
  ['0.1 gal/ft2 a day', 'watering', (0.1 * GALLON) / 0.3048 ** 2 / 86400],
  ['½ in', 'bore', 0.0127],
  ['1 1/2"', 'bore', 0.0381],
  ['12.7 mm', 'bore', 0.0127],
  ['40 psi', 'pressure', 40 * PSI],
  ['6 bar', 'pressure', 6e5],
  ['42 m of water', 'pressure', 42 * 9806.65],
  ['118 g', 'weight', 0.118 * 9.80665],
  ['4 oz', 'weight', 4 * OUNCE * 9.80665],
  ['1.2 N', 'weight', 1.2],
  ['1 lb 4 oz', 'mass', 20 * OUNCE],
  ['20 °C', 'temperature', 20],
  ['68 F', 'temperature', 20],
  ['−2 °C', 'temperature', -2],
  ['68 °F ± 9', 'temperature', 20, 5],
  ['1200 L', 'volume', 1.2],
  ['1,200 L', 'volume', 1.2],
  ['0.3 m²', 'surfaceArea', 0.3],
  ['60 %', 'share', 0.6],
  ['0.6', 'share', 0.6],
  ['1.6', 'gaugeClass', 0.016],
  ['1.6 %', 'gaugeClass', 0.016],
  ['62/min', 'beats', 62 / 60],
  ['62 beats a minute', 'beats', 62 / 60],
  ['45°', 'angle', Math.PI / 4],
  ['2.8 GPa', 'modulus', 2.8e9],
];

describe('what people write', () => {
  for (const [text, purpose, value, spread] of AS_WRITTEN) {
    test(`${text} as ${purpose}`, () => {
      const read = readQuantity(text, purpose);
      if (!read.ok) throw new Error(read.problems[0]?.message);
      // The conversion library carries its factors to seven figures and more.
      expect(read.value.value / value).toBeCloseTo(1, 6);
      expect(read.value.text).toBe(text);
      if (spread === undefined) expect(read.value.spread).toBeUndefined();
      else expect((read.value.spread ?? Number.NaN) / spread).toBeCloseTo(1, 6);
    });
  }
});

const FAULTS: readonly (readonly [string, Purpose, string, string])[] = [
  ['12', 'height', 'noUnit', '12 what? Write the unit: 12 m, 1.2 bar or 39 ft.'],
  ['90', 'beats', 'noUnit', '90 what? Write the unit: 90 a minute.'],
  ['14', 'sourceFlow', 'noUnit', '14 what? Write the unit: 14 L/min or 3.7 gpm.'],
  [
    '12 L/min',
    'height',
    'wrongKind',
    '12 L/min is a flow; the fall is a height. Write it like 1.9 m or 6 ft.',
  ],
  [
    '-1.9 m',
    'height',
    'negative',
    '-1.9 m is below nought. The fall is a height above nought, like 1.9 m.',
  ],
  ['', 'height', 'empty', 'Nothing is written here. Write the fall like 1.9 m or 6 ft.'],
  [
    'tall',
    'height',
    'notANumber',
    '“tall” does not begin with a number we can read. Write the fall like 1.9 m or 6 ft.',
  ],
  [
    '3 furlongs',
    'height',
    'unknownUnit',
    'In “3 furlongs” we know no unit “furlongs”. Write the fall like 1.9 m or 6 ft.',
  ],
  ['3-4 m', 'height', 'range', '“3-4 m” is a range. Write the middle and the spread: 3.5 ± 0.5 m.'],
  [
    '3 m to 4 m',
    'height',
    'range',
    '“3 m to 4 m” is a range. Write the middle and the spread: 3.5 ± 0.5 m.',
  ],
  [
    '1e30 m',
    'height',
    'tooLarge',
    '“1e30 m” is larger than anything at a ram. Check the number and its unit.',
  ],
  [
    '1.9 m ± wide',
    'height',
    'badSpread',
    'The ± in “1.9 m ± wide” cannot be read. Write it like 1.9 m ± 5 %.',
  ],
  [
    '1.9 m ± -0.1 m',
    'height',
    'badSpread',
    'The ± in “1.9 m ± -0.1 m” cannot be read. Write it like 1.9 m ± 5 %.',
  ],
];

describe('what cannot be read says what to write', () => {
  for (const [text, purpose, kind, message] of FAULTS) {
    test(`${text || 'nothing'} as ${purpose}: ${kind}`, () => {
      const called = purpose === 'height' ? 'the fall' : 'the flow';
      expect(readQuantity(text, purpose, called)).toEqual({
        ok: false,
        problems: [{ kind, message }],
      });
    });
  }

  test('a very long text is refused and cut short in the message', () => {
    const read = readQuantity('9'.repeat(100_000), 'height');
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.problems[0]?.message.length).toBeLessThan(120);
  });
});
