/**
 * The drive line cut into reaches, ready for the step.
 *
 * The method of characteristics on a fixed grid: in every reach a pressure wave crosses exactly one reach in one time
 * step (dt = dx/a), so waves travel without error. Friction and fittings are lumped at the nodes between frictionless
 * reaches: each node then passes the same flow on both sides, and water is conserved to rounding.
 *
 * Source: Wylie & Streeter (1993), Fluid Transients in Systems, ch. 3 (characteristics; adjusting wave speeds so that
 * each pipe holds whole reaches); Chaudhry (2014), Applied Hydraulic Transients, ch. 3. Cited from memory, no page read;
 * the results are held against exact solutions in checks/.
 */

import { boreChangeDrop } from '../pipes/bore-change.ts';
import { darcyFriction } from '../pipes/friction.ts';
import type { PipeSegment } from '../pipes/pipe.ts';
import { waveSpeed } from '../pipes/wave-speed.ts';
import type { CubicMetrePerSecond, Metre, MetrePerSecond, Ratio, Second } from '../quantities.ts';
import { GRAVITY } from '../quantities.ts';
import type { Water } from '../water/water.ts';
import { driveElevation } from './drive-elevation.ts';
import type { DriveLine } from './installation.ts';

/** Entries of each node's table against flow. 256 keep the interpolation error of the loss below 0.1 %. */
export const TABLE_SIZE = 256;

/** Wave speeds may be moved by this share so that each segment holds whole reaches (METHOD: a few per cent). */
const ALLOWED_NUDGE: Ratio = 0.04;
/** Beyond this a finer grid costs more than the nudge it saves; the nudge is then stated as it is. */
const MOST_REACHES = 400;
/** Losses are tabulated from this velocity up, where flow is laminar and loss over flow no longer changes. */
const SLOWEST: MetrePerSecond = 1e-4;

/** Darcy friction factor for a Reynolds number and a relative roughness. Checks pass simpler laws than the engine's own. */
export type FrictionLaw = (reynolds: Ratio, relativeRoughness: Ratio) => Ratio;

export interface LineGrid {
  readonly timeStep: Second;
  readonly reaches: number;
  /** Impedance a/(g A) of each reach, in s/m². */
  readonly impedance: Float64Array;
  /** Length of each reach. */
  readonly reachLength: Float64Array;
  /** Which segment each reach belongs to. */
  readonly segmentOfReach: Int32Array;
  /** Wave speed of each segment as the grid uses it. */
  readonly waveSpeeds: readonly MetrePerSecond[];
  readonly largestNudge: Ratio;
  /**
   * For node 0 (source) 1/(B + r), for inner nodes 1/(B₁ + B₂ + r), for the last node (ram) B + r: each tabulated against
   * the size of the flow, r being head lost at the node over flow. One table for each kind of node.
   */
  readonly tables: Float64Array;
  /** Where in `tables` each node's table starts. */
  readonly tableOffset: Int32Array;
  /** Table entries per unit of flow. */
  readonly tableScale: number;
  /** Distance of each node from the source. */
  readonly distance: Float64Array;
  /** Height of each node above the waste valve's outlet. */
  readonly elevation: Float64Array;
}

/** Head lost per metre of a segment over the flow (so that it stays finite as the flow goes to nought), against flow. */
function lossPerMetre(
  segment: PipeSegment,
  water: Water,
  tableScale: number,
  friction: FrictionLaw,
): Float64Array {
  const { innerDiameter, roughness } = segment.pipe;
  const area = (Math.PI / 4) * innerDiameter ** 2;
  const column = new Float64Array(TABLE_SIZE);
  for (let k = 0; k < TABLE_SIZE; k++) {
    const velocity = Math.max(k / tableScale / area, SLOWEST);
    const reynolds = (velocity * innerDiameter) / water.kinematicViscosity;
    const f = friction(reynolds, roughness / innerDiameter);
    const coefficient = f / innerDiameter + segment.fittingsLoss / segment.length;
    column[k] = (coefficient * velocity) / (2 * GRAVITY * area);
  }
  return column;
}

/** Whole reaches for each segment at a time step, and the wave speeds that make them fit. */
function fitReaches(
  travelTimes: readonly Second[],
  timeStep: Second,
): { readonly counts: number[]; readonly nudge: Ratio } {
  const counts = travelTimes.map((t) => Math.max(1, Math.round(t / timeStep)));
  const nudge = Math.max(
    ...travelTimes.map((t, i) => Math.abs(t / ((counts[i] as number) * timeStep) - 1)),
  );
  return { counts, nudge };
}

/**
 * The drive line as a grid of at least `reaches` reaches.
 *
 * More are used when segments of different length would otherwise need their wave speeds moved too far.
 * @throws RangeError when the line has no segments, or `reaches` is below 2.
 */
export function lineGrid(
  line: DriveLine,
  water: Water,
  fall: Metre,
  reaches: number,
  largestFlow: CubicMetrePerSecond,
  friction: FrictionLaw = darcyFriction,
): LineGrid {
  if (line.segments.length === 0) throw new RangeError('a drive line needs at least one segment');
  if (!(reaches >= 2)) throw new RangeError(`reaches must be at least 2, got ${reaches}`);
  const segments = line.segments;
  const speeds = segments.map((s) => waveSpeed(s, water));
  const travel = segments.map((s, i) => s.length / (speeds[i] as number));
  const wholeTravel = travel.reduce((a, b) => a + b, 0);

  let timeStep = wholeTravel / reaches;
  let fitted = fitReaches(travel, timeStep);
  for (let n = reaches; fitted.nudge > ALLOWED_NUDGE && n < MOST_REACHES; n++) {
    const candidate = fitReaches(travel, wholeTravel / (n + 1));
    if (candidate.nudge < fitted.nudge) {
      timeStep = wholeTravel / (n + 1);
      fitted = candidate;
    }
  }
  const counts = fitted.counts;
  const total = counts.reduce((a, b) => a + b, 0);

  const impedance = new Float64Array(total);
  const reachLength = new Float64Array(total);
  const segmentOfReach = new Int32Array(total);
  const waveSpeeds: MetrePerSecond[] = [];
  let reach = 0;
  for (let s = 0; s < segments.length; s++) {
    const segment = segments[s] as PipeSegment;
    const count = counts[s] as number;
    const speed = segment.length / (count * timeStep);
    waveSpeeds.push(speed);
    const area = (Math.PI / 4) * segment.pipe.innerDiameter ** 2;
    for (let k = 0; k < count; k++, reach++) {
      impedance[reach] = speed / (GRAVITY * area);
      reachLength[reach] = segment.length / count;
      segmentOfReach[reach] = s;
    }
  }

  const distance = new Float64Array(total + 1);
  for (let i = 1; i <= total; i++) {
    distance[i] = (distance[i - 1] as number) + (reachLength[i - 1] as number);
  }
  const elevation = distance.map((d) => driveElevation(line, fall, d));

  const tableScale = (TABLE_SIZE - 1) / largestFlow;
  const { tables, tableOffset } = nodeTables(
    line,
    water,
    { impedance, reachLength, segmentOfReach },
    tableScale,
    friction,
  );
  return {
    timeStep,
    reaches: total,
    impedance,
    reachLength,
    segmentOfReach,
    waveSpeeds,
    largestNudge: fitted.nudge,
    tables,
    tableOffset,
    tableScale,
    distance,
    elevation,
  };
}

/** Tables of node conductance against flow; nodes between the same two segments share one. */
function nodeTables(
  line: DriveLine,
  water: Water,
  grid: Pick<LineGrid, 'impedance' | 'reachLength' | 'segmentOfReach'>,
  tableScale: number,
  friction: FrictionLaw,
): { readonly tables: Float64Array; readonly tableOffset: Int32Array } {
  const n = grid.impedance.length;
  const losses = line.segments.map((segment) => lossPerMetre(segment, water, tableScale, friction));
  const tableOffset = new Int32Array(n + 1);
  const kinds = new Map<string, number>();
  const columns: Float64Array[] = [];
  for (let node = 0; node <= n; node++) {
    const left = node > 0 ? (grid.segmentOfReach[node - 1] as number) : -1;
    const right = node < n ? (grid.segmentOfReach[node] as number) : -1;
    const kind = `${left}|${right}`;
    let index = kinds.get(kind);
    if (index === undefined) {
      index = columns.length;
      kinds.set(kind, index);
      columns.push(nodeTable(line, losses, grid, node, tableScale));
    }
    tableOffset[node] = index * TABLE_SIZE;
  }
  const tables = new Float64Array(columns.length * TABLE_SIZE);
  columns.forEach((column, i) => {
    tables.set(column, i * TABLE_SIZE);
  });
  return { tables, tableOffset };
}

/** Drop of head where two segments of different bore meet, over the flow squared; see pipes/bore-change.ts. */
function boreChangeLoss(line: DriveLine, segmentOfReach: Int32Array, node: number): number {
  const before = line.segments[segmentOfReach[node - 1] as number] as PipeSegment;
  const behind = line.segments[segmentOfReach[node] as number] as PipeSegment;
  const upstreamBore = before.pipe.innerDiameter;
  const downstreamBore = behind.pipe.innerDiameter;
  if (upstreamBore === downstreamBore) return 0;
  const area = (Math.PI / 4) * downstreamBore ** 2;
  return boreChangeDrop({ upstreamBore, downstreamBore }) / (2 * GRAVITY * area ** 2);
}

function nodeTable(
  line: DriveLine,
  losses: readonly Float64Array[],
  grid: Pick<LineGrid, 'impedance' | 'reachLength' | 'segmentOfReach'>,
  node: number,
  tableScale: number,
): Float64Array {
  const n = grid.impedance.length;
  const halves = [node - 1, node].filter((reach) => reach >= 0 && reach < n);
  const impedance = halves.reduce((sum, reach) => sum + (grid.impedance[reach] as number), 0);
  const firstArea = (Math.PI / 4) * (line.segments[0] as PipeSegment).pipe.innerDiameter ** 2;
  const local =
    node === 0
      ? line.entranceLoss / (2 * GRAVITY * firstArea ** 2)
      : node < n
        ? boreChangeLoss(line, grid.segmentOfReach, node)
        : 0;
  const column = new Float64Array(TABLE_SIZE);
  for (let k = 0; k < TABLE_SIZE; k++) {
    let loss = (local * k) / tableScale;
    for (const reach of halves) {
      const perMetre = losses[grid.segmentOfReach[reach] as number] as Float64Array;
      loss += ((grid.reachLength[reach] as number) / 2) * (perMetre[k] as number);
    }
    column[k] = node === n ? impedance + loss : 1 / (impedance + loss);
  }
  return column;
}
