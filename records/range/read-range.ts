/** A range file, from text or from data: the range, or every problem with it. */
import type { Problem } from '../problem.ts';
import { readRecord } from '../read-record.ts';
import { type RecordKind, type RecordRead, recordFromData } from '../record-from-data.ts';
import { checkRange } from './check-range.ts';
import { RANGE_FORMAT, type Range, rangeSchema } from './range-schema.ts';

/** Judgement: a ram with ten earlier revisions is 6 kB, and forty such rams are a large maker's. */
export const LONGEST_RANGE = 256 * 1024;

export type RangeRead =
  | {
      readonly ok: true;
      readonly range: Range;
      /** Can be used, but worth a second look. */
      readonly warnings: readonly Problem[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** What people call our fields elsewhere. */
const HINTS: Readonly<Record<string, string>> = {
  size: 'What the ram is made of is written: ram: DN25, or ram: { bore: 25 mm, … }.',
  bore: 'What the ram is made of stands under ram: ram: { bore: 25 mm, … }.',
  wastevalve: 'What the ram is made of stands under ram: ram: { wasteValve: { … } }.',
  weights: 'Weights that can be fitted stand under settings: { weights: [95 g, 120 g] }.',
  springs: 'Springs that can be fitted stand under settings: { springs: [ … ] }.',
  stroke: 'Strokes stand under settings: { stroke: { least: 2.4 mm, most: 4 mm, steps: 3 } }.',
  weight: 'What the whole ram weighs is its mass: mass: 9 kg.',
  cost: 'What one ram costs is its price: price: 320 GBP.',
  currency: 'Each price carries its currency: price: 320 GBP.',
  delivery: 'How long it takes is the lead time: leadTime: 3 weeks.',
  serial: 'Serial numbers are a list: serials: [S25-031 to S25-040].',
  note: 'What is worth keeping of a ram is written: remarks: …',
  notes: 'What is worth keeping of a ram is written: remarks: …',
};

const RANGE_KIND: RecordKind<Range> = {
  called: 'range',
  format: RANGE_FORMAT,
  longest: LONGEST_RANGE,
  schema: rangeSchema,
  hints: HINTS,
  check: checkRange,
  looseLists: ['rams'],
};

/** Reads YAML or JSON text. Never throws on what a person wrote. */
export function readRange(source: string): RangeRead {
  return asRange(readRecord(source, RANGE_KIND));
}

/** Reads a range from data that was no text. Problems have no lines. */
export function rangeFromData(data: unknown): RangeRead {
  return asRange(recordFromData(data, RANGE_KIND));
}

function asRange(read: RecordRead<Range>): RangeRead {
  return read.ok ? { ok: true, range: read.value, warnings: read.warnings } : read;
}
