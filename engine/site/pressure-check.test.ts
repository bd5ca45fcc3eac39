/** Pressures against ratings. */
import { expect, test } from 'vitest';
import { driveOf, lengthOf, pipeNamed, plainPlace } from '../cycle/fixtures/made-installation.ts';
import type { Installation } from '../cycle/installation.ts';
import { operatingPoint } from '../cycle/operating-point.ts';
import { deratedRating } from '../pipes/derated-rating.ts';
import type { Pipe } from '../pipes/pipe.ts';
import { GRAVITY } from '../quantities.ts';
import { waterAt } from '../water/water.ts';
import type { PressureCheckRow } from './answer.ts';
import { pressureCheck } from './pressure-check.ts';

const place = plainPlace({
  fall: 3,
  lift: 18,
  driveLine: driveOf('PE100 SDR11 25', 15),
});
const { check, point } = pressureCheck(place);

const perMetre = place.water.density * GRAVITY;

/** The place with every pipe of its drive line rated as asked. */
function rated(of: Installation, rating: number | undefined): Installation {
  const { rating: _, ...unrated } = pipeNamed('PE100 SDR11 25');
  const pipe: Pipe = rating === undefined ? unrated : { ...unrated, rating };
  const segments = of.driveLine.segments.map((s) => ({ ...s, pipe }));
  return { ...of, driveLine: { ...of.driveLine, segments } };
}

const rowOf = (rows: readonly PressureCheckRow[], kind: PressureCheckRow['part']['kind']) => {
  const row = rows.find((r) => r.part.kind === kind);
  if (!row) throw new Error(kind);
  return row;
};

test('every part of the line, the ram’s body and the delivery line are checked', () => {
  const two = plainPlace({
    driveLine: driveOf('steel sch 40 3/4 in', 1, {
      segments: [lengthOf('PE100 SDR11 32', 6), lengthOf('steel sch 40 3/4 in', 6)],
    }),
  });
  const { rows } = pressureCheck(two).check;
  expect(rows.map((r) => r.part)).toEqual([
    { kind: 'driveSegment', index: 0, name: 'PE100 SDR11 32' },
    { kind: 'driveSegment', index: 1, name: 'steel sch 40 3/4 in' },
    { kind: 'ramBody', name: 'DN20' },
    { kind: 'deliverySegment', index: 0, name: 'PE100 SDR11 20' },
  ]);
});

test('the larger of simulated peak and Joukowsky’s bound governs', () => {
  for (const { simulatedPeak, joukowskyBound, governing } of check.rows) {
    expect(governing).toBe(Math.max(simulatedPeak, joukowskyBound ?? 0));
  }
  // Here the bound is the larger: the vessel cuts the blow off.
  const drive = rowOf(check.rows, 'driveSegment');
  expect(drive.joukowskyBound).toBeGreaterThan(drive.simulatedPeak);
  expect(drive.governing).toBe(drive.joukowskyBound);
});

test('a pipe between simulated peak and bound is over, though the simulation alone would pass it', () => {
  const drive = rowOf(check.rows, 'driveSegment');
  const between = (drive.simulatedPeak + (drive.joukowskyBound as number)) / 2;
  const row = rowOf(pressureCheck(rated(place, between)).check.rows, 'driveSegment');
  expect(row.simulatedPeak).toBeLessThan(row.rating as number);
  expect(row.outcome).toBe('over');
});

test('a rating just above what governs is within, and just below is over', () => {
  const { governing } = rowOf(check.rows, 'driveSegment');
  const outcomeAt = (rating: number | undefined) =>
    rowOf(pressureCheck(rated(place, rating)).check.rows, 'driveSegment').outcome;
  expect(outcomeAt(1.001 * governing)).toBe('within');
  expect(outcomeAt(0.999 * governing)).toBe('over');
  expect(outcomeAt(undefined)).toBe('noRating');
});

test('a warm plastic pipe carries less', () => {
  const warm = { ...place, water: waterAt({ temperature: 38, altitude: 200 }) };
  const cold = rowOf(check.rows, 'driveSegment');
  const hot = rowOf(pressureCheck(warm).check.rows, 'driveSegment');
  expect(hot.rating).toBeLessThan(cold.rating as number);
  expect(hot.rating).toBe(deratedRating(pipeNamed('PE100 SDR11 25'), 38));
});

test('a ram’s body is held against its own rating, when its maker states one', () => {
  expect(rowOf(check.rows, 'ramBody').outcome).toBe('noRating');
  const { governing } = rowOf(check.rows, 'ramBody');
  const strong = { ...place, ram: { ...place.ram, rating: 2 * governing } };
  const weak = { ...place, ram: { ...place.ram, rating: 0.5 * governing } };
  expect(rowOf(pressureCheck(strong).check.rows, 'ramBody').outcome).toBe('within');
  expect(rowOf(pressureCheck(weak).check.rows, 'ramBody').outcome).toBe('over');
});

test('the delivery line carries at least the lift', () => {
  const delivery = rowOf(check.rows, 'deliverySegment');
  expect(delivery.simulatedPeak).toBeGreaterThanOrEqual(0.998 * place.lift * perMetre);
  expect(delivery.joukowskyBound).toBeUndefined();
});

test('at the foot of a line the pressure is the fall and the blow', () => {
  const drive = rowOf(check.rows, 'driveSegment');
  // More than the vessel's head, which the blow has to come up to; the ram stands at height nought.
  expect(drive.simulatedPeak).toBeGreaterThan(point.vesselHead * perMetre);
  expect(rowOf(check.rows, 'ramBody').simulatedPeak).toBeGreaterThan(point.vesselHead * perMetre);
});

test('a line that dips below the ram bears the depth of the dip besides', () => {
  const dipped = {
    ...place,
    driveLine: {
      ...place.driveLine,
      profile: [
        { distance: 0, elevation: 3 },
        { distance: 7.5, elevation: -5 },
        { distance: 15, elevation: 0 },
      ],
    },
  };
  const even = rowOf(check.rows, 'driveSegment');
  const low = rowOf(pressureCheck(dipped).check.rows, 'driveSegment');
  // 5 m deeper at its lowest point. Where it lies changes no flow, but the water boils less easily down there.
  expect((low.joukowskyBound as number) - (even.joukowskyBound as number)).toBeGreaterThan(
    4.5 * perMetre,
  );
  expect(low.simulatedPeak).toBeGreaterThan(even.simulatedPeak);
});

test('highest and lowest heads go from the source to the ram, and no head is below vapour pressure', () => {
  const { distance, highest, lowest } = check.envelope;
  expect(distance[0]).toBe(0);
  expect(distance.at(-1)).toBeCloseTo(15, 9);
  expect(highest).toHaveLength(distance.length);
  expect(lowest).toHaveLength(distance.length);
  // Of a line that the source's level feeds, the upper end stays at that level.
  expect(highest[0]).toBe(place.fall);
  expect(lowest[0]).toBe(place.fall);
  distance.forEach((d, i) => {
    expect(lowest[i]).toBeLessThanOrEqual(highest[i] as number);
    const elevation = place.fall * (1 - d / 15);
    // A gap smaller than a cubic millimetre's thousandth is not followed, which leaves a head of a millimetre.
    expect(lowest[i]).toBeGreaterThan(elevation + place.water.vapourHead - 2e-3);
  });
  expect(check.peakHead).toBe(Math.max(...highest));
  expect(check.lowestHead).toBe(Math.min(...lowest));
});

test('caught air that is stretched thin falls no lower than vapour pressure either', () => {
  const airy = plainPlace({
    fall: 6,
    lift: 60,
    driveLine: driveOf('steel sch 40 3/4 in', 20, {
      pockets: [{ distance: 2, volume: 2e-6 }],
    }),
  });
  const { envelope } = pressureCheck(airy).check;
  envelope.distance.forEach((d, i) => {
    const elevation = 6 * (1 - d / 20);
    expect(envelope.lowest[i]).toBeGreaterThan(elevation + airy.water.vapourHead - 2e-3);
  });
});

test('hard blows on a high line tear the water, and the check says so', () => {
  const torn = pressureCheck(
    plainPlace({ fall: 6, lift: 60, driveLine: driveOf('steel sch 40 3/4 in', 20) }),
  ).check;
  expect(torn.hasCavity).toBe(true);
  const gentle = pressureCheck(
    plainPlace({ fall: 1, lift: 3, driveLine: driveOf('garden hose 3/4 in', 8) }),
  ).check;
  expect(gentle.hasCavity).toBe(false);
});

test('the fine run for pressures beats as the run from which the choice is made, and is the same every time', () => {
  const regular = plainPlace();
  const fine = pressureCheck(regular).point;
  expect(fine.end.reaches).toBe(32);
  // Measured: within 1 % on grids of 8 to 256 reaches, where the beat is regular.
  const chosen = operatingPoint(regular);
  expect(Math.abs(fine.beatFrequency / chosen.beatFrequency - 1)).toBeLessThan(0.03);
  expect(pressureCheck(place).check).toEqual(check);
});
