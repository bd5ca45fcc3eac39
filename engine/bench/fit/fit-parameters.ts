/**
 * What a bench test may correct about a ram and its rig: parameters that are hard to measure on the parts themselves.
 *
 * Each is taken as a factor on the value that it has now, on the scale of logarithms, since none can be below nought and all are
 * known to a share of themselves.
 */
import type { Installation } from '../../cycle/installation.ts';
import type { Ram } from '../../machine/ram.ts';
import { openingForces, type WasteValve } from '../../machine/waste-valve.ts';
import type { Ratio } from '../../quantities.ts';

export const FIT_PARAMETERS = [
  /** Force that holds the waste valve open, N: friction of the stem and the metal's buoyancy are in it, the mass is not. */
  'closingForce',
  /** Drag of the disc on the velocity round it. */
  'drag',
  /** Loss of the open waste valve, as a factor on that of its discharge coefficients. */
  'wasteValveLoss',
  /** Loss coefficient of the delivery valve. */
  'deliveryValveLoss',
  /** Water that runs back at each beat, m³. */
  'backFlow',
  /** What the body and the air caught in it take up for each metre of head, m². */
  'bodyGive',
  /** Roughness of the drive line's last pipe, m; all its pipes go with it. */
  'roughness',
  /** Air caught in the drive line, m³; only where there is some. */
  'trappedAir',
] as const;

export type FitParameter = (typeof FIT_PARAMETERS)[number];

/** Those that are the ram's own and go with it; the others are the rig's. */
export const OF_THE_RAM: ReadonlySet<FitParameter> = new Set([
  'closingForce',
  'drag',
  'wasteValveLoss',
  'deliveryValveLoss',
  'backFlow',
  'bodyGive',
]);

/**
 * Spread of the logarithm of each before any test.
 *
 * Judgement: as for a typical ram's parts in an answer (docs/MODEL.md, How sure): weight 12 %, curtain coefficient 5 % and so its
 * loss 10 %, delivery valve 30 %, back-flow 25 %, give 50 %, roughness 40 %, caught air 70 %. The drag of a disc in its chamber is
 * known to some 40 %: flat discs have about 1.1 in the open and two or three times that in a narrow tube.
 */
export const USUAL_LOG_SPREADS: Readonly<Record<FitParameter, number>> = {
  closingForce: 0.12,
  drag: 0.4,
  wasteValveLoss: 0.1,
  deliveryValveLoss: 0.3,
  backFlow: 0.25,
  bodyGive: 0.5,
  roughness: 0.4,
  trappedAir: 0.7,
};

export type FitFactors = Partial<Readonly<Record<FitParameter, Ratio>>>;

/** The value that a parameter has; undefined where it is nought or there is no such thing, so that no factor could move it. */
export function fitValue({ ram, driveLine }: Installation, what: FitParameter): number | undefined {
  const value = rawValue(ram, driveLine, what);
  return value > 0 ? value : undefined;
}

function rawValue(ram: Ram, line: Installation['driveLine'], what: FitParameter): number {
  const { wasteValve, deliveryValve } = ram;
  switch (what) {
    case 'closingForce': {
      const { atOpen, atShut } = openingForces(wasteValve);
      return atOpen > 0 ? atOpen : atShut;
    }
    case 'drag':
      return wasteValve.dragCoefficient;
    case 'wasteValveLoss':
      return 1;
    case 'deliveryValveLoss':
      return deliveryValve.lossCoefficient;
    case 'backFlow':
      return deliveryValve.backFlowPerBeat;
    case 'bodyGive':
      return ram.bodyElasticity;
    case 'roughness':
      return line.segments.at(-1)?.pipe.roughness ?? 0;
    case 'trappedAir':
      return line.pockets.reduce((sum, { volume }) => sum + volume, 0);
  }
}

/** Least and most value that can be, with the present one always within. */
export function fitBounds(
  installation: Installation,
  what: FitParameter,
): { readonly least: number; readonly most: number } {
  const { ram, driveLine } = installation;
  const now = fitValue(installation, what) ?? 1;
  const column = (Math.PI / 4) * ram.bore ** 2;
  const between = (least: number, most: number) => ({
    least: Math.min(least, now),
    most: Math.max(most, now),
  });
  switch (what) {
    case 'closingForce':
      // Judgement: a stem that rubs, or a spring that was measured badly, is not out by more than threefold.
      return between(now / 3, 3 * now);
    case 'drag':
      // Judgement: a rounded plug has about 0.05; a disc that nearly fills its tube, on the velocity in the gap, up to 5.
      return between(0.05, 5);
    case 'wasteValveLoss': {
      const { curtainCoefficient: curtain, portCoefficient: port } = ram.wasteValve;
      // No opening passes more than its full area, and none that is called open less than a third of it (judgement).
      return between(Math.max(curtain, port) ** 2, (Math.min(curtain, port) / 0.3) ** 2);
    }
    case 'deliveryValveLoss':
      // Half a velocity head is a bare entrance; 400 is a check that hardly lifts (judgement).
      return between(0.5, 400);
    case 'backFlow':
      // Judgement: from a hundredth of a bore-wide column one bore long, a seat that shuts at once, to two such columns.
      return between(0.01 * column * ram.bore, 2 * column * ram.bore);
    case 'bodyGive':
      // The water of a body three bores long gives 3 D ρg/K, some 1.3e-5 D a metre; most is a bore-wide bubble of 3 cm (judgement).
      return between(1.3e-5 * ram.bore * column, 3e-3 * column);
    case 'roughness':
      // Drawn tube 0.1 µm; 3 mm is a pipe full of rust and roots, and nothing is rougher than a twentieth of its bore.
      return between(
        1e-7,
        Math.min(3e-3, 0.05 * (driveLine.segments.at(-1)?.pipe.innerDiameter ?? 0.06)),
      );
    case 'trappedAir':
      // Judgement: a line that is nearly bled, to ten times what was told.
      return between(now / 100, 10 * now);
  }
}

/** The installation with each parameter times its factor. */
export function withFitFactors(installation: Installation, factors: FitFactors): Installation {
  const { driveLine, ram } = installation;
  const { roughness = 1, trappedAir = 1 } = factors;
  return {
    ...installation,
    ram: ramWithFactors(ram, factors),
    driveLine: {
      ...driveLine,
      segments:
        roughness === 1
          ? driveLine.segments
          : driveLine.segments.map((segment) => ({
              ...segment,
              pipe: { ...segment.pipe, roughness: segment.pipe.roughness * roughness },
            })),
      pockets: driveLine.pockets.map((pocket) => ({
        ...pocket,
        volume: pocket.volume * trappedAir,
      })),
    },
  };
}

/** The ram with each of its own parameters times its factor. */
export function ramWithFactors(ram: Ram, factors: FitFactors): Ram {
  const { deliveryValve } = ram;
  const { deliveryValveLoss = 1, backFlow = 1, bodyGive = 1 } = factors;
  return {
    ...ram,
    wasteValve: valveWithFactors(ram.wasteValve, factors),
    deliveryValve: {
      ...deliveryValve,
      lossCoefficient: deliveryValve.lossCoefficient * deliveryValveLoss,
      backFlowPerBeat: deliveryValve.backFlowPerBeat * backFlow,
    },
    bodyElasticity: ram.bodyElasticity * bodyGive,
  };
}

function valveWithFactors(valve: WasteValve, factors: FitFactors): WasteValve {
  const { closingForce = 1, drag = 1, wasteValveLoss = 1 } = factors;
  const form = {
    dragCoefficient: valve.dragCoefficient * drag,
    // A loss goes with the inverse square of its discharge coefficient.
    curtainCoefficient: valve.curtainCoefficient / Math.sqrt(wasteValveLoss),
    portCoefficient: valve.portCoefficient / Math.sqrt(wasteValveLoss),
  };
  if (valve.kind === 'weighted') {
    return { ...valve, ...form, submergedWeight: valve.submergedWeight * closingForce };
  }
  return {
    ...valve,
    ...form,
    forceAtOpen: valve.forceAtOpen * closingForce,
    forceAtShut: valve.forceAtShut * closingForce,
  };
}
