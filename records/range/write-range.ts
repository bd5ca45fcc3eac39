import { writeRecord } from '../write-record.ts';
import { type Range, rangeSchema } from './range-schema.ts';

/** A range back to a tidy YAML text. */
export function writeRange(range: Range): string {
  return writeRecord(range, Object.keys(rangeSchema.shape));
}
