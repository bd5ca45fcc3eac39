/** A survey made ready for a line, put into the place, and its crests vented. */
import { readSurvey } from '@fallwright/records';
import { describe, expect, test } from 'vitest';
import { linePoints, readMetres } from '../profile/line-points.ts';
import { openPlace, undo } from '../state/place.ts';
import { pathText, type SiteDocument, valueAt } from '../state/site-document.ts';
import { lengthPutIn, lengthsOf, walkPutIn } from './put-in.ts';
import { ventAt, ventPutIn, ventsOf, ventTakenOut } from './vents.ts';
import type { WalkChoice, WalkedLine } from './walk.ts';
import { walkedLine } from './walked-line.ts';

/** Levelled from the source down to the ram, with a hump. */
const LEVELLED = `distance (m), height (m)
0, 101.90
4, 101.60
7, 101.10
9, 101.45
14, 100.00
`;

const SITE: SiteDocument = {
  fallwright: 'site@1',
  fall: '1.9 m',
  lift: '12 m',
  drive: [{ pipe: 'PE100 SDR11 25', length: '14 m' }],
  delivery: [{ pipe: 'PE100 SDR11 20', length: '160 m' }],
};

function walkFrom(text: string, choice: Partial<WalkChoice> = {}): WalkedLine {
  const survey = readSurvey(text);
  if (!survey.ok) throw new Error(survey.problems[0]?.message);
  const [line] = survey.value.lines;
  if (line === undefined) throw new Error('the survey holds no line');
  const read = walkedLine(line, [], { index: 0, line: 'drive', count: 40, ...choice });
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return read.value;
}

/** A walk straight north, each point so many metres up. */
function gpx(heights: readonly (number | undefined)[], step = 10): string {
  const points = heights.map((height, index) => {
    const latitude = 54 + (index * step) / 111_320;
    const ele = height === undefined ? '' : `<ele>${height}</ele>`;
    return `<trkpt lat="${latitude.toFixed(8)}" lon="-2">${ele}</trkpt>`;
  });
  return `<gpx xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>${points.join('\n')}</trkseg></trk></gpx>`;
}

const METRIC = { system: 'metric', takesLength: false, takesRise: false } as const;

describe('a walk made ready', () => {
  test('a levelled table stands as it is, its crest found with the air it may hold', () => {
    const walk = walkFrom(LEVELLED, { far: 1.9, length: 14 });
    expect(walk.kept.map(({ elevation }) => elevation.toFixed(2))).toEqual([
      '1.90',
      '1.60',
      '1.10',
      '1.45',
      '0.00',
    ]);
    expect(walk.crests).toMatchObject([{ distance: 9 }]);
    expect(walk.crests[0]?.air).toBeGreaterThan(0);
    expect(walk.words.metric.warnings).toEqual([]);
  });

  test('the end that the water comes from is taken from the heights, and can be said', () => {
    const upwards = LEVELLED.split('\n').slice(1, 6).reverse();
    const turned = `distance (m), height (m)\n${upwards
      .map((row) => row.split(', '))
      .map(([at, height]) => `${14 - Number(at)}, ${height}`)
      .join('\n')}\n`;
    expect(walkFrom(turned)).toMatchObject({ isReversed: true, rise: expect.closeTo(1.9) });
    expect(walkFrom(turned).kept).toEqual(walkFrom(LEVELLED).kept);
    const against = walkFrom(LEVELLED, { isReversed: true });
    expect(against.rise).toBeCloseTo(-1.9);
    expect(against.words.metric.warnings.join()).toMatch(/runs up to the ram/);
  });

  test('heights of a satellite are told to be too coarse for a fall', () => {
    const walk = walkFrom(gpx([12, 11, 10, 9, 8]), { far: 2 });
    expect(walk.areSatelliteHeights).toBe(true);
    expect(walk.words.metric.warnings[0]).toMatch(/too coarse for a fall/);
  });

  test('a track that is much longer than the pipe is doubted', () => {
    const doubts = (length: number): string =>
      walkFrom(LEVELLED, { far: 1.9, length }).words.metric.warnings.join();
    expect(doubts(13.5)).toBe('');
    expect(doubts(10)).toMatch(/40\s% longer than the pipe/);
    expect(doubts(4)).toMatch(/3\.5 times as long as the pipe/);
  });

  test('without heights its length over level ground is left', () => {
    const survey = readSurvey(gpx([undefined, undefined, undefined]));
    if (!survey.ok) throw new Error('it holds places');
    const [line] = survey.value.lines;
    if (line === undefined) throw new Error('it holds a track');
    const read = walkedLine(line, [], { index: 0, line: 'delivery', count: 40 });
    expect(read).toMatchObject({ ok: false, levelLength: expect.closeTo(20, 0) });
  });
});

describe('a walk put in', () => {
  test('it is one step: points between the ends, old ones and what waits in their boxes gone', () => {
    const before = openPlace({
      ...SITE,
      drive: [{ length: '14 m', profile: [{ at: '2 m', height: '1 m' }] }],
    });
    const waiting = {
      ...before,
      unread: { [pathText(['drive', 0, 'profile', 0, 'at'])]: { text: 'two' } },
    };
    const walk = walkFrom(LEVELLED, { far: 1.9, length: 14 });
    const after = walkPutIn(waiting, walk, { line: 'drive', ...METRIC });
    if (after === undefined) throw new Error('there is room for it');
    expect(valueAt(after.document, ['drive', 0, 'profile'])).toEqual([
      { at: '4 m', height: { value: '1.6 m', origin: 'measured' } },
      { at: '7 m', height: { value: '1.1 m', origin: 'measured' } },
      { at: '9 m', height: { value: '1.45 m', origin: 'measured' } },
    ]);
    expect(after.unread).toEqual({});
    expect(undo(after)).toMatchObject({ document: waiting.document, unread: waiting.unread });
  });

  test('over two pipes each counts from its own upper end', () => {
    const place = openPlace({ ...SITE, drive: [{ length: '8 m' }, { length: '6 m' }] });
    const walk = walkFrom(LEVELLED, { far: 1.9, length: 14 });
    const after = walkPutIn(place, walk, { line: 'drive', ...METRIC });
    const document = after?.document ?? {};
    expect(linePoints(document, 'drive').map(({ pipe, at }) => [pipe, at])).toEqual([
      [0, 4],
      [0, 7],
      [1, 1],
    ]);
  });

  test('a pipe without a length takes what the walk leaves for it, never less', () => {
    const place = openPlace({ ...SITE, drive: [{ length: '8 m' }, {}] });
    expect(lengthsOf(place.document, 'drive')).toEqual({ kind: 'oneOpen', pipe: 1, others: 8 });
    const walk = walkFrom(LEVELLED);
    const put = { line: 'drive', system: 'metric', takesLength: true, takesRise: true } as const;
    const after = walkPutIn(place, walk, put);
    expect(readMetres(valueAt(after?.document ?? {}, ['drive', 1, 'length']), 'pipeLength')).toBe(
      6,
    );
    expect(valueAt(after?.document ?? {}, ['fall'])).toEqual({
      value: '1.9 m',
      origin: 'measured',
    });
    const tooLong = openPlace({ ...SITE, drive: [{ length: '20 m' }, {}] });
    expect(walkPutIn(tooLong, walk, put)).toBeUndefined();
    expect(lengthPutIn(tooLong, 14, { line: 'drive', system: 'metric' })).toBeUndefined();
    const alone = lengthPutIn(openPlace(SITE), 161.23, { line: 'delivery', system: 'metric' });
    expect(valueAt(alone?.document ?? {}, ['delivery', 0, 'length', 'value'])).toBe('161.3 m');
  });

  test('in feet no point is pushed past the end of its pipe', () => {
    const place = openPlace({ ...SITE, drive: [{ length: '45.93 ft' }] });
    const walk = walkFrom(LEVELLED, { far: 1.9, length: 45.93 * 0.3048, count: 200 });
    const after = walkPutIn(place, walk, { line: 'drive', ...METRIC, system: 'us' });
    expect(linePoints(after?.document ?? {}, 'drive')).toHaveLength(3);
  });
});

describe('vents', () => {
  const crested: SiteDocument = {
    ...SITE,
    drive: [
      { length: '5 m' },
      { length: '9 m', profile: [{ at: '12 ft', height: '1.5 m' }], vents: '8 m' },
    ],
  };

  test('a vent at a crest is written as its point is, in order with the others', () => {
    const put = ventPutIn(openPlace(crested), 'drive', 5 + 12 * 0.3048, 'metric');
    const document = put?.document ?? {};
    expect(valueAt(document, ['drive', 1, 'vents'])).toEqual(['12 ft', '8 m']);
    const vent = ventAt(document, 'drive', 8.6);
    expect(vent).toMatchObject({ pipe: 1, index: 0 });
    const left = put && vent && ventTakenOut(put, 'drive', vent);
    expect(ventsOf(left?.document ?? {}, 'drive')).toEqual([{ pipe: 1, index: 0, station: 13 }]);
    expect(put && undo(put).document).toBe(crested);
  });

  test('the last vent takes the list along, and past the line there is none', () => {
    const [vent] = ventsOf(crested, 'drive');
    const left = vent && ventTakenOut(openPlace(crested), 'drive', vent);
    expect(valueAt(left?.document ?? {}, ['drive', 1, 'vents'])).toBeUndefined();
    expect(ventPutIn(openPlace(crested), 'drive', 20, 'metric')).toBeUndefined();
  });
});
