import { readFileSync } from 'node:fs';
import { readPrices, readRange, readTest } from '@fallwright/records';
import { expect, test } from 'vitest';
import { plainOf, rangeDocumentOf } from '../answer/document-of.ts';
import { withListedTest } from '../bench/test-document.ts';
import { readTestOnPage } from '../bench/test-reading.ts';
import { priceDocument, readPriceDocument } from '../prices/price-document.ts';
import { rangeProblems } from '../range/range-reading.ts';
import { isRecord } from '../state/site-document.ts';
import { DEMO_PRICES, DEMO_RANGE, DEMO_TEST } from './demo-shared.ts';

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

test('the demo has the bench test of the examples, and every reading of it can be read', () => {
  const read = readTest(
    readFileSync(new URL('../../../examples/bench/swallow-test.yaml', import.meta.url), 'utf8'),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const plain = plainOf(read.test);
  if (!isRecord(plain)) throw new Error('a test is a map');
  expect(DEMO_TEST).toEqual(withListedTest(plain));
  const { readings, problems } = readTestOnPage(DEMO_TEST);
  expect(problems).toEqual([]);
  expect(readings.map(({ ok }) => ok)).toEqual([true, true, true]);
});
