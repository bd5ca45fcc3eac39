/**
 * The settled beat of a ram, at a head in its vessel or at the head that its delivery line asks for.
 *
 * lift + friction(q) is the head at which the line delivers q. More head never gives more water, so the balance has one
 * answer; the vessel's head is let follow the delivery while the ram beats (see settled-beat.ts).
 */
import { flowArea } from '../machine/waste-valve.ts';
import type { PipeSegment } from '../pipes/pipe.ts';
import type { CubicMetrePerSecond, Metre, Ratio, Second } from '../quantities.ts';
import { GRAVITY } from '../quantities.ts';
import { deliveryFrictionHead } from './delivery-friction.ts';
import type { LineOptions } from './detailed-line.ts';
import { daubuissonEfficiency, rankineEfficiency } from './efficiencies.ts';
import type { Installation } from './installation.ts';
import { lineGrid } from './line-grid.ts';
import { RamKernel } from './ram-kernel.ts';
import type { OperatingPoint, RunEnd } from './run-record.ts';
import type { SettledBeat } from './settled-beat.ts';
import { settledBeat } from './settled-beat.ts';

export interface RunOptions extends LineOptions {
  /** Least number of reaches in the drive line. */
  readonly reaches?: number;
  /** Substeps while the disc falls through its stroke; see the kernel. */
  readonly substeps?: number;
  /** Beats in a block whose means must agree. */
  readonly block?: number;
}

/** METHOD: the operating point changes by less than 0.1 % from 8 reaches on where the beat is regular. */
export const CHOOSING_REACHES = 8;
/** Judgement: 8 beats for choosing, where a per cent or two does not matter. */
export const CHOOSING_BLOCK = 8;
/** Head is closed over friction to this share of the lift: far below what a survey can tell. */
const HEAD_TOLERANCE: Ratio = 2e-3;

/** A kernel for an installation, its line at rest and its waste valve shut. */
export function ramKernel(
  installation: Installation,
  vesselHead: Metre,
  options: RunOptions = {},
): RamKernel {
  const grid = lineGrid(
    installation.driveLine,
    installation.water,
    installation.fall,
    options.reaches ?? CHOOSING_REACHES,
    largestTabulatedFlow(installation),
  );
  return new RamKernel(installation, grid, { kind: 'fixedHead', head: vesselHead }, options);
}

/**
 * Flow at which the tables of losses end: the fall with no losses at all through the narrowest pipe, and half as much again
 * for its swings. A table made for the widest would have hardly an entry for what the narrowest lets through.
 */
function largestTabulatedFlow(installation: Installation): CubicMetrePerSecond {
  const narrowest = Math.min(...installation.driveLine.segments.map((s) => s.pipe.innerDiameter));
  const fastest = Math.sqrt(2 * GRAVITY * Math.max(installation.fall, 0.5));
  return 1.5 * fastest * (Math.PI / 4) * narrowest ** 2;
}

/** Time of one trip of a wave down the line and back. */
export function waveReturnTime(kernel: RamKernel): Second {
  return 2 * kernel.grid.reaches * kernel.grid.timeStep;
}

/**
 * How long nothing may move before a run is called still: long enough for the waves to die and, with the valve open, for
 * the flow to come within one in a hundred of its end.
 *
 *   t₉₉ = 2.65 L V₀/(g H)
 *
 * Source: growth of flow in a rigid column, see pipes/rigid-column.ts. The factor and the floors are Judgement.
 */
export function stillTime(installation: Installation, kernel: RamKernel): Second {
  const { segments } = installation.driveLine;
  const areas = segments.map((s) => (Math.PI / 4) * s.pipe.innerDiameter ** 2);
  const lengthOverArea = segments.reduce((sum, s, i) => sum + s.length / (areas[i] as number), 0);
  const { wasteValve } = installation.ram;
  const open = flowArea(wasteValve, wasteValve.stroke);
  // Over lines of several pipes: L V₀ is Q₀ Σ L/A, and no more flows than the narrowest place lets through.
  const fastest = Math.min(open, ...areas) * Math.sqrt(2 * GRAVITY * installation.fall);
  const growth = (2.65 * lengthOverArea * fastest) / (GRAVITY * installation.fall);
  return Math.max(1, 1.5 * growth, 20 * waveReturnTime(kernel));
}

/** A kernel whose waste valve has just been pushed open on a line at rest. */
export function startedKernel(
  installation: Installation,
  vesselHead: Metre,
  options: RunOptions,
): RamKernel {
  const kernel = ramKernel(installation, vesselHead, options);
  kernel.pushOpen();
  return kernel;
}

/** The beat at one fixed head in the vessel, started by one push of the waste valve. */
export function beatAtHead(
  installation: Installation,
  vesselHead: Metre,
  options: RunOptions = {},
): OperatingPoint {
  const kernel = startedKernel(installation, vesselHead, options);
  const beat = settledBeat(kernel, {
    still: stillTime(installation, kernel),
    block: options.block ?? CHOOSING_BLOCK,
  });
  return record(installation, kernel, beat);
}

/** The beat at the head that lift and delivery friction together ask for, started by one push of the waste valve. */
export function operatingPoint(
  installation: Installation,
  options: RunOptions = {},
): OperatingPoint {
  return settle(installation, startedKernel(installation, installation.lift, options), options);
}

/** Lets a kernel settle at the head that lift and delivery friction ask for. */
export function settle(
  installation: Installation,
  kernel: RamKernel,
  options: RunOptions,
): OperatingPoint {
  const { lift, water, deliveryLine } = installation;
  const beat = settledBeat(kernel, {
    still: stillTime(installation, kernel),
    block: options.block ?? CHOOSING_BLOCK,
    follow: {
      headFor: (flow) => lift + deliveryFrictionHead(deliveryLine, water, flow),
      tolerance: HEAD_TOLERANCE * lift,
    },
  });
  return record(installation, kernel, beat);
}

function record(installation: Installation, kernel: RamKernel, beat: SettledBeat): OperatingPoint {
  const beatFrequency = beat.length > 0 ? 1 / beat.length : 0;
  const deliveryFlow = beat.delivered * beatFrequency;
  const wasteFlow = beat.wasted * beatFrequency;
  const heads = { fall: installation.fall, lift: installation.lift };
  const last = installation.driveLine.segments.at(-1) as PipeSegment;
  const end: RunEnd = {
    outcome: beat.outcome,
    steps: kernel.steps,
    beats: beat.beats,
    simulatedTime: kernel.time,
    reaches: kernel.grid.reaches,
    largestWaveSpeedNudge: kernel.grid.largestNudge,
    modelOptions: kernel.detail.modelOptions,
  };
  return {
    end,
    vesselHead: kernel.vesselHead,
    beatFrequency,
    deliveryFlow,
    wasteFlow,
    supplyFlow: deliveryFlow + wasteFlow,
    deliveredPerBeat: beat.delivered,
    rankineEfficiency: rankineEfficiency(heads, { wasteFlow, deliveryFlow }),
    daubuissonEfficiency: daubuissonEfficiency(heads, { wasteFlow, deliveryFlow }),
    flowAtClosing: beat.flowAtClosing,
    driveVelocity: kernel.fastestFlow / ((Math.PI / 4) * last.pipe.innerDiameter ** 2),
    peakHead: kernel.extremes.peak,
    lowestHead: kernel.extremes.lowest,
    beatSpread: beat.spread,
  };
}

/** Whether a run is one that lifts water. */
export function delivers(point: OperatingPoint): boolean {
  return point.end.outcome === 'settled' || point.end.outcome === 'irregular';
}
