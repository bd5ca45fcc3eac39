import fc from 'fast-check';
import { expect, test } from 'vitest';
import { GRAVITY } from '../quantities.ts';
import { typicalRam } from './typical-ram.ts';
import type { SprungValve, SwingValve, WeightedValve } from './waste-valve.ts';
import {
  closingFlow,
  closingForcePerFlowSquared,
  flowArea,
  openingForces,
  seatArea,
} from './waste-valve.ts';

const SEED = 20260201;
const DENSITY = 1000;

function weighted(changes: Partial<WeightedValve> = {}): WeightedValve {
  const valve = typicalRam('DN25').wasteValve;
  if (valve.kind !== 'weighted') throw new Error('the typical ram has a weighted valve');
  return { ...valve, ...changes };
}

function sprung(forces: { atOpen: number; atShut: number }): SprungValve {
  const { kind: _, submergedWeight: __, ...form } = weighted();
  return { ...form, kind: 'sprung', forceAtOpen: forces.atOpen, forceAtShut: forces.atShut };
}

function swing(forces: { atOpen: number; atShut: number }): SwingValve {
  return { ...sprung(forces), kind: 'swing' };
}

const share = fc.integer({ min: 1, max: 1000 }).map((n) => n / 1000);

test('a shut valve passes nothing, and one pushed past shut passes nothing either', () => {
  expect(flowArea(weighted(), 0)).toBe(0);
  expect(flowArea(weighted(), -1e-6)).toBe(0);
});

test('a valve that has hardly opened passes what its curtain passes', () => {
  const valve = weighted();
  const opening = 1e-6 * valve.stroke;
  const curtain = valve.curtainCoefficient * Math.PI * valve.seatDiameter * opening;
  // 1/A² = 1/curtain² + 1/port²: the port takes off half of (curtain/port)², about 10⁻¹³ here.
  expect(Math.abs(flowArea(valve, opening) / curtain - 1)).toBeLessThan(1e-12);
});

test('a valve lifted far off its seat passes what its port passes', () => {
  const valve = weighted();
  const port = valve.portCoefficient * valve.portArea;
  const far = 1e4 * valve.seatDiameter;
  // As above, turned round: half of (port/curtain)².
  expect(Math.abs(flowArea(valve, far) / port - 1)).toBeLessThan(1e-8);
});

test('the wider a valve opens, the more it passes, and never more than curtain or port alone', () => {
  const valve = weighted();
  fc.assert(
    fc.property(share, share, (a, b) => {
      const [low, high] = [Math.min(a, b) * valve.stroke, Math.max(a, b) * valve.stroke];
      const area = flowArea(valve, high);
      expect(flowArea(valve, low)).toBeLessThanOrEqual(area);
      const curtain = valve.curtainCoefficient * Math.PI * valve.seatDiameter * high;
      expect(area).toBeLessThan(curtain);
      expect(area).toBeLessThan(valve.portCoefficient * valve.portArea);
    }),
    { seed: SEED },
  );
});

test('at the closing flow the push of the water is the weight of the valve', () => {
  const valve = weighted();
  const flow = closingFlow(valve, DENSITY);
  // Put together from the head and not from the engine's own short form: F = ρ g H A φ + drag, H = Q²/(2 g A²).
  const area = flowArea(valve, valve.stroke);
  const curtain = valve.curtainCoefficient * Math.PI * valve.seatDiameter * valve.stroke;
  const head = flow ** 2 / (2 * GRAVITY * area ** 2);
  const onDisc = DENSITY * GRAVITY * head * seatArea(valve) * (area / curtain) ** 2;
  const drag =
    valve.dragCoefficient * 0.5 * DENSITY * seatArea(valve) * (flow / valve.gapArea) ** 2;
  expect((onDisc + drag) / valve.submergedWeight).toBeCloseTo(1, 12);
});

test('four times the weight takes twice the flow to shut', () => {
  const light = weighted();
  const heavy = weighted({ submergedWeight: 4 * light.submergedWeight });
  expect(closingFlow(heavy, DENSITY) / closingFlow(light, DENSITY)).toBeCloseTo(2, 12);
});

test('a longer stroke takes more flow to shut, in proportion when the disc has no drag', () => {
  const dragged = weighted();
  const free = weighted({ dragCoefficient: 0 });
  const flows = [1, 1.5, 2].map((times) =>
    closingFlow({ ...dragged, stroke: times * dragged.stroke }, DENSITY),
  );
  expect(flows[1]).toBeGreaterThan(flows[0] as number);
  expect(flows[2]).toBeGreaterThan(flows[1] as number);
  const longer = closingFlow({ ...free, stroke: 2 * free.stroke }, DENSITY);
  expect(longer / closingFlow(free, DENSITY)).toBeCloseTo(2, 12);
});

test('drag on the disc lets it shut at less flow', () => {
  const flows = [0, 1, 2].map((dragCoefficient) =>
    closingFlow(weighted({ dragCoefficient }), DENSITY),
  );
  expect(flows[1]).toBeLessThan(flows[0] as number);
  expect(flows[2]).toBeLessThan(flows[1] as number);
});

test('once it has begun to shut, the same flow pushes a valve harder', () => {
  const valve = weighted();
  fc.assert(
    fc.property(share, share, (a, b) => {
      fc.pre(a !== b);
      const [low, high] = [Math.min(a, b) * valve.stroke, Math.max(a, b) * valve.stroke];
      expect(closingForcePerFlowSquared(valve, low, DENSITY)).toBeGreaterThan(
        closingForcePerFlowSquared(valve, high, DENSITY),
      );
    }),
    { seed: SEED },
  );
});

test('denser water shuts a valve at less flow', () => {
  const valve = weighted();
  // Force goes with density, so the flow goes with one over its root.
  expect(closingFlow(valve, 4000) / closingFlow(valve, 1000)).toBeCloseTo(0.5, 12);
});

test('a valve that nothing holds open shuts without any flow', () => {
  expect(closingFlow(weighted({ submergedWeight: 0 }), DENSITY)).toBe(0);
  expect(closingFlow(sprung({ atOpen: -1, atShut: 2 }), DENSITY)).toBe(0);
});

test('a weight pulls alike at both stops; a spring and a flap need not', () => {
  expect(openingForces(weighted({ submergedWeight: 3 }))).toEqual({ atOpen: 3, atShut: 3 });
  expect(openingForces(sprung({ atOpen: 2, atShut: 5 }))).toEqual({ atOpen: 2, atShut: 5 });
  expect(openingForces(swing({ atOpen: 1, atShut: 4 }))).toEqual({ atOpen: 1, atShut: 4 });
});

test('what makes the force does not matter: weight, spring and flap of one force shut at one flow', () => {
  const force = 1.7;
  const same = { atOpen: force, atShut: force };
  const flow = closingFlow(weighted({ submergedWeight: force }), DENSITY);
  expect(closingFlow(sprung(same), DENSITY)).toBe(flow);
  expect(closingFlow(swing(same), DENSITY)).toBe(flow);
});

test('the force at the open stop sets the closing flow, and the force at the shut stop does not', () => {
  const flow = closingFlow(sprung({ atOpen: 1, atShut: 1 }), DENSITY);
  expect(closingFlow(sprung({ atOpen: 1, atShut: 6 }), DENSITY)).toBe(flow);
  expect(closingFlow(sprung({ atOpen: 4, atShut: 1 }), DENSITY) / flow).toBeCloseTo(2, 12);
});
