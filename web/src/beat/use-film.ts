/** Asks for a film whenever the ram, its place or the number of beats changes; the newest question wins. */
import type { Installation } from '@fallwright/engine';
import { useEffect, useRef, useState } from 'react';
import type { FilmRoom } from './film-room.ts';
import { openFilmRoom } from './film-room.ts';
import { paused } from './player.ts';
import type { Reel, ReelStart } from './reel.ts';
import { reelOf } from './reel.ts';

export interface Filming {
  /** `slow`: it has been running long enough to say so. */
  readonly phase: 'running' | 'slow' | 'ready' | 'failed';
  /** The last film that was made; kept while a newer one is made. */
  readonly reel?: Reel;
  readonly failure?: string;
}

/** LOOK: a word after 0.4 s. */
const SAY_RUNNING = 400;

export function useFilm(
  installation: Installation | undefined,
  beats: number,
): Filming & { readonly again: () => void } {
  const [filming, setFilming] = useState<Filming>({ phase: 'running' });
  const [attempt, setAttempt] = useState(0);
  const room = useRef<FilmRoom>(undefined);
  const latest = useRef<Reel>(undefined);

  useEffect(() => {
    const mine = openFilmRoom();
    room.current = mine;
    return () => mine.close();
  }, []);

  // biome-ignore lint/correctness/useExhaustiveDependencies: `attempt` asks the same question again.
  useEffect(() => {
    if (installation === undefined || room.current === undefined) return;
    let isNewest = true;
    setFilming(({ reel }) => ({ phase: 'running', ...(reel === undefined ? {} : { reel }) }));
    const sayRunning = setTimeout(() => {
      setFilming((state) => (state.phase === 'running' ? { ...state, phase: 'slow' } : state));
    }, SAY_RUNNING);
    room.current
      .film(installation, { beats: beats + 1 })
      .then(
        (film) => {
          if (!isNewest) return;
          const reel = reelOf(installation, film, beats, startAfter(latest.current));
          latest.current?.player.update(paused);
          latest.current = reel;
          setFilming({ phase: 'ready', reel });
        },
        (error: unknown) => {
          if (!isNewest) return;
          const failure = error instanceof Error ? error.message : String(error);
          setFilming((state) => ({ ...state, phase: 'failed', failure }));
        },
      )
      .finally(() => clearTimeout(sayRunning));
    return () => {
      isNewest = false;
      clearTimeout(sayRunning);
    };
  }, [installation, beats, attempt]);

  return { ...filming, again: () => setAttempt((count) => count + 1) };
}

/** A new film runs on as the one before it did. The first one plays, unless the person wants no motion. */
function startAfter(before: Reel | undefined): ReelStart {
  const isStill = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
  const player = before?.player.get();
  return {
    isPlaying: player?.isPlaying ?? !isStill,
    slowness: player?.slowness ?? 20,
    standsAtDelivery: isStill,
  };
}
