/** The level of the source or of the tank as a handle: up and down only, and it writes the fall or the lift. */
import { dragStep, finestStep, metresPerUnit, writtenMetres } from '../profile/written-metres.ts';
import { withWrittenHeight } from '../state/measured-entry.ts';
import type { SiteDocument } from '../state/site-document.ts';
import type { Level } from './editing.ts';
import { useEditing } from './editing.ts';
import type { Projection } from './handles.ts';
import { keyStep, keyWay } from './moving.ts';
import type { Point } from './points.ts';
import { useDrag } from './use-drag.ts';

/** The same ends as for what is written: records/site/limits.ts. */
const ENDS: Readonly<Record<Level, { readonly least: number; readonly most: number }>> = {
  fall: { least: 0.05, most: 60 },
  lift: { least: 0.1, most: 500 },
};

const NAMES: Readonly<Record<Level, string>> = {
  fall: 'Level of the source: the fall',
  lift: 'Level of the tank: the lift',
};

export function LevelHandle({
  level,
  metres,
  at,
  projection,
  top,
  words,
  grip,
}: {
  readonly level: Level;
  readonly metres: number;
  readonly at: Point;
  readonly projection: Projection;
  /** The highest pixel that it can be dragged to. */
  readonly top: number;
  readonly words: string;
  readonly grip: number;
}) {
  const editing = useEditing();
  const withLevel = (document: SiteDocument, to: number, step: number): SiteDocument => {
    const { least, most } = ENDS[level];
    const inside = Math.min(most, Math.max(least, to));
    const system = editing?.system ?? 'metric';
    return withWrittenHeight(document, level, writtenMetres(inside, system, step));
  };
  const {
    callOff,
    onClick: _link,
    ...pointer
  } = useDrag<SVGGElement>({
    handleAt: at,
    begin: () => {
      if (editing === undefined) return undefined;
      const { document, system } = editing;
      const step = dragStep(projection.metresPerPixel.up, system);
      let latest = document;
      return {
        move: (to) => {
          const y = Math.max(top, to.y);
          latest = withLevel(document, metres + (at.y - y) * projection.metresPerPixel.up, step);
          editing.preview(latest);
        },
        drop: () => {
          editing.preview(undefined);
          editing.putLevel(latest, level, 'dragged');
        },
        callOff: () => editing.preview(undefined),
      };
    },
  });
  if (editing === undefined) return null;
  const { system } = editing;

  const onKeyDown = (event: React.KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const way = keyWay(event.key);
    if (way !== undefined) {
      const step = keyStep(1, system, event.shiftKey || way.isPage === true).height;
      const to = metres + (way.up + way.along) * step;
      editing.putLevel(withLevel(editing.document, to, finestStep(system)), level, 'byKey');
    } else if (event.key !== 'Escape' || !callOff()) return;
    event.preventDefault();
  };

  const unit = metresPerUnit(system);
  const now = Math.round((metres / unit) * 100) / 100;
  const { least, most } = ENDS[level];
  return (
    <g
      className="handle level"
      role="slider"
      tabIndex={0}
      aria-orientation="vertical"
      aria-label={NAMES[level]}
      aria-valuenow={now}
      aria-valuemin={Math.min(now, Math.floor(least / unit))}
      aria-valuemax={Math.max(now, Math.ceil(most / unit))}
      aria-valuetext={words}
      onKeyDown={onKeyDown}
      {...pointer}
    >
      <circle className="touch-area" cx={at.x} cy={at.y} r={grip} />
      <circle className="handle-ring" cx={at.x} cy={at.y} r={10} />
      <path
        className="handle-dot"
        d={`M${at.x} ${at.y - 6.5}l4.5 5.5h-9zM${at.x} ${at.y + 6.5}l4.5 -5.5h-9z`}
      />
    </g>
  );
}
