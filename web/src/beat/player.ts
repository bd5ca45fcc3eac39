/** The one clock of the screen: where the film stands, whether and how fast it runs, and which stretch of it is looked at. */
import type { TimeWindow, WindowLimits } from './time-window.ts';
import { fitted, following, zoomed } from './time-window.ts';

/** How many times slower than the ram: LOOK's four. */
export const SLOWNESSES = [1, 5, 20, 100] as const;
export type Slowness = (typeof SLOWNESSES)[number];

export interface Clip {
  readonly frames: number;
  readonly frameTime: number;
  /** Whether the end leads back to the beginning, as whole beats do. */
  readonly loops: boolean;
}

export interface Player {
  readonly clip: Clip;
  readonly time: number;
  readonly isPlaying: boolean;
  readonly slowness: Slowness;
  readonly window: TimeWindow;
}

/** Judgement: eight frames across a page are single steps of the simulation; closer there is nothing to see. */
const LEAST_FRAMES = 8;

export function openPlayer(
  clip: Clip,
  start: { readonly frame: number; readonly isPlaying: boolean; readonly slowness: Slowness },
): Player {
  return {
    clip,
    time: start.frame * clip.frameTime,
    isPlaying: start.isPlaying,
    slowness: start.slowness,
    window: { from: 0, to: durationOf(clip) },
  };
}

export function durationOf({ frames, frameTime }: Clip): number {
  return (frames - 1) * frameTime;
}

/** The frame in hand. Nothing is made up between two frames. */
export function frameOf({ clip, time }: Player): number {
  return Math.min(clip.frames - 1, Math.max(0, Math.round(time / clip.frameTime)));
}

/** After `elapsed` seconds on the person's clock. The film runs round inside the stretch that is looked at. */
export function advanced(player: Player, elapsed: number): Player {
  if (!player.isPlaying) return player;
  const { clip, window } = player;
  const isWhole = isWholeShown(player);
  const next = Math.max(player.time, window.from) + elapsed / player.slowness;
  if (next <= window.to) return { ...player, time: next };
  if (!clip.loops && isWhole) return { ...player, time: window.to, isPlaying: false };
  const width = window.to - window.from;
  return { ...player, time: window.from + ((next - window.from) % width) };
}

export function isWholeShown({ clip, window }: Player): boolean {
  return window.to - window.from >= durationOf(clip) * (1 - 1e-9);
}

/** Play from here; a film that stands at its end begins again. */
export function playing(player: Player): Player {
  const isAtEnd = !player.clip.loops && player.time >= durationOf(player.clip) * (1 - 1e-9);
  return { ...player, isPlaying: true, time: isAtEnd ? 0 : player.time };
}

export function paused(player: Player): Player {
  return player.isPlaying ? { ...player, isPlaying: false } : player;
}

export function atSlowness(player: Player, slowness: Slowness): Player {
  return { ...player, slowness };
}

/** Stands still at a moment; the stretch that is looked at follows. */
export function movedTo(player: Player, time: number): Player {
  const kept = Math.min(durationOf(player.clip), Math.max(0, time));
  return {
    ...player,
    isPlaying: false,
    time: kept,
    window: following(player.window, kept, limitsOf(player.clip)),
  };
}

export function movedToFrame(player: Player, frame: number): Player {
  return movedTo(player, frame * player.clip.frameTime);
}

/** Some frames on or back. Past an end of whole beats it goes on at the other. */
export function stepped(player: Player, frames: number): Player {
  const { clip } = player;
  const last = clip.frames - 1;
  const wanted = frameOf(player) + frames;
  if (!clip.loops) return movedToFrame(player, wanted);
  return movedToFrame(player, ((wanted % last) + last) % last);
}

export function zoomedBy(player: Player, factor: number, about = player.time): Player {
  const limits = limitsOf(player.clip);
  return { ...player, window: zoomed(player.window, factor, about, limits) };
}

/** Shows one stretch; a cursor outside it comes to its beginning, so that there is always one to be seen. */
export function showing(player: Player, wanted: TimeWindow): Player {
  const window = fitted(wanted, limitsOf(player.clip));
  const isInside = player.time >= window.from && player.time <= window.to;
  return { ...player, window, time: isInside ? player.time : window.from };
}

export function showingAll(player: Player): Player {
  return { ...player, window: { from: 0, to: durationOf(player.clip) } };
}

function limitsOf(clip: Clip): WindowLimits {
  return { duration: durationOf(clip), least: LEAST_FRAMES * clip.frameTime };
}

/** Judgement: words that change more often than every half second cannot be read. */
const CALM = 0.5;

/** The frame that words tell of: while it plays the one of the last whole half second, standing still the frame in hand. */
export function calmFrameOf(player: Player): number {
  if (!player.isPlaying) return frameOf(player);
  const beat = CALM / player.slowness;
  const time = Math.floor(player.time / beat) * beat;
  return frameOf({ ...player, time: Math.max(player.window.from, time) });
}
