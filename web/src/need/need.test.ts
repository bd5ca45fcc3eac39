/** Who and what needs water, in the site document: nothing typed is lost, and what is not told to the end waits. */
import { siteFromData } from '@fallwright/records';
import { describe, expect, test } from 'vitest';
import type { SiteDocument } from '../state/site-document.ts';
import { LARKRISE } from '../workshop/demo.ts';
import { readCount } from './bare-count.ts';
import { ANIMALS, animalFigure, personFigure, SERVICES } from './figures.ts';
import {
  animalsAt,
  lacksOf,
  needPart,
  withAmount,
  withAnimals,
  withNeedPart,
  withoutUnfinished,
} from './need-entry.ts';
import { needSummary } from './need-summary.ts';
import { seasonRead } from './season-text.ts';
import { withUnitOfOthers } from './with-unit.ts';

const place = (demand: SiteDocument['demand']): SiteDocument =>
  demand === undefined ? { fallwright: 'site@1' } : { fallwright: 'site@1', demand };

describe('one amount', () => {
  test('goes on counting as other uses when something is told apart, and is one amount again after', () => {
    const measured = { value: '900 L/day', origin: 'measured' };
    const apart = withNeedPart(place(measured), ['people'], 4);
    expect(apart.demand).toEqual({ other: measured, people: 4 });
    expect(withNeedPart(apart, ['people'], undefined)).toEqual(place(measured));
    expect(needPart(place('900 L/day'), ['other'])).toBe('900 L/day');
  });

  test('takes the place of what is told apart, but an emptied box takes nothing with it', () => {
    const apart = place({ people: 4, other: '100 L/day' });
    expect(withAmount(apart, undefined)).toBe(apart);
    expect(withAmount(apart, '700 L/day').demand).toBe('700 L/day');
    expect(withAmount(place('700 L/day'), undefined)).toEqual(place(undefined));
  });
});

describe('animals', () => {
  test('are written as short as can be, and keep a local figure while one counts anew', () => {
    const four = withAnimals(place(undefined), 'dairy cow', { count: 4 });
    expect(four.demand).toEqual({ animals: { 'dairy cow': 4 } });
    const local = withAnimals(four, 'dairy cow', { count: 4, each: '80 L/day' });
    expect(animalsAt(local, 'dairy cow')).toEqual({ count: 4, each: '80 L/day' });
    const emptied = withAnimals(local, 'dairy cow', { each: '80 L/day' });
    expect(lacksOf(emptied)).toEqual({ 'animals.dairy cow': 'how many' });
    expect(withAnimals(emptied, 'dairy cow', {})).toEqual(place(undefined));
  });

  test('all have a published figure, and so has every way in which water comes to people', () => {
    for (const { value } of ANIMALS) expect(animalFigure(value)?.source).not.toBe('');
    for (const { value } of SERVICES) expect(personFigure(value)?.value).toBeGreaterThan(0);
    expect(personFigure('')).toBe(personFigure('one tap'));
    expect(personFigure('a well of its own')).toBeUndefined();
  });
});

test('of two ways to say the same the one that was written last stands', () => {
  const served = place({ people: 4, service: 'carried' });
  expect(withNeedPart(served, ['perPerson'], '30 L/day').demand).toEqual({
    people: 4,
    perPerson: '30 L/day',
  });
  const dry = place({ garden: { area: '60 m2', evapotranspiration: '5 mm/day', plants: 'lawn' } });
  const given = withNeedPart(dry, ['garden', 'perArea'], '4 mm/day');
  expect(given.demand).toEqual({ garden: { area: '60 m2', perArea: '4 mm/day' } });
  expect(withNeedPart(given, ['garden', 'evapotranspiration'], '5 mm/day').demand).toEqual({
    garden: { area: '60 m2', evapotranspiration: '5 mm/day' },
  });
});

describe('what is not told to the end', () => {
  const unfinished: SiteDocument = {
    ...LARKRISE,
    demand: {
      other: '100 L/day',
      service: 'carried',
      animals: { cow: { each: '40 L/day' }, hen: 12 },
      garden: { season: 'may to sep' },
      drip: { plants: 20 },
      growth: '2 %',
    },
  };

  test('is named by its box, and waits while the rest counts', () => {
    expect(Object.keys(lacksOf(unfinished)).sort()).toEqual([
      'animals.cow',
      'drip.perPlant',
      'garden.area',
      'people',
      'years',
    ]);
    expect(withoutUnfinished(unfinished).demand).toEqual({
      other: '100 L/day',
      animals: { hen: 12 },
    });
  });

  test('would be refused by the file’s own rules, and what is left is not', () => {
    expect(siteFromData(unfinished).ok).toBe(false);
    expect(siteFromData(withoutUnfinished(unfinished)).ok).toBe(true);
  });

  test('plants wait for the evapotranspiration alone, and a place without a gap is itself', () => {
    const shrubs = { ...LARKRISE, demand: { garden: { area: '60 m2', plants: 'shrubs' } } };
    expect(withoutUnfinished(shrubs).demand).toEqual({ garden: { area: '60 m2' } });
    expect(withoutUnfinished(LARKRISE)).toBe(LARKRISE);
    const all = withoutUnfinished({ ...LARKRISE, demand: { people: 4 } });
    expect(all.demand).toEqual({ people: 4 });
  });
});

test('a count is a plain number; anything else says what to write', () => {
  expect(readCount('1,200', 'the number of plants', '120')).toEqual({ ok: true, value: 1200 });
  expect(readCount('2.5', 'the share', '1.2')).toEqual({ ok: true, value: 2.5 });
  for (const text of ['four', '4 people', '-3', '2000000']) {
    const read = readCount(text, 'the number of people', '6');
    expect(read.ok ? '' : read.fault).toMatch(/^The number of people .+/);
  }
});

test('a season is read back in words', () => {
  expect(seasonRead('may to sep')).toBe('from May to September');
  expect(seasonRead('nov to feb')).toBe('from November to February');
  expect(seasonRead('all year')).toBe('all year');
  expect(seasonRead('in summer')).toBeUndefined();
});

test('the fold tells in a few words what is in it', () => {
  expect(needSummary(place('900 L/day'))).toBe('');
  expect(
    needSummary(place({ people: 1, animals: { cow: 4, hen: { count: 40 } }, garden: {} })),
  ).toBe('1 person, 44 animals, garden');
});

test('a bare number takes the unit of the months beside it, and none where there is none', () => {
  const usual = '14 L/min ± 0.5 L/min';
  expect(withUnitOfOthers(' 2.5', [usual, '', ''], 'sourceFlow')).toBe('2.5 L/min');
  expect(withUnitOfOthers('0.8', [usual, '1 gpm'], 'sourceFlow')).toBe('0.8 gpm');
  expect(withUnitOfOthers('2.5', ['plenty', ''], 'sourceFlow')).toBeUndefined();
  expect(withUnitOfOthers('2 L/min', [usual], 'sourceFlow')).toBeUndefined();
  expect(withUnitOfOthers('little', [usual], 'sourceFlow')).toBeUndefined();
});
