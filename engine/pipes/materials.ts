/**
 * What pipes are made of: stiffness, roughness, how the rating falls with warmth, how tightly they bend.
 *
 * Plastics stiffen under a quick load; the values here are short-term ones. Hose moduli are effective values of a wall
 * with textile in it and are weak: a measured wave speed is better than any table.
 */
import { interpolate, type TablePoint } from '../numerics/interpolate.ts';
import type { Celsius, Ratio } from '../quantities.ts';
import type { KnownBy, SourcedValue } from './evidence.ts';

export type MaterialName =
  | 'steel'
  | 'galvanisedSteel'
  | 'castIron'
  | 'copper'
  | 'pvcU'
  | 'pvc1120'
  | 'pe100'
  | 'pe80'
  | 'pe'
  | 'ldpe'
  | 'pvcHose'
  | 'rubberHose';

/** A table by temperature or by dimension ratio, with where it comes from. */
export interface SourcedTable {
  readonly points: readonly TablePoint[];
  readonly source: string;
  readonly knownBy: KnownBy;
}

export interface Material {
  /** How a person reads it. */
  readonly displayName: string;
  /** Whether the wall creeps as polyethylene does, so that the creep of a run applies to it. */
  readonly isPolyethylene: boolean;
  /** Short-term elastic modulus of the wall, in Pa. */
  readonly youngsModulus: SourcedValue;
  readonly poissonRatio: SourcedValue;
  /** Height of the roughness of a new pipe, in m. Old steel is several times rougher. */
  readonly roughness: SourcedValue;
  /** Share of the rating that is left, by temperature in °C. Below the first point it is that of the first point. */
  readonly derating: SourcedTable;
  /** Tightest cold bend over the outer diameter, by outer diameter over wall. Absent when nothing states it. */
  readonly bendRadius?: SourcedTable;
}

const seen = (value: number, low: number, high: number, source: string): SourcedValue => ({
  value,
  low,
  high,
  source,
  knownBy: 'seen',
});

const remembered = (value: number, low: number, high: number, source: string): SourcedValue => ({
  value,
  low,
  high,
  source,
  knownBy: 'memory',
});

const TEXTBOOK_CONSTANTS = 'Heitzman, Triton College, material constants';
const ROUGHNESS_LIST = 'LMNO Engineering, roughness table (as in Munson, Young and Okiishi)';
const HANDBOOK_ROUGHNESS = 'Idelchik, Handbook of Hydraulic Resistance (2007), roughness table';
const GENERAL = 'general hydraulic and materials knowledge';

const STEEL_MODULUS = seen(207e9, 200e9, 212e9, TEXTBOOK_CONSTANTS);
const STEEL_POISSON = seen(0.3, 0.27, 0.32, TEXTBOOK_CONSTANTS);
const PE_POISSON = seen(0.45, 0.4, 0.46, TEXTBOOK_CONSTANTS);
const RUBBER_POISSON = seen(0.48, 0.45, 0.5, TEXTBOOK_CONSTANTS);
const SMOOTH_PLASTIC = seen(1.5e-6, 0, 7e-6, ROUGHNESS_LIST);

const NO_DERATING: SourcedTable = {
  points: [
    [20, 1],
    [60, 1],
  ],
  source: 'metals keep their strength at the temperatures of water in the open',
  knownBy: 'common practice',
};

const PE_DERATING: SourcedTable = {
  points: [
    [20, 1],
    [25, 0.93],
    [30, 0.87],
    [35, 0.8],
    [40, 0.74],
  ],
  source: 'ISO 4427-1 (2007), annex A, pressure reduction coefficients',
  knownBy: 'memory',
};

const PVC_SCHEDULE_DERATING: SourcedTable = {
  // Printed at 73, 80, 90 … 140 °F.
  points: [
    [22.8, 1],
    [26.7, 0.88],
    [32.2, 0.75],
    [37.8, 0.62],
    [43.3, 0.51],
    [48.9, 0.4],
    [54.4, 0.31],
    [60, 0.22],
  ],
  source: 'PVC pipe maker, temperature derating of schedule 40 and 80',
  knownBy: 'seen',
};

const PE_BEND: SourcedTable = {
  points: [
    [9, 20],
    [11, 25],
    [17, 27],
    [21, 27],
  ],
  source: 'cold bend radius of HDPE by dimension ratio, no fitting in the bend (100 OD with one)',
  knownBy: 'seen',
};

const PVC_BEND: SourcedTable = {
  points: [[21, 250]],
  source: 'PVC pipe contractor, notes to technical data (includes a factor of 2.5)',
  knownBy: 'seen',
};

export const MATERIALS: Readonly<Record<MaterialName, Material>> = {
  steel: {
    displayName: 'steel',
    isPolyethylene: false,
    youngsModulus: STEEL_MODULUS,
    poissonRatio: STEEL_POISSON,
    roughness: seen(45e-6, 15e-6, 100e-6, ROUGHNESS_LIST),
    derating: NO_DERATING,
  },
  galvanisedSteel: {
    displayName: 'galvanised steel',
    isPolyethylene: false,
    youngsModulus: STEEL_MODULUS,
    poissonRatio: STEEL_POISSON,
    // The ordinary finish; bright new pipe is 0.085 mm in the handbook.
    roughness: seen(150e-6, 70e-6, 200e-6, `${ROUGHNESS_LIST}; ${HANDBOOK_ROUGHNESS}`),
    derating: NO_DERATING,
  },
  castIron: {
    displayName: 'cast iron',
    isPolyethylene: false,
    youngsModulus: remembered(100e9, 80e9, 170e9, GENERAL),
    poissonRatio: remembered(0.27, 0.25, 0.29, GENERAL),
    roughness: seen(260e-6, 250e-6, 1000e-6, ROUGHNESS_LIST),
    derating: NO_DERATING,
  },
  copper: {
    displayName: 'copper',
    isPolyethylene: false,
    youngsModulus: seen(117e9, 107e9, 131e9, TEXTBOOK_CONSTANTS),
    poissonRatio: seen(0.35, 0.33, 0.36, TEXTBOOK_CONSTANTS),
    roughness: seen(1.5e-6, 1.3e-6, 1.5e-6, 'fluids 1.3.1, roughness list'),
    derating: NO_DERATING,
  },
  pvcU: {
    displayName: 'PVC-U (metric)',
    isPolyethylene: false,
    youngsModulus: seen(
      2.76e9,
      2.4e9,
      3.5e9,
      'PVC pipe trade association, surge report, 400 000 psi',
    ),
    poissonRatio: remembered(0.38, 0.38, 0.46, GENERAL),
    roughness: SMOOTH_PLASTIC,
    derating: {
      points: [
        [25, 1],
        [30, 0.9],
        [35, 0.8],
        [40, 0.7],
        [45, 0.62],
      ],
      source: 'ISO 1452-2 (2009), figure A.1; the scope page says no derating to 25 °C (seen)',
      knownBy: 'memory',
    },
    bendRadius: PVC_BEND,
  },
  pvc1120: {
    displayName: 'PVC (inch schedule)',
    isPolyethylene: false,
    youngsModulus: seen(
      2.76e9,
      2.4e9,
      3.5e9,
      'PVC pipe trade association, surge report, 400 000 psi',
    ),
    poissonRatio: remembered(0.38, 0.38, 0.46, GENERAL),
    roughness: SMOOTH_PLASTIC,
    derating: PVC_SCHEDULE_DERATING,
    bendRadius: PVC_BEND,
  },
  pe100: {
    displayName: 'PE100',
    isPolyethylene: true,
    // Sources span 0.79 GPa (surge tables) to 1.43 GPa (fitted to wave tests); a data page prints 1.2 GPa.
    youngsModulus: seen(
      1.1e9,
      0.75e9,
      1.6e9,
      'PE100 data page, 1200 MPa at 1 mm/min; range from surge data',
    ),
    poissonRatio: PE_POISSON,
    roughness: SMOOTH_PLASTIC,
    derating: PE_DERATING,
    bendRadius: PE_BEND,
  },
  pe80: {
    displayName: 'PE80',
    isPolyethylene: true,
    youngsModulus: remembered(0.8e9, 0.6e9, 1e9, GENERAL),
    poissonRatio: PE_POISSON,
    roughness: SMOOTH_PLASTIC,
    derating: PE_DERATING,
    bendRadius: PE_BEND,
  },
  pe: {
    displayName: 'PE (inch, controlled bore)',
    isPolyethylene: true,
    youngsModulus: seen(1e9, 0.8e9, 1.2e9, TEXTBOOK_CONSTANTS),
    poissonRatio: PE_POISSON,
    roughness: SMOOTH_PLASTIC,
    // Judgement: the metric PE curve, as the polymer is the same; its ratings stand at 23 °C, so this errs low.
    derating: PE_DERATING,
    bendRadius: PE_BEND,
  },
  ldpe: {
    displayName: 'soft PE (LDPE)',
    isPolyethylene: true,
    youngsModulus: remembered(0.25e9, 0.1e9, 0.4e9, GENERAL),
    poissonRatio: remembered(0.46, 0.4, 0.48, GENERAL),
    roughness: SMOOTH_PLASTIC,
    // Judgement: the PE100 curve; soft PE weakens at least as fast, so stay well under it in the sun.
    derating: PE_DERATING,
  },
  pvcHose: {
    displayName: 'reinforced PVC hose',
    isPolyethylene: false,
    youngsModulus: remembered(0.05e9, 0.01e9, 0.3e9, GENERAL),
    poissonRatio: RUBBER_POISSON,
    roughness: remembered(5e-6, 1.5e-6, 20e-6, GENERAL),
    // Judgement: the curve of rigid PVC pipe; plasticised PVC softens no less.
    derating: PVC_SCHEDULE_DERATING,
  },
  rubberHose: {
    displayName: 'rubber hose',
    isPolyethylene: false,
    youngsModulus: remembered(0.02e9, 0.003e9, 0.1e9, GENERAL),
    poissonRatio: RUBBER_POISSON,
    roughness: remembered(30e-6, 10e-6, 100e-6, GENERAL),
    derating: {
      points: [
        [20, 1],
        [40, 1],
      ],
      source: 'water hoses of rubber are rated for warm water; nothing is claimed above 40 °C',
      knownBy: 'common practice',
    },
  },
};

/**
 * Share of a pipe's rating that is left when the wall is at a temperature.
 *
 * Straight lines between the published points. Water colder than the first point earns no extra rating.
 *
 * Source: stands with each material in `MATERIALS`.
 * @throws RangeError when `temperature` is above the last published point, or is not a number.
 */
export function deratingFactor(material: MaterialName, temperature: Celsius): Ratio {
  const { displayName, derating } = MATERIALS[material];
  const first = derating.points[0]?.[0] ?? 0;
  const last = derating.points.at(-1)?.[0] ?? 0;
  if (!(temperature <= last)) {
    throw new RangeError(
      `temperature must be at most ${last} °C, where the derating of ${displayName} ends, got ${temperature} °C`,
    );
  }
  return interpolate(derating.points, Math.max(temperature, first));
}
