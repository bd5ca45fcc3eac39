/** Readings in a site file: what they turn into, and what is said when they are missing, few, or contradict. */
import { describe, expect, test } from 'vitest';
import { LARKRISE } from '../fixtures/larkrise.ts';
import { gaugedSource, sourceFlowOf, supplyOf } from './gauging-of.ts';
import { givensOf } from './givens.ts';
import { heightOf } from './height-of.ts';
import { installationOf } from './installation-of.ts';
import { readSite } from './read-site.ts';
import { writeSite } from './write-site.ts';

const FLOW = 'source: { flow: 14 L/min }';
const FALL = 'fall: 1.9 m\n';
const LIFT = 'lift: 12 m ';

function read(from: string, to: string) {
  if (!LARKRISE.includes(from)) throw new Error(`the example has no “${from}”`);
  return readSite(LARKRISE.replace(from, to));
}

function siteOf(from: string, to: string) {
  const found = read(from, to);
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return found;
}

const gauging = (...list: readonly string[]) =>
  `source: { gauging: [ ${list.map((one) => `{ ${one} }`).join(', ')} ] }`;
const BUCKET = 'method: bucket, volume: 10 L, times: [42 s, 44.5 s, 43 s]';
const NOTCH =
  'method: v-notch, angle: 28°, head: [52 mm, 52 mm, 52 mm], crestHeight: 0.3 m, channelWidth: 0.8 m';

describe('a source that was gauged', () => {
  test('has the gauged flow, with its spread, as measured', () => {
    const { site, warnings } = siteOf(FLOW, gauging(BUCKET));
    expect(warnings).toEqual([]);
    const flow = sourceFlowOf(site.source);
    expect(flow?.value).toBeCloseTo(0.01 / (129.5 / 3), 12);
    expect(flow?.origin).toBe('measured');
    expect((flow?.spread ?? 0) / (flow?.value ?? 1)).toBeCloseTo(0.0262, 3);
    expect(installationOf(site).installation.source).toEqual({
      kind: 'steady',
      yield: flow?.value,
    });
  });

  test('every method of the file reads and is worked out', () => {
    const { site, warnings } = siteOf(
      FLOW,
      gauging(
        'method: bucket, volume: 10 L, times: [10 s, 10.2 s, 9.9 s], date: 2026-05-02, by: Ann, note: rim',
        'method: v-notch, angle: 90°, head: [60 mm, 61 mm], crestHeight: 0.4 m, channelWidth: 1 m, freeDrop: 0.1 m',
        'method: rectangular weir, width: 0.3 m, head: [17 mm, 17.5 mm], crestHeight: 0.3 m, channelWidth: 0.8 m',
        'method: float, length: 10 m, times: [40 s, 41 s], width: 0.4 m, depths: [4 cm, 5 cm], coefficient: 0.85',
        'method: float, length: 10 m, times: [40 s, 41 s], area: 0.005 m2',
        'method: drop, area: 2 m2, drop: 0.12 m, time: 5 min',
      ),
    );
    const { gaugings, combined } = gaugedSource(site.source) ?? { gaugings: [] };
    expect(gaugings.map(({ gauged }) => gauged.flow * 6e4)).toEqual([
      expect.closeTo(6e2 / (30.1 / 3), 6),
      // By hand: 60.5 mm on 90°, 17.25 mm on 0.3 m of crest in 0.8 m (Cₑ 0.590, b + 2.6 mm, h + 1 mm).
      expect.closeTo(76.5, 0),
      expect.closeTo(78.1, 0),
      expect.closeTo((0.85 * 10 * 0.018 * 6e4) / 40.5, 6),
      expect.closeTo((0.85 * 10 * 0.005 * 6e4) / 40.5, 6),
      expect.closeTo(48, 6),
    ]);
    expect(combined?.spread).toBeGreaterThan(0);
    // The low head on the weir, one drop alone, and methods that lie apart are told; each says where.
    const told = warnings.map(({ field, message }) => `${field} ${message}`).join('\n');
    expect(told).toContain('source.gauging[2] The rectangular weir: the head is 17');
    expect(told).toContain('source.gauging[5] The drop of the store: one reading');
    // A coefficient that nobody gave is an assumption.
    const assumed = installationOf(site).assumptions.map(({ what }) => what);
    expect(assumed).toContain('coefficient of the floats');
  });

  test('a written flow counts before the gauged one, and is warned of when they disagree', () => {
    const both = (flow: string) =>
      siteOf(FLOW, gauging(BUCKET).replace('{ gauging', `{ flow: ${flow}, gauging`));
    const apart = both('20 L/min ± 1 L/min');
    expect(sourceFlowOf(apart.site.source)?.value).toBeCloseTo(20e-3 / 60, 9);
    expect(apart.warnings).toHaveLength(1);
    expect(apart.warnings[0]).toMatchObject({ kind: 'unusual', field: 'source.flow' });
    expect(apart.warnings[0]?.message).toMatch(/20 L\/min.*13\.9.*±.*0\.36/s);
    expect(both('14 L/min').warnings).toEqual([]);
  });

  test('two methods that disagree by more than their spreads are named with both figures', () => {
    const { warnings } = siteOf(FLOW, gauging(BUCKET, NOTCH.replaceAll('52 mm', '70 mm')));
    expect(warnings).toHaveLength(1);
    expect(warnings[0]?.field).toBe('source.gauging[1]');
    expect(warnings[0]?.message).toMatch(/timed container gave 13\.9.*V-notch 29/s);
    const days = siteOf(
      FLOW,
      gauging(
        `${BUCKET}, date: 2026-08-01`,
        `${NOTCH.replaceAll('52 mm', '70 mm')}, date: 2026-03-01`,
      ),
    );
    expect(days.warnings[0]?.message).toContain('different days');
    expect(siteOf(FLOW, gauging(BUCKET, NOTCH)).warnings).toEqual([]);
  });

  test('one reading, and readings a fifth apart, are doubted and computed', () => {
    const one = siteOf(FLOW, gauging('method: bucket, volume: 10 L, times: 43 s'));
    expect(one.warnings[0]?.message).toContain('one reading says nothing');
    const apart = siteOf(FLOW, gauging('method: bucket, volume: 10 L, times: [36 s, 43 s, 50 s]'));
    expect(apart.warnings[0]?.message).toMatch(/spread over 33.%, more than 20.%/);
    expect(sourceFlowOf(apart.site.source)?.value).toBeCloseTo(0.01 / 43, 9);
  });

  test('a weir outside its range names the condition and still has a flow', () => {
    const { site, warnings } = siteOf(
      FLOW,
      gauging(NOTCH.replace('crestHeight: 0.3 m', 'crestHeight: 0.11 m').replaceAll('52', '46')),
    );
    expect(warnings).toHaveLength(1);
    expect(warnings[0]?.message).toMatch(
      /head is 46.mm, and under 50.mm.*0\.42 times the height of the crest.*computed all the same/s,
    );
    expect(sourceFlowOf(site.source)?.value).toBeGreaterThan(0);
  });

  test('what a method needs is asked for, and what it does not know is refused', () => {
    const faults = (entry: string) => {
      const found = read(FLOW, gauging(entry));
      return found.ok ? [] : found.problems.map(({ kind, field }) => `${kind} ${field}`);
    };
    expect(faults('method: bucket, times: [42 s]')).toEqual(['missing source.gauging[0]']);
    expect(faults('method: bucket, volume: 10 L, times: [42 s], angle: 90°')).toEqual([
      'contradiction source.gauging[0].angle',
    ]);
    expect(
      faults(
        'method: rectangular weir, width: 0.9 m, head: 5 cm, crestHeight: 0.3 m, channelWidth: 0.8 m',
      ),
    ).toEqual(['contradiction source.gauging[0].width']);
    expect(faults('method: float, length: 10 m, times: [30 s]')).toEqual([
      'missing source.gauging[0]',
    ]);
    expect(faults('method: buckets, volume: 10 L, times: [42 s]')).toEqual([
      'unknownWord source.gauging[0].method',
    ]);
    expect(faults('method: bucket, volume: 10 L, times: [0 s]')).toEqual([
      'outOfRange source.gauging[0].times[0]',
    ]);
    expect(faults('method: bucket, volume: 10 L, times: [42]')).toEqual([
      'noUnit source.gauging[0].times[0]',
    ]);
    expect(faults('method: bucket, volume: 10 L, tims: [42 s]').sort()).toEqual([
      'unknownField source.gauging[0].tims',
    ]);
  });

  test('a store takes what was gauged as its inflow', () => {
    const { site } = siteOf(
      FLOW,
      gauging(BUCKET).replace('{ gauging', '{ store: spring box, volume: 400 L, gauging'),
    );
    expect(installationOf(site).installation.source).toMatchObject({
      kind: 'store',
      inflow: expect.closeTo(0.01 / (129.5 / 3), 9),
    });
  });
});

describe('what may be taken', () => {
  const supply = (source: string) => supplyOf(siteOf(FLOW, `source: { ${source} }`).site.source);
  const perMinute = (flow: number | undefined) => (flow ?? 0) * 6e4;

  test('the lower of flow and dry season, times the share', () => {
    const both = supply('flow: 14 L/min, drySeason: 9 L/min, share: 50 %');
    expect(perMinute(both.flow)).toBeCloseTo(4.5, 9);
    expect(both.from).toBe('drySeason');
    expect(perMinute(supply('flow: 14 L/min, drySeason: 20 L/min').flow)).toBeCloseTo(14, 9);
    expect(perMinute(supply('flow: plenty, drySeason: 9 L/min').flow)).toBeCloseTo(9, 9);
    expect(perMinute(supply('drySeason: 9 L/min').flow)).toBeCloseTo(9, 9);
    expect(supply('flow: plenty').flow).toBeUndefined();
  });

  test('a share of nought or over the whole is refused', () => {
    for (const share of ['0 %', '120 %']) {
      const found = read(FLOW, `source: { flow: 14 L/min, share: ${share} }`);
      expect(found.ok ? [] : found.problems).toMatchObject([
        { kind: 'outOfRange', field: 'source.share' },
      ]);
    }
  });
});

const BOOK = `fall:
  levels:
    - { at: water, back: 0.412 m }
    - { at: peg, fore: 1.633 m, back: 0.655 m }
    - { at: ram, fore: 1.501 m, back: 1.498 m }
    - { at: peg 2, fore: 0.640 m, back: 1.620 m }
    - { at: water, fore: 0.407 m }
  between: [water, ram]
`;

describe('heights from readings', () => {
  test('a level book is a measured quantity for everything else, and is written back as it stood', () => {
    const { site, warnings } = siteOf(FALL, BOOK);
    expect(warnings).toEqual([]);
    // Closes 4 mm out, half of it shared out at the ram; see the engine's test for the spread.
    expect(site.fall).toMatchObject({ origin: 'measured', value: expect.closeTo(2.069, 9) });
    expect(site.fall.spread).toBeCloseTo(0.002 * Math.SQRT2, 9);
    expect(installationOf(site).installation.fall).toBe(site.fall.value);
    expect(givensOf(site).find(({ path }) => path[0] === 'fall')?.given).toBe(site.fall);
    expect(writeSite(site)).toContain('{ at: peg, back: 0.655 m, fore: 1.633 m }');
    expect(readSite(writeSite(site))).toEqual({ ok: true, site, warnings: [] });
  });

  test('a book that closes badly is warned of, with its numbers', () => {
    const { warnings } = siteOf(FALL, BOOK.replace('0.407', '0.467'));
    expect(warnings).toHaveLength(1);
    expect(warnings[0]?.message).toMatch(/closes 56.mm out over 4 set-ups, and 10.mm are allowed/);
  });

  test('a book from the ram up to the water gives the same fall, either way round', () => {
    const up = siteOf(FALL, 'fall: { levels: [ { back: 2.31 m }, { fore: 0.31 m } ] }\n');
    const down = siteOf(FALL, 'fall: { levels: [ { back: 0.31 m }, { fore: 2.31 m } ] }\n');
    expect(up.site.fall.value).toBeCloseTo(2, 12);
    expect(down.site.fall.value).toBeCloseTo(2, 12);
  });

  test('what is wrong with a book is said at its point', () => {
    const faults = (text: string) => {
      const found = read(FALL, `fall: ${text}\n`);
      return found.ok ? [] : found.problems.map(({ kind, field }) => `${kind} ${field}`);
    };
    expect(faults('{ levels: [ { back: 1 m }, { fore: 2 m }, { fore: 2 m } ] }')).toEqual([
      'missing fall.levels[1]',
    ]);
    expect(faults('{ levels: [ { back: 1 }, { fore: 2 }, { fore: 2 }, { fore: 3 } ] }')).toEqual([
      'noUnit fall.levels[0].back',
      'noUnit fall.levels[1].fore',
      'noUnit fall.levels[2].fore',
      'noUnit fall.levels[3].fore',
    ]);
    expect(faults('{ levels: [ { at: a, back: 1 m }, { fore: 2 m } ], between: [a, b] }')).toEqual([
      'unknownWord fall.between',
    ]);
    expect(
      faults('{ levels: [ { at: a, back: 1 m }, { at: b, fore: 3 m } ], between: [b, a] }'),
    ).toEqual(['contradiction fall.between']);
    expect(
      faults(
        '{ levels: [ { at: a, back: 1 m }, { at: b, fore: 3 m, back: 3 m }, { at: a, fore: 1 m } ] }',
      ),
    ).toEqual(['missing fall']);
    expect(faults('{ hops: [1 m], gauge: 1 bar }')).toEqual(['contradiction fall.gauge']);
    expect(faults('{ gauge: 0.19 bar }')).toEqual(['missing fall']);
    expect(faults('{ gauge: 3 bar, class: 1.6 %, range: 2.5 bar }')).toEqual([
      'contradiction fall.gauge',
    ]);
    expect(faults('{ hops: [1 m], class: 1.6 % }')).toEqual(['contradiction fall.class']);
    expect(faults('{ satellite: 312 m }')).toEqual(['missing fall.satellite']);
    expect(faults('{ hops: [1 m, 1 m], each: good }')).toEqual(['badSpread fall.each']);
    expect(faults('{ note: paced out }')).toEqual(['missing fall']);
    expect(faults('{ lvels: [ { back: 1 m } ] }')).toEqual(['unknownField fall.lvels']);
    expect(faults('{ value: 1.9 m, origin: measured, nte: x }')).toEqual(['unknownField fall.nte']);
  });

  test('hops add up', () => {
    const { site } = siteOf(LIFT, 'lift: { hops: [4 m, 4 m, 4.1 m], each: ± 2 cm } ');
    expect(site.lift.value).toBeCloseTo(12.1, 12);
    expect(site.lift.spread).toBeCloseTo(0.02 * Math.sqrt(3), 12);
  });

  test('a gauge is as good as its class, and is warned of when that is coarse for the fall', () => {
    const gauge = (text: string) => siteOf(FALL, `fall: { gauge: ${text}, gaugeHeight: 0.2 m }\n`);
    const coarse = gauge('0.19 bar, class: 1.6 %, range: 2.5 bar');
    expect(coarse.site.fall.value).toBeCloseTo(19_000 / 9806.65 + 0.2, 9);
    expect(coarse.site.fall.spread).toBeCloseTo(4000 / 9806.65 / Math.sqrt(3), 9);
    expect(coarse.warnings[0]?.message).toMatch(
      /known to ± 0\.24.m only, by the gauge’s own class/,
    );
    expect(gauge('0.19 bar, class: 1 %, range: 0.4 bar').warnings).toEqual([]);
  });

  test('satellite heights are marked too coarse for a fall', () => {
    const { site, warnings } = siteOf(FALL, 'fall: { satellite: [312 m, 310 m] }\n');
    expect(site.fall.value).toBe(2);
    expect(warnings.map(({ message }) => message).join(' ')).toContain(
      'too coarse to choose a ram',
    );
    const found = site.fall.readings && heightOf(site.fall.readings);
    expect(found?.ok && found.value.isTooCoarse).toBe(true);
  });

  test('a book in feet gives a height in feet', () => {
    const { site } = siteOf(FALL, 'fall: { levels: [ { back: 7.21 ft }, { fore: 0.9 ft } ] }\n');
    expect(site.fall.text).toMatch(/^6\.310.±.0\.009.ft$/);
  });
});

test('a height that is written beside its readings is used, and told when they disagree', () => {
  const near = siteOf(FALL, 'fall: { value: 1.9 m, hops: [1.2 m, 0.72 m] }\n');
  expect(near.warnings).toEqual([]);
  expect(near.site.fall).toMatchObject({ value: 1.9, text: '1.9 m', origin: 'stated' });
  const far = siteOf(
    FALL,
    'fall: { value: { value: 1.9 m, origin: measured }, hops: [1.2 m, 1.1 m] }\n',
  );
  expect(far.site.fall).toMatchObject({ value: 1.9, origin: 'measured' });
  expect(far.warnings.map(({ message }) => message)).toEqual([
    expect.stringMatching(/^The fall is written as 1\.9 m, and was measured as 2\.300\s±\s0\.028/),
  ]);
  const noted = siteOf(FALL, 'fall: { value: 1.9 m, note: by eye }\n');
  expect(noted.site.fall).toMatchObject({ value: 1.9, readings: { note: 'by eye' } });
  expect(noted.warnings).toEqual([]);
  const again = readSite(writeSite(far.site));
  expect(again.ok && again.site.fall).toEqual(far.site.fall);
});

test('a share and a class may stand as bare numbers, which YAML hands over as such, and come back as written', () => {
  const { site } = siteOf(FLOW, 'source: { flow: 14 L/min, share: 0.6 }');
  expect(site.source).toMatchObject({ share: { value: 0.6, text: '0.6' } });
  const measured = siteOf(LIFT, 'lift: { gauge: 1.2 bar, range: 4 bar, class: 1.6 } ');
  expect(measured.site.lift).toMatchObject({ readings: { class: { value: 0.016 } } });
  for (const one of [site, measured.site]) expect(readSite(writeSite(one)).ok).toBe(true);
  const over = read(FLOW, 'source: { flow: 14 L/min, share: 60 }');
  expect(over.ok ? [] : over.problems).toMatchObject([
    { kind: 'outOfRange', field: 'source.share' },
  ]);
});
