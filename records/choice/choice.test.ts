import { readFileSync } from 'node:fs';
import { chooseHere } from '@fallwright/engine';
import { describe, expect, test } from 'vitest';
import type { PriceList } from '../prices/price-list.ts';
import { readPrices } from '../prices/read-prices.ts';
import type { Range } from '../range/range-schema.ts';
import { readRange } from '../range/read-range.ts';
import { retired } from '../range/revisions.ts';
import { installationOf } from '../site/installation-of.ts';
import { readPlace, readSite } from '../site/read-site.ts';
import type { Site } from '../site/site-schema.ts';
import { uncertaintiesOf } from '../site/uncertainties-of.ts';
import { writeSite } from '../site/write-site.ts';
import { offersOf } from './offers-of.ts';
import { placeToFit } from './place-to-fit.ts';
import { siteOfBuild } from './site-of-build.ts';
import { unsureOfBuild } from './unsure-of-a-build.ts';

const workshop = new URL('../../examples/workshop/', import.meta.url);
const textOf = (name: string): string => readFileSync(new URL(name, workshop), 'utf8');

const beck = placeIn(textOf('otter-beck.yaml'));
const range = rangeIn(textOf('rams.yaml'));
const prices = pricesIn(textOf('prices.csv'));

function placeIn(text: string): Site {
  const read = readPlace(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.site;
}
function rangeIn(text: string): Range {
  const read = readRange(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.range;
}
function pricesIn(text: string): PriceList {
  const read = readPrices(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.list;
}
function made(from: Parameters<typeof offersOf>[0]) {
  const offers = offersOf(from);
  if (!offers.ok) throw new Error(JSON.stringify(offers.problems));
  return offers.value;
}

describe('a place to choose for', () => {
  test('may have ways without pipes, which a site may not', () => {
    expect(readSite(textOf('otter-beck.yaml'))).toMatchObject({
      ok: false,
      problems: [
        { kind: 'missing', field: 'drive' },
        { kind: 'missing', field: 'delivery' },
      ],
    });
    const half = textOf('otter-beck.yaml').replace(
      'drive: { length',
      'drive: { bore: 25 mm, length',
    );
    expect(readPlace(half)).toMatchObject({ ok: false, problems: [{ field: 'drive' }] });
  });

  test('has the source, its driest month, the ways and the need', () => {
    const { place, wish, assumptions } = placeToFit(beck);
    expect(place.source).toMatchObject({ kind: 'steady', yield: expect.closeTo(40 / 60_000, 9) });
    expect(place.dryFlow).toBeCloseTo(26 / 60_000, 9);
    expect(place.driveRoute.length).toBe(16);
    expect(place.driveRoute.profile).toEqual([
      { distance: 0, elevation: 2.5 },
      { distance: 6, elevation: 1.6 },
      { distance: 16, elevation: 0 },
    ]);
    // 6 people at 50 L, 6 cows at 38 L, 20 sheep at 10 L: 728 L a day, and a tank for one day.
    expect((wish.need ?? 0) * 86_400).toBeCloseTo(0.728, 6);
    expect(wish.tankVolume).toBeCloseTo(0.728, 6);
    expect(assumptions.map(({ field }) => field)).toContain('source.intake');
  });

  test('where a tank stands none is wished for, and without months no season is dry', () => {
    const plain = placeIn(`fallwright: site@1
source: { flow: plenty }
fall: 2 m
drive: { length: 12 m, held: loose, fittings: [elbow] }
lift: 12 m
demand: 500 L/day
tank: { volume: 2000 L }
`);
    const { place, wish } = placeToFit(plain);
    expect(wish.tankVolume).toBeUndefined();
    expect(place.dryFlow).toBeUndefined();
    expect(place.driveLaying).toMatchObject({ restraint: 'expansionJoints' });
    expect(place.driveLaying.fittingsLoss).toBeGreaterThan(0);
    expect(place.deliveryRoute.length).toBe(12);
  });
});

describe('what is offered', () => {
  test('rams with their tunings, and the pipes with bars and coils together', () => {
    const { offers, currency } = made({ range, prices, tankVolume: 1.5 });
    expect(currency).toBe('GBP');
    expect(offers.rams.map(({ key, tunings, cost }) => [key, tunings.length, cost])).toEqual([
      ['wren-20', 3, 21_000],
      ['swallow-25', 6, 32_000],
      ['heron-32', 3, 44_500],
      ['osprey-50', 3, 89_000],
    ]);
    expect(offers.rams[1]?.setUpTime).toBe(5 * 3600);
    const coil = offers.deliveryPipes.find(({ key }) => key === 'PE25-25');
    expect(coil?.soldLengths).toEqual([
      { length: 25, cost: 3400 },
      { length: 100, cost: 11_800 },
    ]);
    expect(offers.drivePipes.map(({ key }) => key)).not.toContain('PE20-50');
    expect(offers.feederPipes.map(({ key }) => key)).toEqual(['PE50-50', 'PE63-50', 'PE110-6']);
    // The cheapest tank that holds enough.
    expect(offers.tanks.map(({ key }) => key)).toEqual(['T2000']);
    expect(offers.vessels).toEqual([]);
    expect(made({ range, prices, otherVessels: true }).offers.vessels).toHaveLength(2);
  });

  test('a retired ram is none', () => {
    const { offers } = made({ range: retired(range, 'wren-20'), prices });
    expect(offers.rams.map(({ key }) => key)).not.toContain('wren-20');
  });

  test('without a range typical rams, without prices pipes of their size, and both are said', () => {
    const { offers, assumptions, currency, forms } = made({});
    expect(offers.rams).toHaveLength(9);
    expect(offers.items).toEqual([]);
    expect(currency).toBeUndefined();
    expect(assumptions.map(({ field }) => field)).toEqual(['range', 'prices']);
    for (const { key, tunings } of offers.rams) {
      expect(forms.ram(key, tunings[0]?.name ?? '')).toEqual({ typical: key });
    }
    for (const { key, pipe } of [...offers.drivePipes, ...offers.deliveryPipes]) {
      expect(forms.pipe(key)).toEqual({ pipe: pipe.name });
    }
  });

  test('by foot, by metre and left out', () => {
    const { offers } = made({
      prices: pricesIn(`kind,size,unit,price (USD),sold length
pipe,PE100 SDR11 25,ft,1.20,
trench,,ft,3.00,
laying,,m,left out,
pipe,PE100 SDR11 32,m,2.50,20 ft
`),
    });
    // 1.20 a foot are 3.937 a metre; money is whole cents.
    expect(offers.drivePipes[0]).toMatchObject({ costPerMetre: 394 });
    expect(offers.drivePipes[1]).toMatchObject({
      costPerMetre: 250,
      soldLengths: [{ length: 6.096 }],
    });
    expect(offers.items.map(({ kind, cost }) => [kind, cost])).toEqual([['trench', 984]]);
    expect(offers.leftOut).toEqual(['laying']);
  });

  test.each([
    [
      'two currencies',
      { range, prices: { ...prices, currency: 'EUR' } },
      'GBP and the price list in EUR',
    ],
    [
      'only retired rams',
      { range: range.rams.reduce((all, { id }) => retired(all, id), range) },
      'Every ram',
    ],
    [
      'no pipe for a line',
      { prices: { ...prices, rows: prices.rows.filter(({ kind }) => kind !== 'pipe') } },
      'no pipe for the drive line',
    ],
  ])('%s: a problem that says what to do', (_what, from, says) => {
    const offers = offersOf(from);
    if (offers.ok) throw new Error('this should not go together');
    expect(offers.problems[0]?.message).toContain(says);
  });
});

describe('a build', () => {
  const { place, wish } = placeToFit(beck);
  const { offers, forms } = made({ range, prices, ...wish });
  const few = { ...offers, rams: offers.rams.slice(1, 2), feederPipes: [] };
  const choice = chooseHere(
    { place, wish: { ...wish, driveLengths: [16, 18] }, offers: few },
    { quotes: false },
  );
  const contender = choice.priced.front[0];
  if (!contender) throw new Error('something has to work here');
  const { parts } = contender.candidate;

  test('as a site file is answered as it was chosen', () => {
    const built = siteOfBuild(beck, parts, forms);
    if (built.kind !== 'site') throw new Error(built.kind);
    const read = readSite(writeSite(built.site));
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const { installation } = installationOf(read.site);
    expect(installation.ram).toEqual(parts.tuning.ram);
    expect(installation.driveLine.segments[0]?.pipe).toEqual(parts.drivePipe.pipe);
    expect(installation.driveLine.segments[0]?.length).toBe(parts.driveLength);
    expect(installation.deliveryLine.segments[0]?.pipe).toEqual(parts.deliveryPipe.pipe);
  });

  test('laid in curves keeps its points in proportion', () => {
    const built = siteOfBuild(beck, { ...parts, driveLength: 24 }, forms);
    if (built.kind !== 'site') throw new Error(built.kind);
    expect(built.site.drive[0]?.length.text).toBe('24 m');
    expect(built.site.drive[0]?.profile?.[0]?.at.value).toBeCloseTo(9, 9);
  });

  test('of two rams, or with a feeder, is no site file', () => {
    expect(siteOfBuild(beck, { ...parts, count: 2 }, forms)).toEqual({ kind: 'severalRams' });
    const feeder = { pipe: parts.drivePipe, length: 4, standpipeBase: 1, standpipeHeight: 2 };
    expect(siteOfBuild(beck, { ...parts, feeder }, forms)).toEqual({ kind: 'fed' });
  });

  test('is as unsure as the site file made of it', () => {
    const built = siteOfBuild(beck, parts, forms);
    if (built.kind !== 'site') throw new Error(built.kind);
    const ofSite = new Map(uncertaintiesOf(built.site).map((input) => [input.what, input]));
    const { installation } = installationOf(built.site);
    const ofBuild = unsureOfBuild(beck, installation, forms.ram(parts.ram.key, parts.tuning.name));
    expect(ofBuild.length).toBeGreaterThan(10);
    for (const input of ofBuild) {
      expect(input.spread, input.what).toBeCloseTo(ofSite.get(input.what)?.spread ?? Number.NaN, 9);
    }
  });
});

test.each(
  [
    ...readFileSync(new URL('../../docs/choosing.md', import.meta.url), 'utf8').matchAll(
      /```yaml\n([\s\S]*?)```/g,
    ),
  ].map(([, block = '']) => block),
)('docs/choosing.md, a block reads: %#', (block) => {
  expect(placeToFit(placeIn(block)).wish.need).toBeGreaterThan(0);
});
