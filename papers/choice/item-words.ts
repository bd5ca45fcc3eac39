/** What parts and work are called, and how what is missing in a price list is told. */
import type { ItemUnit, Lack, LineName, PartKind, PartsGroup } from '@fallwright/engine';
import { type Reader, shown, sizeInWords } from './reader.ts';

const KINDS = {
  ram: 'ram',
  pipe: 'pipe',
  vessel: 'air vessel',
  tank: 'tank',
  strainer: 'strainer',
  intakeBox: 'intake box',
  standpipe: 'standpipe',
  gateValve: 'drive valve, full bore',
  union: 'union',
  endFitting: 'end fitting',
  socket: 'socket',
  elbow: 'elbow',
  tee: 'tee',
  vent: 'vent (air cock)',
  clamp: 'pipe clamp',
  hoseClip: 'hose clip',
  footing: 'footing with bolts',
  stopValve: 'stop valve',
  nonReturnValve: 'non-return valve',
  drain: 'drain cock',
  wasteValveRubber: 'waste-valve rubber',
  deliveryValveClack: 'delivery-valve clack',
  gasket: 'gasket',
  trench: 'trench',
  laying: 'laying pipe',
  labour: 'setting up',
  carriage: 'carriage',
} as const satisfies Record<PartKind, string>;

const GROUPS = {
  source: 'At the source',
  driveLine: 'Drive line',
  ram: 'Ram',
  deliveryLine: 'Delivery line',
  tank: 'Tank',
  work: 'Work',
  spares: 'Spares',
} as const satisfies Record<PartsGroup, string>;

const LINES = {
  drive: 'drive line',
  feeder: 'feeder',
  delivery: 'delivery line',
} as const satisfies Record<LineName, string>;

export const UNITS_OF_SALE = {
  each: '',
  metre: 'm',
  hour: 'h',
} as const satisfies Record<ItemUnit, string>;

export function kindInWords(kind: PartKind): string {
  return KINDS[kind];
}

export function groupInWords(group: PartsGroup): string {
  return GROUPS[group];
}

export function lineInWords(line: LineName): string {
  return LINES[line];
}

/** What has to be added to the price list, one line for each thing. */
export function missingInWords(missing: readonly Lack[], reader: Reader): readonly string[] {
  return missing.map((lack) => lackInWords(lack, reader));
}

function lackInWords({ kind, name, size, openArea }: Lack, reader: Reader): string {
  if (kind === 'setUpTime') return `${name}: the time that it takes to set up`;
  const what = KINDS[kind];
  const fit = size === undefined ? '' : `, ${sizeInWords(size, reader)}`;
  const holes =
    openArea === undefined
      ? ''
      : ` with holes of ${shown(openArea, 'smallArea', reader, 2)} or more together`;
  return name === undefined
    ? `${what}${fit}${holes}: none on the price list that fits`
    : `${name}: no price`;
}
