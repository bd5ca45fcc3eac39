import fc from 'fast-check';
import { expect, test } from 'vitest';
import { frontOf, NEARNESS, type Point, Staircase } from './front.ts';

const points = fc
  .array(fc.record({ cost: fc.nat(40), water: fc.nat(40) }), { maxLength: 60 })
  .map((list): Point[] => list.map((p, i) => ({ ...p, key: `k${String(i).padStart(2, '0')}` })));

test('more money always buys more water on the front, and nothing beats what stands on it', () => {
  fc.assert(
    fc.property(points, (all) => {
      const front = frontOf(all);
      for (let i = 1; i < front.length; i++) {
        const [a, b] = [front[i - 1] as Point, front[i] as Point];
        expect(b.cost).toBeGreaterThan(a.cost);
        expect(b.water).toBeGreaterThan(a.water);
      }
      for (const f of front) {
        for (const p of all) {
          const isBeaten =
            p.cost <= f.cost && p.water >= f.water && (p.cost < f.cost || p.water > f.water);
          expect(isBeaten).toBe(false);
        }
      }
      // Whatever is not on it is matched or beaten by something that is.
      for (const p of all) {
        expect(front.some((f) => f.cost <= p.cost && f.water >= p.water)).toBe(true);
      }
    }),
  );
});

test('the front does not depend on the order of the points', () => {
  fc.assert(
    fc.property(points, (all) => {
      expect(frontOf([...all].reverse())).toEqual(frontOf(all));
    }),
  );
});

test('the staircase answers as a look through all points does', () => {
  fc.assert(
    fc.property(points, fc.nat(45), fc.nat(45), (all, cost, water) => {
      const stairs = new Staircase();
      for (const point of all) stairs.add(point);
      const upTo = (limit: number) =>
        Math.max(-1, ...all.filter((p) => p.cost <= limit).map((p) => p.water));
      expect(stairs.bestUpTo(cost)?.water ?? -1).toBe(upTo(cost));
      const isClear =
        upTo(cost) > water * (1 + NEARNESS) || (cost > 0 && upTo(cost / (1 + NEARNESS)) > water);
      expect(stairs.beatsClearly(cost, water)).toBe(isClear);
    }),
  );
});
