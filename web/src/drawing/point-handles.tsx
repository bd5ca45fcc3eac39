/** The points of a line as handles: dragged by pointer, moved by arrow keys, taken out with Delete. */
import { withPointMoved } from '../profile/change-points.ts';
import type { LinePoint } from '../profile/line-points.ts';
import { isSamePoint, linePoints, pointKey } from '../profile/line-points.ts';
import { metresPerUnit } from '../profile/written-metres.ts';
import type { SiteDocument } from '../state/site-document.ts';
import type { Turns } from './developed-place.ts';
import type { Editing } from './editing.ts';
import { handleId, LINE_WORDS, spotWords, useEditing } from './editing.ts';
import type { PointHandle } from './handles.ts';
import { pointHandles } from './handles.ts';
import type { DrawnLine } from './moving.ts';
import { keyStep, keyWay, pointDragger } from './moving.ts';
import { useDrag } from './use-drag.ts';

export function PointHandles({
  shown,
  drawn,
  turns,
  grip,
}: {
  /** The document that is drawn, which a drag may be ahead of what is kept. */
  readonly shown: SiteDocument;
  readonly drawn: DrawnLine;
  readonly turns: Turns;
  readonly grip: number;
}) {
  const editing = useEditing();
  if (editing === undefined) return null;
  const points = linePoints(shown, drawn.line);
  const handles = pointHandles(points, {
    from: drawn.from,
    projection: drawn.projection,
    turns,
    grip,
    inHand: editing.inHand,
  });
  const held = handles.find(({ point }) => isSamePoint(point, editing.inHand));
  return (
    <>
      {handles.map((handle) => (
        <Handle
          key={pointKey(handle.point)}
          handle={handle}
          number={points.indexOf(handle.point) + 1}
          count={points.length}
          drawn={drawn}
          editing={editing}
        />
      ))}
      {held !== undefined && (
        <HandleWords handle={held} words={wordsOf(held, editing)} drawn={drawn} />
      )}
    </>
  );
}

const wordsOf = ({ point, turn }: PointHandle, { system }: Editing): string =>
  `${spotWords(point, system)}${turn === undefined ? '' : `, ${turn}`}`;

function Handle({
  handle,
  number,
  count,
  drawn,
  editing,
}: {
  readonly handle: PointHandle;
  readonly number: number;
  readonly count: number;
  readonly drawn: DrawnLine;
  readonly editing: Editing;
}) {
  const { point, at, reach, turn } = handle;
  const { system } = editing;
  const isInHand = isSamePoint(editing.inHand, point);
  const {
    callOff,
    onClick: _link,
    ...pointer
  } = useDrag<SVGGElement>({
    handleAt: at,
    begin: () => {
      const moved = pointDragger(editing.document, point, drawn, system);
      let latest = editing.document;
      editing.takeInHand(point);
      return {
        move: (to) => {
          latest = moved(to);
          editing.preview(latest);
        },
        drop: () => {
          editing.preview(undefined);
          editing.putPoint(latest, point, 'dragged');
        },
        callOff: () => editing.preview(undefined),
      };
    },
  });

  const onKeyDown = (event: React.KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const way = keyWay(event.key);
    if (way !== undefined) {
      const length = (drawn.corners.at(-1)?.station ?? 0) - drawn.from;
      const step = keyStep(length, system, event.shiftKey || way.isPage === true);
      const to = {
        at: point.at + way.along * step.at,
        height: point.height + way.up * step.height,
      };
      editing.putPoint(withPointMoved(editing.document, point, to, { system }), point, 'byKey');
    } else if (event.key === 'Delete' || event.key === 'Backspace') editing.takeOut(point);
    else if (event.key === 'Enter' || event.key === ' ') editing.showInTable(point);
    else if (event.key !== 'Escape' || !callOff()) return;
    event.preventDefault();
  };

  const unit = metresPerUnit(system);
  const height = round(point.height / unit);
  const words = wordsOf(handle, editing);
  return (
    <g
      id={handleId(point)}
      className={isInHand ? 'handle in-hand' : 'handle'}
      role="slider"
      tabIndex={0}
      aria-label={nameOf(point, number, count, drawn)}
      aria-valuenow={height}
      aria-valuemin={Math.min(height, -RANGE)}
      aria-valuemax={Math.max(height, RANGE)}
      aria-valuetext={words}
      aria-describedby={editing.hintId}
      onKeyDown={onKeyDown}
      onFocus={() => editing.takeInHand(point)}
      onBlur={() => editing.takeInHand(undefined)}
      {...pointer}
    >
      <circle className="touch-area" cx={at.x} cy={at.y} r={reach} />
      <circle className="handle-ring" cx={at.x} cy={at.y} r={9} />
      {/* A crest has its open ring already. */}
      {(turn !== 'crest' || isInHand) && (
        <circle className="handle-dot" cx={at.x} cy={at.y} r={isInHand ? 4.5 : 3.5} />
      )}
    </g>
  );
}

/** Above the point, clear of the finger, or under it where there is no paper above, and never off the sheet. */
function HandleWords({
  handle: { at, reach },
  words,
  drawn,
}: {
  readonly handle: PointHandle;
  readonly words: string;
  readonly drawn: DrawnLine;
}) {
  const half = (7 * words.length) / 2 + 4;
  const x = Math.min(Math.max(at.x, half), Math.max(half, drawn.width - half));
  const above = at.y - Math.max(18, 1.6 * reach);
  const y = above - drawn.top > 14 ? above : at.y + 30;
  return (
    <g aria-hidden="true" className="handle-words">
      {/* Other words may stand there: while a point is in hand its own come first. */}
      <rect x={x - half} y={y - 13} width={2 * half} height={18} />
      <text className="d-label strong" x={x} y={y} textAnchor="middle">
        {words}
      </text>
    </g>
  );
}

function nameOf(point: LinePoint, number: number, count: number, { line }: DrawnLine): string {
  const whole = `${LINE_WORDS[line]} point ${number} of ${count}`;
  const named = whole.charAt(0).toUpperCase() + whole.slice(1);
  return point.pipe === 0 ? named : `${named}, in pipe ${point.pipe + 1}`;
}

/** A slider must name its ends; these are beyond any lift that a ram is asked for, in metres and in feet. */
const RANGE = 2000;

const round = (value: number): number => Math.round(value * 100) / 100;
