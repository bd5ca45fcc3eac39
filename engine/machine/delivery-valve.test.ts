import { expect, test } from 'vitest';
import { GRAVITY } from '../quantities.ts';
import { deliveryLossPerFlowSquared, passageInertance } from './delivery-valve.ts';
import { typicalRam } from './typical-ram.ts';

const valve = typicalRam('DN25').deliveryValve;

test('a head of the passage’s own length lets its water fall freely', () => {
  // A column of length l under a head of l accelerates as a falling body: dV/dt = g, so dQ/dt = g A.
  const acceleration = valve.passageLength / passageInertance(valve);
  expect(acceleration / (GRAVITY * valve.area)).toBeCloseTo(1, 12);
});

test('a longer passage is more sluggish, a wider one less', () => {
  const { area, passageLength } = valve;
  const inertance = passageInertance(valve);
  expect(passageInertance({ ...valve, passageLength: 2 * passageLength }) / inertance).toBeCloseTo(
    2,
    12,
  );
  expect(passageInertance({ ...valve, area: 2 * area }) / inertance).toBeCloseTo(0.5, 12);
});

test('the open valve loses its coefficient in velocity heads', () => {
  const velocity = 2;
  const flow = velocity * valve.area;
  const velocityHead = velocity ** 2 / (2 * GRAVITY);
  expect(
    (deliveryLossPerFlowSquared(valve) * flow ** 2) / (valve.lossCoefficient * velocityHead),
  ).toBeCloseTo(1, 12);
});
