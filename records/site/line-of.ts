/** A drive or delivery line as the engine takes it, from the lengths of pipe in a site. */
import type { AirPocket, PipeSegment, ProfilePoint, Restraint } from '@fallwright/engine';
import type { Assumptions } from './assumption.ts';
import { fittingLoss } from './fitting-words.ts';
import type { PipeLength } from './pipe-fields.ts';
import { pipeOf } from './pipe-of.ts';

const RESTRAINTS: Readonly<Record<NonNullable<PipeLength['held']>, Restraint>> = {
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

function lossOf(length: PipeLength, field: string, line: string, assumptions: Assumptions): number {
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

/** Air caught in the line, at distances from its upper end. */
export function pocketsOf(
  lengths: readonly PipeLength[],
  segments: readonly PipeSegment[],
  assumptions: Assumptions,
): readonly AirPocket[] {
  const pockets: AirPocket[] = [];
  let start = 0;
  for (const [index, length] of lengths.entries()) {
    for (const air of length.air ?? []) {
      pockets.push({
        distance: start + (air.at?.value ?? length.length.value / 2),
        volume: air.volume.value,
      });
    }
    const bore = segments[index]?.pipe.innerDiameter;
    if (length.laid === 'over a crest' && !length.air && bore !== undefined) {
      const volume = assumptions.quantity(
        `drive[${index}].air`,
        'air caught at the crest',
        CREST_AIR_IN_BORES * (Math.PI / 4) * bore ** 3,
        'smallVolume',
        { why: 'air that fills half the bore over ten bores', basis: 'judgement' },
      );
      pockets.push({ distance: start + crestOf(length), volume });
    }
    start += length.length.value;
  }
  if (pockets.length === 0) {
    assumptions.words('drive[0].air', 'air in the drive line', 'none', {
      why: 'laid straight and bled before starting',
      basis: 'commonPractice',
    });
  }
  return pockets;
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
