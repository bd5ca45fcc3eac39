/**
 * Pressures in every part against its rating.
 *
 * The peak is simulated on a fine grid; beside it stands the Joukowsky bound, the most that stopping the fastest flow at
 * once could make. Parts are judged by the larger of the two, since a simulation that smooths a spike must not pass a part.
 */
import type { Installation } from '../cycle/installation.ts';
import { settle, startedKernel } from '../cycle/operating-point.ts';
import type { RamKernel } from '../cycle/ram-kernel.ts';
import type { OperatingPoint } from '../cycle/run-record.ts';
import { deratedRating } from '../pipes/derated-rating.ts';
import { joukowskyHead } from '../pipes/joukowsky.ts';
import type { PipeSegment } from '../pipes/pipe.ts';
import { waveSpeed } from '../pipes/wave-speed.ts';
import type { Metre, Pascal } from '../quantities.ts';
import { GRAVITY } from '../quantities.ts';
import type { PressureCheck, PressureCheckRow } from './answer.ts';

/** METHOD: peak and lowest heads need about 16 reaches; twice that, since pressures are where people get hurt. */
const PRESSURE_REACHES = 32;
/** Judgement: finer than for choosing, so that the first spike in the delivery passage is followed. */
const PRESSURE_SUBSTEPS = 160;
/** Judgement: enough beats for the highest of them to show. */
const PRESSURE_BLOCK = 8;

/** Runs the settled beat on a fine grid and holds its pressures against the ratings. */
export function pressureCheck(installation: Installation): {
  readonly check: PressureCheck;
  readonly point: OperatingPoint;
} {
  const kernel = startedKernel(installation, installation.lift, {
    reaches: PRESSURE_REACHES,
    substeps: PRESSURE_SUBSTEPS,
    block: PRESSURE_BLOCK,
    envelope: true,
  });
  const point = settle(installation, kernel, { block: PRESSURE_BLOCK });
  const { grid, detail } = kernel;
  const n = grid.reaches;
  const highest = Array.from(detail.highest);
  const lowest = Array.from(detail.lowest);
  // The ends are the kernel's own: the source's level, and the ram's body.
  highest[0] = installation.fall;
  lowest[0] = installation.fall;
  highest[n] = Math.max(point.peakHead, installation.fall);
  lowest[n] = Math.min(point.lowestHead, installation.fall);
  const check: PressureCheck = {
    rows: [
      ...driveRows(installation, kernel, highest),
      bodyRow(installation, kernel, highest[n] as number),
      ...deliveryRows(installation, point.vesselHead),
    ],
    peakHead: Math.max(...highest),
    lowestHead: Math.min(...lowest),
    hasCavity: detail.hasCavity,
    envelope: { distance: Array.from(grid.distance), highest, lowest },
  };
  return { check, point };
}

function row(
  part: PressureCheckRow['part'],
  simulatedPeak: Pascal,
  joukowskyBound: Pascal | undefined,
  rating: Pascal | undefined,
): PressureCheckRow {
  const governing = Math.max(simulatedPeak, joukowskyBound ?? 0);
  return {
    part,
    simulatedPeak,
    ...(joukowskyBound === undefined ? {} : { joukowskyBound }),
    governing,
    ...(rating === undefined ? {} : { rating }),
    outcome: rating === undefined ? 'noRating' : governing > rating ? 'over' : 'within',
  };
}

function driveRows(
  installation: Installation,
  kernel: RamKernel,
  highest: readonly Metre[],
): PressureCheckRow[] {
  const { driveLine, water } = installation;
  const { grid } = kernel;
  const perMetre = water.density * GRAVITY;
  return driveLine.segments.map((segment, index) => {
    let peak = 0;
    let lowestPoint = Infinity;
    for (let i = 0; i <= grid.reaches; i++) {
      const isIn =
        grid.segmentOfReach[Math.max(0, i - 1)] === index ||
        grid.segmentOfReach[Math.min(grid.reaches - 1, i)] === index;
      if (!isIn) continue;
      const elevation = grid.elevation[i] as number;
      peak = Math.max(peak, (highest[i] as number) - elevation);
      lowestPoint = Math.min(lowestPoint, elevation);
    }
    return row(
      { kind: 'driveSegment', index, name: segment.pipe.name },
      peak * perMetre,
      (boundHead(installation, segment, kernel) - lowestPoint) * perMetre,
      ratingOf(segment, installation),
    );
  });
}

/** Fall, and the head of stopping at once the fastest flow that this segment carried. */
function boundHead(installation: Installation, segment: PipeSegment, kernel: RamKernel): Metre {
  const area = (Math.PI / 4) * segment.pipe.innerDiameter ** 2;
  const velocity = kernel.fastestFlow / area;
  return installation.fall + joukowskyHead(waveSpeed(segment, installation.water), velocity);
}

function bodyRow(installation: Installation, kernel: RamKernel, peak: Metre): PressureCheckRow {
  const { ram, water, driveLine } = installation;
  const perMetre = water.density * GRAVITY;
  const last = driveLine.segments.at(-1) as PipeSegment;
  return row(
    { kind: 'ramBody', name: ram.name },
    peak * perMetre,
    boundHead(installation, last, kernel) * perMetre,
    ram.rating,
  );
}

function deliveryRows(installation: Installation, vesselHead: Metre): PressureCheckRow[] {
  const { deliveryLine, water } = installation;
  return deliveryLine.segments.map((segment, index) =>
    row(
      { kind: 'deliverySegment', index, name: segment.pipe.name },
      vesselHead * water.density * GRAVITY,
      undefined,
      ratingOf(segment, installation),
    ),
  );
}

function ratingOf(segment: PipeSegment, installation: Installation): Pascal | undefined {
  if (segment.pipe.rating === undefined) return undefined;
  return deratedRating(segment.pipe, installation.water.temperature);
}
