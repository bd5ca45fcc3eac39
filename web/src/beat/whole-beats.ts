/** From a film that begins when the waste valve shuts to whole beats in the order of cause: it opens, water gathers speed, it shuts. */
import type { BeatFilm } from '@fallwright/engine';

/** A disc that has lifted less than this share of its stroke has trembled, not opened: as the engine counts beats. */
const TREMBLE = 0.05;

/**
 * The film from its first reopening to the one `beats` later, its time counted from there. A film with fewer reopenings,
 * or of a ram that does not beat, is given back whole.
 *
 * To see `beats` whole beats in this order, a film must be one beat longer.
 */
export function cutToWholeBeats(film: BeatFilm, beats: number): BeatFilm {
  const stroke = film.opening.reduce((widest, opening) => Math.max(widest, opening), 0);
  const reopenings = reopeningsOf(film.opening, TREMBLE * stroke);
  const from = reopenings[0];
  const to = reopenings[beats];
  if (film.point.beatFrequency === 0 || from === undefined || to === undefined) return film;
  const { nodes } = film;
  const start = film.time[from] ?? 0;
  return {
    ...film,
    frames: to - from + 1,
    time: film.time.slice(from, to + 1).map((time) => time - start),
    opening: film.opening.subarray(from, to + 1),
    bodyHead: film.bodyHead.subarray(from, to + 1),
    driveFlow: film.driveFlow.subarray(from, to + 1),
    wasteFlow: film.wasteFlow.subarray(from, to + 1),
    deliveryFlow: film.deliveryFlow.subarray(from, to + 1),
    lineHead: film.lineHead.subarray(from * nodes, (to + 1) * nodes),
    lineFlow: film.lineFlow.subarray(from * nodes, (to + 1) * nodes),
  };
}

/** Last shut frame before each time that the valve opens by more than `least`. */
export function reopeningsOf(opening: Float64Array, least: number): number[] {
  const found: number[] = [];
  let lastShut: number | undefined;
  opening.forEach((lift, frame) => {
    if (lift === 0) lastShut = frame;
    else if (lift > least && lastShut !== undefined) {
      found.push(lastShut);
      lastShut = undefined;
    }
  });
  return found;
}
