/** A record back to a tidy YAML text: fields in the order of its schema, small maps on one line. */
import { Document, isMap, isScalar, isSeq, type YAMLMap } from 'yaml';
import { isGiven } from './given.ts';
import { isPrice } from './prices/money.ts';

/** Judgement: what still reads well on one line. */
const LONGEST_LINE = 76;

/** What stands in the record is written as it was written; comments in a file it came from are not kept. */
export function writeRecord(
  record: Readonly<Record<string, unknown>>,
  order: readonly string[],
): string {
  const plain: Record<string, unknown> = {};
  for (const field of order) {
    const value = plainData(record[field]);
    if (value !== undefined) plain[field] = value;
  }
  const document = new Document(plain);
  if (isMap(document.contents)) flowWhereShort(document.contents);
  return document.toString({ lineWidth: 0, flowCollectionPadding: true });
}

function plainData(data: unknown): unknown {
  if (isPrice(data)) return data.text;
  if (isGiven(data)) {
    if (data.readings) return plainData(data.readings);
    return data.origin === 'stated' ? data.text : { value: data.text, origin: data.origin };
  }
  if (Array.isArray(data)) return data.map(plainData);
  if (typeof data !== 'object' || data === null) return data;
  return Object.fromEntries(Object.entries(data).map(([key, value]) => [key, plainData(value)]));
}

function flowWhereShort(map: YAMLMap): void {
  for (const pair of map.items) {
    const { value } = pair;
    if (!isMap(value) && !isSeq(value)) continue;
    const key = String(pair.key);
    if (isSeq(value)) {
      value.flow = value.items.every(isScalar) && isShort(key, value);
      for (const item of value.items) {
        if (!isMap(item)) continue;
        item.flow = JSON.stringify(item).length < LONGEST_LINE;
        if (!item.flow) flowWhereShort(item);
      }
    }
    if (isMap(value)) value.flow = isShort(key, value);
    if (isMap(value) && !value.flow) flowWhereShort(value);
  }
}

function isShort(key: string, value: unknown): boolean {
  return key.length + JSON.stringify(value).length < LONGEST_LINE;
}
