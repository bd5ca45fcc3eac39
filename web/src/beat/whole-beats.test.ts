import { expect, test } from 'vitest';
import { madeFilm } from './fixtures/made-film.ts';
import { cutToWholeBeats, reopeningsOf } from './whole-beats.ts';

const opening = [0, 0, 1, 1, 0, 0, 0, 1, 1, 1, 0, 1];

test('a film is cut from one reopening to the next and its time counts from there', () => {
  const film = madeFilm({ opening, lineHead: opening.map((_, frame) => [frame, frame, frame]) });
  const cut = cutToWholeBeats(film, 1);
  expect([...cut.opening]).toEqual([0, 1, 1, 0, 0, 0]);
  expect(cut.frames).toBe(6);
  expect(cut.time[0]).toBe(0);
  expect(cut.time[5]).toBeCloseTo(0.05, 12);
  expect([...cut.lineHead.subarray(0, 3)]).toEqual([1, 1, 1]);
  expect(cut.lineHead).toHaveLength(18);
});

test('two beats last from the first reopening to the third', () => {
  expect(cutToWholeBeats(madeFilm({ opening }), 2).frames).toBe(10);
});

test('a film with too few beats, or of a ram that does not beat, stays whole', () => {
  const film = madeFilm({ opening });
  expect(cutToWholeBeats(film, 3)).toBe(film);
  const still = madeFilm({ opening, beatFrequency: 0 });
  expect(cutToWholeBeats(still, 1)).toBe(still);
});

test('a valve that only trembles has not reopened', () => {
  expect(reopeningsOf(Float64Array.from([0, 0.01, 0, 0.01, 1, 0]), 0.05)).toEqual([2]);
});
