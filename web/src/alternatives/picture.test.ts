import type { Alternative, OperatingPoint, VerdictKind } from '@fallwright/engine';
import { expect, test } from 'vitest';
import type { Pair, PairResult } from './pairs.ts';
import type { PictureOf } from './picture.ts';
import { inReadingOrder, layOutPicture, pointAt } from './picture.ts';
import { boxOf, placeLabels } from './place-labels.ts';

const A_LITRE_A_DAY = 1e-3 / 86_400;
const A_LITRE_A_MINUTE = 1e-3 / 60;

const pairCalled = (name: string): Pair => ({
  key: name,
  row: { key: name, name, details: [], changes: [], site: {}, isOnSheet: name === 'own' },
  column: { key: 'DN20', entry: 'DN20', name: 'DN20', detail: '', isOnSheet: true },
});

function result(kind: VerdictKind, daily: number, taken: number): PairResult {
  const point: Partial<OperatingPoint> = {
    deliveryFlow: daily * A_LITRE_A_DAY,
    supplyFlow: taken * A_LITRE_A_MINUTE,
  };
  const decidedBy = { kind: 'closingFlow', has: 1, needs: 1, margin: 0 } as const;
  return {
    kind: 'answered',
    alternative: {
      driveName: '',
      ramName: '',
      driveIndex: 0,
      ramIndex: 0,
      verdict: { kind, decidedBy, limits: [decidedBy] },
      terminalFlow: 0,
      closingFlow: 0,
      ...(daily > 0 ? { operatingPoint: point as OperatingPoint } : {}),
    } satisfies Alternative,
  };
}

const picture = (part: Partial<PictureOf> = {}) =>
  layOutPicture({
    pairs: ['own', 'steel', 'hose'].map(pairCalled),
    results: new Map([
      ['own', result('runs', 910, 9.4)],
      ['steel', result('starves', 1350, 10.2)],
      ['hose', result('staysOpen', 0, 0)],
    ]),
    wishes: { needed: 620 * A_LITRE_A_DAY, given: 10 * A_LITRE_A_MINUTE },
    fallOverLift: 1.9 / 12,
    chosenKey: 'own',
    system: 'metric',
    width: 480,
    ...part,
  });

test('both axes begin at nought and hold every pair that delivers', () => {
  const { frame, points, across, up, notDrawn } = picture();
  expect(across[0]).toEqual({ at: frame.left, label: '0' });
  expect(up[0]).toEqual({ at: frame.bottom, label: '0' });
  expect(points.map(({ pair }) => pair.key)).toEqual(['own', 'steel']);
  for (const { x, y } of points) {
    expect(x).toBeGreaterThan(frame.left);
    expect(x).toBeLessThan(frame.right);
    expect(y).toBeGreaterThan(frame.top);
    expect(y).toBeLessThan(frame.bottom);
  }
  expect(notDrawn).toBe(1);
});

test('need and source stand where the points are measured against them', () => {
  const { need, source, points } = picture();
  const [own, steel] = points;
  expect(need?.label).toBe('620 needed');
  expect(need?.at).toBeGreaterThan(own?.y ?? 0);
  expect(source?.at).toBeGreaterThan(own?.x ?? 0);
  expect(source?.at).toBeLessThan(steel?.x ?? 0);
});

test('a source with far more than any ram takes is told in words and does not squeeze the points', () => {
  const { source, sourceBeyond } = picture({ wishes: { given: 40 * A_LITRE_A_MINUTE } });
  expect(source).toBeUndefined();
  expect(sourceBeyond).toBe('40\u00a0L/min');
});

test('with nothing run yet there is a frame and nothing in it', () => {
  const { points, labels, across } = picture({ results: new Map(), wishes: {} });
  expect(points).toEqual([]);
  expect(labels).toEqual([]);
  expect(across.length).toBeGreaterThan(1);
});

test('gallons and gallons a minute have round values of their own', () => {
  const { across, up } = picture({ system: 'us' });
  expect(across.map(({ label }) => label)).toEqual(['0', '0.5', '1', '1.5', '2', '2.5', '3']);
  expect(up.at(-1)?.label).toBe('400');
});

test('a touch takes the nearest point, and none when all are far', () => {
  const { points } = picture();
  const [own] = points;
  expect(pointAt(points, (own?.x ?? 0) + 6, (own?.y ?? 0) - 6)?.pair.key).toBe('own');
  expect(pointAt(points, 0, 0)).toBeUndefined();
});

test('keys go from the least water taken to the most', () => {
  const keys = inReadingOrder(picture().points).map(({ pair }) => pair.key);
  expect(keys).toEqual(['own', 'steel']);
});

test('words stand beside their points, and never on one another', () => {
  const frame = { left: 0, right: 400, top: 0, bottom: 300 };
  const crowd = Array.from({ length: 30 }, (_, i) => ({
    key: String(i),
    text: `pipe number ${i}`,
    x: 150 + (i % 6) * 14,
    y: 100 + Math.floor(i / 6) * 12,
    clear: 16,
    isNeeded: false,
  }));
  const boxes = placeLabels(crowd, [], frame).map(boxOf);
  expect(boxes.length).toBeGreaterThan(3);
  boxes.forEach((a, i) => {
    for (const b of boxes.slice(i + 1)) {
      const isApart =
        a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
      expect(isApart).toBe(true);
    }
  });
});

test('the chosen point keeps its words even where there is no room', () => {
  const frame = { left: 0, right: 400, top: 0, bottom: 300 };
  const wall = { left: 0, right: 400, top: 0, bottom: 300 };
  const label = { key: 'own', text: 'own', x: 200, y: 150, clear: 16 };
  expect(placeLabels([{ ...label, isNeeded: true }], [wall], frame)).toHaveLength(1);
  expect(placeLabels([{ ...label, isNeeded: false }], [wall], frame)).toHaveLength(0);
});
