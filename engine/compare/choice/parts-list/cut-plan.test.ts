import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pipeOffer } from '../fixtures/made-offers.ts';
import type { PipeOffer, SoldLength } from '../offers.ts';
import { type CutPlan, cutPlan, type WantedLines } from './cut-plan.ts';

function sold(soldLengths: readonly SoldLength[], joinable = true): PipeOffer {
  return { ...pipeOffer('steel sch 40 1 in', 0), soldLengths, joinable };
}

function boughtLength({ pieces }: CutPlan): number {
  return pieces.reduce((sum, { length }) => sum + length, 0);
}

/** Lines as a list of lengths. */
function flat(wanted: readonly WantedLines[]): number[] {
  return wanted.flatMap(({ length, count }) => Array.from({ length: count }, () => length));
}

const wantedLines = fc
  .tuple(
    fc.record({ length: fc.integer({ min: 1, max: 4 }), count: fc.integer({ min: 1, max: 2 }) }),
    fc.option(fc.integer({ min: 1, max: 5 }), { nil: undefined }),
  )
  .map(([drive, delivery]): WantedLines[] => [
    { line: 'drive', ...drive },
    ...(delivery === undefined ? [] : [{ line: 'delivery', length: delivery, count: 1 } as const]),
  ]);

const soldLengths = fc.uniqueArray(
  fc.record({ length: fc.integer({ min: 2, max: 5 }), cost: fc.integer({ min: 1, max: 30 }) }),
  { minLength: 1, maxLength: 2, selector: ({ length }) => length },
);

/**
 * The cheapest of all ways to buy pieces and share them out a metre at a time.
 * Whole metres are enough: lengths are whole, and the best sharing has no rings.
 */
function bruteCost(
  lines: readonly number[],
  stock: readonly { readonly length: number; readonly cost: number }[],
  { socket, joinable }: { readonly socket: number; readonly joinable: boolean },
): number {
  let best = Infinity;
  const most = lines.reduce((sum, length) => sum + Math.ceil(length / 2), 0);
  const seen = new Map<string, number>();
  const joints = (room: readonly number[], line: number, part: number, left: number): number => {
    if (line === lines.length) return 0;
    if (left === 0) return joints(room, line + 1, 0, lines[line + 1] ?? 0) - 1;
    if (part === room.length) return Infinity;
    const key = `${room} ${line} ${part} ${left}`;
    const before = seen.get(key);
    if (before !== undefined) return before;
    let fewest = joints(room, line, part + 1, left);
    const here = room[part] as number;
    for (let cut = joinable ? 1 : left; cut <= Math.min(here, left); cut++) {
      const after = room.map((length, i) => (i === part ? length - cut : length));
      fewest = Math.min(fewest, 1 + joints(after, line, part + 1, left - cut));
    }
    seen.set(key, fewest);
    return fewest;
  };
  const buy = (kind: number, room: readonly number[], cost: number): void => {
    if (cost >= best) return;
    const needed = joints(room, 0, 0, lines[0] as number);
    if (Number.isFinite(needed)) best = Math.min(best, cost + socket * needed);
    if (room.length >= most) return;
    stock.slice(kind).forEach((item, later) => {
      buy(kind + later, [...room, item.length], cost + item.cost);
    });
  };
  buy(0, [], 0);
  return best;
}

test('no way of buying and cutting is cheaper than the plan, sockets included', () => {
  fc.assert(
    fc.property(
      wantedLines,
      soldLengths,
      fc.integer({ min: 0, max: 12 }),
      fc.boolean(),
      (wanted, stock, socket, joinable) => {
        const plan = cutPlan(sold(stock, joinable), wanted, socket);
        const cost = plan ? (plan.cost as number) + plan.joints * socket : Infinity;
        expect(cost).toBe(bruteCost(flat(wanted), stock, { socket, joinable }));
      },
    ),
    { numRuns: 80 },
  );
});

test('cuts add up to what is wanted, and no piece is cut to more than it has', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.5, max: 60, noNaN: true }),
      fc.integer({ min: 1, max: 6 }),
      fc.double({ min: 0.5, max: 200, noNaN: true }),
      fc.uniqueArray(
        fc.record({
          length: fc.double({ min: 1, max: 100, noNaN: true }),
          cost: fc.option(fc.nat(9000), { nil: undefined }),
        }),
        { minLength: 1, maxLength: 3, selector: ({ length }) => length },
      ),
      fc.boolean(),
      (length, count, far, stock, joinable) => {
        const wanted: WantedLines[] = [
          { line: 'drive', length, count },
          { line: 'delivery', length: far, count: 1 },
        ];
        const pieces = stock.map((s) =>
          s.cost === undefined ? { length: s.length } : { length: s.length, cost: s.cost },
        );
        const { costPerMetre: _, ...offer } = sold(pieces, joinable);
        const plan = cutPlan(offer, wanted, 10);
        if (!plan) {
          expect(joinable).toBe(false);
          return;
        }
        for (const { line, length: want, count: times } of wanted) {
          for (let number = 1; number <= times; number++) {
            const cuts = plan.pieces.flatMap((p) =>
              p.cuts.filter((c) => c.line === line && c.number === number),
            );
            expect(cuts.reduce((sum, c) => sum + c.length, 0)).toBeCloseTo(want, 3);
            if (!joinable) expect(cuts).toHaveLength(1);
          }
        }
        for (const piece of plan.pieces) {
          const used = piece.cuts.reduce((sum, c) => sum + c.length, 0);
          expect(used).toBeGreaterThan(0);
          expect(used + piece.offCut).toBeCloseTo(piece.length, 6);
        }
        expect(boughtLength(plan)).toBeGreaterThanOrEqual(length * count + far - 1e-3);
        expect(plan.joints).toBe(plan.pieces.flatMap((p) => p.cuts).length - count - 1);
      },
    ),
  );
});

test('two drive lines share a bar that one would leave half unused', () => {
  const offer = sold([{ length: 6, cost: 8400 }]);
  const one = cutPlan(offer, [{ line: 'drive', length: 13, count: 1 }], 150);
  const two = cutPlan(offer, [{ line: 'drive', length: 13, count: 2 }], 150);
  expect([one?.pieces.length, one?.joints]).toEqual([3, 2]);
  expect([two?.pieces.length, two?.joints]).toEqual([5, 4]);
  // Sockets dearer than bars: then each line has its own.
  expect(cutPlan(offer, [{ line: 'drive', length: 10, count: 3 }], 0)?.pieces).toHaveLength(5);
  expect(cutPlan(offer, [{ line: 'drive', length: 10, count: 3 }], 9000)?.pieces).toHaveLength(6);
});

test('a hose is of one piece, from the coil that wastes least money', () => {
  const coils = [
    { length: 25, cost: 5000 },
    { length: 50, cost: 8500 },
  ];
  const plan = cutPlan(sold(coils, false), [{ line: 'drive', length: 12, count: 3 }], 0);
  // 25 m holds two of 12 m; one more coil is needed, or 50 m for all three.
  expect(plan?.pieces.map(({ length }) => length)).toEqual([50]);
  const long = [{ line: 'drive', length: 51, count: 1 }] as const;
  expect(cutPlan(sold(coils, false), long, 0)).toBeUndefined();
  expect(cutPlan(sold(coils, true), long, 0)?.cost).toBe(13_500);
});

test('a hair over a whole number of bars is no bar, and nonsense is refused', () => {
  const offer = sold([{ length: 6, cost: 100 }]);
  const line = (length: number) => [{ line: 'drive', length, count: 1 }] as const;
  expect(cutPlan(offer, line(3 * 6 + 1e-12), 0)?.pieces).toHaveLength(3);
  expect(cutPlan(offer, line(3 * 6 + 0.01), 0)?.pieces).toHaveLength(4);
  expect(() => cutPlan(offer, line(0), 0)).toThrow(/length must be above zero/);
  expect(() => cutPlan(sold([{ length: 0 }]), line(1), 0)).toThrow(/sold length must be above/);
});

test('many rams with many coils to choose from are planned at once', () => {
  const coils = [25, 50, 100, 150].map((length) => ({
    length,
    cost: 200 * length - length ** 1.5,
  }));
  const wanted: WantedLines[] = [
    { line: 'drive', length: 13.7, count: 8 },
    { line: 'feeder', length: 48, count: 1 },
    { line: 'delivery', length: 820, count: 1 },
  ];
  const from = performance.now();
  const plan = cutPlan(sold(coils), wanted, 150);
  // Judgement: a choice has thousands of these; a tenth of a second would be felt.
  expect(performance.now() - from).toBeLessThan(100);
  expect(boughtLength(plan as CutPlan)).toBeGreaterThanOrEqual(8 * 13.7 + 48 + 820);
});
