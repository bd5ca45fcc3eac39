import { describe, expect, test } from 'vitest';
import { openPlace } from '../state/place.ts';
import type { SiteDocument } from '../state/site-document.ts';
import { valueAt } from '../state/site-document.ts';
import {
  isOutOfOrder,
  nextSpot,
  roomFor,
  withoutPoint,
  withPointAdded,
  withPointMoved,
  withPointsInOrder,
} from './change-points.ts';
import { turnsOf } from './crests.ts';
import type { LinePoint } from './line-points.ts';
import { endHeights, linePoints, outlineOf, writtenPoints } from './line-points.ts';
import { profileRows } from './profile-rows.ts';
import { pointAdded, pointDragged, pointMovedByKey, pointTakenOut } from './profile-steps.ts';
import { unreadAfterAdding, unreadAfterRemoving } from './unread-rows.ts';
import { dragStep, writtenMetres } from './written-metres.ts';

const METRIC = { system: 'metric' } as const;

/** Two pipes, with a point of the first in inches and one that was measured. */
const TWO_PIPES: SiteDocument = {
  fallwright: 'site@1',
  fall: '2.4 m',
  lift: '15 m',
  drive: [
    {
      pipe: 'PE100 SDR11 25',
      length: '9 m',
      profile: [
        { at: '3 m', height: '1.40 m' },
        { at: '236.22 in', height: { value: '1.5 m', origin: 'measured' } },
      ],
    },
    { pipe: 'PE100 SDR11 25', length: '6 m', profile: [{ at: '2 m', height: '0.4 m' }] },
  ],
  delivery: [{ pipe: 'PE100 SDR11 20', length: '110 m' }],
};

function point(document: SiteDocument, number: number): LinePoint {
  const found = linePoints(document, 'drive')[number - 1];
  if (found === undefined) throw new Error(`there is no point ${number}`);
  return found;
}

describe('points of a line', () => {
  test('each pipe counts from its own upper end, the drawing along the whole line', () => {
    const points = linePoints(TWO_PIPES, 'drive');
    expect(points.map(({ station }) => station.toFixed(3))).toEqual(['3.000', '6.000', '11.000']);
    expect(points.map(({ pipe, index }) => [pipe, index])).toEqual([
      [0, 0],
      [0, 1],
      [1, 0],
    ]);
  });

  test('ends are put on a line that has none, and follow fall and lift', () => {
    const ends = endHeights(TWO_PIPES, 'drive');
    if (ends === undefined) throw new Error('the fall can be read');
    const outline = outlineOf(TWO_PIPES, 'drive', ends);
    expect(outline?.[0]).toEqual({ station: 0, height: 2.4 });
    expect(outline?.at(-1)).toEqual({ station: 15, height: 0 });
    expect(endHeights(TWO_PIPES, 'delivery')).toEqual({ upper: 0, lower: 15 });
  });

  test('what cannot be drawn is left out of the drawing and stays in the table', () => {
    const document: SiteDocument = {
      ...TWO_PIPES,
      drive: [
        {
          length: '9 m',
          profile: [
            { at: '5 m', height: '1 m' },
            { at: '4 m', height: '1 m' },
            { at: 'half way', height: '1 m' },
            { at: '12 m', height: '1 m' },
          ],
        },
      ],
    };
    expect(linePoints(document, 'drive').map(({ at }) => at)).toEqual([5]);
    expect(writtenPoints(document, 'drive', 0)).toHaveLength(4);
    expect(linePoints({ ...document, drive: [{ profile: [] }] }, 'drive')).toEqual([]);
  });
});

describe('moving a point', () => {
  test('only what moves is written anew; the others keep their words and units', () => {
    const moved = withPointMoved(TWO_PIPES, point(TWO_PIPES, 1), { at: 3, height: 1.2345 }, METRIC);
    expect(valueAt(moved, ['drive', 0, 'profile'])).toEqual([
      { at: '3 m', height: '1.23 m' },
      { at: '236.22 in', height: { value: '1.5 m', origin: 'measured' } },
    ]);
    expect(valueAt(moved, ['drive', 1])).toBe(valueAt(TWO_PIPES, ['drive', 1]));
  });

  test('a point moved by hand is no longer the measured one', () => {
    const moved = withPointMoved(TWO_PIPES, point(TWO_PIPES, 2), { at: 6.5, height: 2 }, METRIC);
    expect(valueAt(moved, ['drive', 0, 'profile', 1])).toEqual({ at: '6.5 m', height: '2 m' });
  });

  test('it stays in its pipe and between its neighbours, however far it is dragged', () => {
    const first = point(TWO_PIPES, 1);
    for (const [at, expected] of [
      [-4, '0.01 m'],
      [50, '5.99 m'],
    ] as const) {
      const moved = withPointMoved(TWO_PIPES, first, { at, height: 1 }, METRIC);
      expect(valueAt(moved, ['drive', 0, 'profile', 0, 'at'])).toBe(expected);
    }
    // A coarse step must not carry it past them either.
    const coarse = { system: 'metric', steps: { at: 5 } } as const;
    const moved = withPointMoved(TWO_PIPES, first, { at: 5.9, height: 1.4 }, coarse);
    expect(linePoints(moved, 'drive').map(({ at }) => at < 6.1)).toEqual([true, true, true]);
    expect(linePoints(moved, 'drive')).toHaveLength(3);
  });

  test('a point on the very end of its pipe only rises and sinks', () => {
    const document: SiteDocument = {
      ...TWO_PIPES,
      drive: [{ length: '9 m', profile: [{ at: '0 m', height: '2 m' }] }],
    };
    const onEnd = point(document, 1);
    expect(roomFor(document, onEnd, 'metric')).toEqual({ least: 0, most: 0 });
    const moved = withPointMoved(document, onEnd, { at: 3, height: 2.1 }, METRIC);
    expect(valueAt(moved, ['drive', 0, 'profile', 0])).toEqual({ at: '0 m', height: '2.1 m' });
  });

  test('lengths are written in the reader’s units, no finer than they can be meant', () => {
    expect(writtenMetres(6.2549, 'metric')).toBe('6.25 m');
    expect(writtenMetres(-0.2, 'metric')).toBe('−0.2 m');
    expect(writtenMetres(-0.001, 'metric')).toBe('0 m');
    expect(writtenMetres(1, 'us')).toBe('3.3 ft');
    expect(writtenMetres(104.37, 'metric', 0.5)).toBe('104.5 m');
    expect(dragStep(0.15, 'metric')).toBe(0.2);
    expect(dragStep(0.003, 'us')).toBeCloseTo(0.05 * 0.3048);
  });
});

describe('adding and taking out', () => {
  test('a new point halves the widest gap and lies on the line', () => {
    const ends = { upper: 2.4, lower: 0 };
    // From 6 m to 11 m: across the joint of the pipes.
    expect(nextSpot(TWO_PIPES, 'drive', ends)?.station).toBeCloseTo(8.5);
    const spot = nextSpot(TWO_PIPES, 'drive', ends);
    const added = spot && withPointAdded(TWO_PIPES, 'drive', spot, METRIC);
    expect(added?.place).toEqual({ line: 'drive', pipe: 0, index: 2 });
    expect(added && valueAt(added.document, ['drive', 0, 'profile', 2])).toEqual({
      at: '8.5 m',
      height: '0.95 m',
    });
  });

  test('the first point of a line makes its profile, the last one takes it along', () => {
    const spot = { station: 55, height: 7.5 };
    const added = withPointAdded(TWO_PIPES, 'delivery', spot, METRIC);
    if (added === undefined) throw new Error('there is room for it');
    expect(valueAt(added.document, ['delivery', 0, 'profile'])).toEqual([
      { at: '55 m', height: '7.5 m' },
    ]);
    expect(withoutPoint(added.document, added.place)).toEqual(TWO_PIPES);
  });

  test('points out of order are put in order with all that is written at them', () => {
    const document: SiteDocument = {
      drive: [
        {
          length: '9 m',
          profile: [
            { at: '5 m', height: 'b' },
            { at: '2 m', height: 'a' },
          ],
        },
      ],
    };
    expect(isOutOfOrder(document, 'drive', 0)).toBe(true);
    const sorted = withPointsInOrder(document, 'drive', 0);
    expect(isOutOfOrder(sorted, 'drive', 0)).toBe(false);
    expect(valueAt(sorted, ['drive', 0, 'profile', 0, 'height'])).toBe('a');
  });
});

describe('steps of the place', () => {
  const unread = {
    'drive[0].profile[0].at': { text: 'three' },
    'drive[0].profile[1].height': { text: 'high' },
    'drive[1].profile[1].height': { text: 'other pipe' },
    fall: { text: '12' },
  };

  test('text that waits in a box goes with its row', () => {
    expect(unreadAfterAdding(unread, { line: 'drive', pipe: 0, index: 1 })).toEqual({
      'drive[0].profile[0].at': { text: 'three' },
      'drive[0].profile[2].height': { text: 'high' },
      'drive[1].profile[1].height': { text: 'other pipe' },
      fall: { text: '12' },
    });
    expect(unreadAfterRemoving(unread, { line: 'drive', pipe: 0, index: 0 })).toEqual({
      'drive[0].profile[0].height': { text: 'high' },
      'drive[1].profile[1].height': { text: 'other pipe' },
      fall: { text: '12' },
    });
  });

  test('each drag is a step of its own, keys on one point are one together', () => {
    const first = point(TWO_PIPES, 1);
    const to = (height: number) => withPointMoved(TWO_PIPES, first, { at: 3, height }, METRIC);
    const dragged = pointDragged(pointDragged(openPlace(TWO_PIPES), to(1), first), to(2), first);
    expect(dragged.past).toHaveLength(2);
    const keyed = pointMovedByKey(pointMovedByKey(dragged, to(1.1), first), to(1.2), first);
    expect(keyed.past).toHaveLength(3);
    expect(pointDragged(keyed, keyed.document, first)).toBe(keyed);
  });

  test('a place without a length or a lift has no point to add', () => {
    const { lift: _lift, ...noLift } = TWO_PIPES;
    expect(pointAdded(openPlace(noLift), 'delivery', 'metric')).toBeUndefined();
    const added = pointAdded(openPlace(TWO_PIPES), 'delivery', 'metric');
    expect(added?.state.past).toHaveLength(1);
    expect(added && pointTakenOut(added.state, added.place).document).toEqual(TWO_PIPES);
  });
});

describe('crests and sags', () => {
  const along = (...heights: number[]) => heights.map((height, station) => ({ station, height }));

  test('a hump has a crest, a dip a sag, an end neither', () => {
    expect(turnsOf(along(0, 2, 1, 3, 0))).toEqual([
      { kind: 'crest', index: 1, depth: 1 },
      { kind: 'sag', index: 2, depth: 1 },
      { kind: 'crest', index: 3, depth: 2 },
    ]);
    expect(turnsOf(along(3, 2, 1))).toEqual([]);
    expect(turnsOf([])).toEqual([]);
  });

  test('a level piece of a slope is no crest', () => {
    expect(turnsOf(along(0, 1, 1, 2))).toEqual([]);
  });

  test('what a survey cannot tell from level is passed over', () => {
    expect(turnsOf(along(0, 1, 0.99, 2, 1.98, 3))).toEqual([]);
    expect(turnsOf(along(0, 1, 0.99, 2, 1.5, 3)).map(({ index }) => index)).toEqual([3, 4]);
  });
});

describe('rows of the table', () => {
  test('both ends, the pipes, and the line’s rise or fall from point to point', () => {
    const rows = profileRows(TWO_PIPES, 'drive');
    expect(rows.map(({ kind }) => kind)).toEqual([
      'end',
      'pipe',
      'point',
      'point',
      'pipe',
      'point',
      'end',
    ]);
    const changes = rows.flatMap((row) => (row.kind === 'pipe' ? [] : [row.change?.toFixed(2)]));
    expect(changes).toEqual([undefined, '-1.00', '0.10', '-1.10', '-0.40']);
    const turns = rows.flatMap((row) => (row.kind === 'point' ? [row.turn] : []));
    expect(turns).toEqual(['sag', 'crest', undefined]);
    expect(rows.at(-1)).toMatchObject({ kind: 'end', at: 6, height: 0 });
  });

  test('a hump that is smaller than the heights are known to is no crest', () => {
    const withSpread = (spread: string): SiteDocument => ({
      fall: '2 m',
      drive: [
        {
          length: '9 m',
          profile: [
            { at: '3 m', height: `1 m${spread}` },
            { at: '6 m', height: `1.5 m${spread}` },
          ],
        },
      ],
    });
    const turnsIn = (document: SiteDocument) =>
      profileRows(document, 'drive').flatMap((row) =>
        row.kind === 'point' && row.turn !== undefined ? [row.turn] : [],
      );
    expect(turnsIn(withSpread(''))).toEqual(['sag', 'crest']);
    expect(turnsIn(withSpread(' ± 0.1 m'))).toEqual(['sag', 'crest']);
    expect(turnsIn(withSpread(' ± 2.5 m'))).toEqual([]);
  });

  test('a point of the file on an end of the line is that end', () => {
    const document: SiteDocument = {
      fall: '2 m',
      drive: [
        {
          length: '9 m',
          profile: [
            { at: '0 m', height: '1.8 m' },
            { at: '9 m', height: '0 m' },
          ],
        },
      ],
    };
    expect(profileRows(document, 'drive').map(({ kind }) => kind)).toEqual(['point', 'point']);
  });
});
