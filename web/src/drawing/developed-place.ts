/**
 * A place unrolled along its line, in metres: the first step from an installation to a drawing.
 *
 * Stations are metres of pipe from the intake; heights are metres above the waste valve's outlet. Where no profile is
 * known a line is drawn straight between its ends, and the drawing says so.
 */
import type { Installation, ProfilePoint } from '@fallwright/engine';
import type { Turn } from '../profile/crests.ts';
import { turnsOf } from '../profile/crests.ts';

export interface Station {
  readonly station: number;
  readonly height: number;
}

/** A high point of a line, where air collects. */
export interface Crest extends Station {
  readonly line: 'drive' | 'delivery';
  /** Cubic metres of air taken to be caught there, when the installation says so. */
  readonly air?: number;
  /** How much the line sinks on its flatter side, in metres; nought for air that is not at a crest. */
  readonly depth: number;
  /** A vent lets its air out. */
  readonly isVented?: true;
}

/** A corner at which a line turns from rising to falling or back, by its station. */
export type Turns = ReadonlyMap<number, Pick<Turn, 'kind' | 'depth'>>;

export interface DevelopedPlace {
  readonly driveLength: number;
  readonly deliveryLength: number;
  /** Height of the source's surface: the fall. */
  readonly fall: number;
  /** Height of the outlet at the tank: the lift. */
  readonly lift: number;
  readonly drive: readonly Station[];
  readonly delivery: readonly Station[];
  readonly crests: readonly Crest[];
  readonly turns: Turns;
  readonly isDriveSurveyed: boolean;
  readonly isDeliverySurveyed: boolean;
}

const lengthOf = (segments: readonly { readonly length: number }[]): number =>
  segments.reduce((sum, segment) => sum + segment.length, 0);

/**
 * Depth at which the intake is drawn below the surface when nothing says how deep it lies: a hand's breadth, and less
 * where the whole fall is small.
 * Judgement: for the eye only; no number comes from it.
 */
function drawnIntakeDepth(installation: Installation): number {
  const { source, fall } = installation;
  if (source.kind === 'store') return Math.min(source.depthOverIntake, 0.8 * fall);
  return Math.min(0.15, 0.15 * fall);
}

/** A profile may begin at the water's surface; the pipe's mouth is drawn under it. */
function belowTheSurface([first, ...others]: readonly Station[], highest: number): Station[] {
  if (first === undefined) return [];
  return [{ ...first, height: Math.min(first.height, highest) }, ...others];
}

const stationsOf = (profile: readonly ProfilePoint[], from: number): Station[] =>
  profile.map((point) => ({ station: from + point.distance, height: point.elevation }));

function turnsAlong(
  stations: readonly Station[],
  leastDepth?: number,
): [number, Pick<Turn, 'kind' | 'depth'>][] {
  return turnsOf(stations, leastDepth).map(({ index, kind, depth }) => [
    stations[index]?.station ?? 0,
    { kind, depth },
  ]);
}

export function heightOn(stations: readonly Station[], station: number): number {
  for (let i = 1; i < stations.length; i++) {
    const a = stations[i - 1];
    const b = stations[i];
    if (a === undefined || b === undefined || station > b.station) continue;
    const share = b.station === a.station ? 0 : (station - a.station) / (b.station - a.station);
    return a.height + share * (b.height - a.height);
  }
  return stations[stations.length - 1]?.height ?? 0;
}

/** What the file says of a line's crests beside its points. */
export interface CrestsAsWritten {
  /** Turns flatter than this are the survey's own. */
  readonly leastDepth: number;
  /** Metres along the line. */
  readonly vents: readonly number[];
}

export function developPlace(
  installation: Installation,
  written?: Readonly<Record<Crest['line'], CrestsAsWritten>>,
): DevelopedPlace {
  const { driveLine, deliveryLine, fall, lift } = installation;
  const driveLength = lengthOf(driveLine.segments);
  const deliveryLength = lengthOf(deliveryLine.segments);
  const isDriveSurveyed = (driveLine.profile?.length ?? 0) > 1;
  const isDeliverySurveyed = (deliveryLine.profile?.length ?? 0) > 1;
  const drive = isDriveSurveyed
    ? belowTheSurface(stationsOf(driveLine.profile ?? [], 0), fall - drawnIntakeDepth(installation))
    : [
        { station: 0, height: fall - drawnIntakeDepth(installation) },
        { station: driveLength, height: 0 },
      ];
  const delivery = isDeliverySurveyed
    ? stationsOf(deliveryLine.profile ?? [], driveLength)
    : [
        { station: driveLength, height: 0 },
        { station: driveLength + deliveryLength, height: lift },
      ];
  const onDrive = turnsAlong(drive, written?.drive.leastDepth);
  const onDelivery = turnsAlong(delivery, written?.delivery.leastDepth);
  const hasVentAt = (line: Crest['line'], station: number): boolean => {
    const along = line === 'drive' ? station : station - driveLength;
    return written?.[line].vents.some((vent) => Math.abs(vent - along) < 0.5) ?? false;
  };
  const crestsOf = (line: Crest['line'], turns: typeof onDrive): Crest[] =>
    turns
      .filter(([, { kind }]) => kind === 'crest')
      .map(([station, { depth }]) => ({
        line,
        station,
        height: heightOn(line === 'drive' ? drive : delivery, station),
        depth,
        ...(hasVentAt(line, station) ? { isVented: true } : {}),
      }));
  const driveCrests = crestsOf('drive', onDrive);
  const isAt = (pocket: number, crest: Crest): boolean => Math.abs(pocket - crest.station) < 0.5;
  const pockets = driveLine.pockets.map(
    (pocket): Crest => ({
      line: 'drive',
      station: pocket.distance,
      height: heightOn(drive, pocket.distance),
      air: pocket.volume,
      depth: driveCrests.find((crest) => isAt(pocket.distance, crest))?.depth ?? 0,
    }),
  );
  const bledCrests = driveCrests.filter(
    (crest) => !driveLine.pockets.some((pocket) => isAt(pocket.distance, crest)),
  );
  return {
    driveLength,
    deliveryLength,
    fall,
    lift,
    drive,
    delivery,
    crests: [...pockets, ...bledCrests, ...crestsOf('delivery', onDelivery)],
    turns: new Map([...onDrive, ...onDelivery]),
    isDriveSurveyed,
    isDeliverySurveyed,
  };
}
