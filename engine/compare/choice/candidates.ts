/**
 * Every combination of what is offered, one by one, with its cost.
 *
 * Combinations that differ only in vessel or tank share one run: neither moves the settled beat, whose vessel head is constant.
 */
import type { Installation, ProfilePoint, Source } from '../../cycle/installation.ts';
import { interpolate } from '../../numerics/interpolate.ts';
import type { PipeSegment } from '../../pipes/pipe.ts';
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
import { pipeCost } from './offers.ts';
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
  /** Names of what has no price. */
  readonly missing: readonly string[];
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
                    yield candidateOf(place, offers, {
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
  const { costModel: _, ...lists } = offers;
  for (const [name, list] of Object.entries(lists)) {
    const keys = list.map(({ key }) => key);
    const twice = keys.find((key, i) => keys.indexOf(key) !== i);
    if (twice !== undefined) throw new RangeError(`${name} must differ in key, got ${twice} twice`);
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

function candidateOf(place: PlaceToFit, offers: Offers, parts: Parts): Candidate {
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
  const { total, missing } = costOf(place, offers, parts);
  return {
    key: `${runKey}|${vessel?.key ?? ''}|${tank?.key ?? ''}`,
    runKey,
    parts,
    missing,
    ...(total === undefined ? {} : { cost: total }),
  };
}

/** One line of a combination's cost; `cost` is absent when its price is not known. */
export interface CostRow {
  readonly what:
    | 'rams'
    | 'drivePipe'
    | 'feederPipe'
    | 'deliveryPipe'
    | 'vessels'
    | 'tank'
    | 'standpipe'
    | 'trench'
    | 'laying'
    | 'fittings'
    | 'work';
  readonly name: string;
  readonly cost?: Money;
}

/** What a combination costs, line by line; the total is absent when any price is. */
export function costOf(
  place: PlaceToFit,
  { costModel }: Pick<Offers, 'costModel'>,
  parts: Parts,
): { readonly rows: readonly CostRow[]; readonly total?: Money; readonly missing: string[] } {
  const { ram, count, drivePipe, driveLength, feeder, deliveryPipe, vessel, tank } = parts;
  const rows: CostRow[] = [];
  const missing: string[] = [];
  let total = 0;
  const add = (what: CostRow['what'], name: string, price: Money | undefined, times: number) => {
    if (price === undefined) {
      missing.push(name);
      rows.push({ what, name });
      return;
    }
    const cost = Math.round(price * times);
    total += cost;
    rows.push({ what, name, cost });
  };
  const deliveryLength = place.deliveryRoute.length;
  add('rams', ram.name, ram.cost, count);
  add('drivePipe', drivePipe.name, pipeCost(drivePipe, driveLength), count);
  if (feeder) {
    add('feederPipe', feeder.pipe.name, pipeCost(feeder.pipe, feeder.length), 1);
    add('standpipe', 'standpipe', costModel.standpipePerMetre, feeder.standpipeHeight);
  }
  add('deliveryPipe', deliveryPipe.name, pipeCost(deliveryPipe, deliveryLength), 1);
  if (vessel) add('vessels', vessel.name, vessel.cost, count);
  if (tank) add('tank', tank.name, tank.cost, 1);
  // Drive lines side by side lie in one trench, but each has to be laid.
  const dug = driveLength + (feeder?.length ?? 0) + deliveryLength;
  const laid = count * driveLength + (feeder?.length ?? 0) + deliveryLength;
  add('trench', 'trench', costModel.trenchPerMetre, dug);
  add('laying', 'laying', costModel.layingPerMetre, laid);
  add('fittings', 'fittings', costModel.fittingsPerRam, count);
  add('work', 'work at the ram', costModel.workPerRam, count);
  return missing.length > 0 ? { rows, missing } : { rows, missing, total };
}

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
