/** A film with everything that is read off it once: what it is of, its phases, its extremes, its air, and its clock. */
import type { BeatFilm, Installation } from '@fallwright/engine';
import type { Store } from '../state/store.ts';
import { createStore } from '../state/store.ts';
import type { Phase } from './phases.ts';
import { phasesOf, runsOf } from './phases.ts';
import type { Player, Slowness } from './player.ts';
import { openPlayer } from './player.ts';
import type { TimeWindow } from './time-window.ts';
import { vesselAir } from './vessel.ts';
import { cutToWholeBeats } from './whole-beats.ts';

export interface Extent {
  readonly low: number;
  readonly high: number;
}

export interface Reel {
  readonly installation: Installation;
  readonly beats: number;
  readonly film: BeatFilm;
  /** Whether it shows whole beats; otherwise the two seconds after the push. */
  readonly isBeating: boolean;
  readonly phases: readonly Phase[];
  readonly vesselAir: Float64Array;
  readonly bodyHead: Extent;
  readonly lineHead: Extent;
  /** Of all flows at the ram together. */
  readonly flow: Extent;
  /** When the waste valve is shut. */
  readonly shut: readonly TimeWindow[];
  /** The largest of all flows, either way: arrows are drawn against it. */
  readonly greatestFlow: number;
  /** The highest head anywhere: the deepest blue. */
  readonly highestHead: number;
  readonly player: Store<Player>;
}

export interface ReelStart {
  readonly isPlaying: boolean;
  readonly slowness: Slowness;
  /** Begin where the ram delivers instead of at the first frame. */
  readonly standsAtDelivery: boolean;
}

/** `filmed` must be one beat longer than the `beats` that are to be seen. */
export function reelOf(
  installation: Installation,
  filmed: BeatFilm,
  beats: number,
  start: ReelStart,
): Reel {
  const film = cutToWholeBeats(filmed, beats);
  const isBeating = film.point.beatFrequency > 0;
  const phases = phasesOf(film);
  const lineHead = extentOf(film.lineHead);
  const flows = [film.driveFlow, film.wasteFlow, film.deliveryFlow].map(extentOf);
  const flow = {
    low: Math.min(...flows.map(({ low }) => low)),
    high: Math.max(...flows.map(({ high }) => high)),
  };
  const clip = {
    frames: film.frames,
    frameTime: (film.time[film.frames - 1] ?? 0) / (film.frames - 1),
    loops: isBeating,
  };
  return {
    installation,
    beats,
    film,
    isBeating,
    phases,
    vesselAir: vesselAir(film, installation),
    bodyHead: extentOf(film.bodyHead),
    lineHead,
    highestHead: Math.max(lineHead.high, film.point.vesselHead, installation.fall),
    flow,
    shut: runsOf(film.opening)
      .filter(({ isShut }) => isShut)
      .map(({ firstFrame, lastFrame }) => ({
        from: film.time[firstFrame] ?? 0,
        to: film.time[lastFrame] ?? 0,
      })),
    greatestFlow: Math.max(-flow.low, flow.high),
    player: createStore(
      openPlayer(clip, {
        frame: start.standsAtDelivery ? deliveringFrame(phases) : 0,
        isPlaying: start.isPlaying,
        slowness: start.slowness,
      }),
    ),
  };
}

export function extentOf(values: Float64Array | Float32Array): Extent {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return { low, high };
}

/** Middle of the first delivery; the first frame of a ram that delivers nothing. */
export function deliveringFrame(phases: readonly Phase[]): number {
  const delivery = phases.find(({ kind }) => kind === 'delivers');
  return delivery === undefined ? 0 : Math.floor((delivery.firstFrame + delivery.lastFrame) / 2);
}
