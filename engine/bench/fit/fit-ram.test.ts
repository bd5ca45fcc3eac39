import { describe, expect, test } from 'vitest';
import { plainPlace } from '../../cycle/fixtures/made-installation.ts';
import type { FitFactors, FitParameter } from './fit-parameters.ts';
import { fitRam, NINETY } from './fit-ram.ts';
import { madeTest } from './fixtures/made-tests.ts';
import { nextTests } from './next-test.ts';
import { toldApart } from './told-apart.ts';

/** The long run takes some four minutes on a free core. */
const SETS = process.env.FALLWRIGHT_LONG ? 200 : 3;

test(`90 % limits cover the truth in ${SETS} made data sets as often as they say`, () => {
  let fitted = 0;
  let covered = 0;
  for (let seed = 1; seed <= SETS; seed++) {
    const made = madeTest(seed);
    if (!made) continue;
    const fit = fitRam(made.cases);
    if (fit.kind !== 'fitted') continue;
    for (const { what, factor, logSpread } of fit.parameters) {
      fitted += 1;
      const off = Math.abs(Math.log(factor / (made.truth[what] ?? 1)));
      if (off <= NINETY * logSpread) covered += 1;
    }
  }
  const share = covered / fitted;
  // A dozen values cannot tell 85 % from 95 %; they tell limits that are far too narrow.
  expect(share).toBeGreaterThanOrEqual(SETS > 100 ? 0.85 : 0.65);
  if (SETS > 100) expect(share).toBeLessThanOrEqual(0.95);
}, 900_000);

describe('a fit', () => {
  const truth: FitFactors = { backFlow: 1.8, closingForce: 0.9 };
  const made = madeTest(7, { truth });
  if (!made) throw new Error('the made ram must run');

  test('moves what is off towards the truth, and predicts better than before', () => {
    const fit = fitRam(made.cases);
    if (fit.kind !== 'fitted') throw new Error(`not fitted: ${fit.why}`);
    const back = fit.parameters.find(({ what }) => what === 'backFlow');
    expect(Math.abs(Math.log((back?.factor ?? 0) / 1.8))).toBeLessThan(0.15);
    expect(fit.gapAfter).toBeLessThan(0.5 * (fit.gapBefore ?? 0));
    // What would be learnt at a lift where the ram stands still is nothing, and more readings never widen a band.
    const [best, ...others] = nextTests(
      fit,
      [6, 15, 70].map((lift) => ({ name: `${lift}`, installation: plainPlace(), fall: 2, lift })),
    );
    expect(best?.bandAfter).toBeLessThan(best?.bandNow ?? 0);
    expect(others.at(-1)).toMatchObject({ runs: false, information: 0 });
  });

  test('is not carried by one bad reading, and names it', () => {
    const [first, ...rest] = made.cases;
    if (!first?.reading.deliveryFlow) throw new Error('a made reading has its delivery');
    const slip = { ...first.reading.deliveryFlow, value: 1.6 * first.reading.deliveryFlow.value };
    const cases = [{ ...first, reading: { ...first.reading, deliveryFlow: slip } }, ...rest];
    const fit = fitRam(cases);
    if (fit.kind !== 'fitted') throw new Error(`not fitted: ${fit.why}`);
    const back = fit.parameters.find(({ what }) => what === 'backFlow');
    expect(Math.abs(Math.log((back?.factor ?? 0) / 1.8))).toBeLessThan(0.3);
    expect(fit.readings.filter(({ isDoubted }) => isDoubted)).toMatchObject([
      { reading: 0, quantity: 'deliveryFlow' },
    ]);
  });

  test('of a ram that cannot run at a setting changes nothing and says where', () => {
    const [first] = made.cases;
    if (!first) throw new Error('a made test has cases');
    const reading = { ...first.reading, fall: { ...first.reading.fall, value: 0.02 } };
    expect(fitRam([{ ...first, reading }])).toMatchObject({
      kind: 'notFitted',
      why: 'doesNotRun',
      standsAt: [0],
    });
  });
});

test('two parameters that move the readings alike are not both told, and the one that does is named', () => {
  const usual = { closingForce: 0.1, drag: 0.4, backFlow: 0.25 } as Record<FitParameter, number>;
  // Drag moves each reading by half of what the force does, and back-flow moves only the last.
  const slopes = [
    [100, -50, 0],
    [60, -30, 0],
    [0, 0, 40],
  ];
  const { told, untold } = toldApart(slopes, ['closingForce', 'drag', 'backFlow'], usual);
  expect(told).toEqual(['drag', 'backFlow']);
  expect(untold).toMatchObject([{ what: 'closingForce', kind: 'looksLike' }]);
});
