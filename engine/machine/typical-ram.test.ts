import { expect, test } from 'vitest';
import { GRAVITY } from '../quantities.ts';
import type { Ram } from './ram.ts';
import {
  massOfSubmergedWeight,
  submergedWeightOfMass,
  TYPICAL_SIZES,
  type TypicalSize,
  typicalRam,
} from './typical-ram.ts';
import { closingFlow, flowArea, openingForces, seatArea } from './waste-valve.ts';

const SIZES = Object.keys(TYPICAL_SIZES) as TypicalSize[];

/** Numbers of a ram that a larger one has more of. */
function sizesOf(ram: Ram): Record<string, number> {
  const { wasteValve, deliveryValve, airVessel } = ram;
  return {
    bore: ram.bore,
    seat: wasteValve.seatDiameter,
    stroke: wasteValve.stroke,
    port: wasteValve.portArea,
    gap: wasteValve.gapArea,
    movingMass: wasteValve.movingMass,
    weight: openingForces(wasteValve).atOpen,
    openArea: flowArea(wasteValve, wasteValve.stroke),
    closingFlow: closingFlow(wasteValve, 1000),
    deliveryArea: deliveryValve.area,
    passage: deliveryValve.passageLength,
    backFlow: deliveryValve.backFlowPerBeat,
    vessel: airVessel.volume,
    give: ram.bodyElasticity,
  };
}

test('every part of a typical ram grows with its size', () => {
  expect(SIZES.length).toBeGreaterThan(1);
  for (let i = 1; i < SIZES.length; i++) {
    const smaller = sizesOf(typicalRam(SIZES[i - 1] as TypicalSize));
    const larger = sizesOf(typicalRam(SIZES[i] as TypicalSize));
    for (const [part, size] of Object.entries(smaller)) {
      expect(larger[part], `${part} of ${SIZES[i]}`).toBeGreaterThan(size);
    }
  }
});

test('a half-inch ram shuts its waste valve at about five litres a minute', () => {
  // 0.53 m/s in 20 mm, falling with the fourth root of the bore: 0.53 (15/20)^¼ = 0.4932 m/s through 176.7 mm²,
  // which is 8.716·10⁻⁵ m³/s or 5.23 litres a minute.
  const flow = closingFlow(typicalRam('DN15').wasteValve, 1000);
  expect(flow).toBeCloseTo(8.716e-5, 8);
});

test('every typical ram shuts at 0.4 to 0.8 metres a second in a pipe of its bore', () => {
  // METHOD finds 0.4–0.7 m/s for bores of 16 to 102 mm; the printed flows of the largest ask for a little more.
  for (const size of SIZES) {
    const { wasteValve, bore } = typicalRam(size);
    const velocity = closingFlow(wasteValve, 1000) / ((Math.PI / 4) * bore ** 2);
    expect(velocity).toBeGreaterThan(0.4);
    expect(velocity).toBeLessThan(0.8);
  }
});

test('a typical valve is light: the water of its own fall holds it shut', () => {
  for (const size of SIZES) {
    const { wasteValve } = typicalRam(size);
    const headThatItOpensAgainst =
      openingForces(wasteValve).atShut / (1000 * GRAVITY * seatArea(wasteValve));
    // Below the smallest fall that rams are built for, about 0.3 m.
    expect(headThatItOpensAgainst).toBeLessThan(0.3);
  }
});

test('brass and steel weigh less in water, by the water they displace', () => {
  // A kilogram of density 7800 kg/m³ displaces 1/7.8 litre: 9.80665 · (1 − 1/7.8) = 8.5494 N.
  expect(submergedWeightOfMass(1)).toBeCloseTo(8.5494, 4);
  expect(massOfSubmergedWeight(submergedWeightOfMass(0.37))).toBeCloseTo(0.37, 12);
});
