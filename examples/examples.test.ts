/** Every example answers, and with the verdict that it was made to show. */
import { readdirSync, readFileSync } from 'node:fs';
import { answerFor, type VerdictKind } from '@fallwright/engine';
import { installationOf, readSite, systemOf } from '@fallwright/records';
import { describe, expect, test } from 'vitest';
import { answerAPlace } from './answer-a-place.ts';

const MADE_TO_SHOW: Readonly<Record<string, VerdictKind>> = {
  'tarn-hollow.yaml': 'runs',
  'nettle-bank.yaml': 'staysOpen',
  'combe-farm.yaml': 'staysShut',
};

const files = readdirSync(import.meta.dirname).filter((name) => name.endsWith('.yaml'));

function siteIn(file: string) {
  const read = readSite(readFileSync(new URL(file, import.meta.url), 'utf8'));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.site;
}

describe.each(files)('%s', (file) => {
  test('answers', () => {
    const { installation } = installationOf(siteIn(file));
    const answer = answerFor(installation, { changes: false, startUp: false, pressures: false });
    const expected = MADE_TO_SHOW[file];
    if (expected) expect(answer.verdict.kind).toBe(expected);
    // All others are places where a ram lifts water.
    else expect(answer.operatingPoint?.deliveryFlow).toBeGreaterThan(0);
  });
});

test('one of them is written in US units', () => {
  expect(files.map((file) => systemOf(siteIn(file)))).toContain('us');
});

test('the small program says more water comes from a lower lift', () => {
  const lines = answerAPlace();
  expect(lines[0]).toMatch(/^Heron Beck: runs/);
  const daily = lines.flatMap((line) => {
    const [, litres] = /^lifted .*: ([\d,]+)\u00a0L/.exec(line) ?? [];
    return litres === undefined ? [] : Number(litres.replace(',', ''));
  });
  expect(daily).toHaveLength(4);
  expect(daily).toEqual([...daily].sort((a, b) => b - a));
});
