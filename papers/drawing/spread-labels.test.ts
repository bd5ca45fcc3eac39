import fc from 'fast-check';
import { expect, test } from 'vitest';
import { spreadLabels } from './spread-labels.ts';

const labels = fc.array(
  fc.record({
    wanted: fc.double({ min: -50, max: 450, noNaN: true }),
    height: fc.double({ min: 10, max: 48, noNaN: true }),
  }),
  { maxLength: 9 },
);

test('labels never lie over one another, and stand in the order of what they name', () => {
  fc.assert(
    fc.property(labels, (list) => {
      const middles = spreadLabels(list, { from: 0, to: 400, gap: 6 });
      const rows = list
        .map(({ wanted, height }, i) => ({ wanted, height, middle: middles[i] as number }))
        .sort((a, b) => a.middle - b.middle);
      for (const [i, row] of rows.entries()) {
        const next = rows[i + 1];
        if (next === undefined) continue;
        expect(next.middle - next.height / 2).toBeGreaterThanOrEqual(
          row.middle + row.height / 2 + 6 - 1e-6,
        );
        expect(next.wanted).toBeGreaterThanOrEqual(row.wanted);
      }
    }),
    { seed: 20261125 },
  );
});

test('a label with room stands where it wants to, and never above the column', () => {
  const alone = [
    { wanted: 100, height: 20 },
    { wanted: 300, height: 20 },
    { wanted: 2, height: 20 },
  ];
  expect(spreadLabels(alone, { from: 0, to: 400, gap: 6 })).toEqual([100, 300, 10]);
});

test('two that want one place move apart by the same', () => {
  const pair = [
    { wanted: 100, height: 20 },
    { wanted: 100, height: 20 },
  ];
  expect(spreadLabels(pair, { from: 0, to: 400, gap: 6 })).toEqual([87, 113]);
});
