import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { fromJSONSchema } from 'zod';
import { fieldsAt } from '../schema-fields.ts';
import { Assumptions } from '../site/assumption.ts';
import { installationOf } from '../site/installation-of.ts';
import { ramOf } from '../site/ram-of.ts';
import { readSite } from '../site/read-site.ts';
import type { SiteRead } from '../site/site-from-data.ts';
import type { Site } from '../site/site-schema.ts';
import { writeSite } from '../site/write-site.ts';
import { rangeJsonSchema } from './json-schema.ts';
import { type Range, type RangeRam, rangeSchema } from './range-schema.ts';
import { rangeFromData, readRange } from './read-range.ts';
import {
  copied,
  ramAt,
  ramsMade,
  referenceTo,
  retired,
  revised,
  revisionsOf,
  withDetails,
} from './revisions.ts';
import { ramForSite, siteWithNewest } from './site-copy.ts';
import { tuningsOf } from './tunings-of.ts';
import { writeRange } from './write-range.ts';

const text = readFileSync(new URL('../../examples/workshop/rams.yaml', import.meta.url), 'utf8');
const committed = JSON.parse(
  readFileSync(new URL('../schema/range.schema.json', import.meta.url), 'utf8'),
);

function rangeIn(source: string): Range {
  const read = readRange(source);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  expect(read.warnings).toEqual([]);
  return read.range;
}

const range = rangeIn(text);

function ramCalled(id: string, within: Range = range): RangeRam {
  const ram = within.rams.find((one) => one.id === id);
  if (!ram) throw new Error(`no ram called ${id}`);
  return ram;
}

function problemsIn(source: string) {
  const read = readRange(source);
  if (read.ok) throw new Error('this should not read');
  return read.problems;
}

/** The example with one thing changed. */
function changed(from: string, to: string): string {
  expect(text).toContain(from);
  return text.replace(from, to);
}

describe('the example', () => {
  test('fits the JSON Schema, which is the one the reader makes', () => {
    expect(committed).toEqual(JSON.parse(JSON.stringify(rangeJsonSchema())));
    expect(fromJSONSchema(committed).safeParse(parse(text)).error?.issues ?? []).toEqual([]);
    const slip = { ...parse(text), makre: 'x' };
    expect(fromJSONSchema(committed).safeParse(slip).success).toBe(false);
  });

  test('written and read again it is the same range', () => {
    expect(rangeIn(writeRange(range))).toEqual(range);
  });

  test('every tuning of every revision is a ram', () => {
    const all = range.rams.flatMap((ram) => revisionsOf(ram).flatMap(tuningsOf));
    expect(all.length).toBeGreaterThan(12);
    for (const { form } of all) {
      const ram = ramOf(form, 0, new Assumptions());
      expect(ram.bore).toBeGreaterThan(0.01);
      expect(ram.name).toBe(form.name);
    }
  });
});

describe('tunings', () => {
  test('settings make every pair of stroke and weight', () => {
    expect(tuningsOf(ramCalled('swallow-25')).map(({ name }) => name)).toEqual([
      'stroke 2.6 mm, weight 70 g',
      'stroke 2.6 mm, weight 95 g',
      'stroke 3.2 mm, weight 70 g',
      'stroke 3.2 mm, weight 95 g',
      'stroke 3.8 mm, weight 70 g',
      'stroke 3.8 mm, weight 95 g',
    ]);
  });

  test('a tuning changes what it names and nothing else', () => {
    const [own, , , heavy] = tuningsOf(ramCalled('swallow-25'));
    const ram = ramOf(heavy?.form, 0, new Assumptions());
    const other = ramOf(own?.form, 0, new Assumptions());
    expect(ram.wasteValve.stroke).toBeCloseTo(3.2e-3, 9);
    expect(ram.wasteValve.movingMass).toBeCloseTo(0.095, 6);
    expect(other.wasteValve.stroke).toBeCloseTo(2.6e-3, 9);
    expect({ ...ram, wasteValve: other.wasteValve }).toEqual(other);
  });

  test('springs set their forces', () => {
    const hard = tuningsOf(ramCalled('heron-32')).find(({ name }) => name === 'spring hard');
    expect(ramOf(hard?.form, 0, new Assumptions()).wasteValve).toMatchObject({
      kind: 'sprung',
      forceAtOpen: 1.5,
      forceAtShut: 1.3,
    });
  });

  test('a ram without tunings is offered as it is built', () => {
    const [only, ...more] = tuningsOf({ name: 'Plain', ram: 'DN25' });
    expect(more).toEqual([]);
    expect(only).toEqual({ name: 'as built', form: { name: 'Plain', typical: 'DN25' } });
  });
});

describe('revisions', () => {
  test('what bears on an answer makes a new revision, and the one before stays word for word', () => {
    const before = ramCalled('wren-20');
    const next = revised(range, {
      id: 'wren-20',
      ram: 'DN25',
      date: '2026-05-01',
      change: 'wider',
    });
    const ram = ramCalled('wren-20', next);
    expect(ram).toMatchObject({ revision: 2, ram: 'DN25', date: '2026-05-01', change: 'wider' });
    expect(ram.serials).toBeUndefined();
    expect(ram.tunings).toEqual(before.tunings);
    expect(ram.earlier?.[0]).toMatchObject({ revision: 1, ram: 'DN20', serials: before.serials });
    expect(ramAt(next, 'wren-20@1')?.revision).toMatchObject({ ram: 'DN20' });
    expect(rangeIn(writeRange(next))).toEqual(next);
    expect(ramCalled('swallow-25', next)).toBe(ramCalled('swallow-25'));
  });

  test('a revision that changes nothing is none', () => {
    expect(revised(range, { id: 'wren-20', ram: 'DN20', change: 'nothing' })).toBe(range);
  });

  test('three revisions in a row keep every one of them', () => {
    let next = range;
    for (const size of ['DN25', 'DN32', 'DN40']) next = revised(next, { id: 'wren-20', ram: size });
    const sizes = revisionsOf(ramCalled('wren-20', next)).map(({ ram }) => ram);
    expect(sizes).toEqual(['DN40', 'DN32', 'DN25', 'DN20']);
    expect(referenceTo(ramCalled('wren-20', next))).toBe('wren-20@4');
  });

  test('price, serial numbers and remarks change without one', () => {
    const next = withDetails(range, 'wren-20', { remarks: 'sold out' });
    expect(ramCalled('wren-20', next)).toMatchObject({ remarks: 'sold out' });
    expect(ramCalled('wren-20', next).revision).toBeUndefined();
  });

  test('a copy begins at revision 1 with nothing built', () => {
    const next = copied(range, 'swallow-25', { id: 'swift-25', name: 'Swift 25' });
    expect(next.rams.map(({ id }) => id)).toEqual([
      'wren-20',
      'swallow-25',
      'swift-25',
      'heron-32',
      'osprey-50',
    ]);
    const copy = ramCalled('swift-25', next);
    expect(copy).toMatchObject({
      revision: 1,
      name: 'Swift 25',
      change: 'copied from swallow-25@3',
    });
    expect(copy.serials ?? copy.earlier).toBeUndefined();
    expect(rangeIn(writeRange(next))).toEqual(next);
  });

  test('a retired ram stays in the file and is not proposed', () => {
    const next = retired(range, 'swallow-25');
    expect(ramsMade(next).map(({ id }) => id)).not.toContain('swallow-25');
    expect(ramAt(next, 'swallow-25@2')).toBeDefined();
    expect(retired(next, 'swallow-25', false)).toEqual(range);
  });

  test('a ram that is not there is the caller’s mistake', () => {
    expect(() => retired(range, 'wren')).toThrow('id must be that of a ram in the range, got wren');
    expect(() => copied(range, 'wren-20', { id: 'heron-32', name: 'x' })).toThrow('must be new');
  });
});

describe('a site with a ram of the range', () => {
  const LONG = 'stroke 3.8 mm, weight 95 g';
  const place = siteOf(
    readSite(`fallwright: site@1
source: { flow: 30 L/min }
fall: 2.4 m
drive: { pipe: galvanised steel DN25, length: 14 m }
lift: 15 m
`),
  );

  function siteOf(read: SiteRead): Site {
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    return read.site;
  }
  const withRam = (tuning: string, at = 'swallow-25@3'): Site => {
    const found = ramAt(range, at);
    if (!found) throw new Error(`no ${at}`);
    return { ...place, ram: ramForSite(found.ram, tuning, found.revision) };
  };

  test('is whole without the range: mailed and read again it has the same installation', () => {
    const site = withRam(LONG);
    const written = writeSite(site);
    expect(written).toContain('range: swallow-25@3');
    expect(written).toContain(`tuning: ${LONG}`);
    const again = siteOf(readSite(written));
    expect(again).toEqual(site);
    const { ram } = installationOf(again).installation;
    expect(ram).toMatchObject({ name: 'Swallow 25', bore: 0.025, rating: 1e6 });
    expect(ram.wasteValve.stroke).toBeCloseTo(3.8e-3, 9);
  });

  test('is the newest, or names what is newer', () => {
    expect(siteWithNewest(withRam(LONG), range)).toMatchObject({ kind: 'isNewest' });
    const older = withRam('long stroke', 'swallow-25@2');
    expect(siteWithNewest(older, range)).toMatchObject({
      kind: 'noSuchTuning',
      newest: 'swallow-25@3',
      tuning: 'long stroke',
    });
    const next = revised(range, {
      id: 'swallow-25',
      ram: { ...(ramCalled('swallow-25').ram as object), typical: 'DN25' },
      change: 'another body',
    });
    const news = siteWithNewest(withRam(LONG), next);
    expect(news).toMatchObject({
      kind: 'newer',
      newest: 'swallow-25@4',
      changes: ['another body'],
      site: { ram: { range: 'swallow-25@4', tuning: LONG, typical: 'DN25' } },
    });
  });

  test('says when its copy is not what the range holds', () => {
    const site = withRam(LONG);
    const slipped = writeSite(site).replace('seat: 27 mm', 'seat: 29 mm');
    expect(siteWithNewest(siteOf(readSite(slipped)), range)).toMatchObject({
      kind: 'copyDiffers',
      site: { ram: site.ram },
    });
  });

  test('from elsewhere, or from nowhere', () => {
    expect(siteWithNewest(place, range)).toEqual({ kind: 'notFromRange' });
    const stranger = writeSite(withRam(LONG)).replace('swallow-25@3', 'swallow-25@9');
    expect(siteWithNewest(siteOf(readSite(stranger)), range)).toEqual({
      kind: 'unknownRam',
      reference: 'swallow-25@9',
    });
  });

  test('a reference without the parts is a problem that says so', () => {
    const read = readSite(writeSite(place).replace('lift:', 'ram: { range: swallow-25@3 }\nlift:'));
    expect(read).toMatchObject({ ok: false, problems: [{ kind: 'missing', field: 'ram.range' }] });
    const wrong = readSite(writeSite(place).replace('lift:', 'ram: { range: Swallow }\nlift:'));
    expect(wrong).toMatchObject({ ok: false, problems: [{ field: 'ram.range', line: 6 }] });
  });
});

describe('mistakes', () => {
  test.each([
    ['misspelt field', 'price: 320 GBP', 'prise: 320 GBP', 'rams[1].prise', 'Did you mean price?'],
    ['word from elsewhere', 'price: 320 GBP', 'cost: 320 GBP', 'rams[1].cost', 'price: 320 GBP'],
    ['no currency', 'price: 320 GBP', 'price: "320"', 'rams[1].price', 'of which currency?'],
    ['bare price', 'price: 320 GBP', 'price: 320', 'rams[1].price', '320 GBP'],
    ['no such currency', 'price: 320 GBP', 'price: 320 GPB', 'rams[1].price', 'is no currency'],
    ['dollars', 'price: 320 GBP', 'price: $320', 'rams[1].price', 'USD, CAD'],
    ['half a penny', 'price: 320 GBP', 'price: 320.005 GBP', 'rams[1].price', '2 digits at most'],
    ['two currencies', 'price: 320 GBP', 'price: 320 EUR', 'rams[1].price', 'in one currency'],
    ['id', 'id: swallow-25', 'id: Swallow 25', 'rams[1].id', 'such as swallow-25'],
    ['id twice', 'id: swallow-25', 'id: wren-20', 'rams[1].id', 'Two rams have the id wren-20'],
    [
      'no unit',
      'weights: [ 70 g, 95 g ]',
      'weights: [ 70, 95 ]',
      'rams[1].settings.weights[0]',
      '70 what?',
    ],
    ['steps', 'steps: 3', 'steps: 1', 'rams[1].settings.stroke.steps', 'steps: 3'],
    [
      'most below least',
      'most: 3.8 mm',
      'most: 1.8 mm',
      'rams[1].settings.stroke.most',
      'more than the least',
    ],
    ['too many', 'steps: 3', 'steps: 4000', 'rams[1].settings', 'at most 60'],
    [
      'stroke in metres',
      'least: 2.6 mm',
      'least: 2.6 m',
      'rams[1].settings.stroke.least',
      'outside',
    ],
    [
      'name twice',
      'name: heavy',
      'name: light',
      'rams[0].tunings[2].name',
      'Two tunings are called',
    ],
    [
      'a spring on a weight',
      '{ name: heavy, weight: 50 g }',
      '{ name: heavy, forceOpen: 1 N }',
      'rams[0].tunings[2]',
      'held open by its weight',
    ],
    [
      'revisions out of order',
      'revision: 2',
      'revision: 3',
      'rams[1].earlier[0].revision',
      'stands under revision 3',
    ],
    ['no revision', '    revision: 3\n', '', 'rams[1]', 'Write revision: 3.'],
    ['half a ram', 'ram: DN20 ', 'ram: { rating: 6 bar } ', 'rams[0].ram', 'typical: DN25'],
    ['no ram', '    ram: DN20 ', '    # ', 'rams[0].ram', 'What the ram is made of is missing'],
    ['no such size', 'ram: DN20 ', 'ram: DN22 ', 'rams[0].ram', 'DN15, DN20'],
    ['weight of the whole', 'mass: 6 kg', 'mass: 6 t', 'rams[0].mass', ''],
  ])('%s', (_what, from, to, field, says) => {
    const [first] = problemsIn(changed(from, to));
    expect(first).toMatchObject({ field });
    expect(first?.message).toContain(says);
    const lines = changed(from, to).split('\n');
    expect(first?.line).toBeGreaterThan(0);
    expect(first?.line).toBeLessThanOrEqual(lines.length);
  });

  test('a slip in one ram does not hide what is wrong with another', () => {
    const slips = changed('price: 320 GBP', 'prise: 320 GBP').replace('name: heavy', 'name: light');
    expect(problemsIn(slips).map(({ field }) => field)).toEqual([
      'rams[0].tunings[2].name',
      'rams[1].prise',
    ]);
  });

  test('a site is no range, nor the other way round', () => {
    expect(problemsIn(text.replace('range@1', 'site@1'))).toEqual([
      expect.objectContaining({ kind: 'wrongFormat', field: 'fallwright', line: 2 }),
    ]);
    expect(readSite(text)).toMatchObject({ ok: false, problems: [{ kind: 'wrongFormat' }] });
  });

  test('data that is no text reads as well, without lines', () => {
    expect(rangeFromData(parse(text))).toEqual({ ok: true, range, warnings: [] });
    const [problem] = problemsIn('[]');
    expect(problem?.message).toContain('begins with: fallwright: range@1');
  });
});

test('docs name every field', () => {
  const page = readFileSync(new URL('../../docs/range-file.md', import.meta.url), 'utf8');
  const paths = [[], ['rams', 0], ['rams', 0, 'settings'], ['rams', 0, 'tunings', 0]];
  for (const name of paths.flatMap((path) => fieldsAt(rangeSchema, path))) {
    expect(page).toContain(`\`${name}\``);
  }
  const blocks = [...page.matchAll(/```yaml\n([\s\S]*?)```/g)].map(([, block = '']) => block);
  expect(blocks.length).toBeGreaterThan(1);
  for (const block of blocks) {
    if (block.startsWith('fallwright: site')) expect(readSite(block)).toMatchObject({ ok: true });
    else rangeIn(block);
  }
});
