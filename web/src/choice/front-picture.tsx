/** The front as a picture: a click takes the nearest build, arrow keys go along the front. */
import type { FrontPlot, PlacedBuild } from '@fallwright/papers';
import { frontPlot, waterBars } from '@fallwright/papers';
import type { System } from '@fallwright/units';
import { useId, useMemo, useRef } from 'react';
import { useWidth } from '../beat/use-width.ts';
import { Shapes } from '../drawn/drawn.tsx';
import type { ChoiceView, FrontPoint } from './choice-view.ts';

export function FrontPicture({
  view,
  system,
  chosenKey,
  onChoose,
}: {
  readonly view: ChoiceView;
  readonly system: System;
  readonly chosenKey: string | undefined;
  readonly onChoose: (key: string) => void;
}) {
  const { ref, width } = useWidth<HTMLDivElement>();
  const id = useId();
  const plot = useMemo(
    () => (width === 0 ? undefined : plotOf(view, { width, system })),
    [view, width, system],
  );
  const { isPriced, points } = view;
  const near = points.filter(({ isOnFront }) => !isOnFront).length;
  return (
    <figure className="plate front-picture" aria-labelledby={`${id}-title`}>
      <div ref={ref} className="front-sheet">
        {plot !== undefined && (
          <>
            <p className="plot-title" id={`${id}-title`}>
              {plot.title}
              <span className="for-ears">{isPriced ? ', against the price' : ''}</span>
            </p>
            <Drawing
              plot={plot}
              view={view}
              titleId={`${id}-title`}
              chosenKey={chosenKey}
              onChoose={onChoose}
            />
          </>
        )}
      </div>
      <figcaption>
        {isPriced
          ? `On the line nothing costs less and gives more. Beside it, small: ${near} that come near.${
              plot?.costFrom === undefined ? '' : ` Prices begin at ${plot.costFrom}.`
            } Picks are worked out finely; the others are good to a few per cent.`
          : 'Water alone is compared, at what the source gives in its driest time.'}
      </figcaption>
    </figure>
  );
}

function plotOf(
  { points, isPriced, currency = '', need }: ChoiceView,
  { width, system }: { readonly width: number; readonly system: System },
): FrontPlot {
  const sheet = { width, system, ...(need === undefined ? {} : { need }) };
  const named = points.map((point) => ({ ...point, label: labelOf(point) }));
  return isPriced ? frontPlot(named, { ...sheet, currency }) : waterBars(named, sheet);
}

/** Short enough to stand beside a point. */
function labelOf({ pickedAs }: FrontPoint): string {
  return pickedAs.replace(/(cheapest|most water)[^,]*/g, '$1');
}

const STEPS: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowDown: 1,
  ArrowLeft: -1,
  ArrowUp: -1,
};

function Drawing({
  plot,
  view,
  titleId,
  chosenKey,
  onChoose,
}: {
  readonly plot: FrontPlot;
  readonly view: ChoiceView;
  readonly titleId: string;
  readonly chosenKey: string | undefined;
  readonly onChoose: (key: string) => void;
}) {
  const svg = useRef<SVGSVGElement>(null);
  const { width, height, shapes, builds, labels } = plot;
  const wayIn = builds.find(({ key }) => key === chosenKey) ?? builds[0];
  const byKey = new Map(view.points.map((point) => [point.key, point]));
  const figures = new Map(view.rows.map((row) => [row.key, row]));

  const chooseAt = (event: React.MouseEvent<SVGSVGElement>): void => {
    const box = event.currentTarget.getBoundingClientRect();
    const nearest = nearestTo(
      builds,
      event.clientX - box.left,
      event.clientY - box.top,
      view.isPriced,
    );
    if (nearest !== undefined) onChoose(nearest.key);
  };
  const chooseByKey = (event: React.KeyboardEvent<SVGGElement>, at: number): void => {
    const step = STEPS[event.key];
    const next =
      event.key === 'Home'
        ? 0
        : event.key === 'End'
          ? builds.length - 1
          : step !== undefined
            ? (at + step + builds.length) % builds.length
            : event.key === ' ' || event.key === 'Enter'
              ? at
              : undefined;
    const build = next === undefined ? undefined : builds[next];
    if (next === undefined || build === undefined) return;
    event.preventDefault();
    onChoose(build.key);
    svg.current?.querySelectorAll<SVGGElement>('.build-point')[next]?.focus();
  };
  return (
    // biome-ignore lint/a11y/noSvgWithoutTitle: the group inside is named; a title would float over every point.
    // biome-ignore lint/a11y/useKeyWithClickEvents: every point has its keys; a click anywhere takes the nearest.
    <svg
      ref={svg}
      className="drawing drawn front-plot"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      onClick={chooseAt}
    >
      {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in it takes the focus */}
      <g aria-hidden="true">
        <Shapes shapes={shapes} />
      </g>
      <g role="radiogroup" aria-labelledby={titleId}>
        {builds.map((build, at) => {
          const { key, at: point, isOnFront, isNamed } = build;
          const row = figures.get(key);
          const spoken = [byKey.get(key)?.pickedAs, byKey.get(key)?.what, row?.cost, row?.water]
            .filter((part) => part !== undefined && part !== '')
            .join(', ');
          return (
            // biome-ignore lint/a11y/useSemanticElements: SVG has no radio button of its own.
            <g
              key={key}
              className={`build-point${isOnFront ? ' on-front' : ''}${isNamed ? ' is-named' : ''}${key === chosenKey ? ' chosen' : ''}`}
              role="radio"
              aria-checked={key === chosenKey}
              aria-label={spoken}
              tabIndex={key === wayIn?.key ? 0 : -1}
              onKeyDown={(event) => chooseByKey(event, at)}
            >
              <circle className="ring" cx={point.x} cy={point.y} r={11} />
              <circle
                className="dot"
                cx={point.x}
                cy={point.y}
                r={isNamed ? 6 : isOnFront ? 4.5 : 2.5}
              />
            </g>
          );
        })}
      </g>
      {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in it takes the focus */}
      <g aria-hidden="true" className="front-labels">
        <Shapes shapes={labels} />
      </g>
    </svg>
  );
}

/** Bars are told apart by their height alone. */
function nearestTo(
  builds: readonly PlacedBuild[],
  x: number,
  y: number,
  isPriced: boolean,
): PlacedBuild | undefined {
  const gap = ({ at }: PlacedBuild): number => Math.hypot(isPriced ? at.x - x : 0, at.y - y);
  return builds.reduce<PlacedBuild | undefined>(
    (best, build) => (best === undefined || gap(build) < gap(best) ? build : best),
    undefined,
  );
}
