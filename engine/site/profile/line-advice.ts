/**
 * A surveyed line read from end to end: its crests with the air they may hold, its sags, its pressures at rest, and where a
 * vent or a straighter run would help. Data only: the words are made elsewhere.
 */
import type { ProfilePoint } from '../../cycle/installation.ts';
import { interpolate } from '../../numerics/interpolate.ts';
import type { CubicMetre, Metre, MetrePerSecond, Ratio } from '../../quantities.ts';
import { GRAVITY } from '../../quantities.ts';
import { crestsAndSags, crestThreshold, type ProfileTurn } from './crests-and-sags.ts';
import { clearingVelocity, pocketVolume } from './pocket-volume.ts';
import { type StaticPressure, staticPressure } from './static-pressure.ts';

export interface SurveyedLine {
  readonly profile: readonly ProfilePoint[];
  /** Bores along the line, each from a distance on; the first from nought. */
  readonly bores: readonly { readonly from: Metre; readonly bore: Metre }[];
  /** Level of the water over the line at rest: see `staticPressure`. */
  readonly surface: Metre;
  /** How well the heights are known, one against another; nought when nobody said. */
  readonly heightSpread: Metre;
  /** Vents, by their distance along the line. */
  readonly vents: readonly Metre[];
}

export interface Crest extends ProfileTurn {
  readonly bore: Metre;
  /** Most air that it may hold; see `pocketVolume`. */
  readonly air: CubicMetre;
  /** Head in the pipe there at rest; below nought the line hangs over its source or tank as a siphon does. */
  readonly pressureHead: Metre;
  /** Mean slope from the crest down to the turn behind it, in the direction of flow. */
  readonly slopeBehind: Ratio;
  /** Steady flow faster than this sweeps the air out. */
  readonly clearingVelocity: MetrePerSecond;
  /** The vent that lets its air out; absent when there is none. */
  readonly vent?: Metre;
}

/**
 * What would keep the air out of a crest.
 * `vent`: a cock or air valve at the crest; `straighten`: the pipe laid straight from one place to another, which lowers it
 * by `lowering` at most; `lower`: the crest lies above the water that feeds it, where a vent would draw air in,
 * so only laying it lower helps.
 */
export type Advice =
  | { readonly kind: 'vent'; readonly at: Metre }
  | {
      readonly kind: 'straighten';
      readonly from: Metre;
      readonly to: Metre;
      readonly lowering: Metre;
    }
  | { readonly kind: 'lower'; readonly at: Metre; readonly lowering: Metre };

export interface LineReading {
  readonly threshold: Metre;
  readonly crests: readonly Crest[];
  readonly sags: readonly ProfileTurn[];
  readonly pressure: StaticPressure;
  /** For each crest without a vent, in the same order. */
  readonly advice: readonly { readonly crest: Crest; readonly ways: readonly Advice[] }[];
  /** Vents that let no crest's air out. */
  readonly idleVents: readonly Metre[];
}

/** @throws RangeError when the profile has fewer than two points or the line has no bore. */
export function readLine(line: SurveyedLine): LineReading {
  const { profile, bores, surface, heightSpread, vents } = line;
  if (profile.length < 2) {
    throw new RangeError(`profile must have two points, got ${profile.length}`);
  }
  const widest = bores.reduce((most, { bore }) => Math.max(most, bore), 0);
  const threshold = crestThreshold({ bore: widest, heightSpread });
  const turns = crestsAndSags(profile, { threshold });
  const crests = turns.flatMap((turn, place) =>
    turn.kind === 'crest' ? [crestOf(line, turns, place)] : [],
  );
  const used = new Set(crests.flatMap(({ vent }) => (vent === undefined ? [] : [vent])));
  return {
    threshold,
    crests,
    sags: turns.filter(({ kind }) => kind === 'sag'),
    pressure: staticPressure(profile, surface),
    advice: crests.flatMap((crest) =>
      crest.vent === undefined ? [{ crest, ways: waysFor(profile, turns, crest) }] : [],
    ),
    idleVents: vents.filter((vent) => !used.has(vent)),
  };
}

/** Places in the profile of the turns, or the line's ends, before and after a crest. */
function turnsRound(
  profile: readonly ProfilePoint[],
  turns: readonly ProfileTurn[],
  place: number,
): { readonly from: number; readonly to: number } {
  return {
    from: turns[place - 1]?.index ?? 0,
    to: turns[place + 1]?.index ?? profile.length - 1,
  };
}

function crestOf(line: SurveyedLine, turns: readonly ProfileTurn[], place: number): Crest {
  const { profile, surface } = line;
  const turn = turns[place] as ProfileTurn;
  const round = turnsRound(profile, turns, place);
  const bore = line.bores.filter(({ from }) => from <= turn.distance).at(-1)?.bore ?? 0;
  const air = pocketVolume(profile, { index: turn.index, ...round }, bore);
  const behind = profile[round.to] as ProfilePoint;
  const slopeBehind = (turn.elevation - behind.elevation) / (behind.distance - turn.distance);
  const vent = line.vents.find((at) => ventReaches(profile, turn, round, bore, at));
  return {
    ...turn,
    bore,
    air,
    pressureHead: surface - turn.elevation,
    slopeBehind,
    clearingVelocity: clearingVelocity({ bore, slope: slopeBehind, air, gravity: GRAVITY }),
    ...(vent === undefined ? {} : { vent }),
  };
}

/**
 * Whether a vent lets the air of a crest out: it stands between the turns round it, and no more than a bore below it.
 *
 * Judgement: from so near the top what is left in the crown is less than the pipe holds without any crest.
 */
function ventReaches(
  profile: readonly ProfilePoint[],
  crest: ProfileTurn,
  round: { readonly from: number; readonly to: number },
  bore: Metre,
  vent: Metre,
): boolean {
  const between = profile.slice(round.from, round.to + 1);
  const first = between[0] as ProfilePoint;
  const last = between.at(-1) as ProfilePoint;
  if (!(vent >= first.distance && vent <= last.distance)) return false;
  const height = interpolate(
    between.map(({ distance, elevation }) => [distance, elevation]),
    vent,
  );
  return crest.elevation - height <= bore;
}

function waysFor(
  profile: readonly ProfilePoint[],
  turns: readonly ProfileTurn[],
  crest: Crest,
): readonly Advice[] {
  const place = turns.findIndex(({ index }) => index === crest.index);
  const { from, to } = turnsRound(profile, turns, place);
  if (!(crest.pressureHead > 0)) {
    // The roof of the pipe must come under water too.
    const lowering = crest.bore / 2 - crest.pressureHead;
    return [{ kind: 'lower', at: crest.distance, lowering }];
  }
  const run = straightRun(profile, { from, to }, crest);
  return [
    { kind: 'vent', at: crest.distance },
    { kind: 'straighten', ...run },
  ];
}

/**
 * The shortest straight run worth laying in place of a crest: from the higher of the turns on its two sides to where the
 * other leg lies as far below that turn as the crest lies above it.
 *
 * Judgement: a run that only just did not rise would lie level, and air stands in a level pipe; this one falls about as
 * steeply as the crest rose.
 */
function straightRun(
  profile: readonly ProfilePoint[],
  { from, to }: { readonly from: number; readonly to: number },
  crest: Crest,
): { readonly from: Metre; readonly to: Metre; readonly lowering: Metre } {
  const first = profile[from] as ProfilePoint;
  const last = profile[to] as ProfilePoint;
  const isFirstHigher = first.elevation >= last.elevation;
  const turn = isFirstHigher ? first : last;
  const leg = isFirstHigher
    ? profile.slice(crest.index, to + 1)
    : profile.slice(from, crest.index + 1).reverse();
  const end = whereItFallsTo(leg, turn.elevation - crest.prominence);
  const slope = (end.elevation - turn.elevation) / (end.distance - turn.distance);
  const [low, high] = [
    Math.min(turn.distance, end.distance),
    Math.max(turn.distance, end.distance),
  ];
  let lowering = 0;
  for (const { distance, elevation } of profile.slice(from, to + 1)) {
    if (distance < low || distance > high) continue;
    const straight = turn.elevation + slope * (distance - turn.distance);
    lowering = Math.max(lowering, elevation - straight);
  }
  return { from: low, to: high, lowering };
}

/** The first place on a leg, walked from the crest down, that lies no higher than `elevation`; its end when none does. */
function whereItFallsTo(leg: readonly ProfilePoint[], elevation: Metre): ProfilePoint {
  for (const [index, point] of leg.entries()) {
    const before = leg[index - 1];
    if (!before || point.elevation > elevation) continue;
    const share = (before.elevation - elevation) / (before.elevation - point.elevation);
    return { distance: before.distance + share * (point.distance - before.distance), elevation };
  }
  return leg.at(-1) as ProfilePoint;
}
