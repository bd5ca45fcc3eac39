/** Litres a day against the water it takes, a verdict mark for each pair. A click takes the nearest; arrow keys go through them. */

import { unitShown } from '@fallwright/units';
import { useId, useRef } from 'react';
import { useWidth } from '../beat/use-width.ts';
import { VerdictMark } from '../marks/verdict-mark.tsx';
import { cellOf, dailyUnit } from './cells.ts';
import type { PairView } from './pair-view.ts';
import { pairName } from './pairs.ts';
import type { Picture, PicturePoint } from './picture.ts';
import { inReadingOrder, layOutPicture, MARK_SHAPE, pointAt } from './picture.ts';

export function PairPicture({
  view,
  fallOverLift,
  describedBy,
}: {
  readonly view: PairView;
  readonly fallOverLift: number;
  /** Id of the sentences that say the same as the picture. */
  readonly describedBy: string;
}) {
  const { ref, width } = useWidth<HTMLDivElement>();
  const id = useId();
  const picture =
    width === 0
      ? undefined
      : layOutPicture({ ...view, fallOverLift, chosenKey: view.chosen?.key, width });
  return (
    <figure className="pair-picture" aria-labelledby={`${id}-title`}>
      <div className="sheet" ref={ref}>
        {picture !== undefined && (
          <Drawn picture={picture} view={view} titleId={`${id}-title`} wordsId={describedBy} />
        )}
      </div>
      <figcaption>
        Each mark is a pair. Dotted rays: equal efficiency by D’Aubuisson, lift and fall as on the
        sheet, friction left aside.{' '}
        {picture?.sourceBeyond !== undefined &&
          `The source gives ${picture.sourceBeyond}, beyond this picture. `}
        {picture !== undefined &&
          picture.notDrawn > 0 &&
          `${picture.notDrawn} ${picture.notDrawn === 1 ? 'pair delivers nothing and is' : 'pairs deliver nothing and are'} not drawn.`}
      </figcaption>
    </figure>
  );
}

const STEPS: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowDown: 1,
  ArrowLeft: -1,
  ArrowUp: -1,
};

function Drawn({
  picture,
  view,
  titleId,
  wordsId,
}: {
  readonly picture: Picture;
  readonly view: PairView;
  readonly titleId: string;
  readonly wordsId: string;
}) {
  const svg = useRef<SVGSVGElement>(null);
  const { width, height, frame, points } = picture;
  const ordered = inReadingOrder(points);
  const wayIn = (ordered.find(({ isChosen }) => isChosen) ?? ordered[0])?.pair.key;

  const choose = (point: PicturePoint | undefined): void => {
    if (point !== undefined) view.onChoose(point.pair);
  };
  const chooseAt = (event: React.MouseEvent<SVGSVGElement>): void => {
    const box = event.currentTarget.getBoundingClientRect();
    choose(pointAt(points, event.clientX - box.left, event.clientY - box.top));
  };
  const chooseByKey = (event: React.KeyboardEvent<SVGGElement>, at: number): void => {
    const step = STEPS[event.key];
    const next =
      event.key === 'Home'
        ? 0
        : event.key === 'End'
          ? ordered.length - 1
          : step === undefined
            ? event.key === ' ' || event.key === 'Enter'
              ? at
              : undefined
            : (at + step + ordered.length) % ordered.length;
    if (next === undefined) return;
    event.preventDefault();
    choose(ordered[next]);
    svg.current?.querySelectorAll<SVGGElement>('.point')[next]?.focus();
  };

  const size = { width, height, viewBox: `0 0 ${width} ${height}` };
  return (
    <>
      <p className="title" id={titleId}>
        {dailyUnit(view.system)} a day at the tank
        <span className="for-ears">, against water taken from the source</span>
      </p>
      <div className="layers" style={{ height }}>
        <svg className="plot" {...size} aria-hidden="true" focusable="false">
          <Ground picture={picture} />
          <text className="title" x={frame.right} y={height - 6} textAnchor="end">
            water taken, {unitShown('sourceFlow', view.system)}
          </text>
          {picture.labels.map((label) => (
            <text
              key={label.key}
              className={label.key === view.chosen?.key ? 'label chosen' : 'label'}
              x={label.x}
              y={label.y}
              textAnchor={label.anchor}
            >
              {label.text}
            </text>
          ))}
        </svg>
        {/* biome-ignore lint/a11y/noSvgWithoutTitle: the group inside is named; a title would float over every point. */}
        {/* biome-ignore lint/a11y/useKeyWithClickEvents: every point has its keys; a click anywhere takes the nearest. */}
        <svg ref={svg} className="plot" {...size} onClick={chooseAt}>
          <g role="radiogroup" aria-labelledby={titleId} aria-describedby={wordsId}>
            {ordered.map((point, at) => (
              <Point
                key={point.pair.key}
                point={point}
                markWidth={picture.markWidth}
                spoken={
                  cellOf(view.results.get(point.pair.key), view.wishes, view.system)?.spoken ?? ''
                }
                isWayIn={point.pair.key === wayIn}
                onKey={(event) => chooseByKey(event, at)}
              />
            ))}
          </g>
          {points
            .filter(({ isChosen }) => isChosen)
            .map((point) => (
              // Once more over all the others, which may cover it where it stands among the tab stops.
              <MarkAt key={point.pair.key} point={point} markWidth={picture.markWidth} />
            ))}
        </svg>
      </div>
    </>
  );
}

/** Axes, grid, rays, what is needed and what the source gives. */
function Ground({ picture }: { readonly picture: Picture }) {
  const { frame, across, up, rays, need, source } = picture;
  return (
    <g>
      {source !== undefined && (
        <rect
          className="beyond"
          x={source.at}
          y={frame.top}
          width={Math.max(0, frame.right - source.at)}
          height={frame.bottom - frame.top}
        />
      )}
      {up.map(({ at, label }) => (
        <g key={label}>
          <path className="grid" d={`M${frame.left} ${at}H${frame.right}`} />
          <text className="tick" x={frame.left - 6} y={at + 4} textAnchor="end">
            {label}
          </text>
        </g>
      ))}
      {across.map(({ at, label }) => (
        <text key={label} className="tick" x={at} y={frame.bottom + 17} textAnchor="middle">
          {label}
        </text>
      ))}
      {rays.map(({ x, y, words }) => (
        <g key={words.key}>
          <path className="ray" d={`M${frame.left} ${frame.bottom}L${x} ${y}`} />
          <text className="tick halo" x={words.x} y={words.y} textAnchor={words.anchor}>
            {words.text}
          </text>
        </g>
      ))}
      <path className="axis" d={`M${frame.left} ${frame.top}V${frame.bottom}H${frame.right}`} />
      {source !== undefined && (
        <>
          <path className="source" d={`M${source.at} ${frame.top}V${frame.bottom}`} />
          <text
            className="source-label"
            transform={`translate(${source.at + 14} ${frame.bottom - 8}) rotate(-90)`}
          >
            {source.label}
          </text>
        </>
      )}
      {need !== undefined && (
        <>
          <path className="need" d={`M${frame.left} ${need.at}H${frame.right}`} />
          <path className="wedge" d={`M${frame.left} ${need.at}l-9 -5.5v11z`} />
          <text className="label" x={frame.right - 4} y={need.at - 5} textAnchor="end">
            {need.label}
          </text>
        </>
      )}
    </g>
  );
}

function Point({
  point,
  markWidth,
  spoken,
  isWayIn,
  onKey,
}: {
  readonly point: PicturePoint;
  readonly markWidth: number;
  readonly spoken: string;
  readonly isWayIn: boolean;
  readonly onKey: (event: React.KeyboardEvent<SVGGElement>) => void;
}) {
  const { pair, x, y, isChosen, isOnSheet } = point;
  const half = markWidth / 2;
  const high = half * MARK_SHAPE;
  return (
    // biome-ignore lint/a11y/useSemanticElements: SVG has no radio button of its own.
    <g
      className={isChosen ? 'point chosen' : 'point'}
      role="radio"
      aria-checked={isChosen}
      aria-label={`${pairName(pair)}${isOnSheet ? ', on the sheet' : ''}: ${spoken}`}
      tabIndex={isWayIn ? 0 : -1}
      onKeyDown={onKey}
    >
      {(isChosen || isOnSheet) && (
        <rect
          className={isChosen ? 'box' : 'box sheet'}
          x={x - half - 5}
          y={y - high - 5}
          width={markWidth + 10}
          height={2 * high + 10}
        />
      )}
      <MarkAt point={point} markWidth={markWidth} />
    </g>
  );
}

function MarkAt({
  point: { kind, x, y },
  markWidth,
}: {
  readonly point: PicturePoint;
  readonly markWidth: number;
}) {
  const left = x - markWidth / 2;
  const top = y - (markWidth / 2) * MARK_SHAPE;
  return (
    <g className="mark-at" transform={`translate(${left} ${top})`}>
      <VerdictMark kind={kind} width={markWidth} />
    </g>
  );
}
