/** The ram as the engine takes it: a typical one, one with parts of its own, or the typical one that fits the pipe. */
import {
  type DeliveryValve,
  GRAVITY,
  type Ram,
  submergedWeightOfMass,
  TYPICAL_SIZES,
  type TypicalSize,
  typicalRam,
  type WasteValve,
} from '@fallwright/engine';
import type { Given } from '../given.ts';
import type { Assumptions } from './assumption.ts';
import { type RamField, type RamForm, typicalSizeCalled } from './ram-fields.ts';

export function ramOf(ram: RamField | undefined, driveBore: number, assumptions: Assumptions): Ram {
  if (typeof ram === 'string') return typical(sizeOf(ram), {}, assumptions);
  if (ram?.typical !== undefined) return typical(sizeOf(ram.typical), ram, assumptions);
  if (ram?.bore !== undefined) return ownRam(ram, ram.bore, assumptions);
  const size = nearestSize(driveBore);
  assumptions.words('ram', 'ram', `a typical ${size}`, {
    why: 'its size is nearest to the bore of the drive pipe',
    basis: 'commonPractice',
  });
  return typical(size, ram ?? {}, assumptions);
}

function sizeOf(text: string): TypicalSize {
  const size = typicalSizeCalled(text);
  if (!size)
    throw new RangeError(`${text} is no size of a typical ram: read the site with readSite first`);
  return size;
}

function nearestSize(bore: number): TypicalSize {
  const gap = (size: TypicalSize): number => Math.abs(Math.log(TYPICAL_SIZES[size] / bore));
  const sizes = Object.keys(TYPICAL_SIZES) as TypicalSize[];
  return sizes.reduce((best, size) => (gap(size) < gap(best) ? size : best));
}

/** A typical ram, with the parts that were given in place of its own. */
function typical(size: TypicalSize, parts: RamForm, assumptions: Assumptions): Ram {
  const base = typicalRam(size);
  return withParts(
    parts.name === undefined ? base : { ...base, name: parts.name },
    parts,
    size,
    assumptions,
  );
}

/** A ram described by its bore and waste valve; what else is missing comes from the nearest typical size. */
function ownRam(parts: RamForm, given: Given, assumptions: Assumptions): Ram {
  const bore = given.value;
  const size = nearestSize(bore);
  const base = typicalRam(size);
  const boreArea = (Math.PI / 4) * bore ** 2;
  return withParts(
    {
      ...base,
      name: parts.name ?? `ram of ${given.text}`,
      wasteValve: { ...base.wasteValve, portArea: boreArea, gapArea: boreArea },
    },
    parts,
    size,
    assumptions,
  );
}

function withParts(base: Ram, parts: RamForm, size: TypicalSize, assumptions: Assumptions): Ram {
  const { snifter: baseSnifter, ...rest } = base;
  const assume = typicalPart(size, assumptions);
  const snifter =
    parts.snifter === 'none'
      ? undefined
      : parts.snifter
        ? { diameter: parts.snifter.value }
        : baseSnifter;
  if (parts.airVessel?.volume === undefined) {
    assume('ram.airVessel.volume', 'volume of the air vessel', base.airVessel.volume, 'volume');
  }
  return {
    ...rest,
    bore: parts.bore?.value ?? base.bore,
    wasteValve: wasteValveOf(base.wasteValve, parts, size, assumptions),
    deliveryValve: deliveryValveOf(base.deliveryValve, parts.deliveryValve ?? {}, assume),
    airVessel: {
      volume: parts.airVessel?.volume?.value ?? base.airVessel.volume,
      airShare: parts.airVessel?.air?.value ?? base.airVessel.airShare,
      polytropicIndex: parts.airVessel?.index ?? base.airVessel.polytropicIndex,
    },
    ...(snifter && { snifter }),
    bodyElasticity: parts.give?.value ?? base.bodyElasticity,
    ...(parts.rating && { rating: parts.rating.value }),
  };
}

type AssumePart = (
  field: string,
  what: string,
  value: number,
  purpose: 'bore' | 'stroke' | 'weight' | 'volume' | 'mass' | 'force' | 'smallVolume',
) => void;

function typicalPart(size: TypicalSize, assumptions: Assumptions): AssumePart {
  return (field, what, value, purpose) => {
    assumptions.quantity(field, what, value, purpose, {
      why: `part of a typical ${size}`,
      basis: 'judgement',
    });
  };
}

function wasteValveOf(
  base: WasteValve,
  parts: RamForm,
  size: TypicalSize,
  assumptions: Assumptions,
): WasteValve {
  const valve = parts.wasteValve ?? {};
  const assume = typicalPart(size, assumptions);
  const stroke = (parts.stroke ?? valve.stroke)?.value;
  if (valve.seat === undefined)
    assume('ram.wasteValve.seat', 'seat of the waste valve', base.seatDiameter, 'bore');
  if (stroke === undefined)
    assume('ram.wasteValve.stroke', 'stroke of the waste valve', base.stroke, 'stroke');
  const weightInAir = (parts.weight ?? valve.weight)?.value;
  const movingMass =
    valve.mass?.value ?? (weightInAir === undefined ? undefined : weightInAir / GRAVITY);
  const form = {
    seatDiameter: valve.seat?.value ?? base.seatDiameter,
    stroke: stroke ?? base.stroke,
    portArea: valve.port?.value ?? base.portArea,
    gapArea: valve.gap?.value ?? base.gapArea,
    curtainCoefficient: valve.curtainCoefficient ?? base.curtainCoefficient,
    portCoefficient: valve.portCoefficient ?? base.portCoefficient,
    dragCoefficient: valve.drag ?? base.dragCoefficient,
  };
  const kind = valve.kind ?? 'weighted';
  if (kind !== 'weighted') {
    const forceAtOpen = valve.forceOpen?.value ?? 0;
    if (movingMass === undefined)
      assume('ram.wasteValve.mass', 'moving mass of the waste valve', base.movingMass, 'mass');
    const forceAtShut =
      valve.forceShut?.value ??
      assumptions.quantity(
        'ram.wasteValve.forceShut',
        'force towards open when shut',
        forceAtOpen,
        'force',
        {
          why: 'the same as when open',
          basis: 'judgement',
        },
      );
    return { ...form, kind, movingMass: movingMass ?? base.movingMass, forceAtOpen, forceAtShut };
  }
  return {
    ...form,
    kind,
    ...weightsOf(
      base,
      { weightInAir, movingMass, inWater: valve.weightInWater?.value },
      size,
      assumptions,
    ),
  };
}

/** Mass and weight under water from whichever of them was given. */
function weightsOf(
  base: WasteValve,
  given: {
    readonly weightInAir: number | undefined;
    readonly movingMass: number | undefined;
    readonly inWater: number | undefined;
  },
  size: TypicalSize,
  assumptions: Assumptions,
): { readonly movingMass: number; readonly submergedWeight: number } {
  const massByWeight = given.weightInAir === undefined ? undefined : given.weightInAir / GRAVITY;
  if (given.inWater !== undefined) {
    // What a mass of brass or steel weighs under water is in proportion to it.
    const movingMass = given.movingMass ?? given.inWater / submergedWeightOfMass(1);
    return { movingMass, submergedWeight: given.inWater };
  }
  const mass = massByWeight ?? given.movingMass;
  if (mass === undefined) {
    typicalPart(size, assumptions)(
      'ram.wasteValve.weight',
      'weight of the moving parts',
      base.movingMass * GRAVITY,
      'weight',
    );
    const submergedWeight =
      base.kind === 'weighted' ? base.submergedWeight : submergedWeightOfMass(base.movingMass);
    return { movingMass: base.movingMass, submergedWeight };
  }
  const submergedWeight = assumptions.quantity(
    'ram.wasteValve.weightInWater',
    'weight of the moving parts in water',
    submergedWeightOfMass(mass),
    'weight',
    { why: 'brass or steel, lighter by the water it displaces', basis: 'commonPractice' },
  );
  return { movingMass: given.movingMass ?? mass, submergedWeight };
}

function deliveryValveOf(
  base: DeliveryValve,
  parts: NonNullable<RamForm['deliveryValve']>,
  assume: AssumePart,
): DeliveryValve {
  const area =
    parts.area?.value ?? (parts.bore ? (Math.PI / 4) * parts.bore.value ** 2 : undefined);
  if (area === undefined) {
    assume(
      'ram.deliveryValve.bore',
      'bore of the delivery valve',
      Math.sqrt((4 / Math.PI) * base.area),
      'bore',
    );
  }
  if (parts.backFlow === undefined) {
    assume(
      'ram.deliveryValve.backFlow',
      'back-flow through the delivery valve at each beat',
      base.backFlowPerBeat,
      'smallVolume',
    );
  }
  return {
    area: area ?? base.area,
    lossCoefficient: parts.loss ?? base.lossCoefficient,
    crackingHead: parts.cracking?.value ?? base.crackingHead,
    passageLength: parts.passage?.value ?? base.passageLength,
    backFlowPerBeat: parts.backFlow?.value ?? base.backFlowPerBeat,
  };
}
