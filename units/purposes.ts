/**
 * What a quantity is for decides how it is read and shown: a fall may be given in metres, feet or as a gauge reading;
 * a bore is shown in millimetres, a pipe's length in metres. One row here serves fields, files, pages and messages.
 */
import type { Kind } from './kinds.ts';
import { PASCALS_PER_METRE_OF_WATER, type System } from './unit-words.ts';

/** Weight that hangs on one kilogram. Source: standard gravity, CGPM 1901. */
const NEWTONS_PER_KILOGRAM = 9.80665;

export interface PurposeRow {
  readonly kind: Kind;
  /** Ends the sentence "the fall is …". */
  readonly inWords: string;
  /** What to write, for "Write it like …". */
  readonly examples: readonly string[];
  /** Unit words shown in each system. */
  readonly shown: Readonly<Record<System, string>>;
  /** Shown as another purpose from this SI value on: millilitres turn into litres. */
  readonly larger?: { readonly from: number; readonly unit: Readonly<Record<System, string>> };
  /** Unit words offered for a bare number, the likeliest first. */
  readonly offered: readonly string[];
  /** Other kinds that are understood, with the factor that turns their SI value into this one's. */
  readonly alsoFrom?: Partial<Record<Kind, number>>;
  /** Whether values below nought make sense. */
  readonly isSigned?: boolean;
  /** Whether a number with no unit makes sense. */
  readonly isBareAllowed?: boolean;
  /** What a number with no unit counts in; 1 unless said. */
  readonly bareFactor?: number;
}

const HEAD_FROM_PRESSURE = { pressure: 1 / PASCALS_PER_METRE_OF_WATER };
const FORCE_FROM_WEIGHT = { mass: NEWTONS_PER_KILOGRAM };

function row(
  kind: Kind,
  inWords: string,
  examples: string,
  metric: string,
  us: string,
  more: Partial<PurposeRow> = {},
): PurposeRow {
  const examplesList = examples.split(' | ');
  return {
    kind,
    inWords,
    examples: examplesList,
    shown: { metric, us },
    offered: [metric, us],
    ...more,
  };
}

export const PURPOSES = {
  /** A fall or a lift: a height of water, which a gauge can read too. */
  height: row('length', 'a height', '1.9 m | 6 ft', 'm', 'ft', {
    offered: ['m', 'bar', 'ft'],
    alsoFrom: HEAD_FROM_PRESSURE,
  }),
  /** Height of a point above or below the waste valve's outlet. */
  elevation: row('length', 'a height', '0.4 m | −0.2 m', 'm', 'ft', { isSigned: true }),
  /** Head in a pipe, in metres of water; may lie below nought. */
  head: row('length', 'a head of water', '25 m | 82 ft', 'm', 'ft', {
    alsoFrom: HEAD_FROM_PRESSURE,
    isSigned: true,
  }),
  pipeLength: row('length', 'a length', '14 m | 46 ft', 'm', 'ft'),
  depth: row('length', 'a depth', '0.3 m | 12 in', 'm', 'ft'),
  /** A reading on a staff, or one hop of several: it may go the other way. */
  staff: row('length', 'a height', '1.482 m | 4.86 ft', 'm', 'ft', { isSigned: true }),
  /** A head over a weir, or a drop of a surface: small, and read with a rule. */
  waterDepth: row('length', 'a height of water', '62 mm | 2 1/2 in', 'mm', 'in'),
  bore: row('length', 'a width', '26.6 mm | 1 in', 'mm', 'in'),
  stroke: row('length', 'a small length', '4 mm | 5/32 in', 'mm', 'in'),
  surfaceArea: row('area', 'an area', '0.3 m2 | 3 ft2', 'm²', 'ft²'),
  smallArea: row('area', 'an area', '400 mm2 | 0.6 in2', 'mm²', 'in²'),
  volume: row('volume', 'a volume', '200 L | 50 gal', 'L', 'gal'),
  smallVolume: row('volume', 'a volume', '10 mL | 0.3 fl oz', 'mL', 'fl oz', {
    larger: { from: 1e-3, unit: { metric: 'L', us: 'gal' } },
  }),
  sourceFlow: row('flow', 'a flow', '14 L/min | 3.7 gpm', 'L/min', 'gpm'),
  daily: row('flow', 'an amount for each day', '900 L/day | 240 gal/day', 'L a day', 'gal a day'),
  /** Depth of water that ground is given each day. */
  watering: row(
    'velocity',
    'an amount for each day',
    '4 mm/day | 4 L/m2 a day | 0.2 in/day',
    'mm a day',
    'in a day',
  ),
  pressure: row('pressure', 'a pressure', '6 bar | 90 psi', 'bar', 'psi'),
  modulus: row('pressure', 'a stiffness', '2.8 GPa | 400,000 psi', 'GPa', 'psi'),
  /** Weight that holds a valve open; shown as what a kitchen scale would read. */
  weight: row('force', 'a weight', '118 g | 4 oz', 'gf', 'ozf', {
    offered: ['g', 'oz', 'N'],
    alsoFrom: FORCE_FROM_WEIGHT,
  }),
  force: row('force', 'a force', '1.2 N | 4 oz', 'N', 'ozf', {
    offered: ['N', 'oz'],
    alsoFrom: FORCE_FROM_WEIGHT,
  }),
  mass: row('mass', 'a weight', '150 g | 5 oz', 'g', 'oz'),
  temperature: row('temperature', 'a temperature', '10 °C | 50 °F', '°C', '°F', { isSigned: true }),
  altitude: row('length', 'a height above the sea', '300 m | 1,000 ft', 'm', 'ft', {
    isSigned: true,
  }),
  time: row('time', 'a time', '30 s | 2 min', 's', 's', { offered: ['s', 'min'] }),
  velocity: row('velocity', 'a speed', '1.2 m/s | 4 ft/s', 'm/s', 'ft/s'),
  beats: row('frequency', 'a rate of beats', '62/min | 1.1 Hz', 'a minute', 'a minute'),
  angle: row('angle', 'an angle', '45° | 45 deg', '°', '°', { isSigned: true }),
  share: row('share', 'a share', '60 % | 0.6', '%', '%', { isBareAllowed: true }),
  /** On a dial the class stands as a bare number, and means per cent of the range. */
  gaugeClass: row('share', 'a class', '1.6 % | 1.6', '%', '%', {
    isBareAllowed: true,
    bareFactor: 0.01,
  }),
} as const satisfies Record<string, PurposeRow>;

export type Purpose = keyof typeof PURPOSES;

export function purposeRow(purpose: Purpose): PurposeRow {
  return PURPOSES[purpose];
}
