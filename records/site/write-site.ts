/** A site back to a tidy YAML text: fields in the order of the water, small maps on one line. */
import { Document, isMap, isScalar, isSeq, type YAMLMap } from 'yaml';
import { isGiven } from '../given.ts';
import { type Site, siteSchema } from './site-schema.ts';

/** Judgement: what still reads well on one line. */
const LONGEST_LINE = 76;

/** What stands in the site is written as it was written; comments in a file it came from are not kept. */
export function writeSite(site: Site): string {
  const plain: Record<string, unknown> = {};
  for (const field of Object.keys(siteSchema.shape)) {
    const value = plainData(site[field as keyof Site]);
    if (value !== undefined) plain[field] = value;
  }
  const document = new Document(plain);
  if (isMap(document.contents)) flowWhereShort(document.contents);
  return document.toString({ lineWidth: 0, flowCollectionPadding: true });
}

function plainData(data: unknown): unknown {
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
