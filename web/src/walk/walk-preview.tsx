import type { System } from '@fallwright/units';
import { useWidth } from '../beat/use-width.ts';
import type { LineName } from '../state/lines.ts';
import type { WalkedLine } from './walk.ts';
import { layOutWalkPreview } from './walk-preview.ts';

const ENDS: Readonly<Record<LineName, readonly [string, string]>> = {
  drive: ['source', 'ram'],
  delivery: ['ram', 'tank'],
};

export function WalkPreview({
  walk,
  line,
  system,
}: {
  readonly walk: WalkedLine;
  readonly line: LineName;
  readonly system: System;
}) {
  const { ref, width } = useWidth<HTMLDivElement>();
  const [upper, lower] = ENDS[line];
  return (
    <div ref={ref} className="walk-preview">
      {width > 0 && <Plot {...layOutWalkPreview(walk, { width, system })} {...{ upper, lower }} />}
      <p className="walk-key" aria-hidden="true">
        <span className="as-read">as read</span>
        <span className="kept">as it would be kept</span>
        <span>heights in {system === 'us' ? 'ft' : 'm'}, 0 at the ram</span>
      </p>
    </div>
  );
}

function Plot({
  upper,
  lower,
  ...plot
}: ReturnType<typeof layOutWalkPreview> & { readonly upper: string; readonly lower: string }) {
  const { width, height, left, right, foot } = plot;
  return (
    <svg
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`Profile from the ${upper} to the ${lower}, ${plot.length} long, ${plot.dots.length === 0 ? '' : `${plot.dots.length} points, `}${plot.stretch}`}
    >
      {plot.grid.map(({ y, label }) => (
        <g key={label}>
          <path className="walk-grid" d={`M${left} ${y}H${right}`} />
          <text className="d-label second" x={left - 8} y={y + 4} textAnchor="end">
            {label}
          </text>
        </g>
      ))}
      <path className="walk-as-read" d={plot.asRead} />
      <path className="walk-kept" d={plot.kept} />
      {plot.dots.map(({ x, y }) => (
        <circle key={x} className="walk-dot" cx={x} cy={y} r={2.5} />
      ))}
      {plot.crests.map(({ x, y }) => (
        <circle key={x} className="d-open" cx={x} cy={y} r={5} />
      ))}
      <text className="d-label strong" x={left} y={foot + 18}>
        {upper}
      </text>
      <text className="d-label strong" x={right} y={foot + 18} textAnchor="end">
        {lower}, {plot.length}
      </text>
      <text className="d-label second" x={right} y={foot + 34} textAnchor="end">
        {plot.stretch}
      </text>
    </svg>
  );
}
