import type { Installation } from '@fallwright/engine';
import { describe, expect, test } from 'vitest';
import { developPlace } from './developed-place.ts';
import { layOutDriveDetail, onTheLevel } from './drive-detail.ts';
import { groundTicks } from './ground.ts';
import { apart, layOutHeadPlot } from './head-plot.ts';
import { fitScales, multiples, roundStep, wholeStep } from './scale.ts';
import type { Trouble } from './trouble.ts';
import { layOutWholePlace } from './whole-place.ts';

/** Only what a drawing looks at; the machine's parts do not show in it. */
function place(change: {
  fall?: number;
  lift?: number;
  driveLength?: number;
  deliveryLength?: number;
  deliveryProfile?: Installation['deliveryLine']['profile'];
  pockets?: Installation['driveLine']['pockets'];
  written?: Parameters<typeof developPlace>[1];
}) {
  const segment = (length: number) =>
    ({ length }) as unknown as Installation['driveLine']['segments'][number];
  const installation = {
    source: { kind: 'steady' },
    fall: change.fall ?? 1.9,
    lift: change.lift ?? 12,
    driveLine: {
      segments: [segment(change.driveLength ?? 14)],
      entranceLoss: 1.5,
      pockets: change.pockets ?? [],
    },
    deliveryLine: {
      segments: [segment(change.deliveryLength ?? 160)],
      ...(change.deliveryProfile === undefined ? {} : { profile: change.deliveryProfile }),
    },
  } as unknown as Installation;
  return developPlace(installation, change.written);
}

const placeWords = {
  tank: 'tank',
  lift: 'lift 12 m',
  liftNote: '',
  ram: 'ram',
  fall: 'fall 1.9 m',
  delivery: ['delivery line, 160 m'],
  grade: 'grade line',
  gradeShort: 'grade line',
  crest: (station: number) => `crest at ${station} m`,
  stretch: (stretch: number) => `heights drawn ${stretch} × lengths`,
  restGrade: 'at rest',
  trouble: ({ kind }: Trouble) => kind,
};

const driveWords = {
  source: 'spring',
  fall: 'fall 1.9 m',
  drive: '14 m of pipe',
  ram: 'DN20',
  crest: (station: number) => `crest at ${station} m`,
  scaleBar: (metres: number) => `${metres} m`,
  trouble: ({ kind }: Trouble) => kind,
};

describe('scales', () => {
  test('a step is 1, 2 or 5 times a power of ten, and gives no more steps than asked for', () => {
    for (const range of [0.3, 1, 7, 12.1, 174, 999]) {
      const step = roundStep(range, 6);
      expect(range / step).toBeLessThanOrEqual(6 + 1e-9);
      expect([1, 2, 5]).toContain(Math.round(step / 10 ** Math.floor(Math.log10(step) + 1e-9)));
    }
  });

  test('a grid is never finer than a whole metre', () => {
    expect(wholeStep(0.4, 5)).toBe(1);
  });

  test('multiples hold both ends when they fall on one', () => {
    expect(multiples(-2, 4, 2)).toEqual([-2, 0, 2, 4]);
    expect(multiples(0.1, 0.9, 1)).toEqual([]);
  });

  test('a long flat place is stretched by a round number that fits the frame', () => {
    const { along, up, stretch } = fitScales({
      length: 174,
      height: 12,
      frameWidth: 1000,
      frameHeight: 200,
    });
    expect(along * 174).toBeCloseTo(1000);
    expect(up).toBeCloseTo(along * stretch);
    expect(stretch).toBe(2.5);
    expect(up * 12).toBeLessThanOrEqual(200);
  });

  test('a place higher than its frame allows is drawn to one scale', () => {
    const { along, up, stretch } = fitScales({
      length: 40,
      height: 30,
      frameWidth: 1000,
      frameHeight: 200,
    });
    expect(stretch).toBe(1);
    expect(along).toBe(up);
    expect(up * 30).toBeCloseTo(200);
  });
});

describe('a place unrolled along its line', () => {
  test('the delivery line begins where the drive line ends', () => {
    const drawn = place({});
    expect(drawn.drive.at(-1)).toEqual({ station: 14, height: 0 });
    expect(drawn.delivery[0]).toEqual({ station: 14, height: 0 });
    expect(drawn.delivery.at(-1)).toEqual({ station: 174, height: 12 });
  });

  test('a straight line has no crest, a surveyed hump has one, at its place', () => {
    expect(place({}).crests).toEqual([]);
    const hump = place({
      deliveryProfile: [
        { distance: 0, elevation: 0 },
        { distance: 104, elevation: 9 },
        { distance: 112, elevation: 8 },
        { distance: 160, elevation: 12 },
      ],
    });
    expect(hump.crests).toEqual([{ line: 'delivery', station: 118, height: 9, depth: 1 }]);
    expect(hump.isDeliverySurveyed).toBe(true);
  });

  test('a vent at a crest is drawn on it, and a hump that the survey cannot tell is none', () => {
    const deliveryProfile = [
      { distance: 0, elevation: 0 },
      { distance: 104, elevation: 9 },
      { distance: 112, elevation: 8 },
      { distance: 160, elevation: 12 },
    ];
    const drive = { leastDepth: 0.03, vents: [104] };
    const crestsWith = (leastDepth: number, vents: readonly number[]) =>
      place({ deliveryProfile, written: { drive, delivery: { leastDepth, vents } } }).crests;
    expect(crestsWith(0.03, [])[0]?.isVented).toBeUndefined();
    expect(crestsWith(0.03, [103.8])[0]?.isVented).toBe(true);
    expect(crestsWith(2.5, [])).toEqual([]);
  });

  test('caught air stands on the line, with its volume', () => {
    const [pocket] = place({ pockets: [{ distance: 7, volume: 3e-4 }] }).crests;
    expect(pocket?.air).toBe(3e-4);
    expect(pocket?.height).toBeCloseTo((1.9 - 0.15) / 2);
  });
});

describe('the whole place', () => {
  const lay = (width: number, change: Parameters<typeof place>[0] = {}) =>
    layOutWholePlace({ place: place(change), vesselHead: 12.1, width, words: placeWords });

  test('the ram stands on the level 0 line of the grid', () => {
    const layout = lay(1232);
    const zero = layout.levels.find((line) => line.label === '0');
    expect(layout.ram.y).toBeCloseTo(zero?.at ?? Number.NaN);
  });

  test('the lift and the fall keep their proportion', () => {
    const layout = lay(1232);
    const lift = layout.ram.y - (layout.liftDimension?.top ?? 0);
    const fall = layout.ram.y - layout.pool.y;
    expect(lift / fall).toBeCloseTo(12 / 1.9, 6);
  });

  test('nothing leaves the sheet, on a phone or at a desk, steep or flat, long or short', () => {
    for (const width of [300, 328, 596, 900, 1232]) {
      for (const change of [
        {},
        { fall: 0.3, lift: 1, deliveryLength: 900 },
        { fall: 12, lift: 90, driveLength: 30, deliveryLength: 110 },
        { driveLength: 40, deliveryLength: 3, lift: 3 },
      ]) {
        const layout = lay(width, change);
        for (const x of [layout.pool.x, layout.ram.x, layout.tank.x + layout.tank.width]) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(width);
        }
        expect(layout.tank.y - 8).toBeGreaterThanOrEqual(0);
        expect(layout.ram.y).toBeLessThan(layout.height);
        for (const text of layout.texts.delivery) {
          expect(text.y).toBeGreaterThan(0);
          expect(text.y).toBeLessThan(layout.height);
        }
      }
    }
  });

  test('a narrow sheet gets its own layout: the lift is told with the tank', () => {
    const layout = lay(328);
    expect(layout.liftDimension).toBeUndefined();
    expect(layout.texts.tank.text).toContain('lift 12 m');
  });
});

describe('the drive line, nothing stretched', () => {
  test('a leg of pipe covers its level distance', () => {
    const points = onTheLevel([
      { station: 0, height: 3 },
      { station: 5, height: 0 },
    ]);
    expect(points[1]?.distance).toBeCloseTo(4);
  });

  test('a drop longer than the pipe is drawn upright, not as nonsense', () => {
    const points = onTheLevel([
      { station: 0, height: 9 },
      { station: 5, height: 0 },
    ]);
    expect(points[1]?.distance).toBe(0);
  });

  test('the fall and the scale bar are to one scale', () => {
    const layout = layOutDriveDetail({
      place: place({}),
      maxWidth: 640,
      maxRise: 180,
      words: driveWords,
      isNarrow: false,
    });
    const metres = Number.parseFloat(layout.scaleBar.label.text);
    expect(layout.scaleBar.length / metres).toBeCloseTo(layout.scale);
    expect((layout.fall.bottom - layout.fall.top) / 1.9).toBeCloseTo(layout.scale);
  });

  test('steep or flat, the ram stays on the sheet', () => {
    for (const [fall, driveLength] of [
      [0.4, 60],
      [1.2, 30],
      [10, 14],
      [30, 31],
    ] as const) {
      for (const [maxWidth, isNarrow] of [
        [328, true],
        [640, false],
      ] as const) {
        const layout = layOutDriveDetail({
          place: place({ fall, driveLength, lift: fall * 6 }),
          maxWidth,
          maxRise: 180,
          words: driveWords,
          isNarrow,
        });
        expect(layout.ram.x).toBeLessThan(layout.width);
        expect(layout.ram.y).toBeLessThan(layout.height);
      }
    }
  });
});

describe('small pieces', () => {
  test('ground ticks come in threes', () => {
    const ticks = groundTicks([
      { x: 0, y: 0 },
      { x: 200, y: 20 },
    ]);
    expect(ticks.split('M').length - 1).toBe(3 * 3);
  });

  test('labels that fall together are moved apart and keep their order', () => {
    expect(apart(10, 11, 12, 15)).toEqual([10, 25, 40]);
    expect(apart(10, 60, 100, 15)).toEqual([10, 60, 100]);
  });

  test('the envelope holds the static level between its two lines', () => {
    const layout = layOutHeadPlot({
      envelope: { distance: [0, 7, 14], highest: [1.9, 12, 24], lowest: [1.9, 0, -2] },
      fall: 1.9,
      width: 420,
      height: 180,
      words: { peak: '24 m', trough: '−2 m', rest: 'at rest' },
    });
    expect(layout.atRest).toBeGreaterThan(layout.frame.top);
    expect(layout.atRest).toBeLessThan(layout.zero);
    expect(layout.zero).toBeLessThan(layout.frame.bottom);
  });
});
