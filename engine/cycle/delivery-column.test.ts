/** The water in the delivery line, and the vessel that feeds it. */
import { expect, test } from 'vitest';
import { DeliveryColumn, STOP_VALVE_SHUT } from './delivery-column.ts';
import { deliveryFrictionHead } from './delivery-friction.ts';
import { lengthOf, plainPlace } from './fixtures/made-installation.ts';
import type { Installation } from './installation.ts';
import { startedKernel } from './operating-point.ts';

const place = plainPlace();

function runFor(column: DeliveryColumn, head: number, duration: number, step = 1e-3): number {
  let out = 0;
  for (let t = 0; t < duration; t += step) out += step * column.advance(head, step);
  return out;
}

test('an empty delivery line is filled as high as the source would fill it', () => {
  const column = new DeliveryColumn(place, 'toSourceLevel');
  // Cut into 200 slices of 12 m/200.
  expect(Math.abs(column.frontHeight - place.fall)).toBeLessThan(0.06);
  expect(column.filledShare).toBeCloseTo(place.fall / place.lift, 2);
});

test('water stays at rest while the vessel holds no more head than its front stands high', () => {
  const column = new DeliveryColumn(place, 'toSourceLevel');
  expect(runFor(column, column.frontHeight - 0.01, 5)).toBe(0);
  expect(runFor(new DeliveryColumn(place, 'full'), place.lift - 0.01, 5)).toBe(0);
});

test('the front rises as water comes, by the pipe’s own volume, to the tank and no farther', () => {
  const column = new DeliveryColumn(place, 'toSourceLevel');
  const volume = 100 * (Math.PI / 4) * lengthOf('PE100 SDR11 20', 1).pipe.innerDiameter ** 2;
  let height = column.frontHeight;
  const share = column.filledShare;
  let came = 0;
  for (let i = 0; i < 60; i++) {
    came += runFor(column, 20, 1);
    expect(column.frontHeight).toBeGreaterThanOrEqual(height);
    height = column.frontHeight;
    if (column.filledShare < 1) {
      expect((column.filledShare - share) * volume).toBeCloseTo(came, 9);
    }
  }
  runFor(column, 20, 600);
  expect(column.filledShare).toBe(1);
  expect(column.frontHeight).toBe(place.lift);
});

test('a full line comes to the flow whose friction uses up the head above the tank', () => {
  for (const excess of [0.2, 2, 8]) {
    const column = new DeliveryColumn(place, 'full');
    runFor(column, place.lift + excess, 200);
    const flow = column.advance(place.lift + excess, 1e-3);
    // Friction is read off 64 points of flow, between which it bends.
    expect(
      Math.abs(deliveryFrictionHead(place.deliveryLine, place.water, flow) / excess - 1),
    ).toBeLessThan(0.02);
  }
});

test('water in the delivery line never runs back through the column', () => {
  const column = new DeliveryColumn(place, 'full');
  runFor(column, place.lift + 5, 10);
  for (let i = 0; i < 5000; i++) {
    expect(column.advance(place.lift - 10, 1e-3)).toBeGreaterThanOrEqual(0);
  }
  expect(column.advance(place.lift - 10, 1e-3)).toBe(0);
});

test('a long step does not make the column overshoot', () => {
  const [short, long] = [1e-3, 0.5].map((step) => {
    const column = new DeliveryColumn(place, 'full');
    runFor(column, place.lift + 3, 300, step);
    return column.advance(place.lift + 3, step);
  });
  expect((long as number) / (short as number)).toBeCloseTo(1, 3);
});

test('over a crest the water has to be lifted to the crest, even when the tank lies lower', () => {
  const profile = [
    { distance: 0, elevation: 0 },
    { distance: 60, elevation: 15 },
    { distance: 100, elevation: 12 },
  ];
  const crested: Installation = {
    ...place,
    deliveryLine: { segments: [lengthOf('PE100 SDR11 20', 100)], profile },
  };
  const column = new DeliveryColumn(crested, 'full');
  expect(column.frontHeight).toBe(15);
  expect(runFor(column, 14, 5)).toBe(0);
});

test('no friction without flow or without a line, and more flow always loses more head', () => {
  const { deliveryLine, water } = place;
  expect(deliveryFrictionHead(deliveryLine, water, 0)).toBe(0);
  expect(deliveryFrictionHead({ segments: [] }, water, 1e-3)).toBe(0);
  let before = 0;
  for (let flow = 1e-6; flow < 1e-3; flow *= 1.3) {
    const head = deliveryFrictionHead(deliveryLine, water, flow);
    expect(head).toBeGreaterThan(before);
    before = head;
  }
});

test('a delivery line without any pipe is refused', () => {
  const none = { ...place, deliveryLine: { segments: [] } };
  expect(() => new DeliveryColumn(none, 'full')).toThrow('segment');
});

/** Range of the vessel's head over some beats, its delivery line full and running. */
function vesselSwing(airShare: number): { readonly swing: number; readonly delivered: number } {
  const { ram } = place;
  const other = { ...place, ram: { ...ram, airVessel: { ...ram.airVessel, airShare } } };
  const kernel = startedKernel(other, place.lift, {});
  kernel.setVesselSide({ kind: 'air', outflow: new DeliveryColumn(place, 'full') });
  kernel.fillVessel(place.lift);
  for (let beat = 0; beat < 60; beat++) kernel.run(5000);
  let highest = -Infinity;
  let lowest = Infinity;
  const before = kernel.volumes.delivered;
  const since = kernel.time;
  // A minute: vessel and delivery line swing slowly, once in some four seconds.
  for (let i = 0; i < 60_000; i++) {
    kernel.run(1);
    highest = Math.max(highest, kernel.vesselHead);
    lowest = Math.min(lowest, kernel.vesselHead);
  }
  expect(Number.isFinite(highest - lowest)).toBe(true);
  return {
    swing: highest - lowest,
    delivered: (kernel.volumes.delivered - before) / (kernel.time - since),
  };
}

test('the less air a vessel holds, the more its head swings; a drowned one knocks, and lifts less', () => {
  const [full, tenth, drowned] = [1, 0.1, 0].map(vesselSwing);
  if (!full || !tenth || !drowned) throw new Error('three vessels');
  // A typical vessel holds the water of a hundred beats: its head moves by a few per cent.
  expect(full.swing).toBeLessThan(0.1 * place.lift);
  expect(tenth.swing).toBeGreaterThan(3 * full.swing);
  expect(drowned.swing).toBeGreaterThan(2 * place.lift);
  expect(drowned.delivered).toBeLessThan(0.9 * full.delivered);
});

test('a ram on its own vessel and line delivers what it delivers at the head that they ask for', () => {
  const { delivered } = vesselSwing(1);
  const kernel = startedKernel(
    place,
    place.lift + deliveryFrictionHead(place.deliveryLine, place.water, delivered),
    {},
  );
  for (let beat = 0; beat < 40; beat++) kernel.run(5000);
  const before = kernel.volumes.delivered;
  const since = kernel.time;
  for (let beat = 0; beat < 100; beat++) kernel.run(5000);
  const atFixedHead = (kernel.volumes.delivered - before) / (kernel.time - since);
  // The vessel's head swings by 5 % about its mean, and beats differ by 1–2 % of themselves.
  expect(Math.abs(delivered / atFixedHead - 1)).toBeLessThan(0.05);
});

test('behind a shut stop valve nothing leaves the vessel, and its head climbs', () => {
  expect(STOP_VALVE_SHUT.advance(50, 1)).toBe(0);
  const kernel = startedKernel(place, place.fall, {});
  kernel.setVesselSide({ kind: 'air', outflow: STOP_VALVE_SHUT });
  kernel.fillVessel(place.fall);
  let before = kernel.vesselHead;
  for (let beat = 0; beat < 20; beat++) {
    kernel.run(5000);
    expect(kernel.vesselHead).toBeGreaterThanOrEqual(before - 0.05);
    before = kernel.vesselHead;
  }
  expect(before).toBeGreaterThan(2 * place.fall);
});

test('two rams on one line fill it in half the time, and each feels the friction of both', () => {
  const place = plainPlace();
  const shared = { ...place, deliveryLine: { ...place.deliveryLine, sharedBy: 2 } };
  const filling = (installation: Installation): number => {
    const column = new DeliveryColumn(installation, 'toSourceLevel');
    let time = 0;
    for (; column.filledShare < 1 && time < 1e4; time += 0.01) column.advance(14, 0.01);
    // Steady: the head left over the lift is friction.
    for (let i = 0; i < 20_000; i++) column.advance(14, 0.01);
    return column.advance(14, 0.01);
  };
  // One head carries one flow, whoever shares it.
  expect(filling(shared)).toBeCloseTo(filling(place) / 2, 6);
  expect(deliveryFrictionHead(shared.deliveryLine, place.water, 1e-5)).toBe(
    deliveryFrictionHead(place.deliveryLine, place.water, 2e-5),
  );
});
