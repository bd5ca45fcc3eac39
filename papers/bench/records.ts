/** Counted beats and answered tests for programs: units stand in the names. Heads are metres of water. */
import type {
  BeatsHeard,
  LogSummary,
  Measured,
  ReadingAnswer,
  ReadingDoubt,
  SureRatio,
} from '@fallwright/engine';
import type { BenchTest } from '@fallwright/records';
import { type System, toBeatsPerMinute, toLitresPerMinute } from '@fallwright/units';
import { benchCautions } from './bench-cautions.ts';
import { doubtInWords } from './doubt-words.ts';
import { findings } from './findings.ts';

export type BeatsRecord = ReturnType<typeof beatsRecord>;

/** `log` stands for a pressure log and is absent for a sound. */
export function beatsRecord(heard: BeatsHeard, log?: LogSummary) {
  const isHeard = heard.kind === 'heard';
  const rhythm = isHeard ? heard.rhythm : undefined;
  return {
    fallwright: 'beats@1',
    heard: isHeard,
    whyNone: isHeard ? null : heard.why,
    beatsPerMinute: rhythm ? figures(toBeatsPerMinute(rhythm.beatFrequency)) : null,
    beatsPerMinuteSpread: rhythm ? figures(toBeatsPerMinute(rhythm.spread)) : null,
    countedPerMinute: rhythm ? figures(toBeatsPerMinute(rhythm.countedFrequency)) : null,
    periodSeconds: rhythm ? figures(rhythm.period) : null,
    periodSpreadShare: rhythm ? figures(rhythm.periodSpread) : null,
    isUneven: rhythm?.isUneven ?? null,
    missed: rhythm?.missed ?? null,
    doubles: rhythm?.doubles ?? null,
    beats: isHeard
      ? heard.beats.map(({ time, confidence }) => ({
          timeSeconds: Number(time.toFixed(4)),
          confidence: Number(confidence.toFixed(2)),
        }))
      : [],
    otherSoundsSeconds: isHeard ? heard.others.map(({ time }) => Number(time.toFixed(4))) : [],
    log: log
      ? {
          readings: log.readings,
          lastsSeconds: figures(log.lasts),
          stepSeconds: figures(log.step),
          highestHeadMetres: figures(log.highest),
          lowestHeadMetres: figures(log.lowest),
          meanHeadMetres: figures(log.mean),
          middlePeakHeadMetres: log.middlePeak === undefined ? null : figures(log.middlePeak),
        }
      : null,
  };
}

export type TestRecord = ReturnType<typeof testRecord>;

export function testRecord(answers: readonly ReadingAnswer[], test: BenchTest, system: System) {
  return plainSpaces({
    fallwright: 'testAnswer@1',
    name: test.name ?? null,
    serial: test.serial ?? null,
    readings: answers.map((answer) => readingRecord(answer, system)),
    findings: findings(answers, system),
    cautions: benchCautions(),
  });
}

function readingRecord(
  { reading, efficiencies, doubts, predicted }: ReadingAnswer,
  system: System,
) {
  return {
    fallMetres: measured(reading.fall, asItIs),
    liftMetres: measured(reading.lift, asItIs),
    beatsPerMinute: measured(reading.beatFrequency, toBeatsPerMinute),
    deliveredLitresPerMinute: measured(reading.deliveryFlow, toLitresPerMinute),
    wastedLitresPerMinute: measured(reading.wasteFlow, toLitresPerMinute),
    supplyLitresPerMinute: measured(reading.supplyFlow, toLitresPerMinute),
    vesselHeadMetres: measured(reading.vesselHead, asItIs),
    peakHeadMetres: measured(reading.peakHead, asItIs),
    handStrokes: reading.handStrokes ?? null,
    rankineEfficiency: ratio(efficiencies?.rankine),
    daubuissonEfficiency: ratio(efficiencies?.daubuisson),
    doubts: doubts.map((doubt) => ({
      kind: doubt.kind satisfies ReadingDoubt['kind'],
      words: doubtInWords(doubt, system),
    })),
    predicted: {
      outcome: predicted.outcome,
      beatsPerMinute: running(predicted, toBeatsPerMinute(predicted.point.beatFrequency)),
      deliveredLitresPerMinute: running(predicted, toLitresPerMinute(predicted.point.deliveryFlow)),
      wastedLitresPerMinute: running(predicted, toLitresPerMinute(predicted.point.wasteFlow)),
      vesselHeadMetres: running(predicted, predicted.point.vesselHead),
      peakHeadMetres: running(predicted, predicted.point.peakHead),
    },
    residuals: predicted.residuals.map(({ quantity, share, normalized, agrees }) => ({
      quantity,
      gapShare: figures(share),
      gapInSpreads: figures(normalized),
      agrees,
    })),
  };
}

function asItIs(value: number): number {
  return value;
}

function running({ runs }: ReadingAnswer['predicted'], value: number): number | null {
  return runs ? figures(value) : null;
}

function measured(read: Measured | undefined, convert: (value: number) => number) {
  if (!read) return null;
  return {
    value: figures(convert(read.value)),
    spread: figures(convert(read.spread)),
    readings: read.count,
  };
}

function ratio(of: SureRatio | undefined) {
  return of ? { value: figures(of.value), spread: figures(of.spread) } : null;
}

/** Five figures: more than any bench gives. */
function figures(value: number): number {
  return Number(value.toPrecision(5));
}

/** Sentences for programs have plain spaces. */
function plainSpaces<Value>(value: Value): Value {
  return JSON.parse(JSON.stringify(value).replaceAll('\u00a0', ' ')) as Value;
}
