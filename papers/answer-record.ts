/**
 * The answer for programs. Units stand in the names; heads are metres of water above the waste valve's outlet.
 *
 * What only a running ram has (beats, flows, efficiencies) is `null` unless the verdict is `runs` or
 * `runsAfterHandStart`. For a ram that starves, `whileWaterLasts` holds those numbers instead. Peak and lowest head are
 * `null` when no beat was simulated. How sure it all is stands in it when samples were drawn, and is `null` otherwise.
 */
import type {
  Answer,
  Change,
  OperatingPoint,
  PressureCheckRow,
  SampledAnswer,
  StartUp,
  VerdictKind,
} from '@fallwright/engine';
import { installationOf, type Site } from '@fallwright/records';
import {
  type System,
  toBar,
  toBeatsPerMinute,
  toLitres,
  toLitresPerDay,
  toLitresPerMinute,
} from '@fallwright/units';
import { alongTheLinesInWords, lineRecords } from './along-the-lines.ts';
import { assumedValue } from './assumption-words.ts';
import { cautions } from './cautions.ts';
import { changeInWords, changesInWords, thingChanged } from './changes.ts';
import { demandInWords } from './demand-words.ts';
import { howSureRecord } from './how-sure.ts';
import { measuredRecord } from './measured.ts';
import { planRecord } from './plan-record.ts';
import { reasonsInWords } from './reasons.ts';
import { startUpInWords } from './start-up-words.ts';
import { tankInWords } from './tank-words.ts';
import { isRunning, verdictWords } from './verdict-words.ts';
import { waterPlanOf } from './water-plan-of.ts';

export interface RunningNumbers {
  readonly beatsPerMinute: number;
  readonly deliveredLitresPerDay: number;
  readonly wastedLitresPerMinute: number;
  readonly supplyLitresPerMinute: number;
  readonly rankineEfficiency: number;
  readonly daubuissonEfficiency: number;
  readonly vesselHeadMetres: number;
  readonly driveVelocityMetresPerSecond: number;
}

export type AnswerRecord = ReturnType<typeof answerRecord>;

export function answerRecord(answer: Answer, site: Site, system: System, sampled?: SampledAnswer) {
  const { verdict, operatingPoint, pressureCheck, startUp, startUpOpen } = answer;
  const { assumptions } = installationOf(site);
  const runs = isRunning(verdict.kind);
  const plan = waterPlanOf(answer, site);
  const point = operatingPoint && runningNumbers(operatingPoint);
  return plainSpaces({
    fallwright: 'answer@1',
    site: site.name ?? null,
    verdict: verdict.kind satisfies VerdictKind,
    verdictInWords: verdictWords(verdict.kind),
    handStrokes: handStrokesOf(answer),
    ...(runs && point ? point : NO_NUMBERS),
    whileWaterLasts: verdict.kind === 'starves' && point ? point : null,
    lastsSeconds: figuresOrNull(answer.drainTime),
    deliveredFromFullStoreLitres:
      operatingPoint && answer.drainTime !== undefined
        ? figures(
            toLitres(answer.emptying?.delivered ?? operatingPoint.deliveryFlow * answer.drainTime),
          )
        : null,
    storeEnd: answer.emptying?.end ?? null,
    storeDropMetres: figuresOrNull(answer.emptying?.drop),
    averageFromStoreLitresPerDay: answer.emptying
      ? figures(toLitresPerDay(answer.emptying.meanDelivery))
      : null,
    closingFlowLitresPerMinute: figures(toLitresPerMinute(answer.closingFlow)),
    terminalFlowLitresPerMinute: figures(toLitresPerMinute(answer.terminalFlow)),
    peakHeadMetres: figuresOrNull(pressureCheck?.peakHead ?? operatingPoint?.peakHead),
    lowestHeadMetres: figuresOrNull(pressureCheck?.lowestHead ?? operatingPoint?.lowestHead),
    measured: measuredRecord(site, system),
    demand: answer.demand
      ? { litresPerDay: figures(toLitresPerDay(answer.demand.needed)), isMet: answer.demand.isMet }
      : null,
    waterPlan: plan ? planRecord(plan) : null,
    demandInWords: demandInWords(answer, site, system),
    tankInWords: tankInWords(answer, site, system),
    ...howSureRecord(sampled, site, system),
    reasons: reasonsInWords(answer, site, system),
    startUp: startUp ? startRecord(startUp) : null,
    startUpStopValveOpen: startUpOpen ? startRecord(startUpOpen) : null,
    startUpInWords: startUpInWords(answer, site, system),
    limits: verdict.limits.map((limit) => ({
      ...limitRecord(limit),
      decides: limit === verdict.decidedBy,
    })),
    changes: answer.changes.map((change) => changeRecord(change, system)),
    materials: answer.materials.map(({ material, pipe, verdict: other, deliveryFlow }) => ({
      material,
      pipe,
      verdict: other,
      deliveredLitresPerDay: isRunning(other) ? figures(toLitresPerDay(deliveryFlow)) : null,
    })),
    changesInWords: changesInWords(answer, system),
    pressures: (pressureCheck?.rows ?? []).map(pressureRecord),
    hasCavity: pressureCheck?.hasCavity ?? null,
    lines: sixFigures(lineRecords(site)),
    linesInWords: alongTheLinesInWords(answer, site, system),
    run: operatingPoint
      ? {
          outcome: operatingPoint.end.outcome,
          beats: operatingPoint.end.beats,
          steps: operatingPoint.end.steps,
          simulatedSeconds: figures(operatingPoint.end.simulatedTime),
          reaches: operatingPoint.end.reaches,
          largestWaveSpeedNudge: figures(operatingPoint.end.largestWaveSpeedNudge),
          modelOptions: operatingPoint.end.modelOptions,
          beatSpread: figures(operatingPoint.beatSpread),
        }
      : null,
    assumptions: assumptions.map((assumption) => ({
      field: assumption.field,
      what: assumption.what,
      value: assumedValue(assumption, system),
      why: assumption.why,
      basis: assumption.basis,
    })),
    cautions: cautions(answer, site),
  });
}

const NO_NUMBERS = {
  beatsPerMinute: null,
  deliveredLitresPerDay: null,
  wastedLitresPerMinute: null,
  supplyLitresPerMinute: null,
  rankineEfficiency: null,
  daubuissonEfficiency: null,
  vesselHeadMetres: null,
  driveVelocityMetresPerSecond: null,
} as const satisfies { readonly [Name in keyof RunningNumbers]: null };

function runningNumbers(point: OperatingPoint): RunningNumbers {
  return {
    beatsPerMinute: figures(toBeatsPerMinute(point.beatFrequency)),
    deliveredLitresPerDay: figures(toLitresPerDay(point.deliveryFlow)),
    wastedLitresPerMinute: figures(toLitresPerMinute(point.wasteFlow)),
    supplyLitresPerMinute: figures(toLitresPerMinute(point.supplyFlow)),
    rankineEfficiency: figures(point.rankineEfficiency),
    daubuissonEfficiency: figures(point.daubuissonEfficiency),
    vesselHeadMetres: figures(point.vesselHead),
    driveVelocityMetresPerSecond: figures(point.driveVelocity),
  };
}

/** 0 or 1 (the push that opens the valve) for a ram that starts by itself; `null` when it does not run. */
function handStrokesOf({ verdict, startUp }: Answer): number | null {
  if (!isRunning(verdict.kind) || !startUp || startUp.outcome === 'never') return null;
  return startUp.handStrokes;
}

function startRecord(start: StartUp) {
  return {
    outcome: start.outcome,
    handStrokes: start.handStrokes,
    vesselHeadMetres: figures(start.vesselHeadAtStart),
    seconds: figures(start.simulatedTime),
  };
}

function limitRecord({ kind, has, needs, margin }: Answer['verdict']['decidedBy']) {
  const isFlow = kind === 'closingFlow' || kind === 'source';
  return {
    kind,
    unit: isFlow ? 'L/min' : kind === 'beat' ? 's' : 'm',
    has: figures(isFlow ? toLitresPerMinute(has) : has),
    needs: figures(isFlow ? toLitresPerMinute(needs) : needs),
    margin: figures(margin),
  };
}

const SI_UNITS = {
  fall: 'm',
  lift: 'm',
  driveLength: 'm',
  driveBore: 'm',
  valveWeight: 'N',
  stroke: 'm',
  sourceFlow: 'm3/s',
  trappedAir: 'm3',
} as const satisfies Record<Change['what'], string>;

/** Values in SI, with the unit beside them. */
function changeRecord(change: Change, system: System) {
  return {
    what: change.what,
    whatInWords: thingChanged(change.what).words,
    unit: SI_UNITS[change.what],
    now: figures(change.now),
    searched: [figures(change.searchedLow), figures(change.searchedHigh)],
    runsFrom: figuresOrNull(change.runs?.low),
    runsTo: figuresOrNull(change.runs?.high),
    below: change.runs?.belowLow ?? null,
    above: change.runs?.aboveHigh ?? null,
    enoughFrom: figuresOrNull(change.enough?.low),
    enoughTo: figuresOrNull(change.enough?.high),
    effort: change.effort,
    words: changeInWords(change, system),
  };
}

function pressureRecord(row: PressureCheckRow) {
  return {
    part: row.part,
    simulatedPeakBar: figures(toBar(row.simulatedPeak)),
    joukowskyBoundBar: row.joukowskyBound === undefined ? null : figures(toBar(row.joukowskyBound)),
    governingBar: figures(toBar(row.governing)),
    ratingBar: row.rating === undefined ? null : figures(toBar(row.rating)),
    outcome: row.outcome,
  };
}

/** Six figures: what is left of a simulation's last digits differs between machines. */
function figures(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`value must be a finite number, got ${value}`);
  return Number(value.toPrecision(6));
}

function figuresOrNull(value: number | undefined): number | null {
  return value === undefined ? null : figures(value);
}

/** Six figures for every number within. */
function sixFigures<Data>(data: Data): Data {
  const short = (part: unknown): unknown => {
    if (typeof part === 'number') return figures(part);
    if (Array.isArray(part)) return part.map(short);
    if (typeof part !== 'object' || part === null) return part;
    return Object.fromEntries(Object.entries(part).map(([key, value]) => [key, short(value)]));
  };
  // Only digits of numbers change, so the shape is the same.
  return short(data) as Data;
}

/** The words for programs carry plain spaces. */
function plainSpaces<Data>(data: Data): Data {
  const plain = (part: unknown): unknown => {
    if (typeof part === 'string') return part.replaceAll('\u00a0', ' ');
    if (Array.isArray(part)) return part.map(plain);
    if (typeof part !== 'object' || part === null) return part;
    return Object.fromEntries(Object.entries(part).map(([key, value]) => [key, plain(value)]));
  };
  // Only spaces inside texts change, so the shape is the same.
  return plain(data) as Data;
}
