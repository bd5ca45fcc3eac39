/** The drawing as something to take hold of: what is shown of a long line, where a pixel lies, where pressures are too much. */
import type { Installation, PressureCheck } from '@fallwright/engine';
import { GRAVITY } from '@fallwright/engine';
import { describe, expect, test } from 'vitest';
import { linePoints } from '../profile/line-points.ts';
import type { SiteDocument } from '../state/site-document.ts';
import { asWritten } from './as-written.ts';
import { developPlace } from './developed-place.ts';
import { layOutDriveDetail } from './drive-detail.ts';
import { cornerBefore, MOST_HANDLES, pointHandles } from './handles.ts';
import { keyStep, keyWay, pointDragger } from './moving.ts';
import { spacedOut, thinned } from './thin.ts';
import { troublesOf } from './trouble.ts';
import { layOutWholePlace } from './whole-place.ts';

const DENSITY = 1000;
const METRES = { perBar: 1e5 / (DENSITY * GRAVITY) };

/** What a drawing looks at; the machine's parts do not show in it. */
const ANSWERED = {
  water: { density: DENSITY, vapourHead: -10.1 },
  source: { kind: 'steady' },
  fall: 2,
  lift: 10,
  driveLine: {
    segments: [{ length: 10, pipe: { material: 'steel' } }],
    entranceLoss: 1.5,
    pockets: [],
  },
  deliveryLine: { segments: [{ length: 100, pipe: { material: 'hdpe' } }] },
} as unknown as Installation;

function documentWith(points: readonly (readonly [number, number])[]): SiteDocument {
  return {
    fall: '2 m',
    lift: '10 m',
    drive: [
      {
        length: '10 m',
        profile: [
          { at: '2 m', height: '1 m' },
          { at: '6 m', height: '1.2 m' },
        ],
      },
    ],
    delivery: [
      {
        length: '100 m',
        profile: points.map(([at, height]) => ({ at: `${at} m`, height: `${height} m` })),
      },
    ],
  };
}

const words = {
  tank: 'tank',
  lift: 'lift 10 m',
  liftNote: '',
  ram: 'ram',
  fall: 'fall 2 m',
  delivery: ['delivery line'],
  grade: 'grade line',
  gradeShort: 'grade line',
  crest: (station: number) => `crest at ${station} m`,
  stretch: (stretch: number) => `${stretch} ×`,
  restGrade: 'at rest',
  trouble: () => 'over its rating',
};

const driveWords = {
  source: 'spring',
  fall: 'fall 2 m',
  drive: '10 m of pipe',
  ram: 'DN20',
  crest: (station: number) => `crest at ${station} m`,
  scaleBar: (metres: number) => `${metres} m`,
  trouble: () => 'over its rating',
};

describe('a line with many points', () => {
  const many = Array.from({ length: 400 }, (_, i) => ({
    x: i * 2,
    y: 100 + 40 * Math.sin(i / 20),
  }));

  test('its path keeps the shape with fewer corners', () => {
    const few = thinned(many, 0.4);
    expect(few.length).toBeLessThan(80);
    expect(few[0]).toEqual(many[0]);
    expect(few.at(-1)).toEqual(many.at(-1));
    // No corner that was left out lies further away than the tolerance, measured straight up: a slope only lessens it.
    for (const { x, y } of many) {
      const next = few.findIndex((corner) => corner.x >= x);
      const b = few[next];
      const a = few[next - 1] ?? b;
      if (a === undefined || b === undefined) throw new Error('the path has lost its ends');
      const there = b.x === a.x ? b.y : a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
      expect(Math.abs(there - y)).toBeLessThan(
        0.4 * Math.hypot(1, (b.y - a.y) / (b.x - a.x || 1)) + 1e-9,
      );
    }
  });

  test('the highest rank is shown first, and nothing stands too close', () => {
    const shown = spacedOut([1, 5, 9, 12, 30], {
      xOf: (x) => x,
      rankOf: (x) => (x === 9 ? 1 : 0),
      gap: 5,
    });
    expect(shown).toEqual([1, 9, 30]);
  });

  test('of 400 points at most forty are handles, the deepest turns among them, and the one in hand always', () => {
    const document = documentWith(
      Array.from({ length: 400 }, (_, i) => [
        Number(((i + 1) * 0.24).toFixed(2)),
        Number((i / 40 + Math.sin(i / 9)).toFixed(2)),
      ]),
    );
    const place = developPlace(asWritten(ANSWERED, document));
    const layout = layOutWholePlace({ place, vesselHead: 10.1, width: 1232, words });
    const points = linePoints(document, 'delivery');
    const inHand = points[201];
    const handles = pointHandles(points, {
      from: place.driveLength,
      projection: layout.projection,
      turns: place.turns,
      grip: 14,
      inHand,
    });
    expect(handles.length).toBeLessThanOrEqual(MOST_HANDLES);
    expect(handles.map(({ point }) => point)).toContain(inHand);
    const [deepest] = [...place.turns].toSorted(([, a], [, b]) => b.depth - a.depth);
    const stations = handles.map(({ point }) => place.driveLength + point.station);
    expect(stations).toContain(deepest?.[0]);
    expect(layout.crests.length).toBeGreaterThan(3);
  });
});

describe('from pixels to metres', () => {
  const document = documentWith([[50, 8]]);
  const place = developPlace(asWritten(ANSWERED, document));
  const whole = layOutWholePlace({ place, vesselHead: 10.1, width: 1232, words });
  const detail = layOutDriveDetail({
    place,
    maxWidth: 640,
    maxRise: 180,
    words: driveWords,
    isNarrow: false,
  });

  test('a pixel leads back to the place it was drawn for, on the slope of the detail too', () => {
    for (const [projection, line] of [
      [detail.projection, place.drive],
      [whole.projection, place.delivery],
    ] as const) {
      for (const corner of line.slice(1)) {
        const before = cornerBefore(line, corner.station);
        const back = projection.toStation(projection.toPoint(corner), before);
        expect(back.station).toBeCloseTo(corner.station, 9);
        expect(back.height).toBeCloseTo(corner.height, 9);
      }
    }
  });

  test('a point dragged by pixels is drawn under the pointer again', () => {
    const [point] = linePoints(document, 'drive');
    if (point === undefined) throw new Error('the drive line has points');
    const drawn = {
      line: 'drive' as const,
      from: 0,
      corners: place.drive,
      projection: detail.projection,
      top: 8,
      bottom: 400,
      width: 640,
    };
    const from = detail.projection.toPoint(point);
    const to = { x: from.x + 30, y: from.y - 20 };
    const moved = pointDragger(document, point, drawn, 'metric')(to);
    const after = developPlace(asWritten(ANSWERED, moved));
    const again = layOutDriveDetail({
      place: after,
      maxWidth: 640,
      maxRise: 180,
      words: driveWords,
      isNarrow: false,
      held: detail.range,
    });
    const [landed] = linePoints(moved, 'drive');
    if (landed === undefined) throw new Error('the point is lost');
    const at = again.projection.toPoint(landed);
    // Written to a round step of about a pixel.
    expect(Math.abs(at.x - to.x)).toBeLessThan(2);
    expect(Math.abs(at.y - to.y)).toBeLessThan(2);
  });

  test('keys move a little, with Shift ten times as far', () => {
    expect(keyWay('ArrowUp')).toEqual({ along: 0, up: 1 });
    expect(keyWay('a')).toBeUndefined();
    expect(keyStep(14, 'metric', false).height).toBeCloseTo(0.05);
    expect(keyStep(14, 'metric', true).height).toBeCloseTo(0.5);
    expect(keyStep(110, 'metric', false).at).toBeCloseTo(1);
  });
});

describe('the drawing does not wait for the answer', () => {
  test('heights, lengths and points come from the document', () => {
    const document: SiteDocument = { ...documentWith([[50, 8]]), fall: '2.5 m', lift: '11 m' };
    const drawn = asWritten(ANSWERED, document);
    expect(drawn.fall).toBe(2.5);
    expect(drawn.driveLine.profile?.[0]).toEqual({ distance: 0, elevation: 2.5 });
    expect(drawn.deliveryLine.profile?.map(({ elevation }) => elevation)).toEqual([0, 8, 11]);
    // What is being written and cannot be read yet leaves the answered value.
    expect(asWritten(ANSWERED, { ...document, fall: 'two' }).fall).toBe(2);
    expect(asWritten(ANSWERED, { fall: '2 m' }).deliveryLine.segments[0]?.length).toBe(100);
  });
});

describe('where the pressure is too much', () => {
  const check = (change: Partial<PressureCheck>): PressureCheck => ({
    rows: [],
    peakHead: 30,
    lowestHead: -9,
    hasCavity: false,
    envelope: { distance: [0, 5, 10], highest: [2, 10, 30], lowest: [2, -4, -9] },
    ...change,
  });
  const place = developPlace(asWritten(ANSWERED, { fall: '2 m', lift: '10 m' }));
  const row = (rating: number, governing: number, kind: 'driveSegment' | 'deliverySegment') =>
    ({
      part: { kind, index: 0, name: 'pipe' },
      simulatedPeak: governing,
      governing,
      rating,
      outcome: governing > rating ? 'over' : 'within',
    }) as const;

  test('only the part of the pipe that is over its rating is marked', () => {
    const rating = 1e5;
    const [trouble, ...others] = troublesOf(
      place,
      ANSWERED,
      check({ rows: [row(rating, 3e5, 'driveSegment')] }),
      10.1,
    );
    expect(others).toEqual([]);
    expect(trouble).toMatchObject({ line: 'drive', kind: 'over', rating, pressure: 3e5, to: 10 });
    // By hand: straight from 1.85 m at the intake to 0; the head is over it by 10.197 m (1 bar) just past 5 m.
    const over = (s: number) => 10 + 4 * (s - 5) - 1.85 * (1 - s / 10) - METRES.perBar;
    expect(over(5)).toBeLessThan(0);
    expect(trouble?.from).toBeGreaterThan(5);
    expect(trouble?.from).toBeLessThan(5.6);
  });

  test('a pipe within its rating, and a line that keeps its water together, have no mark', () => {
    const rows = [row(5e5, 3e5, 'driveSegment')];
    expect(troublesOf(place, ANSWERED, check({ rows }), 10.1)).toEqual([]);
  });

  test('the delivery line is over its rating at its foot, where it is lowest', () => {
    const rating = 0.5e5;
    const rows = [row(rating, 1e5, 'deliverySegment')];
    const [trouble] = troublesOf(place, ANSWERED, check({ rows }), 10.1);
    expect(trouble?.line).toBe('delivery');
    expect(trouble?.from).toBeCloseTo(10);
    expect(trouble?.to).toBeGreaterThan(50);
    expect(trouble?.to).toBeLessThan(70);
  });

  test('where the head falls to boiling the water parts', () => {
    const parted = check({
      hasCavity: true,
      envelope: { distance: [0, 5, 10], highest: [2, 3, 3], lowest: [2, -4, -10.1] },
    });
    const [trouble] = troublesOf(place, ANSWERED, parted, 10.1);
    expect(trouble?.kind).toBe('parts');
    expect(trouble?.to).toBe(10);
    expect(trouble?.from).toBeGreaterThan(9);
  });
});
