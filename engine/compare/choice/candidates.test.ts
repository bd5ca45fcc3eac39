import { expect, test } from 'vitest';
import { adviceFor } from './advice.ts';
import { type Candidate, candidates } from './candidates.ts';
import { pipeOffer, plainFit, plainItems, plainOffers, ramOffer } from './fixtures/made-offers.ts';
import { installationOf } from './installation-of-parts.ts';
import { partsListOf } from './parts-list/parts-list.ts';
import { usualDriveLengths } from './place-to-fit.ts';
import { runOf } from './run.ts';
import { sizingOf } from './sizing-of.ts';

const [FIRST] = candidates(
  plainFit(),
  { driveLengths: [13] },
  plainOffers(),
) as Iterable<Candidate>;

function only(mostRams = 1, place = plainFit(), changes = {}): Candidate[] {
  const offers = plainOffers({
    rams: [ramOffer('DN20', 30_000)],
    drivePipes: [{ ...pipeOffer('steel sch 40 3/4 in', 1400), soldLengths: [{ length: 6 }] }],
    deliveryPipes: [pipeOffer('PE100 SDR11 20', 150)],
    ...changes,
  });
  return [...candidates(place, { driveLengths: [13], mostRams }, offers)];
}

test('a cost is the sum of its lines, in whole units, with bars bought whole', () => {
  const [one, two] = only(2) as [Candidate, Candidate];
  const { rows, total } = partsListOf(plainFit(), { items: plainItems() }, one.parts);
  const of = (kind: string) => rows.filter((r) => r.kind === kind);
  // Three bars of 6 m for 13 m, with two sockets; laying 13 m and 100 m.
  expect(of('pipe').map((r) => r.total)).toEqual([18 * 1400, 100 * 150]);
  expect(of('socket').map((r) => r.needed)).toEqual([2]);
  expect(of('laying').map((r) => r.total)).toEqual([13 * 100, 100 * 100]);
  expect(one.cost).toBe(total);
  expect(rows.reduce((sum, r) => sum + (r.total ?? 0), 0)).toBe(total);
  // A second ram: its own ram, fittings and work, and 13 m of drive line in five bars for both; trench and delivery pipe are shared.
  const second = partsListOf(plainFit(), { items: plainItems() }, two.parts);
  const count = (list: typeof rows, kind: string) =>
    list.reduce((sum, r) => sum + (r.kind === kind ? r.bought : 0), 0);
  expect(second.rows.find((r) => r.kind === 'pipe')?.bought).toBe(30);
  for (const kind of ['ram', 'gateValve', 'stopValve', 'wasteValveRubber', 'labour'] as const) {
    expect(count(second.rows, kind)).toBe(2 * count(rows, kind));
  }
  expect(count(second.rows, 'trench')).toBe(count(rows, 'trench'));
  expect(count(second.rows, 'tee')).toBe(1);
  expect(count(second.rows, 'nonReturnValve')).toBe(2);
});

test('each of several rams has its part of the source and of the delivery line', () => {
  const [, two] = only(2) as [Candidate, Candidate];
  const half = installationOf(plainFit(), two.parts);
  expect(half.source).toEqual({ kind: 'steady', yield: 5e-4 });
  expect(half.deliveryLine.sharedBy).toBe(2);
});

test('usual lengths are the way itself and multiples of the fall that can be laid', () => {
  expect(usualDriveLengths(plainFit(), false)).toEqual([12, 14]);
  expect(usualDriveLengths(plainFit(), true)).toEqual([10, 12, 14]);
  expect(usualDriveLengths(plainFit({ driveRoute: { length: 40 } }), false)).toEqual([40]);
});

test('rules of the trade are told with their source, and do not decide', () => {
  const place = plainFit();
  const [one] = only() as [Candidate];
  const rows = adviceFor(place, one, runOf(place, one.parts));
  const row = (rule: string) => rows.find((r) => r.rule === rule);
  expect(row('driveLengthOverFall')).toMatchObject({ value: 6.5, isWithin: true });
  expect(row('leastFall')).toMatchObject({ value: 2, isWithin: true });
  expect(row('rigidDrivePipe')?.isWithin).toBe(true);
  for (const { source, id } of rows) {
    expect(source.length).toBeGreaterThan(5);
    expect(id).toMatch(/^RT\d\d$/);
  }
  const steep = plainFit({ lift: 70 });
  const far = adviceFor(steep, one, runOf(steep, one.parts));
  expect(far.find((r) => r.rule === 'largestLiftOverFall')).toMatchObject({
    value: 35,
    isWithin: false,
  });
});

test('sizes that go with a combination follow from its run', () => {
  const place = plainFit({
    driveRoute: {
      length: 12,
      profile: [
        { distance: 0, elevation: 1.8 },
        { distance: 5, elevation: 0.9 },
        { distance: 8, elevation: 1.1 },
        { distance: 12, elevation: 0 },
      ],
    },
  });
  const [one] = only(1, place) as [Candidate];
  const run = runOf(place, one.parts);
  const sizing = sizingOf(place, { largestPulse: 0.1 }, one, run);
  // Laid in 13 m over a way of 12 m: vents are told along the way.
  expect(sizing.vents.drive.map((p) => p.distance)).toEqual([8]);
  const own = one.parts.tuning.ram.airVessel.volume;
  expect(sizing.pulse > 0.1).toBe(sizing.leastVessel > own);
  expect(sizing.anchorForce).toBeCloseTo(
    run.drivePressure * (Math.PI / 4) * one.parts.drivePipe.pipe.innerDiameter ** 2,
    6,
  );
  expect(sizing.deliveryFriction).toBeCloseTo(run.vesselHead - place.lift, 0);
});

test('a combination knows its parts by its key', () => {
  expect(FIRST?.key).toContain('DN20');
  expect(FIRST?.key.startsWith(FIRST.runKey)).toBe(true);
});
