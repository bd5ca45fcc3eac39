import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { fromJSONSchema } from 'zod';
import { fieldsAt } from '../schema-fields.ts';
import { testJsonSchema } from './json-schema.ts';
import { readTest, testFromData } from './read-test.ts';
import { settingsOf } from './settings-of.ts';
import { type BenchTest, testSchema } from './test-schema.ts';

const examples = new URL('../../examples/bench/', import.meta.url);
const files = readdirSync(examples).filter((name) => name.endsWith('.yaml'));
const committed = JSON.parse(
  readFileSync(new URL('../schema/test.schema.json', import.meta.url), 'utf8'),
);
const page = readFileSync(new URL('../../docs/test-file.md', import.meta.url), 'utf8');
const blocks = [...page.matchAll(/```yaml\n([\s\S]*?)```/g)].map(([, block = '']) => block);

function testOf(text: string): BenchTest {
  const read = readTest(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  expect(read.warnings).toEqual([]);
  return read.test;
}

test('the committed JSON Schema is the one the reader makes', () => {
  expect(committed).toEqual(JSON.parse(JSON.stringify(testJsonSchema())));
});

describe.each(files)('%s', (file) => {
  const text = readFileSync(new URL(file, examples), 'utf8');

  test('reads, can be put together, and fits the JSON Schema', () => {
    expect(settingsOf(testOf(text)).length).toBeGreaterThan(0);
    expect(fromJSONSchema(committed).safeParse(parse(text)).error?.issues ?? []).toEqual([]);
  });
});

describe('docs/test-file.md', () => {
  test.each(blocks)('a block reads: %#', (block) => {
    expect(settingsOf(testOf(block)).length).toBeGreaterThan(0);
  });

  test('shows the short form and the whole one, and names every field', () => {
    expect(blocks).toHaveLength(2);
    const paths = [[], ['rig'], ['instruments'], ['readings', 0], ['readings', 0, 'tuning']];
    const names = paths.flatMap((path) => fieldsAt(testSchema, path));
    expect(names.length).toBeGreaterThan(35);
    for (const name of names) expect(page).toContain(`\`${name}\``);
    // The whole form leaves no field of a reading or a rig out.
    const whole = parse(blocks[1] ?? '');
    for (const name of fieldsAt(testSchema, ['rig']))
      expect(Object.keys(whole.rig)).toContain(name);
    const fields = fieldsAt(testSchema, ['readings', 0]).filter((name) => name !== 'backPressure');
    for (const name of fields) expect(Object.keys(whole.readings[0])).toContain(name);
  });
});

describe('a test is put together', () => {
  const [short = '', whole = ''] = blocks;

  test('repeats are averaged, volumes over times are flows, counts over times are rates', () => {
    const [setting] = settingsOf(testOf(whole));
    const { deliveryFlow, beatFrequency, supplyFlow, lift, vesselHead } = setting?.reading ?? {};
    // The mean of 1 L over 44.1, 44.8 and 44.0 s.
    const flows = [44.1, 44.8, 44].map((time) => 1e-3 / time);
    expect(deliveryFlow?.value).toBeCloseTo(flows.reduce((sum, flow) => sum + flow, 0) / 3, 12);
    expect(deliveryFlow?.count).toBe(3);
    expect(beatFrequency).toMatchObject({ count: 3 });
    expect(beatFrequency?.value).toBeCloseTo((98 / 60 + 60 / 36.9 + 60 / 36.6) / 3, 12);
    expect(supplyFlow?.spread).toBeCloseTo(0.2e-3 / 60, 12);
    expect(lift?.value).toBe(7.4);
    expect(vesselHead?.value).toBeCloseTo(0.75e5 / 9806.65, 9);
  });

  test('instruments and usual spreads say what a reading is good to, and a ± comes first', () => {
    const [setting] = settingsOf(testOf(whole));
    // Gauge good to 2 %, read once.
    const { vesselHead, fall } = setting?.reading ?? {};
    expect((vesselHead?.spread ?? 0) / (vesselHead?.value ?? 1)).toBeCloseTo(0.02, 12);
    expect(fall?.spread).toBe(0.005);
    const [plain] = settingsOf(testOf(short));
    const { wasteFlow } = plain?.reading ?? {};
    expect((wasteFlow?.spread ?? 0) / (wasteFlow?.value ?? 1)).toBeCloseTo(0.02, 12);
  });

  test('the rig is run at the head in the vessel where it is known, else through its line', () => {
    expect(settingsOf(testOf(whole))[0]?.head).toBe('atVessel');
    const through = whole.replace(/\n {4}vesselPressure: 0.75 bar/, '');
    expect(settingsOf(testOf(through))[0]?.head).toBe('throughLine');
    expect(settingsOf(testOf(short))[0]?.head).toBe('atVessel');
  });

  test('a tuning takes the place of the ram’s own stroke and weight at that reading alone', () => {
    const test = testOf(
      whole.replace('- lift: 7.4 m', '- { lift: 9 m, beats: 90/min }\n  - lift: 7.4 m'),
    );
    const [own, tuned] = settingsOf(test).map(({ installation }) => installation.ram.wasteValve);
    expect(own?.stroke).toBe(0.0032);
    expect(tuned?.stroke).toBe(0.0032);
    expect(tuned?.movingMass).toBeCloseTo(0.15, 9);
    expect(own?.movingMass).not.toBeCloseTo(0.15, 3);
  });
});

describe('what is wrong is told with its place', () => {
  const [short = ''] = blocks;
  const faults = (text: string) => {
    const read = readTest(text);
    return read.ok
      ? []
      : read.problems.map(({ field, line, message }) => ({ field, line, message }));
  };

  test.each([
    ['beats: 110/min', 'beats: 110', 'readings[0].beats', /110 what|unit/],
    ['delivered: 1.1 L/min', 'delivered: 1.1 bar', 'readings[0].delivered', /flow/],
    ['lift: 8 m, ', '', 'readings[0]', /lift: 6 m/],
    ['lift: 8 m', 'lift: 1 m', 'readings[0].lift', /lifts above its source/],
    ['lift: 8 m', 'lift: 8 m, backPressure: 1 bar', 'readings[0].backPressure', /not both/],
    ['wasted: 5.2 L/min', 'waste: 5.2 L/min', 'readings[0].waste', /wasted/],
    ['fall: 2 m', 'fall: 2', 'rig.fall', /2/],
    ['ram: DN25', 'ram: DN26', 'ram', /DN26/],
    ['ram: DN25', 'ram: DN25\ndate: 2026-13-40', 'date', /2026-08-19/],
    [
      'wasted: 5.2 L/min',
      'wasted: { volume: 1 L, times: [0 s] }',
      'readings[0].wasted.times[0]',
      /nought/,
    ],
    ['wasted: 5.2 L/min', 'handStrokes: 2.5', 'readings[0].handStrokes', /whole number/],
    ['test@1', 'site@1', 'fallwright', /site and not a test/],
    ['test@1', 'test@2', 'fallwright', /newer/],
  ])('%s → %s', (from, to, field, words) => {
    const found = faults(short.replace(from, to));
    const one = found.find((fault) => fault.field === field);
    expect(found.map((fault) => fault.field)).toContain(field);
    expect(one?.message).toMatch(words);
    expect(one?.line).toBeGreaterThan(0);
  });

  test('a reading of nothing, and a file that is none', () => {
    expect(
      faults(
        'fallwright: test@1\nrig: { fall: 2 m, drive: { pipe: galvanised steel DN25, length: 9 m } }\nram: DN25\nreadings: [ { lift: 8 m } ]',
      )[0]?.message,
    ).toContain('Nothing was read');
    expect(faults('')[0]?.message).toContain('empty');
    expect(testFromData([])).toMatchObject({ ok: false });
  });
});
