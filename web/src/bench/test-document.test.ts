import { describe, expect, test } from 'vitest';
import { openPlace, putValue, undo } from '../state/place.ts';
import { createStore } from '../state/store.ts';
import { timedSpot, writtenSpot } from './reading-spots.ts';
import { rigStore } from './rig-desk.ts';
import {
  newTest,
  ramOfTest,
  readingsIn,
  rigInWords,
  withCounted,
  withListedTest,
  withNewReading,
} from './test-document.ts';
import { readTestOnPage } from './test-reading.ts';

const WRITTEN = withListedTest({
  fallwright: 'test@1',
  rig: { fall: '2 m', drive: { pipe: 'galvanised steel DN25', length: '9 m' } },
  ram: 'DN25',
  instruments: { beats: 'stopwatch' },
  by: 'Ann Fell',
  readings: {
    lift: '8 m',
    beats: [{ count: 60, times: ['30 s', '30.2 s'] }, '119/min'],
    delivered: '1.1 L/min',
    wasted: { volume: '5 L', times: '57 s' },
  },
});

describe('a test on the page', () => {
  test('has lists where a file wrote one thing alone', () => {
    const [reading] = readingsIn(WRITTEN);
    expect(reading?.delivered).toEqual(['1.1 L/min']);
    expect(reading?.wasted).toEqual([{ volume: '5 L', times: '57 s' }]);
    expect(rigInWords(WRITTEN)).toBe('fall 2 m, 9 m of galvanised steel DN25');
  });

  test('a rate that is written does not disturb what was counted', () => {
    const written = writtenSpot(0, 'beats');
    const counted = timedSpot(0, 'beats');
    expect(written.read(WRITTEN)).toEqual({ beats: ['119/min'] });
    expect(counted.read(WRITTEN)).toMatchObject({ count: 60 });
    const more = written.write(WRITTEN, { beats: ['119/min', '120/min'] });
    expect(counted.read(more)).toEqual(counted.read(WRITTEN));
    const none = written.write(counted.write(more, {}), {});
    expect(readingsIn(none)[0]).not.toHaveProperty('beats');
  });

  test('a counted rate stands behind the others, and its file is named once', () => {
    const file = { of: 'recordings', name: 'a.wav' } as const;
    const once = withCounted(WRITTEN, 0, { rate: '120.1/min ± 0.4/min', file });
    const twice = withCounted(once, 0, { rate: '120.0/min ± 0.4/min', file });
    expect(writtenSpot(0, 'beats').read(twice)).toEqual({
      beats: ['119/min', '120.1/min ± 0.4/min', '120.0/min ± 0.4/min'],
    });
    expect(readingsIn(twice)[0]?.recordings).toEqual(['a.wav']);
    expect(readTestOnPage(twice).problems).toEqual([]);
  });

  test('a new one has the rig and instruments of the last, and none of its readings', () => {
    const next = newTest(WRITTEN, { ram: 'DN20', date: '2026-08-20' });
    expect(next).toMatchObject({ ram: 'DN20', by: 'Ann Fell', instruments: WRITTEN.instruments });
    expect(next.rig).toBe(WRITTEN.rig);
    expect(next.readings).toEqual([{}]);
  });

  test('tests of one ram of the range stand together whatever its revision', () => {
    const key = (range: string) => ramOfTest({ ram: { range, name: 'Swallow 25' } }).key;
    expect(key('swallow-25@3')).toBe(key('swallow-25@2'));
    expect(ramOfTest({ ram: 'DN25' }).name).toBe('a typical DN25');
  });
});

describe('a test read reading by reading', () => {
  test('one that is not whole leaves the others', () => {
    const { readings, problems } = readTestOnPage(withNewReading(WRITTEN));
    expect(readings.map(({ ok }) => ok)).toEqual([true, false]);
    expect(problems.every(({ field }) => field.startsWith('readings[1]'))).toBe(true);
  });

  test('one that cannot be so is doubted at once, without a simulation', () => {
    const wrong = timedSpot(0, 'wasted').write(WRITTEN, {});
    const read = readTestOnPage(
      writtenSpot(0, 'wasted').write(wrong, { wasted: ['1 L/min', '1 L/min'] }),
    ).readings[0];
    expect(read?.ok === true && read.doubts.map(({ kind }) => kind)).toContain('energyFromNothing');
  });

  test('words beside a reading ask nothing new of the engine', () => {
    const asked = (remarks: string) =>
      readTestOnPage({
        ...WRITTEN,
        name: remarks,
        readings: readingsIn(WRITTEN).map((reading) => ({ ...reading, remarks })),
      }).readings[0];
    expect(asked('a')).toMatchObject({ ok: true });
    expect(asked('a')).toEqual(asked('b'));
  });

  test('a bad date is told', () => {
    const { problems, readings } = readTestOnPage({ ...WRITTEN, date: 'last week' });
    expect(problems).toMatchObject([{ field: 'date' }]);
    expect(readings.map(({ ok }) => ok)).toEqual([true]);
  });
});

test('the rig is written as a document of its own, and undone as a step of the test', () => {
  const place = createStore(openPlace(WRITTEN, 'one'));
  const rig = rigStore(place);
  expect(rig.get().document.fall).toBe('2 m');
  expect(rig.get()).toBe(rig.get());
  rig.update((state) => putValue(state, { path: ['fall'], value: '2.1 m', called: 'the fall' }));
  rig.update((state) => putValue(state, { path: ['fall'], value: '2.15 m', called: 'the fall' }));
  expect(place.get().document).toEqual({ ...WRITTEN, rig: { ...rig.get().document } });
  expect(rig.get().document.fall).toBe('2.15 m');
  // Keys typed in one box are one step.
  expect(place.get().past).toHaveLength(1);
  rig.update((state) => ({ ...state, unread: { fall: { text: '2' } } }));
  expect(place.get().unread).toEqual({ 'rig.fall': { text: '2' } });
  place.update(undo);
  expect(place.get().document).toEqual(WRITTEN);
  expect(rig.get().unread).toEqual({});
});
