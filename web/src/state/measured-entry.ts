/**
 * Measurements in a site document: the gaugings of the source, and the readings behind the fall or the lift.
 *
 * What was written by hand stands beside its readings and never in their place, so that neither is lost: `flow` beside
 * `gauging`, and `value` among the readings of a height.
 */
import type { Path, Plain, PlainRecord, SiteDocument } from './site-document.ts';
import { isList, isRecord, valueAt, withValue } from './site-document.ts';

export type HeightName = 'fall' | 'lift';
/** What was written by hand for the flow: a store has what runs in. */
export type FlowName = 'flow' | 'inflow';

export const HEIGHT_WAYS = ['levels', 'hops', 'gauge', 'barometric', 'satellite'] as const;
export type HeightWay = (typeof HEIGHT_WAYS)[number];

const READINGS = [
  ...HEIGHT_WAYS,
  'between',
  'each',
  'class',
  'range',
  'gaugeHeight',
  'date',
  'by',
  'note',
] as const;

function areReadings(entry: Plain | undefined): entry is PlainRecord {
  return isRecord(entry) && READINGS.some((key) => entry[key] !== undefined);
}

const NOTHING: PlainRecord = {};

/** The readings of a height, without what was written beside them. Empty where there are none. */
export function heightReadings(document: SiteDocument, height: HeightName): PlainRecord {
  const entry = document[height];
  if (!areReadings(entry)) return NOTHING;
  if (entry.value === undefined) return entry;
  const { value: _written, ...readings } = entry;
  return readings;
}

export function hasReadings(document: SiteDocument, height: HeightName): boolean {
  return areReadings(document[height]);
}

/** The height as it was written by hand. */
export function writtenHeight(document: SiteDocument, height: HeightName): Plain | undefined {
  const entry = document[height];
  return areReadings(entry) ? entry.value : entry;
}

/** The document with another written height; readings stay. */
export function withWrittenHeight(
  document: SiteDocument,
  height: HeightName,
  value: Plain | undefined,
): SiteDocument {
  const path = areReadings(document[height]) ? [height, 'value'] : [height];
  return withValue(document, path, value);
}

/** The document with other readings of a height; the written height stays. */
export function withHeightReadings(
  document: SiteDocument,
  height: HeightName,
  readings: PlainRecord,
): SiteDocument {
  const value = writtenHeight(document, height);
  if (!areReadings(readings)) return withValue(document, [height], value);
  return withValue(document, [height], value === undefined ? readings : { value, ...readings });
}

/** The way by which a height was measured; the first, where a file has two. */
export function heightWay(readings: PlainRecord): HeightWay | undefined {
  return HEIGHT_WAYS.find((way) => readings[way] !== undefined);
}

const GAUGING: Path = ['source', 'gauging'];
const NO_GAUGINGS: readonly PlainRecord[] = [];

/** The measurements of the flow; a file may write a single one without a list. */
export function gaugingsOf(document: SiteDocument): readonly PlainRecord[] {
  const written = valueAt(document, GAUGING);
  if (isRecord(written)) return [written];
  return isList(written) ? written.map((one) => (isRecord(one) ? one : NOTHING)) : NO_GAUGINGS;
}

export function withGauging(
  document: SiteDocument,
  index: number,
  gauging: PlainRecord,
): SiteDocument {
  const list = [...gaugingsOf(document)];
  list[index] = gauging;
  return withValue(document, GAUGING, list);
}

export function withoutGauging(document: SiteDocument, index: number): SiteDocument {
  const list = gaugingsOf(document).filter((_, at) => at !== index);
  return withValue(document, GAUGING, list.length === 0 ? undefined : list);
}
