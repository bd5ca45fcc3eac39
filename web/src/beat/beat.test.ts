/** The screen's geometry and words on films that the engine really made. */
import type { Installation } from '@fallwright/engine';
import { filmBeat, findPipe, typicalRam, waterAt } from '@fallwright/engine';
import { describe, expect, test } from 'vitest';
import { instantInWords, readOuts, troubleInWords } from './beat-words.ts';
import { envelopeSoFar, headAlong, layOutStrip, stripAt } from './line-strip.ts';
import { ramAt, WASTE_TRAVEL } from './ram-instant.ts';
import type { Reel } from './reel.ts';
import { deliveringFrame, reelOf } from './reel.ts';
import { phaseBar, shutWindow } from './scrub-bar.ts';
import { layOutTraces, timeAt, xAt } from './trace-layout.ts';

const found = findPipe('steel EN 10255 DN20');
if (!found.ok) throw new Error('the table has no DN20');
const place: Installation = {
  water: waterAt({ temperature: 10, altitude: 0 }),
  source: { kind: 'steady' },
  fall: 1.9,
  driveLine: {
    segments: [
      {
        pipe: found.pipe,
        length: 14,
        fittingsLoss: 0,
        restraint: 'anchoredThroughout',
        freeAirFraction: 0,
      },
    ],
    entranceLoss: 1.5,
    pockets: [],
  },
  ram: typicalRam('DN20'),
  lift: 12,
  deliveryLine: { segments: [] },
};

const START = { isPlaying: false, slowness: 20, standsAtDelivery: true } as const;
const filmed = (installation: Installation, beats = 1): Reel =>
  reelOf(installation, filmBeat(installation, { beats: beats + 1 }), beats, START);
const heavier = (weight: number): Installation => ({
  ...place,
  ram: {
    ...place.ram,
    wasteValve: { ...place.ram.wasteValve, kind: 'weighted', submergedWeight: weight },
  },
});

const reel = filmed(place);
const delivering = deliveringFrame(reel.phases);
const WHOLE = { from: 0, to: reel.film.time[reel.film.frames - 1] ?? 0 };

describe('a beat', () => {
  test('lasts as long as the beats that settled, within what they differ', () => {
    expect(WHOLE.to * reel.film.point.beatFrequency).toBeGreaterThan(0.9);
    expect(WHOLE.to * reel.film.point.beatFrequency).toBeLessThan(1.1);
  });

  test('begins and ends with a shut waste valve that opens', () => {
    expect(reel.film.opening[0]).toBe(0);
    expect(reel.film.opening[1]).toBeGreaterThan(0);
    expect(reel.film.opening[reel.film.frames - 1]).toBe(0);
  });

  test('with nothing moving the picture stands where the ram delivers', () => {
    expect(reel.film.opening[delivering]).toBe(0);
    expect(reel.phases.find(({ kind }) => kind === 'delivers')).toBeDefined();
    expect(reel.player.get()).toMatchObject({ isPlaying: false });
  });
});

describe('the ram in section', () => {
  test('shuts its waste valve, lifts its delivery valve and stops its jets while it delivers', () => {
    const passing = reel.film.deliveryFlow.findIndex((flow) => flow > 1e-5);
    const now = ramAt(reel, passing);
    expect(now.wasteShift).toBe(WASTE_TRAVEL);
    expect(now.deliveryShift).toBeGreaterThan(0);
    expect(now.jets).toBe(0);
    expect(now.waste).toBe(0);
  });

  test('lets water out by the open valve', () => {
    const widest = reel.film.wasteFlow.indexOf(Math.max(...reel.film.wasteFlow));
    const now = ramAt(reel, widest);
    expect(now.wasteShift).toBeLessThan(WASTE_TRAVEL);
    expect(now.jets).toBeGreaterThan(0.5);
    expect(now.deliveryShift).toBe(0);
  });

  test('is bluest where its head is highest', () => {
    const highest = reel.film.bodyHead.indexOf(reel.bodyHead.high);
    for (let frame = 0; frame < reel.film.frames; frame++) {
      expect(ramAt(reel, frame).bodyBlue).toBeLessThanOrEqual(ramAt(reel, highest).bodyBlue);
    }
  });
});

describe('the drive line', () => {
  const strip = layOutStrip(reel, 1200, 'metric');

  test('has swung at least as far as it stands now, and farther as time goes on', () => {
    const early = envelopeSoFar(reel, 20);
    const late = envelopeSoFar(reel, reel.film.frames - 1);
    headAlong(reel, 20).forEach((head, node) => {
      expect(early.highest[node]).toBeGreaterThanOrEqual(head);
      expect(early.lowest[node]).toBeLessThanOrEqual(head);
      expect(late.highest[node]).toBeGreaterThanOrEqual(early.highest[node] as number);
    });
    expect(Math.max(...late.highest)).toBe(reel.lineHead.high);
  });

  test('is filled from source to ram without a gap', () => {
    const { cells } = stripAt(reel, delivering, strip);
    expect(cells[0]?.x).toBe(strip.left);
    cells.slice(1).forEach((cell, i) => {
      const before = cells[i];
      expect((before?.x ?? 0) + (before?.width ?? 0)).toBeCloseTo(cell.x, 6);
    });
    const last = cells.at(-1);
    expect((last?.x ?? 0) + (last?.width ?? 0)).toBeCloseTo(strip.right, 6);
  });
});

describe('the traces', () => {
  const layout = layOutTraces(reel, { width: 600, window: WHOLE, system: 'metric' });

  test('have one axis of time, and a pixel leads back to its moment', () => {
    expect(xAt(layout, WHOLE.from)).toBe(layout.left);
    expect(xAt(layout, WHOLE.to)).toBe(layout.right);
    expect(timeAt(layout, xAt(layout, 0.2))).toBeCloseTo(0.2, 12);
  });

  test('shade the valve where it is shut', () => {
    const [band] = layout.shut.filter(({ width }) => width > 10);
    const shut = shutWindow(reel);
    expect(band).toBeDefined();
    expect(timeAt(layout, (band?.x ?? 0) + (band?.width ?? 0) / 2)).toBeCloseTo(
      ((shut?.from ?? 0) + (shut?.to ?? 0)) / 2,
      3,
    );
  });

  test('stay inside their panels', () => {
    for (const { top, bottom, traces } of layout.panels) {
      for (const { path } of traces) {
        const heights = [...path.matchAll(/[ML][-\d.]+ ([-\d.]+)/g)].map(([, y]) => Number(y));
        expect(Math.min(...heights)).toBeGreaterThanOrEqual(top - 0.1);
        expect(Math.max(...heights)).toBeLessThanOrEqual(bottom + 0.1);
      }
    }
  });

  test('read the same in feet and gallons, with other figures on the axis', () => {
    const us = layOutTraces(reel, { width: 600, window: WHOLE, system: 'us' });
    expect(us.panels[0]?.traces).toEqual(layout.panels[0]?.traces);
    expect(us.panels[0]?.title).toBe('Head at the ram, ft');
    expect(us.panels[0]?.ticks).not.toEqual(layout.panels[0]?.ticks);
  });
});

describe('words', () => {
  test('say what the picture says at the cursor', () => {
    const passing = reel.film.deliveryFlow.findIndex((flow) => flow > 1e-5);
    const words = instantInWords(reel, passing, 'metric');
    expect(words).toContain('the ram delivers. The waste valve is shut.');
    expect(words).toMatch(/passes the delivery valve into the vessel/);
    expect(words).not.toContain('leaves by the waste valve');
    const wide = reel.film.wasteFlow.indexOf(Math.max(...reel.film.wasteFlow));
    expect(instantInWords(reel, wide, 'us')).toMatch(/gpm leaves by the waste valve/);
  });

  test('agree with the values in their fixed places', () => {
    const words = instantInWords(reel, delivering, 'metric');
    const values = readOuts(reel, delivering, 'metric');
    const head = values.find(({ name }) => name === 'head at the ram');
    expect(words).toContain(`The head at the ram is ${head?.value};`);
    expect(values.map(({ name }) => name)).toEqual(readOuts(reel, 0, 'us').map(({ name }) => name));
  });

  test('have nothing to complain of while a ram beats and delivers', () => {
    expect(troubleInWords(reel, 'metric')).toBeUndefined();
  });
});

describe('a ram that does not beat', () => {
  const open = filmed(heavier(40));

  test('is told in words, and the two seconds after the push are shown', () => {
    expect(troubleInWords(open, 'metric')).toMatch(
      /does not beat\. Its waste valve stays open.*two seconds after the push/,
    );
    expect(open.film.time[open.film.frames - 1]).toBeCloseTo(2, 1);
    expect(open.isBeating).toBe(false);
    expect(open.player.get().clip.loops).toBe(false);
    expect(shutWindow(open)).toBeUndefined();
  });

  test('can be drawn all the same', () => {
    const layout = layOutTraces(open, {
      width: 336,
      window: { from: 0, to: 2 },
      system: 'metric',
    });
    const text = JSON.stringify([
      layout,
      stripAt(open, 100, layOutStrip(open, 336, 'us')),
      ramAt(open, 100),
      phaseBar(open, 300),
    ]);
    expect(text).not.toMatch(/NaN|null|Infinity/);
  });
});

test('a vessel too high to be reached: it beats, and the words say that nothing passes', () => {
  const high = filmed({ ...place, lift: 300 });
  expect(high.isBeating).toBe(true);
  expect(troubleInWords(high, 'metric')).toMatch(/It beats, but nothing passes.*300\sm/);
  const text = JSON.stringify(
    layOutTraces(high, { width: 600, window: { from: 0, to: 0.2 }, system: 'metric' }),
  );
  expect(text).not.toMatch(/NaN|null|Infinity/);
});

test('three beats shut the valve three times', () => {
  const three = filmed(place, 3);
  expect(three.phases.filter(({ kind }) => kind === 'delivers')).toHaveLength(3);
});
