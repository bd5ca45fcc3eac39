import type { HeadPlotLayout } from './head-plot.ts';
import { Letter } from './symbols.tsx';

/** Highest and lowest head along the drive line while the ram beats. */
export function HeadPlot({
  layout,
  title,
  ends,
}: {
  readonly layout: HeadPlotLayout;
  readonly title: string;
  readonly ends: { readonly source: string; readonly ram: string };
}) {
  const { frame } = layout;
  return (
    <g aria-hidden="true">
      <text className="d-label strong" x={0} y={12}>
        {title}
      </text>
      {layout.levels.map((line) => (
        <g key={line.label}>
          <path className="d-grid" d={`M${frame.left} ${line.at}H${frame.right}`} />
          <text className="d-label second" x={frame.left - 6} y={line.at + 4} textAnchor="end">
            {line.label}
          </text>
        </g>
      ))}
      <path className="d-band" d={layout.band} />
      <path className="d-waterline" d={layout.highest} />
      <path className="d-waterline" d={layout.lowest} />
      {layout.troubles.map((d) => (
        <path key={d} className="d-over" d={d} />
      ))}
      <path className="d-grade" d={`M${frame.left} ${layout.atRest}H${frame.right}`} />
      <path
        className="d-dim"
        d={`M${frame.left} ${layout.zero}H${frame.right}`}
        style={{ stroke: 'var(--edge)' }}
      />
      <text className="d-label second" x={frame.left} y={layout.height - 6}>
        {ends.source}
      </text>
      <text className="d-label second" x={frame.right} y={layout.height - 6} textAnchor="end">
        {ends.ram}
      </text>
      <Letter text={layout.peak} tone="strong" />
      <Letter text={layout.rest} tone="second" />
      <Letter text={layout.trough} tone="strong" />
    </g>
  );
}
