/** The sizes that go with a combination, as rows. */
import type { Sizing } from '@fallwright/engine';
import { plainFigures } from '@fallwright/units';
import { perCent } from '../answered.ts';
import { type Reader, shown } from './reader.ts';

export interface SizeRow {
  readonly what: string;
  readonly size: string;
}

const PARTS = {
  drivePipe: 'drive pipe',
  ram: 'ram',
  deliveryPipe: 'delivery pipe',
  vessel: 'air vessel',
} as const;

export function sizingRows(sizing: Sizing, reader: Reader): readonly SizeRow[] {
  const { snifter, strainer, vents } = sizing;
  const area = (value: number) => shown(value, 'smallArea', reader, 2);
  const crests = [
    ...vents.feeder.map(({ distance }) => ({ line: 'feeder', distance })),
    ...vents.drive.map(({ distance }) => ({ line: 'drive line', distance })),
    ...vents.delivery.map(({ distance }) => ({ line: 'delivery line', distance })),
  ];
  return [
    {
      what: 'Air vessel, at least',
      size: `${shown(sizing.leastVessel, 'smallVolume', reader, 2)}; as chosen the head swings by ${
        Number.isFinite(sizing.pulse) ? perCent(sizing.pulse) : 'more than its air can take'
      }`,
    },
    {
      what: 'Snifter hole',
      size:
        snifter === undefined
          ? 'none: even the narrowest would take too much; let air in by hand now and then'
          : `${shown(snifter, 'bore', reader, 2)} at most`,
    },
    {
      what: 'Holes of each strainer together',
      size: `${area(strainer.low)} to ${area(strainer.high)}`,
    },
    {
      what: 'Water over the intake, at least',
      size: shown(sizing.intakeDepth, 'depth', reader, 2),
    },
    {
      what: 'Vents',
      size:
        crests.length === 0
          ? 'no crests'
          : crests
              .map(({ line, distance }) => `${line} at ${shown(distance, 'pipeLength', reader)}`)
              .join(', '),
    },
    {
      what: 'Push on each ram’s footing',
      size: `${plainFigures(sizing.anchorForce, 2)}\u00a0N at each beat; ${plainFigures(sizing.squareBendForce, 2)}\u00a0N on a square bend`,
    },
    {
      what: 'Friction in the delivery pipe',
      size: `${shown(sizing.deliveryFriction, 'head', reader, 2)} at ${shown(sizing.deliveryVelocity, 'velocity', reader, 2)}`,
    },
    ...sizing.pressures.map(({ part, name, pressure, rating }) => ({
      what: `Pressure in the ${PARTS[part]}, and in every fitting on it`,
      size: `${shown(pressure, 'pressure', reader)}; ${name} ${
        rating === undefined
          ? 'has no rating that is known: read it on the part'
          : `may carry ${shown(rating, 'pressure', reader)} at this water’s warmth`
      }`,
    })),
  ];
}
