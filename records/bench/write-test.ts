import { writeRecord } from '../write-record.ts';
import { type BenchTest, testSchema } from './test-schema.ts';

/** A bench test back to a tidy YAML text. */
export function writeTest(test: BenchTest): string {
  return writeRecord(test, Object.keys(testSchema.shape));
}
