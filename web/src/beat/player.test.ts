import { expect, test } from 'vitest';
import type { Clip } from './player.ts';
import {
  advanced,
  atSlowness,
  calmFrameOf,
  durationOf,
  frameOf,
  movedTo,
  movedToFrame,
  openPlayer,
  paused,
  playing,
  showing,
  showingAll,
  stepped,
  zoomedBy,
} from './player.ts';

const beats: Clip = { frames: 101, frameTime: 0.01, loops: true };
const still: Clip = { ...beats, loops: false };
const open = (clip = beats) => openPlayer(clip, { frame: 0, isPlaying: true, slowness: 20 });

test('a twentieth of the speed moves a twentieth of the time', () => {
  expect(advanced(open(), 2).time).toBeCloseTo(0.1, 12);
  expect(advanced(atSlowness(open(), 1), 0.5).time).toBeCloseTo(0.5, 12);
});

test('whole beats go round; the film after a push stops at its end and begins again', () => {
  const near = movedTo(open(), 0.99);
  expect(advanced(playing(near), 0.4).time).toBeCloseTo(0.01, 12);
  const end = advanced(playing(movedTo(open(still), 0.99)), 0.4);
  expect(end).toMatchObject({ time: 1, isPlaying: false });
  expect(playing(end)).toMatchObject({ time: 0, isPlaying: true });
});

test('what is paused stands still', () => {
  const player = paused(open());
  expect(advanced(player, 5)).toBe(player);
});

test('a step is one frame and stops the film; past the end of a beat comes its beginning', () => {
  const one = stepped(open(), 1);
  expect(frameOf(one)).toBe(1);
  expect(one.isPlaying).toBe(false);
  expect(frameOf(stepped(open(), -1))).toBe(99);
  expect(frameOf(stepped(movedToFrame(open(), 99), 1))).toBe(0);
  expect(frameOf(stepped(open(still), -1))).toBe(0);
  expect(frameOf(stepped(movedToFrame(open(still), 100), 1))).toBe(100);
});

test('zooming keeps the cursor where it is on the page and never leaves the film', () => {
  const player = zoomedBy(movedTo(open(), 0.5), 2);
  expect(player.window.from).toBeCloseTo(0.25, 12);
  expect(player.window.to).toBeCloseTo(0.75, 12);
  const edge = zoomedBy(movedTo(open(), 0), 4);
  expect(edge.window).toEqual({ from: 0, to: 0.25 });
  expect(zoomedBy(player, 1 / 8).window).toEqual({ from: 0, to: durationOf(beats) });
});

test('however far one zooms in, eight frames are left', () => {
  const { window } = zoomedBy(movedTo(open(), 0.5), 1e6);
  expect(window.to - window.from).toBeCloseTo(0.08, 12);
});

test('a stretch that is shown always has the cursor in it, and the film runs round inside it', () => {
  const shown = showing(open(), { from: 0.4, to: 0.6 });
  expect(shown.time).toBe(0.4);
  expect(advanced(movedToFrameAndPlay(shown, 59), 0.4).time).toBeCloseTo(0.41, 12);
});

test('the stretch follows a cursor that is moved out of it', () => {
  const shown = showing(open(), { from: 0.4, to: 0.6 });
  const moved = movedTo(shown, 0.9);
  expect(moved.window.from).toBeLessThan(0.9);
  expect(moved.window.to).toBeGreaterThan(0.9);
  expect(moved.window.to - moved.window.from).toBeCloseTo(0.2, 12);
  expect(showingAll(moved).window).toEqual({ from: 0, to: 1 });
});

test('words change every half second while it plays and are exact when it stands', () => {
  const at = (time: number) => ({ ...open(), time });
  expect(calmFrameOf(at(0.051))).toBe(5);
  expect(calmFrameOf(at(0.074))).toBe(5);
  expect(calmFrameOf(paused(at(0.074)))).toBe(7);
});

function movedToFrameAndPlay(player: ReturnType<typeof open>, frame: number) {
  return playing(movedToFrame(player, frame));
}
