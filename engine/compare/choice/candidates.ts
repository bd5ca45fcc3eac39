/**
 * Every combination of what is offered, one by one, with its cost.
 *
 * Combinations that differ only in vessel or tank share one run: neither moves the settled beat, whose vessel head is constant.
 */
import type { ProfilePoint } from '../../cycle/installation.ts';
import { interpolate } from '../../numerics/interpolate.ts';
import type { Metre } from '../../quantities.ts';
import type {
  Money,
  Offers,
  PipeOffer,
  RamOffer,
  TankOffer,
  Tuning,
  VesselOffer,
} from './offers.ts';
import { type PartsLister, partsLister } from './parts-list/parts-list.ts';
import type { Lack } from './parts-list/pick-item.ts';
import { type PlaceToFit, usualDriveLengths, type Wish } from './place-to-fit.ts';

/** A feeder pipe from the source to an open standpipe, at which the drive line starts. */
export interface Feeder {
  readonly pipe: PipeOffer;
  readonly length: Metre;
  /** Height of the ground at the standpipe. */
  readonly standpipeBase: Metre;
  /** From the ground to its open top, above the source's level. */
  readonly standpipeHeight: Metre;
}

/** What a combination is made of. */
export interface Parts {
  readonly ram: RamOffer;
  readonly tuning: Tuning;
  /** Rams alike, side by side. */
  readonly count: number;
  readonly drivePipe: PipeOffer;
  readonly driveLength: Metre;
  readonly feeder?: Feeder;
  readonly deliveryPipe: PipeOffer;
  readonly vessel?: VesselOffer;
  readonly tank?: TankOffer;
}

export interface Candidate {
  /** Unlike that of any other combination. */
  readonly key: string;
  /** Alike for combinations that share a run. */
  readonly runKey: string;
  readonly parts: Parts;
  /** Absent when a price is missing. */
  readonly cost?: Money;
  /** What has no price, or is not offered. */
  readonly missing: readonly Lack[];
}

/** Judgement: a standpipe's top stands this far above the source, so that it does not run over when the ram rests (checks: RT51). */
const FREEBOARD: Metre = 0.3;

/** All combinations, in the order of the lists. @throws RangeError when two offers of a list have one key. */
export function* candidates(
  place: PlaceToFit,
  wish: Wish,
  offers: Offers,
): Generator<Candidate, void, void> {
  requireDistinct(offers);
  const lister = partsLister(place, offers);
  const lengths = wish.driveLengths ?? usualDriveLengths(place, offers.feederPipes.length > 0);
  const vessels = offers.vessels.length > 0 ? offers.vessels : [undefined];
  const tanks = offers.tanks.length > 0 ? offers.tanks : [undefined];
  for (const ram of offers.rams) {
    for (const tuning of ram.tunings) {
      for (let count = 1; count <= (wish.mostRams ?? 1); count++) {
        for (const drivePipe of offers.drivePipes) {
          for (const driveLength of lengths) {
            for (const feeder of feedersFor(place, driveLength, offers.feederPipes)) {
              for (const deliveryPipe of offers.deliveryPipes) {
                for (const vessel of vessels) {
                  for (const tank of tanks) {
                    yield candidateOf(lister, {
                      ram,
                      tuning,
                      count,
                      drivePipe,
                      driveLength,
                      deliveryPipe,
                      ...(feeder ? { feeder } : {}),
                      ...(vessel ? { vessel } : {}),
                      ...(tank ? { tank } : {}),
                    });
                  }
                }
              }
            }
          }
        }
      }
    }
  }
}

function requireDistinct(offers: Offers): void {
  const { leftOut: _, ...lists } = offers;
  for (const [name, list] of Object.entries(lists)) {
    const keys = new Set<string>();
    for (const { key } of list) {
      if (keys.has(key)) throw new RangeError(`${name} must differ in key, got ${key} twice`);
      keys.add(key);
    }
  }
  // A pipe may be offered for several lines, but then it is bought together and must be one offer.
  const pipes = new Map<string, PipeOffer>();
  for (const pipe of [...offers.drivePipes, ...offers.feederPipes, ...offers.deliveryPipes]) {
    const other = pipes.get(pipe.key);
    if (other && JSON.stringify(other) !== JSON.stringify(pipe)) {
      throw new RangeError(`pipes of one key must be one offer, got two different ${pipe.key}`);
    }
    pipes.set(pipe.key, pipe);
  }
}

/** The ways to feed a drive line of a length: straight from the source, or by each feeder pipe when it is too short for that. */
function feedersFor(
  place: PlaceToFit,
  driveLength: Metre,
  pipes: readonly PipeOffer[],
): (Feeder | undefined)[] {
  const way = place.driveRoute.length;
  if (driveLength >= way || pipes.length === 0) return [undefined];
  const length = way - driveLength;
  const standpipeBase = routeElevation(place, length);
  return pipes.map((pipe) => ({
    pipe,
    length,
    standpipeBase,
    standpipeHeight: Math.max(0, place.fall - standpipeBase) + FREEBOARD,
  }));
}

/** Height of the ground on the way from source to ram. */
function routeElevation(place: PlaceToFit, distance: Metre): Metre {
  const { length, profile } = place.driveRoute;
  if (!profile || profile.length < 2) return place.fall * (1 - distance / length);
  const first = profile[0] as ProfilePoint;
  const last = profile.at(-1) as ProfilePoint;
  const within = Math.min(last.distance, Math.max(first.distance, distance));
  return interpolate(
    profile.map((p) => [p.distance, p.elevation]),
    within,
  );
}

function candidateOf(lister: PartsLister, parts: Parts): Candidate {
  const { ram, tuning, count, drivePipe, driveLength, feeder, deliveryPipe, vessel, tank } = parts;
  const runKey = [
    ram.key,
    tuning.name,
    `×${count}`,
    drivePipe.key,
    driveLength.toFixed(3),
    feeder?.pipe.key ?? '',
    deliveryPipe.key,
  ].join('|');
  const { total, missing } = lister.costOf(parts);
  return {
    key: `${runKey}|${vessel?.key ?? ''}|${tank?.key ?? ''}`,
    runKey,
    parts,
    missing,
    ...(total === undefined ? {} : { cost: total }),
  };
}
