import { readFileSync } from 'node:fs';
import { readPrices, readRange } from '@fallwright/records';
import { expect, test } from 'vitest';
import { rangeDocumentOf } from '../answer/document-of.ts';
import { priceDocument, readPriceDocument } from '../prices/price-document.ts';
import { rangeProblems } from '../range/range-reading.ts';
import { DEMO_PRICES, DEMO_RANGE } from './demo-shared.ts';

const example = (name: string): string =>
  readFileSync(new URL(`../../../examples/workshop/${name}`, import.meta.url), 'utf8');

test('the demo has the range of the examples, and it can be read', () => {
  const read = readRange(example('rams.yaml'));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  expect(DEMO_RANGE).toEqual(rangeDocumentOf(read.range));
  expect(rangeProblems(DEMO_RANGE)).toEqual([]);
});

test('the demo has the price list of the examples, and it can be read', () => {
  const read = readPrices(example('prices.csv'));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  expect(DEMO_PRICES).toEqual(priceDocument(read.list));
  expect(readPriceDocument(DEMO_PRICES).faults).toEqual([]);
});
