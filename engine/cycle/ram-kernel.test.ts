/** The beat itself: it does not depend on how it is run, and does what a beat does. */
import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { typicalRam } from '../machine/typical-ram.ts';
import type { SprungValve, WasteValve, WeightedValve } from '../machine/waste-valve.ts';
import { closingFlow } from '../machine/waste-valve.ts';
import {
  driveOf,
  NUMBERS_OF_A_PLACE,
  placeFrom,
  plainPlace,
  withoutSnifter,
} from './fixtures/made-installation.ts';
import type { Installation } from './installation.ts';
import { beatAtHead, ramKernel, startedKernel } from './operating-point.ts';
import type { RamKernel } from './ram-kernel.ts';

const SEED = 20260204;
const IS_LONG = process.env.FALLWRIGHT_LONG === '1';
const RUNS = IS_LONG ? 1000 : 60;
// A busy machine may need longer than a test usually has.
vi.setConfig({ testTimeout: IS_LONG ? 3_600_000 : 60_000 });

const places = fc
  .array(fc.integer({ min: 0, max: NUMBERS_OF_A_PLACE.largest }), {
    minLength: NUMBERS_OF_A_PLACE.count,
    maxLength: NUMBERS_OF_A_PLACE.count,
  })
  .map(placeFrom);

/** All that can be seen of a kernel. */
function seen(kernel: RamKernel) {
  return {
    time: kernel.time,
    steps: kernel.steps,
    beats: kernel.beats,
    bodyHead: kernel.bodyHead,
    opening: kernel.opening,
    driveFlow: kernel.driveFlow,
    wasteFlow: kernel.wasteFlow,
    deliveryFlow: kernel.deliveryFlow,
    vesselHead: kernel.vesselHead,
    sourceLevel: kernel.sourceLevel,
    lastMotion: kernel.lastMotion,
    lastBeat: kernel.lastBeat,
    volumes: kernel.volumes,
    extremes: kernel.extremes,
    forward: [...kernel.forward],
    backward: [...kernel.backward],
    flow: [...kernel.flow],
  };
}

test('a ram beats the same, to the last digit, in one call or step by step', () => {
  let beats = 0;
  fc.assert(
    fc.property(places, fc.boolean(), (place, isDetailed) => {
      const options = isDetailed ? { unsteadyFriction: true, wallCreep: true } : {};
      const atOnce = startedKernel(place, place.lift, options);
      const stepwise = startedKernel(place, place.lift, options);
      while (atOnce.steps < 2000) atOnce.run(2000 - atOnce.steps);
      while (stepwise.steps < 2000) stepwise.run(1);
      expect(seen(stepwise)).toEqual(seen(atOnce));
      beats += atOnce.beats;
    }),
    { seed: SEED, numRuns: RUNS },
  );
  expect(beats).toBeGreaterThan(RUNS);
});

test('the same place gives the same beats every time', () => {
  const [first, second] = [0, 1].map(() => {
    const kernel = startedKernel(plainPlace(), 12, {});
    for (let beat = 0; beat < 50; beat++) kernel.run(100_000);
    return seen(kernel);
  });
  expect(second).toEqual(first);
});

test('a run stops at the end of the step in which the valve shut', () => {
  const kernel = startedKernel(plainPlace(), 12, {});
  for (let beat = 1; beat <= 20; beat++) {
    expect(kernel.run(100_000)).toBe(1);
    expect(kernel.beats).toBe(beat);
    expect(kernel.time - kernel.lastBeat.time).toBeLessThanOrEqual(kernel.grid.timeStep);
    expect(kernel.lastBeat.time).toBeLessThanOrEqual(kernel.time);
  }
});

test('weight, spring and flap of the same force and mass beat alike', () => {
  const { ram } = plainPlace();
  const weighted = ram.wasteValve as WeightedValve;
  expect(weighted.kind).toBe('weighted');
  const { submergedWeight, ...form } = weighted;
  const forces = { forceAtOpen: submergedWeight, forceAtShut: submergedWeight };
  const run = (wasteValve: WasteValve) => {
    const kernel = startedKernel(plainPlace({ ram: { ...ram, wasteValve } }), 12, {});
    for (let beat = 0; beat < 10; beat++) kernel.run(100_000);
    return seen(kernel);
  };
  const byWeight = run(weighted);
  expect(byWeight.beats).toBe(10);
  expect(run({ ...form, ...forces, kind: 'sprung' })).toEqual(byWeight);
  expect(run({ ...form, ...forces, kind: 'swing' })).toEqual(byWeight);
});

test('a spring that pushes harder when shut reopens the valve sooner', () => {
  const { ram } = plainPlace();
  const { submergedWeight, ...form } = ram.wasteValve as WeightedValve;
  const shutTimes = [1, 4].map((times) => {
    const wasteValve: SprungValve = {
      ...form,
      kind: 'sprung',
      forceAtOpen: submergedWeight,
      forceAtShut: times * submergedWeight,
    };
    const kernel = startedKernel(plainPlace({ ram: { ...ram, wasteValve } }), 12, {});
    let shut = 0;
    let steps = 0;
    for (let beat = 0; beat < 30; beat++) {
      const before = kernel.beats;
      while (kernel.beats === before) {
        kernel.run(1);
        steps++;
        if (kernel.opening === 0) shut++;
      }
    }
    return shut / steps;
  });
  expect(shutTimes[1]).toBeLessThan(shutTimes[0] as number);
});

test('the valve begins to shut when the water has come to the closing flow', () => {
  const { ram } = plainPlace();
  const place = plainPlace({ ram: withoutSnifter(ram) });
  const kernel = startedKernel(place, place.lift, {});
  const { stroke } = ram.wasteValve;
  let before = 0;
  while (kernel.opening === stroke) {
    before = kernel.wasteFlow;
    kernel.run(1);
  }
  const closing = closingFlow(ram.wasteValve, place.water.density);
  // The flow gathers in stairs, one each time a wave has been up the line and back: 2 g A H/a, some 6 % of it here.
  const stair = (2 * place.fall) / (kernel.grid.impedance[0] as number);
  expect(stair / closing).toBeLessThan(0.07);
  expect(before).toBeLessThan(closing);
  expect(before).toBeGreaterThan(closing - stair);
});

test('a heavier valve or a longer stroke beats more slowly, wastes more and delivers more', () => {
  const base = plainPlace();
  const valve = base.ram.wasteValve as WeightedValve;
  const beat = (changes: Partial<WeightedValve>) => {
    const ram = { ...base.ram, wasteValve: { ...valve, ...changes } };
    return beatAtHead({ ...base, ram }, base.lift, { block: 24 });
  };
  const now = beat({});
  const heavier = beat({
    submergedWeight: 2 * valve.submergedWeight,
    movingMass: 2 * valve.movingMass,
  });
  const longer = beat({ stroke: 1.5 * valve.stroke });
  for (const other of [heavier, longer]) {
    expect(other.beatFrequency).toBeLessThan(now.beatFrequency);
    expect(other.wasteFlow).toBeGreaterThan(now.wasteFlow);
    expect(other.deliveryFlow).toBeGreaterThan(now.deliveryFlow);
  }
});

test('a longer drive line beats more slowly', () => {
  const frequencies = [8, 16, 32].map(
    (length) =>
      beatAtHead(plainPlace({ driveLine: driveOf('steel sch 40 3/4 in', length) }), 12)
        .beatFrequency,
  );
  expect(frequencies[1]).toBeLessThan(frequencies[0] as number);
  expect(frequencies[2]).toBeLessThan(frequencies[1] as number);
});

/** Ram without what makes a real delivery valve: loss, cracking head, back-flow; and tight. */
function idealPlace(lift: number): Installation {
  const ram = withoutSnifter(typicalRam('DN20'));
  const deliveryValve = {
    ...ram.deliveryValve,
    backFlowPerBeat: 0,
    lossCoefficient: 0.01,
    crackingHead: 1e-3,
  };
  return plainPlace({ ram: { ...ram, deliveryValve }, lift });
}

test('with an ideal delivery valve a light waste valve reopens from about twice the fall on', () => {
  // The blow's head is cut off at the vessel's; mirrored at the source it pulls the body as far below the fall, to
  // 2 · 2 m − h, and the valve opens when that comes below the 0.09 m that its weight is worth: from 3.91 m on, and
  // a little more for what is lost on the way.
  const outcomeAt = (lift: number) => beatAtHead(idealPlace(lift), lift).end.outcome;
  for (const lift of [2.2, 2.6, 3, 3.4, 3.8]) expect(outcomeAt(lift)).toBe('staysShut');
  for (const lift of [4.4, 5, 6, 8]) expect(['settled', 'irregular']).toContain(outcomeAt(lift));
});

test('water that runs back through the delivery valve helps the waste valve open at a lower head', () => {
  const ideal = idealPlace(3);
  const { ram } = ideal;
  const leaky = {
    ...ram,
    deliveryValve: {
      ...ram.deliveryValve,
      backFlowPerBeat: typicalRam('DN20').deliveryValve.backFlowPerBeat,
    },
  };
  expect(beatAtHead(ideal, 3).end.outcome).toBe('staysShut');
  expect(beatAtHead({ ...ideal, ram: leaky }, 3).end.outcome).toBe('settled');
});

test('a body whose vapour collapses makes no blow that its flow could not', () => {
  // A DN50 ram whose body boils at each recoil. The cavity once closed with all the water that was left over in one
  // substep, which made spikes of 70 m and two beats out of one on coarse lines.
  const place = plainPlace({
    fall: 3,
    lift: 20,
    ram: typicalRam('DN50'),
    driveLine: driveOf('steel sch 40 2 in', 18),
  });
  const [coarse, fine] = [8, 32].map((reaches) => beatAtHead(place, 20, { reaches, block: 24 }));
  if (!coarse || !fine) throw new Error('two runs');
  expect(coarse.lowestHead).toBe(place.water.vapourHead);
  // Twice the vessel's head stands well above the true blow (30 m on a fine line) and well below the false one.
  expect(coarse.peakHead).toBeLessThan(2 * 20);
  expect(Math.abs(coarse.beatFrequency / fine.beatFrequency - 1)).toBeLessThan(0.03);
});

test('a pushed valve on a line at rest opens to its stop and stays until the water runs', () => {
  const kernel = ramKernel(plainPlace(), 12);
  expect(kernel.opening).toBe(0);
  kernel.pushOpen();
  expect(kernel.opening).toBe(plainPlace().ram.wasteValve.stroke);
  kernel.run(10);
  expect(kernel.opening).toBe(plainPlace().ram.wasteValve.stroke);
  expect(kernel.driveFlow).toBeGreaterThan(0);
});

test('more head in the vessel never gives more water a beat', () => {
  // Beats ring, so neighbours are set far enough apart (a third) to stand clear of the 2 % to which beats agree.
  const delivered = [6, 8, 11, 15, 20, 27].map(
    (head) => beatAtHead(plainPlace(), head, { block: 24 }).deliveryFlow,
  );
  for (let i = 1; i < delivered.length; i++) {
    expect(delivered[i]).toBeLessThan(delivered[i - 1] as number);
  }
});
