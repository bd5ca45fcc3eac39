/**
 * A place unrolled along its line, in metres: the first step from an installation to a drawing.
 *
 * Stations are metres of pipe from the intake; heights are metres above the waste valve's outlet. Where no profile is
 * known a line is drawn straight between its ends, and the drawing says so.
 */
import type { Installation, ProfilePoint } from '@fallwright/engine';

export interface Station {
  readonly station: number;
  readonly height: number;
}

/** A high point of a line, where air collects. */
export interface Crest extends Station {
  readonly line: 'drive' | 'delivery';
  /** Cubic metres of air taken to be caught there, when the installation says so. */
  readonly air?: number;
}

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

/** Inner points that stand higher than the points before and after them. */
function highPoints(stations: readonly Station[]): Station[] {
  return stations.filter((here, i) => {
    const before = stations[i - 1];
    const after = stations[i + 1];
    return (
      before !== undefined &&
      after !== undefined &&
      here.height > before.height &&
      here.height >= after.height
    );
  });
}

function heightOn(stations: readonly Station[], station: number): number {
  for (let i = 1; i < stations.length; i++) {
    const a = stations[i - 1];
    const b = stations[i];
    if (a === undefined || b === undefined || station > b.station) continue;
    const share = b.station === a.station ? 0 : (station - a.station) / (b.station - a.station);
    return a.height + share * (b.height - a.height);
  }
  return stations[stations.length - 1]?.height ?? 0;
}

export function developPlace(installation: Installation): DevelopedPlace {
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
  const pockets = driveLine.pockets.map(
    (pocket): Crest => ({
      line: 'drive',
      station: pocket.distance,
      height: heightOn(drive, pocket.distance),
      air: pocket.volume,
    }),
  );
  const driveCrests = highPoints(drive)
    .filter((crest) => !pockets.some((pocket) => Math.abs(pocket.station - crest.station) < 0.5))
    .map((crest): Crest => ({ line: 'drive', ...crest }));
  const deliveryCrests = highPoints(delivery).map(
    (crest): Crest => ({ line: 'delivery', ...crest }),
  );
  return {
    driveLength,
    deliveryLength,
    fall,
    lift,
    drive,
    delivery,
    crests: [...pockets, ...driveCrests, ...deliveryCrests],
    isDriveSurveyed,
    isDeliverySurveyed,
  };
}
