/** What the records and the engine make of a test as it stands on the page, reading by reading: one that is not whole leaves the others alone. */
import type { ReadingDoubt, ReadingEfficiencies } from '@fallwright/engine';
import { doubtsAboutReading, efficienciesOf } from '@fallwright/engine';
import type { BenchSetting, Problem } from '@fallwright/records';
import { settingsOf, testFromData } from '@fallwright/records';
import { withoutEmptyPipes } from '../state/lines.ts';
import type { PlainRecord, SiteDocument } from '../state/site-document.ts';
import { isRecord } from '../state/site-document.ts';
import { readingsIn } from './test-document.ts';

export type ReadReading =
  | {
      readonly ok: true;
      readonly setting: BenchSetting;
      readonly doubts: readonly ReadingDoubt[];
      readonly efficiencies: ReadingEfficiencies | undefined;
      /** The reading with all that it rests on, to be asked of the engine. */
      readonly asked: string;
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export interface ReadTest {
  readonly readings: readonly ReadReading[];
  /** Of the whole test, each once, under the names of its fields. */
  readonly problems: readonly Problem[];
}

/** The test with one reading alone, without what changes no answer. */
function alone(document: SiteDocument, reading: PlainRecord): SiteDocument {
  const { rig, ram, instruments } = document;
  return {
    fallwright: 'test@1',
    ...(isRecord(rig) ? { rig: withoutEmptyPipes(rig) } : {}),
    ...(ram === undefined ? {} : { ram }),
    ...(instruments === undefined ? {} : { instruments }),
    readings: [reading],
  };
}

export function readTestOnPage(document: SiteDocument): ReadTest {
  const all = readingsIn(document).map((reading, index) =>
    readOne(alone(document, withoutNotes(reading)), index),
  );
  const problems = [...all, readFrame(document)].flatMap((one) => (one.ok ? [] : one.problems));
  const seen = new Set<string>();
  return {
    readings: all,
    problems: problems.filter(({ field, message }) => {
      const key = `${field}: ${message}`;
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    }),
  };
}

/** Words and names of files change no answer. */
function withoutNotes(reading: PlainRecord): PlainRecord {
  const { remarks, photos, recordings, logs, ...read } = reading;
  return read;
}

function readOne(document: SiteDocument, index: number): ReadReading {
  const read = testFromData(document);
  if (!read.ok) return { ok: false, problems: read.problems.map((one) => atIndex(one, index)) };
  const [setting] = settingsOf(read.test);
  if (setting === undefined) return { ok: false, problems: [] };
  return {
    ok: true,
    setting,
    doubts: doubtsAboutReading(setting.reading),
    efficiencies: efficienciesOf(setting.reading),
    asked: JSON.stringify(document),
  };
}

/** What stands beside rig and readings: the date, the words. */
function readFrame(document: SiteDocument): ReadReading {
  const { readings, rig, ram, instruments, ...frame } = document;
  const read = testFromData({ ...frame, ...WHOLE });
  return read.ok ? { ok: false, problems: [] } : read;
}

/** Any rig and ram that can be read, beside which the words of a test are judged. */
const WHOLE: SiteDocument = {
  rig: { fall: '2 m', drive: [{ pipe: 'PE100 SDR11 25', length: '9 m' }] },
  ram: 'DN20',
  readings: [{ lift: '8 m', beats: '60/min' }],
};

function atIndex(problem: Problem, index: number): Problem {
  return { ...problem, field: problem.field.replace(/^readings(\[0\])?/, `readings[${index}]`) };
}
