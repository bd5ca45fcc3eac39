/**
 * What a build needs beside rams, pipes, vessels and tank, and how many of each.
 *
 * Judgement: the counts are common practice, no source, unless one is named. They are meant for pricing and for a shopping
 * list; the person who builds knows the place better.
 */
import type { ProfilePoint } from '../../../cycle/installation.ts';
import type { MaterialName } from '../../../pipes/materials.ts';
import type { Pipe } from '../../../pipes/pipe.ts';
import type { Metre, Newton, Ratio, SquareMetre } from '../../../quantities.ts';
import {
  crestsAndSags,
  crestThreshold,
  type ProfileTurn,
} from '../../../site/profile/crests-and-sags.ts';
import type { Parts } from '../candidates.ts';
import type { ItemKind } from '../offers.ts';
import { isHose, isMetal, isStiff } from '../pipe-kinds.ts';
import type { PlaceToFit, Route } from '../place-to-fit.ts';
import { strainerArea } from '../sizing/strainer-area.ts';
import type { LineName } from './cut-plan.ts';
import { sizesAbove } from './nominal-size.ts';

export type PartsGroup =
  | 'source'
  | 'driveLine'
  | 'ram'
  | 'deliveryLine'
  | 'tank'
  | 'work'
  | 'spares';

export interface Need {
  readonly group: PartsGroup;
  readonly kind: ItemKind;
  /** In the unit of its kind. */
  readonly quantity: number;
  readonly line?: LineName;
  /** Bore of the pipe that it goes with. */
  readonly bore?: Metre;
  readonly material?: MaterialName;
  /** Key of the ram that it goes with. */
  readonly ram?: string;
  /** Of a strainer: open area at the least. */
  readonly openArea?: SquareMetre;
  /** Of a footing: push that each has to withstand. */
  readonly holds?: Newton;
  /** Of a standpipe: nominal size at the least. */
  readonly leastSize?: Metre;
}

/** Judgement: a turn of ten degrees and more wants a bend in stiff pipe; a gentler one is taken by joints and spring. */
const BEND_FROM = Math.PI / 18;
/** Between the clamps of a drive line that is held throughout. Common practice, no source. */
const CLAMP_SPACING: Metre = 3;
/** Clips on each end of a hose. Common practice, no source: two, as one may slip under hammer. */
const CLIPS_PER_END = 2;
/** Sizes of a standpipe above its drive pipe. Source: extension guides, 2–3 sizes (memory; checks: RT51). */
const STANDPIPE_SIZES = 2;
/** Push that a footing is made for, over what is expected. Common practice against sliding, no source. */
export const FOOTING_SAFETY: Ratio = 1.5;

/** Source, drive line and ram. `push` is what one drive line does to its ram. */
export function driveNeeds(place: PlaceToFit, parts: Parts, push: Newton): Need[] {
  const { ram, count, drivePipe, driveLength, feeder } = parts;
  const bore = drivePipe.pipe.innerDiameter;
  const { material } = drivePipe.pipe;
  const mouth = feeder?.pipe.pipe ?? drivePipe.pipe;
  const vents = driveCrests(place, parts);
  const needs: Need[] = [];
  const source = (kind: ItemKind, quantity: number, more: Partial<Need> = {}) =>
    needs.push({ group: 'source', kind, quantity, ...more });
  const drive = (kind: ItemKind, quantity: number, more: Partial<Need> = {}) =>
    needs.push({ group: 'driveLine', kind, quantity, line: 'drive', bore, material, ...more });
  const atRam = (kind: ItemKind, quantity: number, more: Partial<Need> = {}) =>
    needs.push({ group: 'ram', kind, quantity, ram: ram.key, ...more });

  source('strainer', feeder ? 1 : count, {
    line: feeder ? 'feeder' : 'drive',
    bore: mouth.innerDiameter,
    material: mouth.material,
    openArea: strainerArea(mouth.innerDiameter).low,
  });
  if (feeder) {
    const onFeeder = {
      line: 'feeder',
      bore: mouth.innerDiameter,
      material: mouth.material,
    } as const;
    source('intakeBox', 1);
    // Drive lines side by side draw as one pipe of their areas would.
    const leastSize = sizesAbove(bore * Math.sqrt(count), STANDPIPE_SIZES);
    source('standpipe', feeder.standpipeHeight, { leastSize });
    source('tee', 1, onFeeder);
    drive('tee', count);
    for (const need of endsOf(mouth)) source(need.kind, need.quantity, onFeeder);
    source('elbow', bendsAlong(place.driveRoute, mouth, 0, feeder.length), onFeeder);
    source('vent', vents.feeder.length, onFeeder);
  }
  drive('gateValve', count);
  drive('union', count);
  for (const { kind, quantity } of endsOf(drivePipe.pipe)) drive(kind, count * quantity);
  const start = feeder?.length ?? 0;
  drive('elbow', count * bendsAlong(place.driveRoute, drivePipe.pipe, start, Infinity));
  drive('vent', count * vents.drive.length);
  if (place.driveLaying.restraint === 'anchoredThroughout') {
    drive('clamp', count * (Math.ceil(driveLength / CLAMP_SPACING) + 1));
  }
  atRam('footing', count, { holds: FOOTING_SAFETY * push });
  for (const kind of ['wasteValveRubber', 'deliveryValveClack', 'gasket'] as const) {
    needs.push({ group: 'spares', kind, quantity: count, ram: ram.key });
  }
  // Drive lines side by side lie in one trench, but each has to be laid.
  const work = (kind: ItemKind, quantity: number, line: LineName) =>
    needs.push({ group: 'work', kind, quantity, line });
  work('trench', driveLength, 'drive');
  work('laying', count * driveLength, 'drive');
  if (feeder) {
    work('trench', feeder.length, 'feeder');
    work('laying', feeder.length, 'feeder');
  }
  return needs.filter(({ quantity }) => quantity > 0);
}

/** Delivery line, from the rams to the tank. */
export function deliveryNeeds(place: PlaceToFit, parts: Pick<Parts, 'deliveryPipe' | 'count'>) {
  const { count, deliveryPipe } = parts;
  const { pipe } = deliveryPipe;
  const { length, profile } = place.deliveryRoute;
  const needs: Need[] = [];
  const delivery = (kind: ItemKind, quantity: number) =>
    needs.push({
      group: 'deliveryLine',
      kind,
      quantity,
      line: 'delivery',
      bore: pipe.innerDiameter,
      material: pipe.material,
    });
  delivery('stopValve', count);
  delivery('union', count);
  // With more than one ram, so that one can be taken out while the others run.
  if (count > 1) delivery('nonReturnValve', count);
  delivery('tee', count - 1);
  // One at the rams, against frost, and one in each low place on the way.
  delivery('drain', 1 + turnsOf(profile, pipe.innerDiameter, 'sag').length);
  delivery('vent', deliveryCrests(place, pipe).length);
  for (const { kind, quantity } of endsOf(pipe)) delivery(kind, quantity);
  // One over the rim of the tank.
  delivery('elbow', 1 + bendsAlong(place.deliveryRoute, pipe, 0, Infinity));
  needs.push({ group: 'work', kind: 'trench', quantity: length, line: 'delivery' });
  needs.push({ group: 'work', kind: 'laying', quantity: length, line: 'delivery' });
  return needs.filter(({ quantity }) => quantity > 0);
}

function endsOf({ material }: Pipe): { readonly kind: ItemKind; readonly quantity: number }[] {
  if (isMetal(material)) return [];
  return [
    { kind: 'endFitting', quantity: 2 },
    ...(isHose(material) ? [{ kind: 'hoseClip' as const, quantity: 2 * CLIPS_PER_END }] : []),
  ];
}

/** Turns in height that want a bend. Turns to left and right are in no profile: they are not counted. */
function bendsAlong({ profile }: Route, { material }: Pipe, from: Metre, to: Metre): number {
  if (!profile || !isStiff(material)) return 0;
  const slope = (a: ProfilePoint, b: ProfilePoint) =>
    Math.atan2(b.elevation - a.elevation, Math.abs(b.distance - a.distance));
  let bends = 0;
  for (let i = 1; i < profile.length - 1; i++) {
    const [before, here, after] = profile.slice(i - 1, i + 2) as [
      ProfilePoint,
      ProfilePoint,
      ProfilePoint,
    ];
    if (here.distance <= from || here.distance >= to) continue;
    if (Math.abs(slope(here, after) - slope(before, here)) >= BEND_FROM) bends++;
  }
  return bends;
}

/** Crests at which the way from source to ram wants a vent: on the feeder, and on each drive line. */
export function driveCrests(
  place: PlaceToFit,
  { drivePipe, feeder }: Pick<Parts, 'drivePipe' | 'feeder'>,
): { readonly feeder: readonly ProfileTurn[]; readonly drive: readonly ProfileTurn[] } {
  const { profile } = place.driveRoute;
  const start = feeder?.length ?? 0;
  const crests = (bore: Metre) => turnsOf(profile, bore, 'crest');
  return {
    feeder: feeder
      ? crests(feeder.pipe.pipe.innerDiameter).filter(({ distance }) => distance < start)
      : [],
    drive: crests(drivePipe.pipe.innerDiameter).filter(({ distance }) => distance > start),
  };
}

export function deliveryCrests(place: PlaceToFit, pipe: Pipe): readonly ProfileTurn[] {
  return turnsOf(place.deliveryRoute.profile, pipe.innerDiameter, 'crest');
}

function turnsOf(
  profile: readonly ProfilePoint[] | undefined,
  bore: Metre,
  wanted: ProfileTurn['kind'],
): ProfileTurn[] {
  if (!profile || profile.length < 3) return [];
  const threshold = crestThreshold({ bore, heightSpread: 0 });
  return crestsAndSags(profile, { threshold }).filter(({ kind }) => kind === wanted);
}
