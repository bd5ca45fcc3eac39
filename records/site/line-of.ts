/** A drive or delivery line as the engine takes it, from the lengths of pipe in a site. */
import type {
  AirPocket,
  Crest,
  PipeSegment,
  ProfilePoint,
  Restraint,
  SurveyedLine,
} from '@fallwright/engine';
import type { Assumptions } from './assumption.ts';
import { fittingLoss } from './fitting-words.ts';
import type { PipeLength } from './pipe-fields.ts';
import { pipeOf } from './pipe-of.ts';

export const RESTRAINTS: Readonly<Record<NonNullable<PipeLength['held']>, Restraint>> = {
  buried: 'anchoredThroughout',
  clamped: 'anchoredThroughout',
  'at the upper end': 'anchoredUpstream',
  loose: 'expansionJoints',
};

/** Judgement: air at a crest fills half the bore over some ten bores. */
const CREST_AIR_IN_BORES = 5;

export function segmentsOf(
  line: 'drive' | 'delivery',
  lengths: readonly PipeLength[],
  assumptions: Assumptions,
): readonly PipeSegment[] {
  return lengths.map((length, index) => {
    const field = `${line}[${index}]`;
    const pipe = pipeOf(length, field, assumptions);
    return {
      pipe,
      length: length.length.value,
      fittingsLoss: lossOf(length, field, line, assumptions),
      restraint: restraintOf(length, pipe.material.endsWith('Hose'), field, assumptions),
      freeAirFraction: length.freeAir?.value ?? 0,
    };
  });
}

/** Loss of the fittings in a length of pipe. */
export function lossOf(
  length: PipeLength,
  field: string,
  line: string,
  assumptions: Assumptions,
): number {
  if (!length.fittings) {
    assumptions.words(`${field}.fittings`, `fittings in the ${line} pipe`, 'none', {
      why: 'none were listed',
      basis: 'judgement',
    });
    return 0;
  }
  return length.fittings.reduce((sum, text) => {
    const read = fittingLoss(text);
    if (!read.ok)
      throw new RangeError(`no fitting is called ${text}: read the site with readSite first`);
    return sum + read.loss;
  }, 0);
}

function restraintOf(
  length: PipeLength,
  isHose: boolean,
  field: string,
  assumptions: Assumptions,
): Restraint {
  if (length.held) return RESTRAINTS[length.held];
  const held = isHose ? 'loose' : 'clamped';
  // In the delivery line the air vessel keeps the beat away, so how it is held changes nothing.
  if (field.startsWith('delivery')) return RESTRAINTS[held];
  assumptions.words(`${field}.held`, 'how the pipe is held', held, {
    why: isHose ? 'a hose lies on the ground' : 'a pipe of a ram is anchored or buried',
    basis: 'commonPractice',
  });
  return RESTRAINTS[held];
}

/** Air caught in the drive line, at distances from its upper end: told, or assumed at its crests. */
export function pocketsOf(
  lengths: readonly PipeLength[],
  segments: readonly PipeSegment[],
  crests: readonly Crest[],
  assumptions: Assumptions,
): readonly AirPocket[] {
  const pockets: AirPocket[] = [];
  const saidBefore = assumptions.list.length;
  let start = 0;
  for (const [index, length] of lengths.entries()) {
    const end = start + length.length.value;
    const isLast = index === lengths.length - 1;
    const within = crests.filter(({ distance }) => distance >= start && (distance < end || isLast));
    const bore = segments[index]?.pipe.innerDiameter ?? 0;
    const field = `drive[${index}].air`;
    pockets.push(...pocketsIn(length, { start, bore, field, crests: within }, assumptions));
    start = end;
  }
  if (pockets.length === 0 && assumptions.list.length === saidBefore) {
    assumptions.words('drive[0].air', 'air in the drive line', 'none', {
      why: 'laid straight and bled before starting',
      basis: 'commonPractice',
    });
  }
  return pockets;
}

interface LengthWithin {
  /** Distance of its upper end along the line. */
  readonly start: number;
  readonly bore: number;
  readonly field: string;
  /** Crests that the profile shows on it. */
  readonly crests: readonly Crest[];
}

function pocketsIn(
  length: PipeLength,
  { start, bore, field, crests }: LengthWithin,
  assumptions: Assumptions,
): readonly AirPocket[] {
  if (length.air) {
    return length.air.map(({ at, volume }) => ({
      distance: start + (at?.value ?? length.length.value / 2),
      volume: volume.value,
    }));
  }
  if (length.laid === 'straight') return [];
  if (crests.length > 0) {
    return crests.flatMap((crest, index) => {
      const which = crests.length === 1 ? 'the crest' : `crest ${index + 1} of ${crests.length}`;
      return pocketAt(crest, which, field, assumptions);
    });
  }
  if (length.laid !== 'over a crest') return [];
  if (length.vents) {
    assumptions.words(field, 'air at the crest', 'none', {
      why: 'the pipe has a vent, taken to stand at its crest',
      basis: 'commonPractice',
    });
    return [];
  }
  const volume = assumptions.quantity(
    field,
    'air caught at the crest',
    CREST_AIR_IN_BORES * (Math.PI / 4) * bore ** 3,
    'smallVolume',
    { why: 'air that fills half the bore over ten bores', basis: 'judgement' },
  );
  return [{ distance: start + crestOf(length), volume }];
}

/** The air of a crest that the profile shows, unless a vent lets it out. */
function pocketAt(
  crest: Crest,
  which: string,
  field: string,
  assumptions: Assumptions,
): readonly AirPocket[] {
  if (crest.vent !== undefined) {
    assumptions.words(field, `air at ${which}`, 'none', {
      why: 'the vent there lets it out',
      basis: 'commonPractice',
    });
    return [];
  }
  const volume = assumptions.quantity(
    field,
    `air caught at ${which} in the profile`,
    crest.air,
    'smallVolume',
    {
      why: 'the most that it holds while water still passes under the air: bleed it and measure again, or say air: or vents:',
      basis: 'computed',
    },
  );
  return [{ distance: crest.distance, volume }];
}

/** The highest point of the profile, or the middle. */
function crestOf(length: PipeLength): number {
  const highest = [...(length.profile ?? [])].sort((a, b) => b.height.value - a.height.value)[0];
  return highest?.at.value ?? length.length.value / 2;
}

/** Points along a whole line with both ends, when any of its pipes has a profile. */
export function profileOf(
  lengths: readonly PipeLength[],
  ends: { readonly upper: number; readonly lower: number },
): readonly ProfilePoint[] | undefined {
  if (!lengths.some((length) => length.profile)) return undefined;
  const points: ProfilePoint[] = [];
  let start = 0;
  for (const length of lengths) {
    for (const { at, height } of length.profile ?? []) {
      points.push({ distance: start + at.value, elevation: height.value });
    }
    start += length.length.value;
  }
  const first = points[0];
  const last = points.at(-1);
  if (!first || first.distance > 0) points.unshift({ distance: 0, elevation: ends.upper });
  if (!last || last.distance < start) points.push({ distance: start, elevation: ends.lower });
  return points;
}

/** Vents of a whole line, by their distance along it. */
export function ventsOf(lengths: readonly PipeLength[]): readonly number[] {
  let start = 0;
  return lengths.flatMap((length) => {
    const before = start;
    start += length.length.value;
    return (length.vents ?? []).map(({ value }) => before + value);
  });
}

/** The widest ± that stands beside a height of the profile; nought when none does. */
export function heightSpreadOf(lengths: readonly PipeLength[]): number {
  const spreads = lengths.flatMap(({ profile }) =>
    (profile ?? []).map(({ height }) => height.spread ?? 0),
  );
  return Math.max(0, ...spreads);
}

/** A line with a profile as the engine reads it for its crests. */
export function surveyedLineOf(
  lengths: readonly PipeLength[],
  segments: readonly PipeSegment[],
  { profile, surface }: { readonly profile: readonly ProfilePoint[]; readonly surface: number },
): SurveyedLine {
  let start = 0;
  const bores = segments.map(({ pipe, length }) => {
    const from = start;
    start += length;
    return { from, bore: pipe.innerDiameter };
  });
  return {
    profile,
    bores,
    surface,
    heightSpread: heightSpreadOf(lengths),
    vents: ventsOf(lengths),
  };
}
