/** How sure each number of a site is: as given, as measured, or by judgement. */
import { sampledAnswer, UNSURE_FACTORS } from '@fallwright/engine';
import { describe, expect, test } from 'vitest';
import { LARKRISE } from '../fixtures/larkrise.ts';
import { gaugedSource } from './gauging-of.ts';
import { installationOf } from './installation-of.ts';
import { readSite } from './read-site.ts';
import type { Site } from './site-schema.ts';
import { type SiteUncertainty, uncertaintiesOf } from './uncertainties-of.ts';

function siteOf(text: string): Site {
  const read = readSite(text);
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return read.site;
}

function changed(from: string, to: string): Site {
  if (!LARKRISE.includes(from)) throw new Error(`the example has no “${from}”`);
  return siteOf(LARKRISE.replace(from, to));
}

function of(site: Site, what: SiteUncertainty['what']): SiteUncertainty | undefined {
  return uncertaintiesOf(site).find((input) => input.what === what);
}

function spread(site: Site, what: SiteUncertainty['what']): number {
  const found = of(site, what);
  if (!found) throw new Error(`nothing unsure about ${what}`);
  return found.spread;
}

describe('heights', () => {
  test('a ± is one standard uncertainty, as it stands', () => {
    const given = of(changed('fall: 1.9 m', 'fall: 1.9 m ± 0.07 m'), 'fall');
    expect(given).toMatchObject({ shape: 'normal', isGiven: true });
    expect(given?.spread).toBeCloseTo(0.07, 12);
  });

  test('without a ± what is measured is surer than what is told', () => {
    const told = of(siteOf(LARKRISE), 'fall');
    expect(told?.isGiven).toBe(false);
    const measured = changed('fall: 1.9 m', 'fall: { value: 1.9 m, origin: measured }');
    const assumed = changed('fall: 1.9 m', 'fall: { value: 1.9 m, origin: assumed }');
    expect(spread(measured, 'fall')).toBeCloseTo(0.01, 12);
    expect(told?.spread).toBeGreaterThan(spread(measured, 'fall'));
    expect(spread(assumed, 'fall')).toBeGreaterThan(told?.spread ?? Infinity);
  });

  test('readings bring their own', () => {
    const hops = changed('lift: 12 m', 'lift: { hops: [4 m, 4 m, 4 m], each: ± 5 cm }');
    // Exact: √3 · 5 cm.
    expect(spread(hops, 'lift')).toBeCloseTo(0.05 * Math.sqrt(3), 9);
    expect(of(hops, 'lift')?.isGiven).toBe(true);
  });
});

describe('the source', () => {
  const flow = '{ flow: 14 L/min }';

  test('a gauged flow has the spread of its readings, and a share takes its part', () => {
    const gauged = changed(
      flow,
      '{ share: 50 %, gauging: { method: bucket, volume: 10 L, times: [43 s, 42 s, 44 s] } }',
    );
    const combined = gaugedSource(gauged.source)?.combined;
    expect(spread(gauged, 'sourceFlow')).toBeCloseTo(0.5 * (combined?.spread ?? 0), 12);
  });

  test('a dry season that limits has its own', () => {
    const dry = changed(flow, '{ flow: 14 L/min, drySeason: 9 L/min ± 1 L/min }');
    expect(spread(dry, 'sourceFlow')).toBeCloseTo(1e-3 / 60, 12);
  });

  test('plenty is never short', () => {
    expect(of(changed(flow, '{ flow: plenty }'), 'sourceFlow')).toBeUndefined();
  });

  test('a store without inflow has no flow to be unsure of', () => {
    const store = changed(flow, '{ store: tank, volume: 1000 L }');
    expect(of(store, 'sourceFlow')).toBeUndefined();
  });
});

describe('pipes', () => {
  const drive = '[ { pipe: PE100 SDR11 25, length: 14 m } ]';

  test('lengths measured one by one add by squares', () => {
    const two = changed(
      drive,
      '[ { pipe: PE100 SDR11 25, length: 8 m ± 3 cm }, { pipe: PE100 SDR11 25, length: 6 m ± 4 cm } ]',
    );
    expect(spread(two, 'driveLength')).toBeCloseTo(0.05, 12);
    expect(of(two, 'driveLength')?.isGiven).toBe(true);
  });

  test('a bore of one’s own has its ±; one from a table its tolerance', () => {
    const own = changed(drive, '[ { material: steel, bore: 20 mm ± 0.4 mm, length: 14 m } ]');
    expect(spread(own, 'driveBore')).toBeCloseTo(4e-4, 12);
    expect(spread(siteOf(LARKRISE), 'driveBore')).toBeCloseTo(0.015 * 0.0204, 9);
  });

  test('steel is surer than plastic, and plastic than hose', () => {
    const walls = ['galvanised steel DN20', 'PE100 SDR11 25', 'garden hose 3/4 in'].map((pipe) =>
      spread(changed('pipe: PE100 SDR11 25', `pipe: ${pipe}`), 'wallStiffness'),
    );
    expect(walls).toEqual([...walls].sort((a, b) => a - b));
    expect(new Set(walls).size).toBe(3);
  });

  test('air is unsure where there is some', () => {
    expect(of(siteOf(LARKRISE), 'trappedAir')).toBeUndefined();
    const told = changed('length: 14 m', 'length: 14 m, air: 10 mL ± 2 mL at 6 m');
    const crest = changed('length: 14 m', 'length: 14 m, laid: over a crest');
    // Air in words carries its ± like any number; as a ratio of the whole.
    expect(spread(told, 'trappedAir')).toBeCloseTo(Math.sqrt(Math.log(1.04)), 9);
    // Five times over is no factor of e⁵.
    const wild = changed('length: 14 m', 'length: 14 m, air: 10 mL ± 50 mL at 6 m');
    expect(spread(wild, 'trappedAir')).toBeLessThan(2);
    expect(spread(crest, 'trappedAir')).toBeGreaterThan(0.5);
  });

  test('a delivery line that was not given may be of any length', () => {
    const none = changed('delivery: { pipe: PE100 SDR11 20, length: 160 m }\n', '');
    expect(of(none, 'deliveryLength')).toMatchObject({ shape: 'logNormal', isGiven: false });
  });
});

describe('the ram', () => {
  test('parts of one’s own are surer than those of a typical one', () => {
    const own = changed('ram: DN20', 'ram: { typical: DN20, stroke: 3 mm, weight: 45 g ± 0.9 g }');
    const typical = siteOf(LARKRISE);
    expect(spread(own, 'stroke')).toBeLessThan(spread(typical, 'stroke'));
    const force = installationOf(own).installation.ram.wasteValve;
    if (force.kind !== 'weighted') throw new Error('a weighted valve');
    // Two per cent of the weight in air is two per cent of what holds it open.
    expect(spread(own, 'valveWeight')).toBeCloseTo(0.02 * force.submergedWeight, 9);
  });

  test('every factor of the model stands once, and the engine takes them all', () => {
    const site = siteOf(LARKRISE);
    const inputs = uncertaintiesOf(site);
    const names = inputs.map(({ what }) => what);
    expect(new Set(names).size).toBe(names.length);
    // Drag is told by bench tests alone, and is taken as certain until then.
    expect(names).toEqual(expect.arrayContaining(UNSURE_FACTORS.filter((what) => what !== 'drag')));
    expect(inputs.every(({ spread: s }) => s > 0 && Number.isFinite(s))).toBe(true);
    const { installation } = installationOf(site);
    const { counts } = sampledAnswer(installation, inputs, { samples: 3, seed: 1 });
    expect(Object.values(counts).reduce((sum, n) => sum + n, 0)).toBe(3);
  });
});
