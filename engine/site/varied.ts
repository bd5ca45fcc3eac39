/** One thing of an installation changed and all others left as they are. */
import type { DriveLine, Installation } from '../cycle/installation.ts';
import { massOfSubmergedWeight } from '../machine/typical-ram.ts';
import type { WasteValve } from '../machine/waste-valve.ts';
import { openingForces } from '../machine/waste-valve.ts';
import type { Metre, Newton } from '../quantities.ts';
import type { Change, Changeable } from './answer.ts';

/** Trouble of each change. Judgement: what a person has to fetch for it. */
export const EFFORT: Record<Changeable, Change['effort']> = {
  stroke: 'free',
  trappedAir: 'free',
  valveWeight: 'small',
  driveLength: 'small',
  driveBore: 'large',
  fall: 'large',
  lift: 'large',
  sourceFlow: 'large',
};

/** Present value of something that can be changed; nothing when this installation has no such thing. */
export function presentValue(installation: Installation, what: Changeable): number | undefined {
  const { driveLine, ram, source } = installation;
  switch (what) {
    case 'fall':
      return installation.fall;
    case 'lift':
      return installation.lift;
    case 'driveLength':
      return driveLength(driveLine);
    case 'driveBore':
      return driveLine.segments.at(-1)?.pipe.innerDiameter;
    case 'valveWeight':
      return openingForces(ram.wasteValve).atOpen;
    case 'stroke':
      return ram.wasteValve.stroke;
    case 'sourceFlow':
      return source.kind === 'steady' ? source.yield : source.inflow;
    case 'trappedAir':
      return driveLine.pockets.reduce((sum, pocket) => sum + pocket.volume, 0);
  }
}

/** The installation with one thing at another value. */
export function varied(installation: Installation, what: Changeable, value: number): Installation {
  const { driveLine, ram, source } = installation;
  switch (what) {
    case 'fall':
      return { ...installation, fall: value, driveLine: withFall(installation, value) };
    case 'lift':
      return { ...installation, lift: value };
    case 'driveLength':
      return { ...installation, driveLine: withLength(driveLine, value) };
    case 'driveBore':
      return { ...installation, driveLine: withBore(driveLine, value) };
    case 'valveWeight':
      return { ...installation, ram: { ...ram, wasteValve: withForce(ram.wasteValve, value) } };
    case 'stroke':
      return {
        ...installation,
        ram: { ...ram, wasteValve: { ...ram.wasteValve, stroke: value } },
      };
    case 'sourceFlow':
      return {
        ...installation,
        source:
          source.kind === 'steady' ? { ...source, yield: value } : { ...source, inflow: value },
      };
    case 'trappedAir':
      return { ...installation, driveLine: withAir(driveLine, value) };
  }
}

function driveLength(line: DriveLine): Metre {
  return line.segments.reduce((sum, s) => sum + s.length, 0);
}

/** The profile's heights follow the fall, so that the line still ends at the source's surface. */
function withFall(installation: Installation, fall: Metre): DriveLine {
  const { driveLine } = installation;
  if (!driveLine.profile) return driveLine;
  const scale = fall / installation.fall;
  return {
    ...driveLine,
    profile: driveLine.profile.map((p) => ({ ...p, elevation: p.elevation * scale })),
  };
}

/** Every segment, the profile and the pockets stretched alike. */
function withLength(line: DriveLine, length: Metre): DriveLine {
  const scale = length / driveLength(line);
  return {
    ...line,
    segments: line.segments.map((s) => ({ ...s, length: s.length * scale })),
    pockets: line.pockets.map((p) => ({ ...p, distance: p.distance * scale })),
    ...(line.profile
      ? { profile: line.profile.map((p) => ({ ...p, distance: p.distance * scale })) }
      : {}),
  };
}

/** Every bore and wall scaled alike: the same kind of pipe, wider or narrower. */
function withBore(line: DriveLine, bore: Metre): DriveLine {
  const scale = bore / (line.segments.at(-1)?.pipe.innerDiameter ?? bore);
  return {
    ...line,
    segments: line.segments.map((s) => ({
      ...s,
      pipe: {
        ...s.pipe,
        innerDiameter: s.pipe.innerDiameter * scale,
        wallThickness: s.pipe.wallThickness * scale,
      },
    })),
  };
}

/** Weights put on or taken off: both stops feel them, and so does the moving mass. */
function withForce(valve: WasteValve, atOpen: Newton): WasteValve {
  const added = atOpen - openingForces(valve).atOpen;
  if (valve.kind === 'weighted') {
    const movingMass = Math.max(
      valve.movingMass + massOfSubmergedWeight(added),
      valve.movingMass * 0.1,
    );
    return { ...valve, submergedWeight: atOpen, movingMass };
  }
  return { ...valve, forceAtOpen: atOpen, forceAtShut: valve.forceAtShut + added };
}

/**
 * All caught air in one place: where it is caught now, or at the highest crest, or else three quarters of the way along.
 * Judgement: running water sweeps air towards the ram.
 */
function withAir(line: DriveLine, volume: number): DriveLine {
  const distance = line.pockets[0]?.distance ?? highestCrest(line) ?? 0.75 * driveLength(line);
  return { ...line, pockets: volume > 0 ? [{ distance, volume }] : [] };
}

/** Distance of the highest inner point of the profile that stands above both its neighbours. */
function highestCrest(line: DriveLine): Metre | undefined {
  const crests = (line.profile ?? []).filter((point, i, all) => {
    const before = all[i - 1];
    const behind = all[i + 1];
    return (
      before !== undefined &&
      behind !== undefined &&
      point.elevation > before.elevation &&
      point.elevation >= behind.elevation
    );
  });
  const highest = crests.sort((a, b) => b.elevation - a.elevation)[0];
  return highest?.distance;
}
