/** Moves a film on with the screen's own frames while it plays. */
import { useEffect } from 'react';
import { useStore } from '../app/use-store.ts';
import type { Store } from '../state/store.ts';
import type { Player } from './player.ts';
import { advanced } from './player.ts';

/** A page that was out of sight does not jump ahead. */
const LONGEST_STEP = 0.1;

export function useClock(player: Store<Player>): void {
  const isPlaying = useStore(player, (state) => state.isPlaying);
  useEffect(() => {
    if (!isPlaying) return;
    let last: number | undefined;
    let handle = requestAnimationFrame(function tick(now: number) {
      const elapsed = last === undefined ? 0 : Math.min(LONGEST_STEP, (now - last) / 1000);
      last = now;
      player.update((state) => advanced(state, elapsed));
      handle = requestAnimationFrame(tick);
    });
    return () => cancelAnimationFrame(handle);
  }, [player, isPlaying]);
}
