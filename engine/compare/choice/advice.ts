/**
 * Rules of the trade, held against one combination. Soft advice: physics and ratings decide, a rule only says what is usual.
 *
 * Source: each rule names its own; the ids are those of rules_of_thumb.csv in checks, which a test holds these ranges against.
 */
import { lineHeadLoss } from '../../pipes/steady-flow.ts';
import type { Ratio } from '../../quantities.ts';
import type { Candidate } from './candidates.ts';
import { installationOf } from './installation-of-parts.ts';
import { isMetal } from './pipe-kinds.ts';
import type { PlaceToFit } from './place-to-fit.ts';
import type { CandidateRun } from './run.ts';

export type AdviceRule =
  | 'sourceOverDelivery'
  | 'leastFall'
  | 'usualFall'
  | 'largestLift'
  | 'largestLiftOverFall'
  | 'efficientLiftOverFall'
  | 'driveLengthOverFall'
  | 'driveLengthOverBore'
  | 'driveBoreOverDeliveryBore'
  | 'deliveryFriction'
  | 'deliveryVelocity'
  | 'beatRate'
  | 'efficiency'
  | 'vesselOverBeat'
  | 'feederOverDriveBore'
  | 'rigidDrivePipe';

export interface AdviceRow {
  readonly rule: AdviceRule;
  /** Id in rules_of_thumb.csv. */
  readonly id: string;
  readonly source: string;
  /** SI; a missing end is open. */
  readonly range: { readonly low?: number; readonly high?: number };
  readonly value: number;
  readonly isWithin: boolean;
}

interface Rule {
  readonly id: string;
  readonly source: string;
  readonly low?: number;
  readonly high?: number;
}

const WFW = 'USAID, Water for the World, RWS.4.D.5 (1982)';
const COMMON = 'common practice, no source';

export const RULES: Readonly<Record<AdviceRule, Rule>> = {
  sourceOverDelivery: { id: 'RT01', source: WFW, low: 7 },
  leastFall: { id: 'RT02', source: WFW, low: 0.5 },
  usualFall: { id: 'RT04', source: 'Starbuck, Sanitary plumbing, pumps part 3', low: 1.5, high: 3 },
  largestLift: { id: 'RT08', source: 'AIDFI case study (2007)', high: 200 },
  largestLiftOverFall: { id: 'RT09', source: 'Ogden, Rural hygiene (1911), table XI', high: 30 },
  efficientLiftOverFall: {
    id: 'RT10',
    source: 'New International Encyclopaedia, hydraulic ram',
    high: 12,
  },
  driveLengthOverFall: {
    id: 'RT15',
    source: 'USDA, Water supply for country homes (about 1914), p. 27',
    low: 5,
    high: 10,
  },
  driveLengthOverBore: { id: 'RT21', source: 'Calvert (1957–58) (memory)', low: 150, high: 1000 },
  driveBoreOverDeliveryBore: {
    id: 'RT24',
    source: 'USDA, Water supply for country homes (about 1914), p. 27',
    high: 2,
  },
  deliveryFriction: { id: 'RT27', source: COMMON, high: 0.2 },
  deliveryVelocity: { id: 'RT28', source: COMMON, low: 0.3, high: 1 },
  beatRate: { id: 'RT30', source: COMMON, low: 40 / 60, high: 120 / 60 },
  efficiency: { id: 'RT64', source: COMMON, low: 0.5, high: 0.7 },
  vesselOverBeat: { id: 'RT55', source: 'Jeffery and others (1992) (memory)', low: 20, high: 50 },
  feederOverDriveBore: { id: 'RT52', source: 'extension guides (memory)', low: 1 },
  // 1 for metal, 0 for plastic and hose.
  rigidDrivePipe: { id: 'RT48', source: 'Peace Corps, hydram training manual (1981)', low: 1 },
};

/** Every rule that applies to a combination that was run, in the order of the line. */
export function adviceFor(place: PlaceToFit, candidate: Candidate, run: CandidateRun): AdviceRow[] {
  const { parts } = candidate;
  const { drivePipe, deliveryPipe, count, driveLength, feeder, vessel, tuning } = parts;
  const { fall, lift } = installationOf(place, parts, run.level);
  const { source } = place;
  const given = source.kind === 'steady' ? source.yield : source.inflow;
  const delivered = count * run.deliveryFlow;
  const deliveryBore = deliveryPipe.pipe.innerDiameter;
  const driveBore = drivePipe.pipe.innerDiameter;
  const segments = installationOf(place, parts).deliveryLine.segments;
  const friction = lineHeadLoss({
    segments,
    entranceLoss: 1,
    water: place.water,
    flow: delivered,
  });
  const values: Readonly<Record<AdviceRule, number | undefined>> = {
    sourceOverDelivery: given === undefined || !(delivered > 0) ? undefined : given / delivered,
    leastFall: fall,
    usualFall: fall,
    rigidDrivePipe: isMetal(drivePipe.pipe.material) ? 1 : 0,
    driveLengthOverFall: driveLength / fall,
    driveLengthOverBore: driveLength / driveBore,
    feederOverDriveBore: feeder ? feeder.pipe.pipe.innerDiameter / driveBore : undefined,
    beatRate: run.beatFrequency,
    efficiency: run.daubuissonEfficiency,
    vesselOverBeat:
      run.deliveredPerBeat > 0
        ? (vessel?.volume ?? tuning.ram.airVessel.volume) / run.deliveredPerBeat
        : undefined,
    largestLift: lift,
    largestLiftOverFall: lift / fall,
    efficientLiftOverFall: lift / fall,
    driveBoreOverDeliveryBore: driveBore / deliveryBore,
    deliveryFriction: friction / lift,
    deliveryVelocity: delivered / ((Math.PI / 4) * deliveryBore ** 2),
  };
  return (Object.keys(values) as AdviceRule[]).flatMap((rule) => {
    const value = values[rule];
    return value === undefined ? [] : [rowOf(rule, value)];
  });
}

function rowOf(rule: AdviceRule, value: Ratio): AdviceRow {
  const { id, source, low, high } = RULES[rule];
  const range = { ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }) };
  const isWithin = value >= (low ?? -Infinity) && value <= (high ?? Infinity);
  return { rule, id, source, range, value, isWithin };
}
