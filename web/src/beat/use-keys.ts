/** Keys that work while the focus is anywhere in the screen: space, arrows, + − 0. */
import type { RefObject } from 'react';
import { useEffect } from 'react';
import type { Store } from '../state/store.ts';
import type { Player } from './player.ts';
import { paused, playing, showingAll, stepped, zoomedBy } from './player.ts';

export const ZOOM_STEP = 2;
/** With the shift key. */
const LONG_STEP = 10;

type Change = (player: Player) => Player;

export function useKeys(screen: RefObject<HTMLElement | null>, player: Store<Player>): void {
  useEffect(() => {
    const element = screen.current;
    if (element === null) return;
    const onKeyDown = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const change = changeFor(event.key, event.shiftKey, takesItself(event.target));
      if (change === undefined) return;
      event.preventDefault();
      player.update(change);
    };
    element.addEventListener('keydown', onKeyDown);
    return () => element.removeEventListener('keydown', onKeyDown);
  }, [screen, player]);
}

export interface Taken {
  readonly space: boolean;
  readonly arrows: boolean;
}

/** What a control does with the keys itself: a button takes the space bar, choices and folds their own keys. */
function takesItself(target: EventTarget | null): Taken {
  const isButton = target instanceof HTMLElement && target.closest('button, summary, a') !== null;
  const isRadio = target instanceof HTMLInputElement && target.type === 'radio';
  return { space: isButton || isRadio, arrows: isRadio };
}

export function changeFor(key: string, isLong: boolean, taken: Taken): Change | undefined {
  const step = isLong ? LONG_STEP : 1;
  if (key === ' ')
    return taken.space ? undefined : (state) => (state.isPlaying ? paused(state) : playing(state));
  if (key === 'ArrowRight') return taken.arrows ? undefined : (state) => stepped(state, step);
  if (key === 'ArrowLeft') return taken.arrows ? undefined : (state) => stepped(state, -step);
  if (key === '+' || key === '=') return (state) => zoomedBy(state, ZOOM_STEP);
  if (key === '-' || key === '−') return (state) => zoomedBy(state, 1 / ZOOM_STEP);
  if (key === '0') return showingAll;
  return undefined;
}
