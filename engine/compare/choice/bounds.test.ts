import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { NUMBERS_OF_A_PLACE, placeFrom } from '../../cycle/fixtures/made-installation.ts';
import type { Installation } from '../../cycle/installation.ts';
import { operatingPoint } from '../../cycle/operating-point.ts';
import { joukowskyPressure } from '../../pipes/joukowsky.ts';
import type { PipeSegment } from '../../pipes/pipe.ts';
import { waveSpeed } from '../../pipes/wave-speed.ts';
import { GRAVITY } from '../../quantities.ts';
import { kindOf } from '../../site/verdict.ts';
import { boundsOf, deliveryBound } from './bounds.ts';
import { type Candidate, candidates } from './candidates.ts';
import { plainFit, plainOffers } from './fixtures/made-offers.ts';
import { installationOf } from './installation-of-parts.ts';

vi.setConfig({ testTimeout: 60_000 });

/** Places with a drive line of one bled pipe, as a choice makes them. */
const places = fc
  .array(fc.integer({ min: 0, max: NUMBERS_OF_A_PLACE.largest }), {
    minLength: NUMBERS_OF_A_PLACE.count,
    maxLength: NUMBERS_OF_A_PLACE.count,
  })
  .map((numbers): Installation => {
    const place = placeFrom(numbers);
    const [segment] = place.driveLine.segments as [PipeSegment];
    const length = place.driveLine.segments.reduce((sum, s) => sum + s.length, 0);
    const segments = [{ ...segment, length, freeAirFraction: 0 }];
    return { ...place, driveLine: { ...place.driveLine, segments, pockets: [] } };
  });

/** What the bounds look at besides the installation: whether there is a feeder. */
const NO_FEEDER = ([...candidates(plainFit(), {}, plainOffers())][0] as Candidate).parts;

test('no run gives more than its bound, and none runs that a bound turned away', () => {
  fc.assert(
    fc.property(places, (place) => {
      const bounds = boundsOf(place, NO_FEEDER);
      const point = operatingPoint(place);
      const runs = kindOf(place, point) === 'runs';
      if (bounds.reason?.kind === 'overRated') return;
      if (bounds.reason) expect(runs).toBe(false);
      else if (runs) {
        expect(point.flowAtClosing).toBeLessThanOrEqual(bounds.fastestFlow);
        expect(point.wasteFlow).toBeLessThanOrEqual(bounds.fastestFlow);
        // The largest share seen on 1500 places is a half.
        expect(point.deliveryFlow).toBeLessThanOrEqual(0.8 * deliveryBound(place, bounds));
      }
    }),
    { numRuns: 150, seed: 20261125 },
  );
});

test('friction in the delivery pipe and a small source lower the bound', () => {
  const [candidate] = candidates(plainFit(), {}, plainOffers());
  if (!candidate) throw new Error('no candidate');
  const place = plainFit();
  const installation = installationOf(place, candidate.parts);
  const bounds = boundsOf(installation, candidate.parts);
  const far = installationOf(plainFit({ deliveryRoute: { length: 5000 } }), candidate.parts);
  const poor = { ...installation, source: { kind: 'steady', yield: 5e-5 } as const };
  expect(deliveryBound(far, bounds)).toBeLessThan(0.8 * deliveryBound(installation, bounds));
  // All energy of what the source gives: q h = Q H.
  expect(deliveryBound(poor, bounds)).toBeLessThanOrEqual((5e-5 * 2) / 12);
});

test('a pipe is turned away by the hammer of its closing flow, with the two figures', () => {
  const [candidate] = candidates(plainFit(), {}, plainOffers());
  if (!candidate) throw new Error('no candidate');
  const { parts } = candidate;
  const pipe = { ...parts.drivePipe.pipe, rating: 2e5 };
  const weak = { ...parts, drivePipe: { ...parts.drivePipe, pipe } };
  const installation = installationOf(plainFit(), weak);
  const { reason, closingFlow } = boundsOf(installation, weak);
  if (reason?.kind !== 'overRated') throw new Error('it should be over its rating');
  const { density } = installation.water;
  const velocityChange = closingFlow / ((Math.PI / 4) * pipe.innerDiameter ** 2);
  const speed = waveSpeed(installation.driveLine.segments[0] as PipeSegment, installation.water);
  expect(reason.rating).toBe(2e5);
  expect(reason.pressure).toBeCloseTo(
    density * GRAVITY * 2 + joukowskyPressure({ density, waveSpeed: speed, velocityChange }),
    0,
  );
});
