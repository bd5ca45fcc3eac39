/**
 * Rams for people who do not know their ram's parts yet.
 *
 * Every part follows from the bore by one rule. The rules are judgements; docs/MODEL.md gives the evidence for each, and
 * checks/ holds what they give against handbook tables of flow and efficiency. Put in the real parts as soon as they are known.
 */

import type { Kilogram, Metre, MetrePerSecond, Newton, Ratio } from '../quantities.ts';
import { GRAVITY } from '../quantities.ts';
import type { AirVessel, Ram } from './ram.ts';
import type { WasteValve, WeightedValve } from './waste-valve.ts';
import { closingForcePerFlowSquared } from './waste-valve.ts';

/** Nominal sizes of drive connection, with the bore that the rules start from. */
export const TYPICAL_SIZES = {
  DN15: 0.015,
  DN20: 0.02,
  DN25: 0.025,
  DN32: 0.032,
  DN40: 0.04,
  DN50: 0.05,
  DN65: 0.065,
  DN80: 0.08,
  DN100: 0.1,
} as const satisfies Record<string, Metre>;

export type TypicalSize = keyof typeof TYPICAL_SIZES;

/** Judgement: seat 1.05 bores wide, so that the open valve is no bottleneck. */
const SEAT_PER_BORE: Ratio = 1.05;
/**
 * Judgement: a stroke of 0.15 bores. Much longer ones need weights so light that the recoil can hardly reopen the valve;
 * much shorter ones throttle the water.
 */
const STROKE_PER_BORE: Ratio = 0.15;
/** Sharp-edged ring and port, about 0.6–0.75. Source: common practice, no source. */
const CURTAIN_COEFFICIENT: Ratio = 0.7;
const PORT_COEFFICIENT: Ratio = 0.7;
/** Judgement: drag coefficient of a flat disc across a stream, about 1. */
const DRAG_COEFFICIENT: Ratio = 1;
/**
 * Judgement: velocity in a drive pipe of the ram's own bore at which the valve shuts, for a bore of 20 mm. METHOD finds that
 * 0.4–0.7 m/s give the supply flows that handbooks print (checks: tables T2, T3, T7).
 */
const CLOSING_VELOCITY: MetrePerSecond = 0.53;
/** Judgement: it grows with the fourth root of the bore, as the printed flows of large rams do (checks: table T3). */
const CLOSING_VELOCITY_EXPONENT = 0.25;
/** Share of its weight that brass or steel keeps in water: 1 − 1/7.8. */
const SUBMERGED_SHARE: Ratio = 1 - 1 / 7.8;
/** Judgement: delivery valve and passage of 0.6 bores. */
const DELIVERY_BORE: Ratio = 0.6;
/**
 * Loss of the delivery valve and its passage: a lift check (checks: ML-V-LIFT, up to 9.1) and three velocity heads for entry,
 * turn and exit. Judgement within that: set with the back-flow by table T4.
 */
const DELIVERY_LOSS: Ratio = 12;
/** Judgement: a rubber disc opens under a few centimetres of water. */
const CRACKING_HEAD: Metre = 0.05;
/** Judgement: the passage is about two of its own bores long. */
const PASSAGE_PER_BORE: Ratio = 1.2;
/**
 * Judgement: before it shuts, the delivery valve lets back a column as wide as the bore and a fifth of it long. It sets how
 * efficiency falls with lift over fall (checks: table T4).
 */
const BACK_FLOW_PER_BORE: Ratio = 0.2;
/** Judgement: water, shell and the film of air caught in the body give by this height of a bore-wide column per metre. */
const BODY_GIVE = 3e-5;
/** Judgement: vessel of 60 bores cubed: 20–30 deliveries of one beat at twice the fall, over 100 at six times it. */
const VESSEL_PER_BORE_CUBED: Ratio = 60;
/** Source: common practice, no source: 1 to 1.6 mm. */
const SNIFTER_DIAMETER: Metre = 0.0012;

/**
 * A typical ram of a nominal size.
 *
 * Source: METHOD §8 for seat and closing velocity; the rest is Judgement, see docs/MODEL.md.
 */
export function typicalRam(size: TypicalSize): Ram {
  const bore = TYPICAL_SIZES[size];
  const boreArea = (Math.PI / 4) * bore ** 2;
  const deliveryBore = DELIVERY_BORE * bore;
  return {
    name: size,
    bore,
    wasteValve: typicalValve(bore),
    deliveryValve: {
      area: (Math.PI / 4) * deliveryBore ** 2,
      lossCoefficient: DELIVERY_LOSS,
      crackingHead: CRACKING_HEAD,
      passageLength: PASSAGE_PER_BORE * bore,
      backFlowPerBeat: BACK_FLOW_PER_BORE * bore * boreArea,
    },
    airVessel: typicalVessel(bore),
    snifter: { diameter: SNIFTER_DIAMETER },
    bodyElasticity: BODY_GIVE * boreArea,
  };
}

/** Air vessel of a ram of this bore, freshly drained. */
export function typicalVessel(bore: Metre): AirVessel {
  return { volume: VESSEL_PER_BORE_CUBED * bore ** 3, airShare: 1, polytropicIndex: 1.2 };
}

type ValveForm = Omit<WeightedValve, 'kind' | 'submergedWeight' | 'movingMass'>;

/** The waste valve's form for a bore, before its weight is chosen. */
export function typicalValveForm(bore: Metre): ValveForm {
  const portArea = (Math.PI / 4) * bore ** 2;
  return {
    seatDiameter: SEAT_PER_BORE * bore,
    stroke: STROKE_PER_BORE * bore,
    portArea,
    curtainCoefficient: CURTAIN_COEFFICIENT,
    portCoefficient: PORT_COEFFICIENT,
    dragCoefficient: DRAG_COEFFICIENT,
    gapArea: portArea,
  };
}

/** Mass that weighs this much in water, for brass or steel. */
export function massOfSubmergedWeight(weight: Newton): Kilogram {
  return weight / (GRAVITY * SUBMERGED_SHARE);
}

/** Weight in water of a mass of brass or steel. */
export function submergedWeightOfMass(mass: Kilogram): Newton {
  return mass * GRAVITY * SUBMERGED_SHARE;
}

/** The waste valve of a typical ram: the form above, with the weight that lets it shut at the chosen velocity. */
function typicalValve(bore: Metre): WasteValve {
  const form = typicalValveForm(bore);
  const velocity = CLOSING_VELOCITY * (bore / 0.02) ** CLOSING_VELOCITY_EXPONENT;
  const flow = velocity * (Math.PI / 4) * bore ** 2;
  // 1000 kg/m³ and not the water of a site: a ram is built once, whatever water it later runs on.
  const perFlowSquared = closingForcePerFlowSquared(
    { ...form, kind: 'weighted', submergedWeight: 0, movingMass: 1 },
    form.stroke,
    1000,
  );
  const submergedWeight = perFlowSquared * flow ** 2;
  return {
    ...form,
    kind: 'weighted',
    submergedWeight,
    movingMass: massOfSubmergedWeight(submergedWeight),
  };
}
