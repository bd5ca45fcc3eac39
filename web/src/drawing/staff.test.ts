import type { Change } from '@fallwright/engine';
import { expect, test } from 'vitest';
import { layOutDeliveryAxis } from './delivery-axis.ts';
import { layOutStaff } from './staff.ts';
import { leanOf, leanOfNow } from './staff-labels.ts';

const fall: Change = {
  what: 'fall',
  now: 1.9,
  searchedLow: 0.19,
  searchedHigh: 7.6,
  runs: { low: 1.22, high: 7.6, belowLow: 'staysOpen' },
  effort: 'large',
};

test('the stretch where it runs begins at the turning point and holds the present value', () => {
  const staff = layOutStaff(fall);
  expect(staff.runs?.from).toBeCloseTo(staff.stops[0]?.at ?? Number.NaN);
  expect(staff.now).toBeGreaterThan(staff.runs?.from ?? 1);
});

test('a stretch without a turning point runs off the end of the staff', () => {
  expect(layOutStaff(fall).runs?.to).toBe(1);
  expect(layOutStaff(fall).stops).toHaveLength(1);
});

test('a ram that stands outside its running stretch has its wedge outside the blue', () => {
  const staff = layOutStaff({
    ...fall,
    now: 0.9,
    runs: { low: 1.22, high: 7.6, belowLow: 'staysOpen' },
  });
  expect(staff.now).toBeLessThan(staff.runs?.from ?? 0);
});

test('where it runs nowhere there is no blue', () => {
  const { runs: _runs, ...nowhere } = fall;
  expect(layOutStaff(nowhere).runs).toBeUndefined();
});

test('everything stays on the staff', () => {
  for (const now of [0.19, 0.5, 1.9, 7.6]) {
    const staff = layOutStaff({ ...fall, now });
    for (const at of [staff.now, ...staff.stops.map((stop) => stop.at)]) {
      expect(at).toBeGreaterThanOrEqual(0);
      expect(at).toBeLessThanOrEqual(1);
    }
  }
});

test('the delivery axis begins at nought and ends on a round number beyond both amounts', () => {
  const axis = layOutDeliveryAxis({ delivered: 910, needed: 620, unit: 1 });
  expect(axis.end).toBe(1200);
  expect(axis.delivered).toBeCloseTo(910 / 1200);
  expect(axis.needed).toBeCloseTo(620 / 1200);
});

test('the end is round in the unit that is read, whatever the amounts are in', () => {
  const gallon = 3.785;
  const axis = layOutDeliveryAxis({ delivered: 910, needed: 620, unit: gallon });
  expect(axis.end / gallon).toBeCloseTo(300);
});

test('nothing delivered still gives an axis', () => {
  const axis = layOutDeliveryAxis({ delivered: 0, needed: 900, unit: 1 });
  expect(axis.delivered).toBe(0);
  expect(axis.end).toBeGreaterThanOrEqual(900);
});

test('the present value leans away from a turning point close beside it', () => {
  const stopsBelow = layOutStaff({
    ...fall,
    now: 1.3,
    runs: { low: 1.22, high: 7, belowLow: 'staysOpen', aboveHigh: 'staysShut' },
  });
  expect(leanOfNow(stopsBelow)).toBe('right');
  const stopsAbove = layOutStaff({
    ...fall,
    now: 6.9,
    runs: { low: 1.22, high: 7, belowLow: 'staysOpen', aboveHigh: 'staysShut' },
  });
  expect(leanOfNow(stopsAbove)).toBe('left');
});

test('with room all round the present value stands in the middle', () => {
  const layout = layOutStaff({
    ...fall,
    now: 14,
    runs: { low: 5, high: 26, belowLow: 'flutters', aboveHigh: 'staysOpen' },
  });
  expect(leanOfNow(layout)).toBe('middle');
  expect(layout.stops.map(leanOf)).toEqual(['left', 'right']);
});

test('a value at the very left leans right, not off the staff', () => {
  const layout = layOutStaff({
    ...fall,
    now: 0,
    searchedLow: 0,
    runs: { low: 0, high: 6, aboveHigh: 'flutters' },
  });
  expect(leanOfNow(layout)).toBe('right');
});
