/**
 * Pointer on the traces. Mouse: a click sets the cursor, a drag across zooms to what it covers, the wheel zooms once the
 * screen has been touched. Finger: a drag moves the cursor, two fingers zoom.
 */
import type { RefObject } from 'react';
import { useEffect, useState } from 'react';
import type { Store } from '../state/store.ts';
import type { Player } from './player.ts';
import { movedTo, showing, zoomedBy } from './player.ts';
import type { TimeWindow } from './time-window.ts';
import type { TraceLayout } from './trace-layout.ts';
import { timeAt } from './trace-layout.ts';

/** A mouse that moved less has clicked. */
const CLICK = 5;
/** How much a notch of the wheel (100 px) zooms. */
const PER_WHEEL = 1.25;

type Frame = Pick<TraceLayout, 'left' | 'right' | 'width'>;

export function useTraceGestures(
  svg: RefObject<SVGSVGElement | null>,
  frame: Frame,
  player: Store<Player>,
  onTouched: () => void,
): TimeWindow | undefined {
  const [selection, setSelection] = useState<TimeWindow>();
  const { left, right, width } = frame;
  useEffect(() => {
    const element = svg.current;
    if (element === null) return;
    const fingers = new Map<number, number>();
    let dragFrom: number | undefined;
    let pinch: { readonly gap: number; readonly window: TimeWindow } | undefined;

    const toX = (event: MouseEvent): number => {
      const box = element.getBoundingClientRect();
      return ((event.clientX - box.left) * width) / box.width;
    };
    const toTime = (x: number, window = player.get().window): number =>
      timeAt({ left, right, window }, x);

    const onDown = (event: PointerEvent): void => {
      if (event.button !== 0) return;
      element.setPointerCapture(event.pointerId);
      onTouched();
      if (event.pointerType !== 'touch') {
        dragFrom = toX(event);
        return;
      }
      fingers.set(event.pointerId, toX(event));
      const [a, b] = [...fingers.values()];
      if (a !== undefined && b !== undefined)
        pinch = { gap: Math.max(10, Math.abs(a - b)), window: player.get().window };
    };
    const onMove = (event: PointerEvent): void => {
      if (dragFrom !== undefined) {
        const x = toX(event);
        if (Math.abs(x - dragFrom) >= CLICK)
          setSelection({ from: toTime(Math.min(x, dragFrom)), to: toTime(Math.max(x, dragFrom)) });
        return;
      }
      if (!fingers.has(event.pointerId)) return;
      fingers.set(event.pointerId, toX(event));
      const [a, b] = [...fingers.values()];
      if (pinch !== undefined && a !== undefined && b !== undefined) {
        const { gap, window } = pinch;
        const factor = Math.max(10, Math.abs(a - b)) / gap;
        const about = toTime((a + b) / 2, window);
        player.update((state) => zoomedBy({ ...state, window }, factor, about));
      } else if (pinch === undefined) {
        player.update((state) => movedTo(state, toTime(toX(event), state.window)));
      }
    };
    const onUp = (event: PointerEvent): void => {
      const x = toX(event);
      if (dragFrom !== undefined) {
        const from = Math.min(dragFrom, x);
        const to = Math.max(dragFrom, x);
        player.update((state) =>
          to - from < CLICK
            ? movedTo(state, toTime(x, state.window))
            : showing(state, { from: toTime(from, state.window), to: toTime(to, state.window) }),
        );
      } else if (fingers.has(event.pointerId) && pinch === undefined) {
        player.update((state) => movedTo(state, toTime(x, state.window)));
      }
      stop(event);
    };
    const stop = (event: PointerEvent): void => {
      fingers.delete(event.pointerId);
      // The finger that is left after a pinch does not drag the cursor along.
      if (fingers.size === 0) pinch = undefined;
      dragFrom = undefined;
      setSelection(undefined);
    };
    const onWheel = (event: WheelEvent): void => {
      const isTouched = element.closest('.beat')?.contains(document.activeElement) === true;
      // Until then the wheel scrolls the page, as everywhere. A trackpad's pinch comes with the control key.
      if (!event.ctrlKey && !isTouched) return;
      event.preventDefault();
      const about = toTime(toX(event));
      player.update((state) => zoomedBy(state, PER_WHEEL ** (-event.deltaY / 100), about));
    };
    // Pressing a mouse on what takes no focus would drop the focus that the scrubber has just been given.
    const keepFocus = (event: MouseEvent): void => event.preventDefault();
    element.addEventListener('mousedown', keepFocus);
    element.addEventListener('pointerdown', onDown);
    element.addEventListener('pointermove', onMove);
    element.addEventListener('pointerup', onUp);
    element.addEventListener('pointercancel', stop);
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => {
      element.removeEventListener('mousedown', keepFocus);
      element.removeEventListener('pointerdown', onDown);
      element.removeEventListener('pointermove', onMove);
      element.removeEventListener('pointerup', onUp);
      element.removeEventListener('pointercancel', stop);
      element.removeEventListener('wheel', onWheel);
    };
  }, [svg, left, right, width, player, onTouched]);
  return selection;
}
