import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { fromJSONSchema } from 'zod';
import { LARKRISE } from '../fixtures/larkrise.ts';
import { fieldsAt } from '../schema-fields.ts';
import { installationOf } from './installation-of.ts';
import { siteJsonSchema } from './json-schema.ts';
import { readSite } from './read-site.ts';
import { siteSchema } from './site-schema.ts';
import { writeSite } from './write-site.ts';

const examples = new URL('../../examples/', import.meta.url);
const files = readdirSync(examples).filter((name) => name.endsWith('.yaml'));
const committed = JSON.parse(
  readFileSync(new URL('../schema/site.schema.json', import.meta.url), 'utf8'),
);

test('the committed JSON Schema is the one the reader makes', () => {
  expect(committed).toEqual(JSON.parse(JSON.stringify(siteJsonSchema())));
});

test('there are examples, the short one among them', () => {
  expect(files.length).toBeGreaterThanOrEqual(7);
  expect(readFileSync(new URL('larkrise-spring.yaml', examples), 'utf8')).toBe(LARKRISE);
});

describe.each(files)('%s', (file) => {
  const text = readFileSync(new URL(file, examples), 'utf8');

  test('reads and can be put together', () => {
    const read = readSite(text);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(read.warnings).toEqual([]);
    expect(installationOf(read.site).installation.driveLine.segments.length).toBeGreaterThan(0);
  });

  test('fits the JSON Schema', () => {
    const checked = fromJSONSchema(committed).safeParse(parse(text));
    expect(checked.error?.issues ?? []).toEqual([]);
  });

  test('written and read again it is the same site', () => {
    const read = readSite(text);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const again = readSite(writeSite(read.site));
    expect(again).toEqual({ ok: true, site: read.site, warnings: [] });
  });
});

test('the JSON Schema refuses what the reader refuses', () => {
  const schema = fromJSONSchema(committed);
  expect(schema.safeParse({ ...parse(LARKRISE), fall: 1.9 }).success).toBe(false);
  expect(schema.safeParse({ ...parse(LARKRISE), lenght: '1 m' }).success).toBe(false);
  const { fall: _, ...withoutFall } = parse(LARKRISE);
  expect(schema.safeParse(withoutFall).success).toBe(false);
});

test('the short example is written as a person would', () => {
  const read = readSite(LARKRISE);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  expect(writeSite(read.site)).toBe(`fallwright: site@1
name: Larkrise spring
source: { flow: 14 L/min }
fall: 1.9 m
drive:
  - { pipe: PE100 SDR11 25, length: 14 m }
ram: DN20
lift: 12 m
delivery:
  - { pipe: PE100 SDR11 20, length: 160 m }
demand: 900 L/day
`);
});

const page = readFileSync(new URL('../../docs/site-file.md', import.meta.url), 'utf8');
const blocks = [...page.matchAll(/```yaml\n([\s\S]*?)```/g)].map(([, block = '']) => block);

describe('docs/site-file.md', () => {
  test('shows the short example and others', () => {
    expect(blocks[0]).toBe(LARKRISE);
    expect(blocks.length).toBeGreaterThan(3);
  });

  test.each(blocks)('a block reads: %#', (block) => {
    const read = readSite(block);
    expect(read).toMatchObject({ ok: true, warnings: [] });
  });

  test('names every field that a site, a source and a pipe may have', () => {
    const paths = [
      [],
      ['source'],
      ['drive', 0],
      ['ram'],
      ['ram', 'wasteValve'],
      ['ram', 'deliveryValve'],
    ];
    const names = paths.flatMap((path) => fieldsAt(siteSchema, path));
    expect(names.length).toBeGreaterThan(40);
    for (const name of names) expect(page).toContain(name);
  });
});
