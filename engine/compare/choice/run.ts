/** One combination run on a coarse grid: enough to choose by. */
import type { Installation } from '../../cycle/installation.ts';
import { operatingPoint } from '../../cycle/operating-point.ts';
import type { OperatingPoint } from '../../cycle/run-record.ts';
import { terminalFlow } from '../../cycle/terminal-flow.ts';
import { deratedRating } from '../../pipes/derated-rating.ts';
import { joukowskyHead } from '../../pipes/joukowsky.ts';
import type { PipeSegment } from '../../pipes/pipe.ts';
import { lineHeadLoss } from '../../pipes/steady-flow.ts';
import { waveSpeed } from '../../pipes/wave-speed.ts';
import type { CubicMetre, CubicMetrePerSecond, Metre, Pascal, Ratio } from '../../quantities.ts';
import { GRAVITY } from '../../quantities.ts';
import type { Limit, VerdictKind } from '../../site/answer.ts';
import { verdictOn } from '../../site/verdict.ts';
import type { Candidate, Parts } from './candidates.ts';
import { installationOf } from './installation-of-parts.ts';
import type { PlaceToFit } from './place-to-fit.ts';
import type { RatedPart, Reason } from './reasons.ts';
import { pulseShare } from './sizing/vessel-for-pulse.ts';

/** What a run leaves for choosing; plain, so that it can come from a worker. Flows are one ram's. */
export interface CandidateRun {
  readonly verdict: VerdictKind;
  readonly decidedBy: Limit;
  readonly limits: readonly Limit[];
  readonly deliveryFlow: CubicMetrePerSecond;
  readonly supplyFlow: CubicMetrePerSecond;
  readonly beatFrequency: number;
  readonly deliveredPerBeat: CubicMetre;
  readonly vesselHead: Metre;
  readonly daubuissonEfficiency: Ratio;
  /** Level at which the drive line starts: less than the source's behind a feeder. */
  readonly level: Metre;
  /** The larger of simulated peak and Joukowsky bound, at the ram. */
  readonly drivePressure: Pascal;
}

/** Rounds in which level and draw are brought to agree, and how near is near enough. Judgement: half a per cent of the fall. */
const FEEDER_ROUNDS = 8;
const LEVEL_TOLERANCE: Ratio = 0.005;
/** Judgement: a feeder that takes more than nine tenths of the fall is none; the level is followed no further down. */
const LEAST_LEVEL: Ratio = 0.1;

/** Runs a combination; behind a feeder, at the level that its own draw leaves in the standpipe. */
export function runOf(place: PlaceToFit, parts: Parts): CandidateRun {
  let run = runAt(installationOf(place, parts));
  if (!parts.feeder) return run;
  let level = place.fall;
  for (let round = 0; round < FEEDER_ROUNDS; round++) {
    const left = Math.max(
      place.fall - feederLoss(place, parts, run.supplyFlow),
      LEAST_LEVEL * place.fall,
    );
    if (round > 0 && Math.abs(left - level) <= LEVEL_TOLERANCE * place.fall) break;
    // Half way after the first: a lower level draws less, which raises the level again.
    level = round === 0 ? left : (level + left) / 2;
    run = runAt(installationOf(place, parts, level));
  }
  return run;
}

/**
 * Head lost between source and standpipe at the mean draw of all rams, velocity head included.
 * Judgement: the standpipe evens out the beats, as it is there to do.
 */
function feederLoss(place: PlaceToFit, parts: Parts, supplyFlow: CubicMetrePerSecond): Metre {
  const { feeder, count } = parts;
  if (!feeder) return 0;
  const segment = {
    pipe: feeder.pipe.pipe,
    length: feeder.length,
    fittingsLoss: 0,
    restraint: 'anchoredThroughout',
    freeAirFraction: 0,
  } as const;
  return lineHeadLoss({
    segments: [segment],
    entranceLoss: place.driveLaying.entranceLoss,
    water: place.water,
    flow: count * supplyFlow,
  });
}

function runAt(installation: Installation): CandidateRun {
  const point = operatingPoint(installation);
  const verdict = verdictOn(installation, point, terminalFlow(installation), undefined);
  return {
    verdict: verdict.kind,
    decidedBy: verdict.decidedBy,
    limits: verdict.limits,
    deliveryFlow: point.deliveryFlow,
    supplyFlow: point.supplyFlow,
    beatFrequency: point.beatFrequency,
    deliveredPerBeat: point.deliveredPerBeat,
    vesselHead: point.vesselHead,
    daubuissonEfficiency: point.daubuissonEfficiency,
    level: installation.fall,
    drivePressure: drivePressure(installation, point),
  };
}

function drivePressure(installation: Installation, point: OperatingPoint): Pascal {
  const { water, fall, driveLine } = installation;
  const last = driveLine.segments.at(-1) as PipeSegment;
  const bound = fall + joukowskyHead(waveSpeed(last, water), point.driveVelocity);
  return water.density * GRAVITY * Math.max(bound, point.peakHead);
}

/** How far a combination is from each of its limits; above nought is the safe side. */
export interface Margins {
  /** Flow the line can reach over the flow that shuts the valve. */
  readonly closingFlow?: Ratio;
  /** Head in the vessel over what the recoil needs. */
  readonly recoil?: Ratio;
  /** Head that the hammer makes over the head in the vessel: what lift is left. */
  readonly hammer?: Ratio;
  /** What the source gives over what the rams take, the dry season's flow where it is known. */
  readonly source?: Ratio;
  readonly beat?: Ratio;
  /** Least rating over pressure. Absent when no part that is loaded has a rating. */
  readonly pressure?: Ratio;
  /** Largest pulse over pulse. */
  readonly pulse?: Ratio;
  /** The least of them. */
  readonly least: Ratio;
}

/** What pressure there is in each part, against what it may carry. */
export interface PartPressure {
  readonly part: RatedPart;
  readonly name: string;
  readonly pressure: Pascal;
  readonly rating?: Pascal;
}

export function pressuresOf(place: PlaceToFit, parts: Parts, run: CandidateRun): PartPressure[] {
  const { water } = place;
  const { drivePipe, deliveryPipe, tuning, vessel } = parts;
  const perMetre = water.density * GRAVITY;
  const pulse = Math.min(pulseOf(place, parts, run), 2);
  const deliveryPressure = perMetre * run.vesselHead * (1 + pulse / 2);
  const row = (
    part: RatedPart,
    name: string,
    pressure: Pascal,
    rating: Pascal | undefined,
  ): PartPressure => ({ part, name, pressure, ...(rating === undefined ? {} : { rating }) });
  const rows = [
    row(
      'drivePipe',
      drivePipe.name,
      run.drivePressure,
      deratedRating(drivePipe.pipe, water.temperature),
    ),
    row('ram', tuning.ram.name, run.drivePressure, tuning.ram.rating),
    row(
      'deliveryPipe',
      deliveryPipe.name,
      deliveryPressure,
      deratedRating(deliveryPipe.pipe, water.temperature),
    ),
  ];
  if (vessel) rows.push(row('vessel', vessel.name, deliveryPressure, vessel.rating));
  return rows;
}

/** Swing of the vessel's head over its mean. */
export function pulseOf(place: PlaceToFit, parts: Parts, run: CandidateRun): Ratio {
  const own = parts.tuning.ram.airVessel;
  const vessel = parts.vessel ? { ...own, volume: parts.vessel.volume } : own;
  return pulseShare(vessel, {
    water: place.water,
    vesselHead: run.vesselHead,
    deliveredPerBeat: run.deliveredPerBeat,
    backFlowPerBeat: parts.tuning.ram.deliveryValve.backFlowPerBeat,
  });
}

/** Why a combination that was run cannot be used; nothing when it can. */
export function reasonAfterRun(
  place: PlaceToFit,
  candidate: Candidate,
  run: CandidateRun,
  largestPulse: Ratio,
): Reason | undefined {
  const { parts } = candidate;
  if (parts.feeder && run.level < parts.feeder.standpipeBase) {
    return { kind: 'standpipeDry', level: run.level, ground: parts.feeder.standpipeBase };
  }
  if (run.verdict !== 'runs') {
    return { kind: 'verdict', verdict: run.verdict, decidedBy: run.decidedBy };
  }
  for (const { part, name, pressure, rating } of pressuresOf(place, parts, run)) {
    if (rating !== undefined && pressure > rating) {
      return { kind: 'overRated', part, name, pressure, rating };
    }
  }
  const share = pulseOf(place, parts, run);
  return share > largestPulse ? { kind: 'pulse', share, largest: largestPulse } : undefined;
}

export function marginsOf(
  place: PlaceToFit,
  parts: Parts,
  run: CandidateRun,
  largestPulse: Ratio,
): Margins {
  const margins: Record<string, number> = {};
  for (const { kind, margin } of run.limits) margins[kind] = margin;
  if (place.dryFlow !== undefined && run.supplyFlow > 0) {
    margins.source = place.dryFlow / (parts.count * run.supplyFlow) - 1;
  }
  for (const { pressure, rating } of pressuresOf(place, parts, run)) {
    if (rating === undefined) continue;
    margins.pressure = Math.min(margins.pressure ?? Infinity, rating / pressure - 1);
  }
  const pulse = pulseOf(place, parts, run);
  if (pulse > 0) margins.pulse = largestPulse / pulse - 1;
  return { ...margins, least: Math.min(...Object.values(margins)) };
}
