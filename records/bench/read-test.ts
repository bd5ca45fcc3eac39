/** A test record, from text or from data: the test, or every problem with it. */
import type { Problem } from '../problem.ts';
import { readRecord } from '../read-record.ts';
import { type RecordKind, type RecordRead, recordFromData } from '../record-from-data.ts';
import { checkTest } from './check-test.ts';
import { type BenchTest, TEST_FORMAT, testSchema } from './test-schema.ts';

/** Judgement: a day at the bench is some fifty readings of 400 letters. */
export const LONGEST_TEST = 256 * 1024;

export type TestRead =
  | {
      readonly ok: true;
      readonly test: BenchTest;
      /** Can be used, but worth a second look. */
      readonly warnings: readonly Problem[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** What people call our fields elsewhere. */
const HINTS: Readonly<Record<string, string>> = {
  fall: 'The fall belongs to the rig: rig: { fall: 2 m, drive: … }.',
  drive: 'The drive line belongs to the rig: rig: { fall: 2 m, drive: … }.',
  head: 'The height of the supply is the fall of the rig, that of the outlet the lift of a reading.',
  rate: 'How fast it beats is written: beats: 62/min.',
  strokes: 'Pushes by hand are handStrokes: 12; the beats are written beats: 62/min.',
  delivery: 'The delivery line belongs to the rig; what it delivered is delivered: 1.5 L/min.',
  waste: 'What left the waste valve is wasted: 12 L/min.',
  pressure: 'Write vesselPressure, peakPressure, or backPressure for a throttled delivery.',
  peak: 'The highest pressure is peakPressure: 2.6 bar.',
  stroke: 'A stroke of one reading stands under tuning: { stroke: 3 mm }.',
  weight: 'A weight of one reading stands under tuning: { weight: 120 g }.',
  note: 'What was seen at a reading is remarks; notes stand at the top.',
  tests: 'What was read stands under readings.',
};

const TEST_KIND: RecordKind<BenchTest> = {
  called: 'test',
  format: TEST_FORMAT,
  longest: LONGEST_TEST,
  schema: testSchema,
  hints: HINTS,
  check: checkTest,
};

/** Reads YAML or JSON text. Never throws on what a person wrote. */
export function readTest(source: string): TestRead {
  return asTest(readRecord(source, TEST_KIND));
}

/** Reads a test from data that was no text. Problems have no lines. */
export function testFromData(data: unknown): TestRead {
  return asTest(recordFromData(data, TEST_KIND));
}

function asTest(read: RecordRead<BenchTest>): TestRead {
  return read.ok ? { ok: true, test: read.value, warnings: read.warnings } : read;
}
