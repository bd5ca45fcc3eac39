/**
 * A bench test as the page edits it: a plain tree that may be unfinished. Readings of one quantity are a list in which those
 * written as a flow or a rate stand before what was caught or counted.
 */
import { textOf } from '../state/entry.ts';
import { withListedLines } from '../state/lines.ts';
import type { Path, Plain, PlainRecord, SiteDocument } from '../state/site-document.ts';
import { isList, isRecord, valueAt, withValue } from '../state/site-document.ts';

const NOTHING: PlainRecord = {};
const NO_READINGS: readonly PlainRecord[] = [];

/** Quantities of a reading that stand in lists. */
export type ListedQuantity =
  | 'beats'
  | 'delivered'
  | 'wasted'
  | 'supply'
  | 'vesselPressure'
  | 'peakPressure';
const LISTED: readonly ListedQuantity[] = [
  'beats',
  'delivered',
  'wasted',
  'supply',
  'vesselPressure',
  'peakPressure',
];
const NAMES_OF_FILES = ['photos', 'recordings', 'logs'] as const;
export type FilesOf = (typeof NAMES_OF_FILES)[number];

const listed = (written: Plain | undefined): readonly Plain[] =>
  written === undefined ? [] : isList(written) ? written : [written];

/** Whatever a file may write as one thing alone, as a list: the page then has one path to each box. */
export function withListedTest(document: SiteDocument): SiteDocument {
  const rig = isRecord(document.rig)
    ? { ...document, rig: withListedLines(document.rig) }
    : document;
  if (rig.readings === undefined) return rig;
  return {
    ...rig,
    readings: listed(rig.readings).map((reading) => {
      if (!isRecord(reading)) return reading;
      const lists = [...LISTED, ...NAMES_OF_FILES].flatMap((key): [string, Plain][] =>
        reading[key] === undefined ? [] : [[key, listed(reading[key])]],
      );
      return { ...reading, ...Object.fromEntries(lists) };
    }),
  };
}

/** Always the same list for the same document, so that who watches it sees that nothing changed. */
export function readingsIn(document: SiteDocument): readonly PlainRecord[] {
  const { readings } = document;
  if (!isList(readings)) return NO_READINGS;
  return readings.every(isRecord)
    ? readings
    : readings.map((one) => (isRecord(one) ? one : NOTHING));
}

export const readingPath = (index: number, ...rest: Path): Path => ['readings', index, ...rest];

/** What was read of a quantity, written as a flow, a rate or a pressure. */
export function writtenIn(reading: PlainRecord, quantity: ListedQuantity): readonly Plain[] {
  return listed(reading[quantity]).filter((one) => !isTimed(one));
}

/** What was caught in a vessel, or counted: an amount and the times that it took. Of several the first is on the page. */
export function timedIn(reading: PlainRecord, quantity: ListedQuantity): PlainRecord {
  return listed(reading[quantity]).find(isTimed) ?? NOTHING;
}

/** How many more amounts with times the file has than the page shows. */
export function furtherTimed(reading: PlainRecord, quantity: ListedQuantity): number {
  return Math.max(0, listed(reading[quantity]).filter(isTimed).length - 1);
}

function isTimed(one: Plain): one is PlainRecord {
  return isRecord(one) && ['times', 'volume', 'count'].some((key) => one[key] !== undefined);
}

export function withWritten(
  document: SiteDocument,
  index: number,
  quantity: ListedQuantity,
  written: readonly Plain[],
): SiteDocument {
  const timed = listed(readingsIn(document)[index]?.[quantity]).filter(isTimed);
  return withList(document, readingPath(index, quantity), [...written, ...timed]);
}

export function withTimed(
  document: SiteDocument,
  index: number,
  quantity: ListedQuantity,
  amount: PlainRecord,
): SiteDocument {
  const all = listed(readingsIn(document)[index]?.[quantity]);
  const further = all.filter(isTimed).slice(1);
  const first = Object.keys(amount).length === 0 ? [] : [amount];
  const written = all.filter((one) => !isTimed(one));
  return withList(document, readingPath(index, quantity), [...written, ...first, ...further]);
}

function withList(document: SiteDocument, path: Path, list: readonly Plain[]): SiteDocument {
  // A reading stays a reading when its last box is emptied.
  return withValue(document, path, list.length === 0 ? undefined : list);
}

/** The document with another reading at the same tuning; its lift is asked for. */
export function withNewReading(document: SiteDocument): SiteDocument {
  const readings = readingsIn(document);
  const tuning = readings.at(-1)?.tuning;
  return { ...document, readings: [...readings, tuning === undefined ? {} : { tuning }] };
}

export function withoutReading(document: SiteDocument, index: number): SiteDocument {
  return { ...document, readings: readingsIn(document).filter((_, at) => at !== index) };
}

/** A rate that was counted, put behind those that stand there, with the name of the file that it was counted in. */
export function withCounted(
  document: SiteDocument,
  index: number,
  {
    rate,
    file,
  }: { readonly rate: string; readonly file?: { of: FilesOf; name: string } | undefined },
): SiteDocument {
  const reading = readingsIn(document)[index] ?? NOTHING;
  const put = withWritten(document, index, 'beats', [...writtenIn(reading, 'beats'), rate]);
  if (file === undefined) return put;
  const path = readingPath(index, file.of);
  const names = listed(valueAt(put, path));
  return names.includes(file.name) ? put : withValue(put, path, [...names, file.name]);
}

/** A test that begins from the rig and the instruments of the one before: a stand is built once. */
export function newTest(
  before: SiteDocument | undefined,
  { ram, date }: { readonly ram: Plain; readonly date: string },
): SiteDocument {
  const { rig, instruments, by, place, units } = before ?? NOTHING;
  const kept = { by, place, units, rig, instruments };
  return {
    fallwright: 'test@1',
    date,
    ...Object.fromEntries(Object.entries(kept).filter(([, value]) => value !== undefined)),
    ram,
    readings: [{}],
  };
}

/** `2.06 m fall, 9.2 m of galvanised steel DN25`, as written. */
export function rigInWords(document: SiteDocument): string {
  const rig = isRecord(document.rig) ? document.rig : NOTHING;
  const fall = textOf(rig.fall);
  const pipes = listed(rig.drive).filter(isRecord);
  const drive = pipes
    .map((pipe) => {
      const called = textOf(pipe.pipe) || textOf(pipe.material);
      const length = textOf(pipe.length);
      return length === '' ? called : `${length} of ${called || 'pipe'}`;
    })
    .filter((words) => words !== '');
  const parts = [fall === '' ? 'no fall yet' : `fall ${fall}`, ...drive];
  return parts.join(', ');
}

/** How the tested ram is called, and what tells it from others when tests are gathered by ram. */
export function ramOfTest({ ram }: SiteDocument): { readonly name: string; readonly key: string } {
  if (!isRecord(ram)) {
    const size = textOf(ram);
    return { name: size === '' ? 'no ram yet' : `a typical ${size}`, key: size };
  }
  const size = textOf(ram.typical);
  const range = textOf(ram.range);
  const name = textOf(ram.name) || (size === '' ? 'a ram of its own' : `a typical ${size}`);
  // Revisions of one ram stand together: the picture shows whether the newer does better.
  const [id = ''] = range.split('@');
  return { name, key: id === '' ? name : `range ${id}` };
}

export function titleOfTest(document: SiteDocument): string {
  const name = textOf(document.name);
  if (name !== '') return name;
  const { name: ram } = ramOfTest(document);
  const date = textOf(document.date);
  return `${ram.charAt(0).toUpperCase()}${ram.slice(1)}${date === '' ? '' : `, ${date}`}`;
}
