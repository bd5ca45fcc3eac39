import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { answerFor } from '../../site/answer-for.ts';
import {
  type Choice,
  type ChoiceOptions,
  type ChoiceRequest,
  choose,
  chooseHere,
  performTask,
} from './choose.ts';
import { pipeOffer, plainFit, plainItems, plainOffers, ramOffer } from './fixtures/made-offers.ts';
import { installationOf } from './installation-of-parts.ts';
import { judgeBySamples } from './judge-by-samples.ts';
import { missesOf } from './nearest-miss.ts';
import type { Contender } from './picks.ts';

const REQUEST: ChoiceRequest = {
  place: plainFit(),
  wish: { driveLengths: [12, 15], mostRams: 2 },
  // Copper costs more than a larger ram on plastic, which gives several times the water.
  offers: plainOffers({
    rams: [
      ramOffer('DN15', 26_000),
      ramOffer('DN20', 30_000, [0.8, 1.4]),
      ramOffer('DN32', 40_000),
    ],
    drivePipes: [
      pipeOffer('steel sch 40 3/4 in', 1400),
      pipeOffer('steel sch 40 1-1/4 in', 2300),
      pipeOffer('PE100 SDR11 32', 310),
      pipeOffer('copper L 1/2 in', 9500),
    ],
  }),
};

/** Everything that a choice says, without its counts. */
function said(choice: Choice) {
  const { priced, unpriced, isComplete } = choice;
  const reasons = [...choice.keys()].map((key) => [key, choice.reasonFor(key)] as const);
  return { priced, unpriced, isComplete, reasons: new Map(reasons) };
}

/** Results handed back last first, as workers might. */
function chooseInDisorder(request: ChoiceRequest, options: ChoiceOptions): Choice {
  const search = choose(request, options);
  let step = search.next();
  while (!step.done) {
    const results = step.value.tasks.map((task) => performTask(request.place, task));
    step = search.next({ results: results.reverse() });
  }
  return step.value;
}

describe('a small choice', () => {
  let found: Choice;
  let brute: Choice;
  beforeAll(() => {
    found = chooseHere(REQUEST, { quotes: false });
    brute = chooseHere(REQUEST, { isBruteForce: true, quotes: false });
  });

  test('trying everything finds the same front, the same contenders and the same reasons', () => {
    expect(found.priced.front.length).toBeGreaterThan(3);
    expect(brute.progress.pruned).toBe(0);
    expect(found.progress.runs).toBeLessThan(brute.progress.runs);
    expect(said(found)).toEqual(said(brute));
  });

  test('neither the size of the batches nor the order of results changes anything that is said', () => {
    for (const batch of [1, 7, 1000]) {
      expect(said(chooseInDisorder(REQUEST, { batch, quotes: false })), `${batch}`).toEqual(
        said(found),
      );
    }
  });

  test('the order in which things are offered does not change the front', () => {
    const { offers } = REQUEST;
    const turned = {
      ...offers,
      rams: [...offers.rams].reverse(),
      drivePipes: [...offers.drivePipes].reverse(),
      deliveryPipes: [...offers.deliveryPipes].reverse(),
    };
    expect(said(chooseHere({ ...REQUEST, offers: turned }, { quotes: false })).priced).toEqual(
      said(found).priced,
    );
  });

  test('every combination is on the front, or has a reason that its numbers bear out', () => {
    const front = new Map(found.priced.front.map((c) => [c.candidate.key, c]));
    let beaten = 0;
    for (const key of found.keys()) {
      const reason = found.reasonFor(key);
      if (front.has(key)) {
        expect(reason).toBeUndefined();
        continue;
      }
      expect(reason, key).toBeDefined();
      if (reason?.kind !== 'beaten') continue;
      beaten++;
      expect(front.has(reason.by)).toBe(true);
      expect(reason.byCost).toBeLessThanOrEqual(reason.cost as number);
      expect(reason.byWater).toBeGreaterThanOrEqual((reason.water ?? reason.atMost) as number);
    }
    expect(beaten).toBeGreaterThan(10);
    expect(() => found.reasonFor('no such key')).toThrow(/key must be that of a combination/);
  });

  test('no reason of limits turns away what a run would have let pass', () => {
    // What bounds turn away is never run, not even by brute force: so it is run here.
    let tried = 0;
    for (const key of brute.keys()) {
      const reason = brute.reasonFor(key);
      if (reason?.kind !== 'staysOpen' && reason?.kind !== 'liftTooHigh') continue;
      const candidate = brute.candidate(key);
      if (!candidate) throw new Error(`no candidate ${key}`);
      tried++;
      const result = performTask(REQUEST.place, { kind: 'run', key, candidate });
      expect(result.kind === 'run' && result.run.verdict, key).not.toBe('runs');
    }
    expect(tried).toBeGreaterThan(3);
  });
});

test('picks are quoted as the same place would be answered by itself', () => {
  const need = 3e-6;
  const { priced } = chooseHere({ ...REQUEST, wish: { driveLengths: [12], need } });
  const { cheapest, mostWater, mostForgiving, shortfall } = priced.picks;
  expect(shortfall).toBeUndefined();
  if (!cheapest || !mostWater || !mostForgiving) throw new Error('three picks were expected');
  for (const { contender, answer } of [cheapest, mostWater, mostForgiving]) {
    expect(contender.water).toBeGreaterThanOrEqual(0.9 * need);
    const alone = answerFor(installationOf(REQUEST.place, contender.candidate.parts), {
      changes: false,
      demand: need / contender.candidate.parts.count,
    });
    expect(answer).toEqual(alone);
    expect(contender.margins.least).toBeGreaterThanOrEqual(0);
  }
  expect(cheapest.contender.candidate.cost).toBeLessThanOrEqual(
    mostForgiving.contender.candidate.cost as number,
  );
  expect(mostForgiving.contender.margins.least).toBeGreaterThanOrEqual(
    cheapest.contender.margins.least,
  );
  const quoted = answerFor(installationOf(REQUEST.place, cheapest.contender.candidate.parts), {
    changes: false,
  });
  expect(quoted.operatingPoint?.deliveryFlow).toBeGreaterThanOrEqual(need);
});

test('a need that nothing meets is told with the most that can be had', () => {
  const { picks, front } = chooseHere(
    { ...REQUEST, wish: { need: 1, driveLengths: [12] } },
    { quotes: false },
  ).priced;
  expect(picks.cheapest).toBeUndefined();
  expect(picks.shortfall?.mostWater).toBe(front.at(-1)?.water);
  expect(picks.mostWater).toBeDefined();
});

test('what could not give what is needed is never run, and says so with the most it could give', () => {
  const wish = { driveLengths: [12], need: 1.5e-5 };
  const whole = chooseHere({ ...REQUEST, wish: { driveLengths: [12] } }, { quotes: false });
  const choice = chooseHere({ ...REQUEST, wish }, { quotes: false });
  expect(choice.progress.runs).toBeLessThan(whole.progress.runs);
  expect(choice.priced.front.length).toBeGreaterThan(0);
  // Of the front without a need, what gives enough is all there.
  const enough = whole.priced.front.filter((c) => c.water >= 0.9 * wish.need);
  expect(choice.priced.front.map((c) => c.candidate.key)).toEqual(
    enough.map((c) => c.candidate.key),
  );
  let turnedAway = 0;
  for (const key of choice.keys()) {
    const reason = choice.reasonFor(key);
    if (reason?.kind !== 'belowNeed') continue;
    turnedAway++;
    expect(reason.atMost ?? reason.water).toBeLessThan(0.9 * wish.need);
  }
  expect(turnedAway).toBeGreaterThan(3);
});

test('a judge may turn the picks, and is asked with the flow of the dry season', () => {
  const place = plainFit({ dryFlow: 9.5e-4 });
  const asked: (number | undefined)[] = [];
  const { picks, front } = chooseHere(
    { ...REQUEST, place, wish: { driveLengths: [12] } },
    { quotes: false },
    (installation) => {
      asked.push(installation.source.kind === 'steady' ? installation.source.yield : undefined);
      // A stand-in that mistrusts every ram but the DN32.
      const chance = installation.ram.name === 'DN32' ? 0.97 : 0.4;
      return { chance, low: chance, high: 1 };
    },
  ).priced;
  expect(new Set(asked)).toEqual(new Set([9.5e-4]));
  expect(front[0]?.candidate.parts.ram.key).toBe('DN20');
  for (const pick of [picks.cheapest, picks.mostWater, picks.mostForgiving]) {
    expect(pick?.contender.candidate.parts.ram.key).toBe('DN32');
  }
});

test('sampling the inputs tells a forgiving combination from one at its limit, alike each time', () => {
  const judge = judgeBySamples(
    [
      { what: 'fall', spread: 0.25, shape: 'normal' },
      { what: 'sourceFlow', spread: 2e-4, shape: 'normal' },
      { what: 'deliveryLength', spread: 5, shape: 'normal' },
      { what: 'valveWeight', spread: 0.3, shape: 'normal' },
    ],
    { samples: 20, seed: 7 },
  );
  const request = { ...REQUEST, wish: { driveLengths: [12], need: 6e-6 } };
  const { picks, contenders } = chooseHere(request, { quotes: false }, judge).priced;
  const judged = contenders.flatMap((c) => (c.judgement ? [c.judgement] : []));
  expect(judged.length).toBeGreaterThan(3);
  for (const { chance, low, high } of judged) {
    expect(chance).toBeGreaterThanOrEqual(0);
    expect(chance).toBeLessThanOrEqual(1);
    expect(low).toBeLessThanOrEqual(high);
  }
  const best = Math.max(...judged.map((j) => j.chance));
  expect(best).toBeGreaterThan(Math.min(...judged.map((j) => j.chance)));
  // Chances within a twentieth are alike.
  expect(picks.mostForgiving?.contender.judgement?.chance).toBeGreaterThanOrEqual(best - 0.05);
  if (picks.cheapest) {
    expect(picks.cheapest.contender.judgement?.chance).toBeGreaterThanOrEqual(0.8);
  }
  expect(chooseHere(request, { quotes: false }, judge).priced.picks).toEqual(picks);
});

test('two rams stay two when the length of their delivery line is not sure', () => {
  const offers = plainOffers({ rams: [ramOffer('DN20', 30_000)] });
  const judge = judgeBySamples([{ what: 'deliveryLength', spread: 0, shape: 'normal' }], {
    samples: 2,
    seed: 1,
  });
  const request = {
    place: plainFit({ deliveryRoute: { length: 1500 } }),
    offers,
    wish: { driveLengths: [12], mostRams: 2 },
  };
  const { contenders } = chooseHere(request, { quotes: false }, judge).priced;
  const two = contenders.find((c) => c.candidate.parts.count === 2 && c.judgement);
  // Judgement: samples use shorter blocks than runs; a few per cent.
  expect((two?.judgement?.low as number) / (two?.run.deliveryFlow as number)).toBeCloseTo(1, 1);
});

test('what the dry season would stop is not picked while something else lasts', () => {
  const all = chooseHere({ ...REQUEST, wish: { driveLengths: [12] } }, { quotes: false }).priced;
  const draws = all.contenders.map((c) => c.run.supplyFlow * c.candidate.parts.count);
  const dryFlow = (Math.min(...draws) + Math.max(...draws)) / 2;
  const place = plainFit({ dryFlow });
  const { picks } = chooseHere(
    { ...REQUEST, place, wish: { driveLengths: [12] } },
    { quotes: false },
  ).priced;
  const most = picks.mostWater?.contender;
  expect(most?.run.supplyFlow).toBeLessThanOrEqual(dryFlow);
  expect(most?.water).toBeLessThan(all.front.at(-1)?.water as number);
});

test('stopping keeps what is done and says that it is not all', () => {
  const search = choose(REQUEST, { batch: 4 });
  const first = search.next();
  if (first.done) throw new Error('nothing to do');
  const results = first.value.tasks.map((task) => performTask(REQUEST.place, task));
  const end = search.next({ results, stop: true });
  if (!end.done) throw new Error('it went on');
  expect(end.value.isComplete).toBe(false);
  expect(end.value.progress.runs).toBe(4);
  expect(end.value.priced.front.length).toBeGreaterThan(0);
  const kinds = [...end.value.keys()].map((key) => end.value.reasonFor(key)?.kind);
  expect(kinds).toContain('notTried');
});

test('what lacks a price stands apart with the name of what lacks it', () => {
  const { costPerMetre: _, ...noPrice } = pipeOffer('steel sch 40 1 in', 0);
  const offers = plainOffers({ drivePipes: [pipeOffer('steel sch 40 3/4 in', 1400), noPrice] });
  const choice = chooseHere(
    { ...REQUEST, offers, wish: { driveLengths: [12] } },
    { quotes: false },
  );
  expect(choice.priced.front.length).toBeGreaterThan(0);
  for (const { candidate } of choice.priced.front) expect(candidate.missing).toEqual([]);
  const [most] = choice.unpriced.front;
  expect(choice.unpriced.front).toHaveLength(1);
  expect(most?.candidate.missing).toEqual([
    { kind: 'pipe', name: 'steel sch 40 1 in', size: 0.025 },
  ]);
  expect(most?.candidate.cost).toBeUndefined();
});

test('vessels and tanks share the runs of what they stand on; too small ones lose with their figures', () => {
  const offers = plainOffers({
    vessels: [
      { key: 'cup', name: 'cup', volume: 2e-5, cost: 100 },
      { key: 'bottle', name: 'bottle', volume: 5e-3, cost: 2500 },
    ],
    tanks: [
      { key: 'butt', name: 'butt', volume: 0.2, cost: 3000 },
      { key: 'tank', name: 'tank', volume: 1, cost: 12_000 },
    ],
  });
  const wish = { driveLengths: [12], tankVolume: 0.5 };
  const choice = chooseHere({ ...REQUEST, offers, wish }, { quotes: false });
  for (const { candidate } of choice.priced.front) {
    expect(candidate.parts.vessel?.key).toBe('bottle');
    expect(candidate.parts.tank?.key).toBe('tank');
  }
  const kinds = new Set([...choice.keys()].map((key) => choice.reasonFor(key)?.kind));
  expect(kinds).toContain('tankTooSmall');
  const pulses = [...choice.keys()].filter((key) => choice.reasonFor(key)?.kind === 'pulse');
  expect(pulses.length).toBeGreaterThan(0);
  for (const key of pulses) expect(choice.candidate(key)?.parts.vessel?.key).toBe('cup');
  expect(choice.progress.distinctRuns * 4).toBe(choice.progress.combinations);
});

test('two rams on one delivery line give less than twice one, and more than one', () => {
  const offers = plainOffers({
    rams: [ramOffer('DN20', 30_000)],
    drivePipes: [pipeOffer('steel sch 40 3/4 in', 1400)],
    deliveryPipes: [pipeOffer('PE100 SDR11 20', 150)],
  });
  const { priced } = chooseHere({
    // A long line: friction must outweigh the ripple of a beat, which may gain a fraction of a per cent from a change of head.
    place: plainFit({ deliveryRoute: { length: 1500 } }),
    offers,
    wish: { driveLengths: [12], mostRams: 2 },
  });
  const [one, two] = priced.front;
  expect(one?.candidate.parts.count).toBe(1);
  expect(two?.candidate.parts.count).toBe(2);
  expect(two?.water).toBeGreaterThan(1.2 * (one?.water as number));
  expect(two?.water).toBeLessThan(1.99 * (one?.water as number));
  expect(two?.run.vesselHead).toBeGreaterThan(one?.run.vesselHead as number);
});

test('a source that is far is reached by a feeder, whose friction is taken from the fall', () => {
  const place = plainFit({
    driveRoute: {
      length: 60,
      profile: [
        { distance: 0, elevation: 1.9 },
        { distance: 48, elevation: 1.2 },
        { distance: 60, elevation: 0 },
      ],
    },
  });
  const narrow = pipeOffer('PE100 SDR11 32', 310);
  const wide = pipeOffer('PE100 SDR11 63', 1100);
  const offers = plainOffers({
    rams: [ramOffer('DN20', 30_000)],
    drivePipes: [pipeOffer('steel sch 40 3/4 in', 1400)],
    feederPipes: [narrow, wide],
  });
  const choice = chooseHere(
    { place, offers, wish: { driveLengths: [12, 60, 200] } },
    { quotes: false, isBruteForce: true },
  );
  const fed = choice.priced.contenders.filter((c) => c.candidate.parts.feeder);
  expect(fed.length).toBeGreaterThan(0);
  for (const { run, candidate } of fed) {
    const { feeder } = candidate.parts;
    expect(run.level).toBeLessThan(2);
    expect(run.level).toBeGreaterThan(feeder?.standpipeBase as number);
    expect(feeder?.length).toBe(48);
    expect(feeder?.standpipeHeight).toBeCloseTo(2 - 1.2 + 0.3, 9);
  }
  const without = chooseHere(
    { place, offers: { ...offers, feederPipes: [] }, wish: { driveLengths: [12, 200] } },
    { quotes: false },
  );
  for (const key of without.keys()) {
    expect(without.reasonFor(key)).toMatchObject({ kind: 'lengthDoesNotFit', route: 60 });
  }
});

test('two offers under one key are refused', () => {
  const pipe = pipeOffer('PE100 SDR11 20', 150);
  const offers = plainOffers({ deliveryPipes: [pipe, pipe] });
  expect(() => chooseHere({ ...REQUEST, offers })).toThrow(/deliveryPipes must differ in key/);
});

test('whatever things cost, the search finds what trying everything finds, and money never buys less', () => {
  // A steep list may make the larger ram on plastic cheaper than the smaller on steel, or a pair cheaper than one.
  const prices = fc.array(fc.nat(60_000), { minLength: 5, maxLength: 5 });
  fc.assert(
    fc.property(prices, fc.boolean(), ([small, large, bar, coil, setting], isShared) => {
      const plastic = {
        ...pipeOffer('PE100 SDR11 32', 0),
        soldLengths: [
          { length: 25, cost: coil as number },
          { length: 50, cost: bar as number },
        ],
      };
      const offers = plainOffers({
        rams: [ramOffer('DN20', small as number), ramOffer('DN25', large as number)],
        drivePipes: [
          plastic,
          {
            ...pipeOffer('steel sch 40 3/4 in', 0),
            soldLengths: [{ length: 6, cost: bar as number }],
          },
        ],
        deliveryPipes: isShared ? [plastic] : [pipeOffer('PE100 SDR11 25', 210)],
        items: plainItems({ labour: { cost: setting as number } }),
      });
      const request = { place: plainFit(), offers, wish: { driveLengths: [13], mostRams: 2 } };
      const quick = chooseHere(request, { quotes: false });
      const all = chooseHere(request, { quotes: false, isBruteForce: true });
      expect(said(quick)).toEqual(said(all));
      const { front, contenders } = all.priced;
      expect(front.length).toBeGreaterThan(0);
      front.slice(1).forEach((point, i) => {
        const cheaper = front[i] as Contender;
        expect(point.candidate.cost).toBeGreaterThan(cheaper.candidate.cost as number);
        expect(point.water).toBeGreaterThan(cheaper.water);
      });
      for (const { candidate, water } of contenders) {
        const cost = candidate.cost as number;
        expect(front.some((f) => (f.candidate.cost as number) <= cost && f.water >= water)).toBe(
          true,
        );
      }
    }),
    { numRuns: 12 },
  );
});

test('a hose that must be of one piece is turned away where none is long enough', () => {
  const hose = {
    ...pipeOffer('garden hose 1 in', 0),
    soldLengths: [{ length: 10, cost: 4000 }],
    joinable: false,
  };
  const offers = plainOffers({ drivePipes: [hose] });
  const choice = chooseHere(
    { place: plainFit(), offers, wish: { driveLengths: [12] } },
    { quotes: false },
  );
  for (const key of choice.keys()) {
    expect(choice.reasonFor(key)).toEqual({
      kind: 'noPieceLongEnough',
      name: 'garden hose 1 in',
      length: 12,
      longest: 10,
    });
  }
  expect(choice.progress.runs).toBe(0);
});

test('what nothing on offer holds is counted by bound, with the one that came nearest', () => {
  const place = plainFit({ fall: 0.25, lift: 30 });
  const choice = chooseHere(
    { place, offers: plainOffers(), wish: { driveLengths: [12] } },
    { quotes: false },
  );
  const misses = missesOf(choice);
  expect(misses.reduce((sum, { count }) => sum + count, 0)).toBe(choice.progress.combinations);
  const open = misses.find(({ reason }) => reason.kind === 'staysOpen');
  if (open?.reason.kind !== 'staysOpen') throw new Error('some stay open at such a fall');
  for (const key of choice.keys()) {
    const reason = choice.reasonFor(key);
    if (reason?.kind !== 'staysOpen') continue;
    expect(reason.closingFlow / reason.terminalFlow - 1).toBeGreaterThanOrEqual(open.shortBy);
  }
  // What merely lost to another is no miss.
  const works = chooseHere(REQUEST, { quotes: false });
  const kinds = new Set(missesOf(works).map(({ reason }) => reason.kind));
  expect(kinds).not.toContain('beaten');
});
