/** Head, flows and valve opening against time: three panels, one axis, one cursor. */
import type { System } from '@fallwright/units';
import { memo, useMemo, useRef } from 'react';
import { useStore } from '../app/use-store.ts';
import { frameOf } from './player.ts';
import type { Reel } from './reel.ts';
import type { Panel, TraceLayout } from './trace-layout.ts';
import { layOutTraces, windowInWords, xAt } from './trace-layout.ts';
import { useTraceGestures } from './use-trace-gestures.ts';
import { useWidth } from './use-width.ts';

interface TracesProps {
  readonly reel: Reel;
  readonly system: System;
  readonly describedBy: string;
  /** The plot was touched: the keys should work from now on. */
  readonly onTouched: () => void;
}

export function Traces(props: TracesProps) {
  const { ref, width } = useWidth<HTMLDivElement>();
  return (
    <div ref={ref} className="beat-traces">
      {width > 0 && <TracesAt {...props} width={width} />}
    </div>
  );
}

function TracesAt({
  reel,
  system,
  describedBy,
  onTouched,
  width,
}: TracesProps & { readonly width: number }) {
  const svg = useRef<SVGSVGElement>(null);
  const window = useStore(reel.player, (state) => state.window);
  const layout = useMemo(
    () => layOutTraces(reel, { width, window, system }),
    [reel, width, window, system],
  );
  const selection = useTraceGestures(svg, layout, reel.player, onTouched);
  return (
    <svg
      ref={svg}
      className="drawing beat-plot"
      viewBox={`0 0 ${layout.width} ${layout.height}`}
      role="img"
      aria-label={`Head at the ram, flows and opening of the waste valve ${windowInWords(window)}`}
      aria-describedby={describedBy}
    >
      <Panels layout={layout} />
      {selection !== undefined && (
        <rect
          className="beat-selection"
          x={xAt(layout, selection.from)}
          y={layout.top}
          width={xAt(layout, selection.to) - xAt(layout, selection.from)}
          height={layout.bottom - layout.top}
        />
      )}
      <Cursor reel={reel} layout={layout} />
    </svg>
  );
}

const Panels = memo(function Panels({ layout }: { readonly layout: TraceLayout }) {
  const { left, right, top, bottom, times, timeTitle, shut, panels } = layout;
  return (
    <>
      <clipPath id="beat-window">
        <rect x={left} y={0} width={right - left} height={bottom + 2} />
      </clipPath>
      {panels.map((panel) => (
        <g key={panel.title}>
          {shut.map(({ x, width }) => (
            <rect
              key={x}
              className="beat-shut"
              x={x}
              y={panel.top}
              width={width}
              height={panel.bottom - panel.top}
            />
          ))}
        </g>
      ))}
      {times.map(({ at, label }) => (
        <g key={label}>
          <path className="d-grid" d={`M${at} ${top + 26}V${bottom}`} />
          <text className="beat-tick" x={at} y={bottom + 17} textAnchor="middle">
            {label}
          </text>
        </g>
      ))}
      {panels.map((panel) => (
        <PanelDrawn key={panel.title} panel={panel} left={left} right={right} />
      ))}
      <text className="beat-tick" x={right} y={bottom + 33} textAnchor="end">
        {timeTitle}
      </text>
    </>
  );
});

function PanelDrawn({
  panel,
  left,
  right,
}: {
  readonly panel: Panel;
  readonly left: number;
  readonly right: number;
}) {
  const { title, note, titleY, top, bottom, zero, ticks, traces, levels, names } = panel;
  return (
    <g>
      {ticks.map(({ at, label }) => (
        <g key={label}>
          <path className="d-grid" d={`M${left} ${at}H${right}`} />
          <text className="beat-tick" x={left - 6} y={at + 4} textAnchor="end">
            {label}
          </text>
        </g>
      ))}
      <path className="beat-axis" d={`M${left} ${top}V${bottom}`} />
      <path className="beat-axis" d={`M${left} ${zero}H${right}`} />
      <g clipPath="url(#beat-window)">
        {traces.map(({ kind, area }) =>
          area === undefined ? null : (
            <g key={kind}>
              <path className={`beat-area ${kind}`} d={area} />
              <path className="d-waterhatch" d={area} />
            </g>
          ),
        )}
        {levels.map(({ kind, y }) => (
          <path key={kind} className={`beat-level ${kind}`} d={`M${left} ${y}H${right}`} />
        ))}
        {traces.map(({ kind, path }) => (
          <path key={kind} className={`beat-line ${kind}`} d={path} />
        ))}
      </g>
      {names.map(({ name, x, y, of }) => (
        <text key={name} className={`beat-name ${of}`} x={x} y={y}>
          {name}
        </text>
      ))}
      <text className="beat-title" x={left} y={titleY}>
        {title}
      </text>
      <text className="beat-tick" x={right} y={titleY} textAnchor="end">
        {note}
      </text>
    </g>
  );
}

function Cursor({ reel, layout }: { readonly reel: Reel; readonly layout: TraceLayout }) {
  const frame = useStore(reel.player, frameOf);
  const x = xAt(layout, reel.film.time[frame] ?? 0);
  const isSeen = x >= layout.left - 1 && x <= layout.right + 1;
  if (!isSeen) return null;
  return (
    <g transform={`translate(${x} 0)`}>
      <path className="beat-cursor" d={`M0 ${layout.top}V${layout.bottom}`} />
      <path className="beat-wedge" d={`M-6 ${layout.top - 12}h12l-6 11z`} />
    </g>
  );
}
