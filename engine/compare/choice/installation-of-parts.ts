/** One ram's share of a place with the parts of a combination: what is simulated. */
import type { Installation, ProfilePoint, Source } from '../../cycle/installation.ts';
import type { PipeSegment } from '../../pipes/pipe.ts';
import type { Parts } from './candidates.ts';
import type { PlaceToFit } from './place-to-fit.ts';

/**
 * One ram's share of the place with these parts: its own drive line, its part of the source, and the delivery line that it
 * shares with the others.
 *
 * `level` is the height of the water at which the drive line starts: the source's, or less in a standpipe.
 */
export function installationOf(place: PlaceToFit, parts: Parts, level = place.fall): Installation {
  const { count, tuning, vessel } = parts;
  const ram = vessel
    ? { ...tuning.ram, airVessel: { ...tuning.ram.airVessel, volume: vessel.volume } }
    : tuning.ram;
  const { entranceLoss, ...laying } = place.driveLaying;
  const profile = driveProfile(place, parts);
  const deliveryProfile = place.deliveryRoute.profile;
  const delivery: PipeSegment = {
    pipe: parts.deliveryPipe.pipe,
    length: place.deliveryRoute.length,
    fittingsLoss: 0,
    restraint: 'anchoredThroughout',
    freeAirFraction: 0,
  };
  return {
    water: place.water,
    source: shareOf(place.source, count),
    fall: level,
    driveLine: {
      segments: [{ pipe: parts.drivePipe.pipe, length: parts.driveLength, ...laying }],
      entranceLoss,
      pockets: [],
      ...(profile ? { profile } : {}),
    },
    ram,
    lift: place.lift,
    deliveryLine: {
      segments: [delivery],
      ...(deliveryProfile ? { profile: deliveryProfile } : {}),
      ...(count > 1 ? { sharedBy: count } : {}),
    },
  };
}

/** The part of the way that the drive line takes; stretched when the pipe lies in curves. */
function driveProfile(place: PlaceToFit, parts: Parts): readonly ProfilePoint[] | undefined {
  const { length: way, profile } = place.driveRoute;
  const { driveLength, feeder } = parts;
  if (feeder) {
    const start = feeder.length;
    const behind = (profile ?? [])
      .filter((p) => p.distance > start)
      .map((p) => ({ distance: p.distance - start, elevation: p.elevation }));
    const end = behind.at(-1) ?? { distance: driveLength, elevation: 0 };
    return [
      { distance: 0, elevation: feeder.standpipeBase },
      ...(behind.length > 0 ? behind : [end]),
    ];
  }
  return profile?.map((p) => ({
    distance: (p.distance * driveLength) / way,
    elevation: p.elevation,
  }));
}

/** What one of several rams may count on. */
function shareOf(source: Source, count: number): Source {
  if (count === 1) return source;
  if (source.kind === 'store') {
    return {
      ...source,
      inflow: source.inflow / count,
      surfaceArea: source.surfaceArea / count,
    };
  }
  return source.yield === undefined ? source : { ...source, yield: source.yield / count };
}
