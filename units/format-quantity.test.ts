import { describe, expect, test } from 'vitest';
import { formatNumber, formatQuantity, unitShown } from './format-quantity.ts';
import { unitSystemOf } from './unit-system.ts';

describe('a quantity on a page', () => {
  test('has three figures and a space that does not break', () => {
    expect(formatQuantity(1.9, 'height', 'metric')).toBe('1.9\u00a0m');
    expect(formatQuantity(1.9, 'height', 'us')).toBe('6.23\u00a0ft');
    expect(formatQuantity(1063 / 86_400_000, 'daily', 'metric')).toBe(
      '1,060\u00a0L\u00a0a\u00a0day',
    );
    expect(formatQuantity(0.0266, 'bore', 'metric')).toBe('26.6\u00a0mm');
  });

  test('has a true minus sign, and nought has none', () => {
    expect(formatQuantity(-3.21, 'head', 'metric')).toBe('−3.21\u00a0m');
    expect(formatQuantity(-0, 'head', 'metric')).toBe('0\u00a0m');
  });

  test('carries its spread in the same unit', () => {
    expect(formatQuantity(1.9, 'height', 'metric', { spread: 0.1 })).toBe(
      '1.9\u00a0±\u00a00.1\u00a0m',
    );
    expect(formatQuantity(20, 'temperature', 'us', { spread: 5 })).toBe('68\u00a0±\u00a09\u00a0°F');
  });

  test.each([
    [13.88, 0.36, '13.88 ± 0.36 m'],
    [1, 0.0028, '1.000 ± 0.003 m'],
    [1, 0.00028, '1.0000 ± 0.0003 m'],
    [12, 0.0996, '12.0 ± 0.1 m'],
    [2.069, 0.1, '2.1 ± 0.1 m'],
    [12, 7.07, '12.0 ± 7.1 m'],
    [24.2, 10, '24 ± 10 m'],
    [12_345, 252, '12,350 ± 250 m'],
    [12_345, 3, '12,345 ± 3 m'],
    [-0.04, 0.2, '0.0 ± 0.2 m'],
    [1.9, 0, '1.9 m'],
  ])('%d ± %d: number and spread end at the same figure', (value, spread, shown) => {
    const text = formatQuantity(value, 'height', 'metric', { spread });
    expect(text.replaceAll('\u00a0', ' ')).toBe(shown);
  });

  test('shows the weight on a valve as a scale would', () => {
    expect(formatQuantity(0.118 * 9.80665, 'weight', 'metric')).toBe('118\u00a0g');
    expect(unitShown('weight', 'us')).toBe('oz');
  });

  test('shows much air in litres and little in millilitres', () => {
    expect(formatQuantity(5e-6, 'smallVolume', 'metric')).toBe('5\u00a0mL');
    expect(formatQuantity(0.02, 'smallVolume', 'metric')).toBe('20\u00a0L');
  });

  test('gives the bare number for a column', () => {
    expect(formatNumber(1.9, 'height', 'metric')).toBe('1.9');
    expect(formatNumber(20, 'temperature', 'us')).toBe('68');
  });

  test('a number that is not finite is a mistake of the caller', () => {
    expect(() => formatQuantity(Number.NaN, 'height', 'metric')).toThrow('finite');
  });
});

describe('the system that a file is written in', () => {
  test('is the one that most quantities use', () => {
    expect(unitSystemOf(['6 ft', '40 ft', '14 L/min'])).toBe('us');
    expect(unitSystemOf(['1.9 m ± 0.1 m', '14 L/min', '1/2 in'])).toBe('metric');
    expect(unitSystemOf(['62/min', 'nonsense'])).toBe('metric');
  });
});
