/**
 * What would change the verdict: for each thing that an owner can change, the value at which it turns.
 *
 * One quantity is walked away from its present value in steps of a fifth, both ways, until the verdict turns or the search
 * ends; the turning point is then narrowed by halving. A ram that does not run may run on a stretch farther off: the
 * nearest one is found. A ram's verdict need not turn only once, so the answer is the stretch nearest to now, and says so.
 */
import type { Installation } from '../cycle/installation.ts';
import { operatingPoint } from '../cycle/operating-point.ts';
import type { OperatingPoint } from '../cycle/run-record.ts';
import { PIPES } from '../pipes/find-pipe.ts';
import { MATERIALS, type MaterialName } from '../pipes/materials.ts';
import type { Pipe } from '../pipes/pipe.ts';
import type { CubicMetrePerSecond, Metre } from '../quantities.ts';
import type {
  Change,
  Changeable,
  MaterialChange,
  RunningStretch,
  VerdictKind,
  WhatWouldChange,
} from './answer.ts';
import { type Judged, judgedWithStore } from './kept-level.ts';
import { EFFORT, presentValue, varied } from './varied.ts';

/** Ratio of one step of the walk. Judgement: a turning stretch narrower than a fifth is no place to build. */
const STEP = 1.2;
/** Halvings of the last step: 1.2^(1/32) leaves half a per cent. */
const HALVINGS = 5;
/** How far from the present value is searched, each way. Judgement: beyond four times it is another installation. */
const REACH = 4;
/** Least and largest air pocket that is tried, in m³: a thimble, and two buckets. */
const LEAST_AIR = 1e-6;
const MOST_AIR = 0.02;

const ORDER: readonly Changeable[] = [
  'stroke',
  'trappedAir',
  'valveWeight',
  'driveLength',
  'sourceFlow',
  'driveBore',
  'fall',
  'lift',
];

/** Turning points of every quantity, the cheapest and nearest first. A generator, so that a caller can stop or show progress. */
export function* changesOneByOne(
  installation: Installation,
  needed?: CubicMetrePerSecond,
): Generator<Change, void, void> {
  for (const what of ORDER) {
    const change = changeOf(installation, what, needed);
    if (change) yield change;
  }
}

/** Changes in the order in which a person would try them: effort first, then how far they are from now. */
export function inOrderOfTrying(changes: readonly Change[]): Change[] {
  const trouble = { free: 0, small: 1, large: 2 };
  return [...changes].sort(
    (a, b) => trouble[a.effort] - trouble[b.effort] || distanceOf(a) - distanceOf(b),
  );
}

function distanceOf(change: Change): number {
  const { now } = change;
  const stretch = change.enough ?? change.runs;
  if (!stretch) return Infinity;
  const ends = [stretch.low, stretch.high].filter((x) => x > 0 && now > 0);
  return Math.min(Infinity, ...ends.map((x) => Math.abs(Math.log(x / now))));
}

function changeOf(
  installation: Installation,
  what: Changeable,
  needed: CubicMetrePerSecond | undefined,
): Change | undefined {
  const now = presentValue(installation, what);
  if (now === undefined || (now <= 0 && what !== 'trappedAir')) return undefined;
  const tried = new Map<number, Judged>();
  // What a spring yields is held against the beat and does not change it: one run tells all.
  const isYieldAlone = what === 'sourceFlow' && installation.source.kind === 'steady';
  let beat: OperatingPoint | undefined;
  const presentBeat = (): OperatingPoint => {
    beat ??= operatingPoint(installation);
    return beat;
  };
  const at = (value: number): Judged => {
    let result = tried.get(value);
    if (!result) {
      const other = varied(installation, what, value);
      const point = isYieldAlone ? presentBeat() : operatingPoint(other);
      result = judgedWithStore(other, point);
      tried.set(value, result);
    }
    return result;
  };
  const [searchedLow, searchedHigh] = searchEnds(installation, what, now);
  const start = what === 'trappedAir' && now === 0 ? 0 : now;
  const walk = { start, low: searchedLow, high: searchedHigh };
  // Letting air into a line is nothing to try on a ram that does not run.
  if (what === 'trappedAir' && now === 0 && at(now).kind !== 'runs') return undefined;
  const runs = stretchWhere(
    (v) => at(v).kind === 'runs',
    (v) => at(v).kind,
    walk,
  );
  const isShort = needed !== undefined && at(start).deliveryFlow < needed;
  const enough =
    isShort && runs !== undefined
      ? stretchWhere(
          (v) => at(v).kind === 'runs' && at(v).deliveryFlow >= needed,
          (v) => at(v).kind,
          walk,
        )
      : undefined;
  return {
    what,
    now,
    searchedLow,
    searchedHigh,
    ...(runs ? { runs } : {}),
    ...(enough ? { enough } : {}),
    effort: EFFORT[what],
  };
}

function searchEnds(installation: Installation, what: Changeable, now: number): [number, number] {
  switch (what) {
    case 'trappedAir':
      return [0, Math.max(MOST_AIR, now)];
    case 'lift':
      // A ram lifts above its source; a little over the fall is where the search ends.
      return [Math.min(now, Math.max(1.02 * installation.fall, now / REACH)), now * REACH];
    case 'fall':
      return [now / REACH, Math.max(now, Math.min(now * REACH, installation.lift / 1.02))];
    default:
      return [now / REACH, now * REACH];
  }
}

interface Walk {
  readonly start: number;
  readonly low: number;
  readonly high: number;
}

/** The stretch nearest to the start on which a statement holds. */
function stretchWhere(
  holds: (value: number) => boolean,
  kindAt: (value: number) => VerdictKind,
  walk: Walk,
): RunningStretch | undefined {
  if (walk.low > walk.high) return undefined;
  const inside = nearestWhere(holds, walk);
  if (inside === undefined) return undefined;
  const low = edge(holds, inside, walk.low, down);
  const high = edge(holds, inside, walk.high, up);
  return {
    low: low.last,
    high: high.last,
    ...(low.beyond === undefined ? {} : { belowLow: kindAt(low.beyond) }),
    ...(high.beyond === undefined ? {} : { aboveHigh: kindAt(high.beyond) }),
  };
}

const down = (value: number): number => (value > LEAST_AIR ? value / STEP : 0);
const up = (value: number): number => (value > 0 ? value * STEP : LEAST_AIR);

/** The value nearest to the start, in steps, at which the statement holds. */
function nearestWhere(holds: (value: number) => boolean, walk: Walk): number | undefined {
  if (holds(walk.start)) return walk.start;
  let below = walk.start;
  let above = walk.start;
  while (below > walk.low || above < walk.high) {
    if (below > walk.low) {
      below = Math.max(walk.low, down(below));
      if (holds(below)) return below;
    }
    if (above < walk.high) {
      above = Math.min(walk.high, up(above));
      if (holds(above)) return above;
    }
  }
  return undefined;
}

/** From a value where the statement holds to the last one before it fails, and one just beyond. */
function edge(
  holds: (value: number) => boolean,
  from: number,
  end: number,
  step: (value: number) => number,
): { readonly last: number; readonly beyond?: number } {
  const clamp = (v: number): number => (end < from ? Math.max(v, end) : Math.min(v, end));
  let inside = from;
  while (inside !== end) {
    const next = clamp(step(inside));
    if (next === inside) break;
    if (!holds(next)) {
      let outside = next;
      for (let i = 0; i < HALVINGS; i++) {
        const middle =
          inside > 0 && outside > 0 ? Math.sqrt(inside * outside) : (inside + outside) / 2;
        if (holds(middle)) inside = middle;
        else outside = middle;
      }
      return { last: inside, beyond: outside };
    }
    inside = next;
  }
  return { last: end };
}

/** Drive line materials that are tried in place of the present one. */
const OTHER_MATERIALS: readonly MaterialName[] = [
  'steel',
  'copper',
  'pvcU',
  'pe100',
  'pvcHose',
  'rubberHose',
];

/** The same line in other materials, each as the table pipe whose bore is nearest. */
export function* materialsOneByOne(
  installation: Installation,
): Generator<MaterialChange, void, void> {
  const present = installation.driveLine.segments.at(-1)?.pipe;
  if (!present) return;
  for (const material of OTHER_MATERIALS) {
    if (material === present.material) continue;
    const pipe = nearestInBore(material, present.innerDiameter);
    if (!pipe) continue;
    const other: Installation = {
      ...installation,
      driveLine: {
        ...installation.driveLine,
        segments: installation.driveLine.segments.map((s) => ({ ...s, pipe })),
      },
    };
    const { kind, deliveryFlow } = judgedWithStore(other, operatingPoint(other));
    yield { material, pipe: pipe.name, verdict: kind, deliveryFlow };
  }
}

/** Everything that would change the verdict. A step for each thing and each material, so that a caller can leave off. */
export function* whatWouldChange(
  installation: Installation,
  needed?: CubicMetrePerSecond,
): Generator<void, WhatWouldChange, void> {
  const changes: Change[] = [];
  for (const change of changesOneByOne(installation, needed)) {
    changes.push(change);
    yield;
  }
  const materials: MaterialChange[] = [];
  for (const material of materialsOneByOne(installation)) {
    materials.push(material);
    yield;
  }
  return { changes: inOrderOfTrying(changes), materials };
}

function nearestInBore(material: MaterialName, bore: Metre): Pipe | undefined {
  const same = PIPES.filter((pipe) => pipe.material === material && MATERIALS[material]);
  return same.reduce<Pipe | undefined>(
    (best, pipe) =>
      best === undefined ||
      Math.abs(pipe.innerDiameter - bore) < Math.abs(best.innerDiameter - bore)
        ? pipe
        : best,
    undefined,
  );
}
