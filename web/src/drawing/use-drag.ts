/** Dragging by mouse, pen or finger: the pointer is held until it lets go, and Escape or the browser can call it off. */
import { useRef } from 'react';
import type { Point } from './points.ts';

export interface Dragged {
  /** Where the pointer is, in the pixels of the drawing, less where in the handle it was put down. */
  readonly move: (at: Point) => void;
  /** It let go: keep what was shown. */
  readonly drop: () => void;
  /** It was called off: forget what was shown. */
  readonly callOff: () => void;
}

/** A hand trembles: under this many pixels nothing is dragged yet. */
const TREMBLE = 3;

/**
 * Handlers for an element of an SVG. `begin` is called when the pointer has really moved; it gets the point where it was
 * put down and says what the drag does, or undefined when nothing there can be dragged.
 */
export function useDrag<Target extends SVGGraphicsElement>({
  canBegin = () => true,
  handleAt,
  begin,
}: {
  readonly canBegin?: (event: React.PointerEvent<Target>) => boolean;
  /** The middle of the handle, so that it does not jump to the pointer; the pointer itself when absent. */
  readonly handleAt?: Point;
  readonly begin: (at: Point) => Dragged | undefined;
}) {
  const hold = useRef<{ pointer: number; down: Point; offset: Point; dragged?: Dragged }>(
    undefined,
  );
  /** A click follows a drag that ends on a link: it must not lead away. */
  const swallowsClick = useRef(false);

  const end = (way: 'drop' | 'callOff'): void => {
    const { dragged } = hold.current ?? {};
    hold.current = undefined;
    dragged?.[way]();
  };

  return {
    onPointerDown: (event: React.PointerEvent<Target>): void => {
      swallowsClick.current = false;
      if (event.button !== 0 || !event.isPrimary || !canBegin(event)) return;
      const down = pointIn(event);
      const middle = handleAt ?? down;
      event.currentTarget.setPointerCapture(event.pointerId);
      hold.current = {
        pointer: event.pointerId,
        down,
        offset: { x: down.x - middle.x, y: down.y - middle.y },
      };
    },
    onPointerMove: (event: React.PointerEvent<Target>): void => {
      const held = hold.current;
      if (held === undefined || held.pointer !== event.pointerId) return;
      const at = pointIn(event);
      const hasMoved = Math.hypot(at.x - held.down.x, at.y - held.down.y) > TREMBLE;
      if (held.dragged === undefined) {
        if (!hasMoved) return;
        const dragged = begin(held.down);
        if (dragged === undefined) {
          hold.current = undefined;
          return;
        }
        swallowsClick.current = true;
        held.dragged = dragged;
      }
      held.dragged.move({ x: at.x - held.offset.x, y: at.y - held.offset.y });
    },
    onPointerUp: (): void => end('drop'),
    onPointerCancel: (): void => end('callOff'),
    onLostPointerCapture: (event: React.PointerEvent<Target>): void => {
      // A finger is held by the child that it fell on, until the handle takes it over: that is no loss.
      if (event.target === event.currentTarget) end('callOff');
    },
    /** For Escape. Says whether there was anything to call off. */
    callOff: (): boolean => {
      const isHeld = hold.current?.dragged !== undefined;
      end('callOff');
      return isHeld;
    },
    onClick: (event: React.MouseEvent): void => {
      if (swallowsClick.current) event.preventDefault();
      swallowsClick.current = false;
    },
  };
}

function pointIn(event: React.PointerEvent<SVGGraphicsElement>): Point {
  const matrix = event.currentTarget.getScreenCTM()?.inverse();
  const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix);
  return { x, y };
}
