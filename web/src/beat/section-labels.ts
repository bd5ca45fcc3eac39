/** What is written at the ram in section, and where; on a phone numbers stand there and the words in a list. */
import type { Installation } from '@fallwright/engine';
import { openingForces } from '@fallwright/engine';
import type { System } from '@fallwright/units';
import { formatQuantity } from '@fallwright/units';
import { VESSEL } from './ram-instant.ts';

export interface SectionLabel {
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly tone: 'strong' | 'second' | 'of-water';
  readonly lines: readonly string[];
}

export interface SectionKey {
  readonly x: number;
  readonly y: number;
  readonly name: string;
}

/** Width of the drawing's own units, and the least width on the screen at which letters find room. */
export const SECTION = { width: 780, top: 44, height: 560, labelled: 520 } as const;

/** Letters of 12.5 px on the screen, in the drawing's units. */
export function letterSize(width: number): number {
  return (12.5 * SECTION.width) / Math.max(width, 1);
}

export function sectionLabels(
  { ram }: Installation,
  waterLevel: number,
  system: System,
): SectionLabel[] {
  const { wasteValve, airVessel, snifter } = ram;
  const force = formatQuantity(openingForces(wasteValve).atOpen, 'weight', system);
  const stroke = formatQuantity(wasteValve.stroke, 'stroke', system);
  const held =
    wasteValve.kind === 'weighted' ? `weighs ${force} in water` : `held open by ${force}`;
  return [
    { x: 208, y: 246, anchor: 'end', tone: 'strong', lines: ['waste valve'] },
    { x: 208, y: 264, anchor: 'end', tone: 'second', lines: [held] },
    {
      x: 180,
      y: 303,
      anchor: 'end',
      tone: 'second',
      lines: ['bridge; the nut above', `sets the stroke, ${stroke}`],
    },
    ...(waterLevel < LEAST_AIR
      ? []
      : ([
          { x: 510, y: middleOfAir(waterLevel), anchor: 'middle', tone: 'strong', lines: ['air'] },
        ] as const)),
    { x: 656, y: 137, anchor: 'start', tone: 'strong', lines: ['air vessel'] },
    {
      x: 656,
      y: 155,
      anchor: 'start',
      tone: 'second',
      lines: [formatQuantity(airVessel.volume, 'smallVolume', system)],
    },
    { x: 652, y: 345, anchor: 'start', tone: 'strong', lines: ['delivery', 'valve'] },
    ...(snifter === undefined
      ? []
      : ([
          { x: 652, y: 406, anchor: 'start', tone: 'strong', lines: ['snifter'] },
          { x: 652, y: 425, anchor: 'start', tone: 'second', lines: ['sips air at recoil'] },
        ] as const)),
    { x: 402, y: 541, anchor: 'middle', tone: 'second', lines: ['body'] },
    { x: 8, y: 366, anchor: 'start', tone: 'of-water', lines: ['drive line,', 'from the source'] },
    { x: 774, y: 194, anchor: 'end', tone: 'of-water', lines: ['delivery line,', 'to the tank'] },
    { x: 66, y: 549, anchor: 'start', tone: 'of-water', lines: ['drain'] },
  ];
}

/** Where water stands higher, the air is too thin a sliver to be named in. */
const LEAST_AIR = 124;

function middleOfAir(waterLevel: number): number {
  const crown = VESSEL.shoulder - VESSEL.radius;
  return Math.min(140, (crown + waterLevel) / 2 + 5);
}

export const LEADERS = 'M262 248H214M186 306H246M612 140H652M542 336H648';
export const SNIFTER_LEADER = 'M566 398H648';

export function sectionKeys({ ram }: Installation, waterLevel: number): SectionKey[] {
  return [
    { x: 290, y: 196, name: 'waste valve' },
    { x: 510, y: 284, name: 'delivery valve' },
    { x: 510, y: Math.max(110, middleOfAir(waterLevel)), name: 'air cushion' },
    ...(ram.snifter === undefined ? [] : [{ x: 612, y: 398, name: 'snifter' }]),
    { x: 60, y: 452, name: 'drive line' },
    { x: 716, y: 288, name: 'delivery line' },
  ];
}
