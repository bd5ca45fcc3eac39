/** The pipe itself under the mouse: pulled, it bends, and a new point stands where it was taken. Clicked, it is a link as before. */
import { useEditing } from './editing.ts';
import type { DrawnLine } from './moving.ts';
import { pointDragger, pulledPoint } from './moving.ts';
import { useDrag } from './use-drag.ts';

export function Pull({ d, drawn }: { readonly d: string; readonly drawn: DrawnLine }) {
  const editing = useEditing();
  const { callOff: _key, ...pointer } = useDrag<SVGPathElement>({
    // A finger that begins on the pipe scrolls the page; it has the button to add a point with.
    canBegin: (event) => event.pointerType !== 'touch',
    begin: (at) => {
      if (editing === undefined) return undefined;
      const pulled = pulledPoint(editing.document, at, drawn, editing.system);
      if (pulled === undefined) return undefined;
      const { document, point } = pulled;
      const corners = [
        ...drawn.corners.filter(({ station }) => station < drawn.from + point.station),
        { station: drawn.from + point.station, height: point.height },
      ];
      const moved = pointDragger(document, point, { ...drawn, corners }, editing.system);
      let latest = document;
      editing.takeInHand(point);
      return {
        move: (to) => {
          latest = moved(to);
          editing.preview(latest);
        },
        drop: () => {
          editing.preview(undefined);
          editing.putPoint(latest, point, 'added');
        },
        callOff: () => {
          editing.preview(undefined);
          editing.takeInHand(undefined);
        },
      };
    },
  });
  if (editing === undefined) return null;
  return <path className="pull" d={d} {...pointer} />;
}
