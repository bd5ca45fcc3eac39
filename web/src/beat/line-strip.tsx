/** The wave in the drive line: the head along it at the cursor, and how far it has swung so far. */
import type { System } from '@fallwright/units';
import { useMemo } from 'react';
import { useStore } from '../app/use-store.ts';
import type { StripFrame } from './line-strip.ts';
import { layOutStrip, stripAt } from './line-strip.ts';
import { frameOf } from './player.ts';
import type { Reel } from './reel.ts';
import { useWidth } from './use-width.ts';

export function LineStrip({
  reel,
  system,
  describedBy,
}: {
  readonly reel: Reel;
  readonly system: System;
  readonly describedBy: string;
}) {
  const { ref, width } = useWidth<HTMLDivElement>();
  const strip = useMemo(
    () => layOutStrip(reel, Math.max(width, 200), system),
    [reel, width, system],
  );
  return (
    <div ref={ref} className="beat-strip">
      {width > 0 && (
        <svg
          className="drawing"
          viewBox={`0 0 ${strip.width} ${strip.height}`}
          role="img"
          aria-label={`Head along ${strip.length}`}
          aria-describedby={describedBy}
        >
          <StripGround strip={strip} />
          <StripNow reel={reel} strip={strip} />
          <StripWords strip={strip} />
        </svg>
      )}
    </div>
  );
}

function StripGround({ strip }: { readonly strip: StripFrame }) {
  const { left, right, pipe, levels } = strip;
  return (
    <>
      {levels.map(({ at, label }) => (
        <g key={label}>
          <path className="d-grid" d={`M${left} ${at}H${right}`} />
          <text className="beat-tick" x={left - 6} y={at + 4} textAnchor="end">
            {label}
          </text>
        </g>
      ))}
      <path
        className="d-wall"
        d={`M${left} ${pipe.y}H${right}`}
        style={{ strokeWidth: pipe.wall }}
      />
      <path
        className="d-bore"
        d={`M${left} ${pipe.y}H${right}`}
        style={{ strokeWidth: pipe.bore }}
      />
    </>
  );
}

function StripNow({ reel, strip }: { readonly reel: Reel; readonly strip: StripFrame }) {
  const frame = useStore(reel.player, frameOf);
  const now = useMemo(() => stripAt(reel, frame, strip), [reel, frame, strip]);
  const { left, right, pipe, zero, fall } = strip;
  return (
    <>
      <path className="beat-envelope" d={now.envelope} />
      <path className="beat-ground" d={now.ground} />
      <path className="beat-so-far" d={now.highest} />
      <path className="beat-so-far" d={now.lowest} />
      <path className="beat-axis" d={`M${left} ${zero}H${right}`} />
      <path className="beat-level fall" d={`M${left} ${fall}H${right}`} />
      <path className="beat-line water" d={now.head} />
      {now.cells.map(({ x, width, blue }) => (
        <rect
          key={x}
          className="beat-blue"
          x={x}
          y={pipe.y - pipe.bore / 2}
          width={width}
          height={pipe.bore}
          style={{ opacity: blue }}
          shapeRendering="crispEdges"
        />
      ))}
      {now.arrows.map(({ x, reach }) =>
        Math.abs(reach) < 3 ? (
          <circle key={x} className="beat-rest" cx={x} cy={pipe.y} r="1.75" />
        ) : (
          <path
            key={x}
            className="beat-stream in-pipe"
            d={`M${x - reach / 2} ${pipe.y}h${reach}`}
            markerEnd="url(#beat-arrow-on-water)"
          />
        ),
      )}
    </>
  );
}

function StripWords({ strip }: { readonly strip: StripFrame }) {
  const { left, right, height, title, note, length } = strip;
  return (
    <>
      <defs>
        <marker
          id="beat-arrow-on-water"
          viewBox="0 0 10 10"
          refX="8"
          refY="5"
          markerWidth="9"
          markerHeight="9"
          markerUnits="userSpaceOnUse"
          orient="auto"
        >
          <path className="beat-arrowhead in-pipe" d="M0 1l9 4-9 4z" />
        </marker>
      </defs>
      <text className="beat-title" x={left} y={14}>
        {title}
      </text>
      {note !== '' && (
        <text className="beat-tick" x={right} y={14} textAnchor="end">
          {note}
        </text>
      )}
      <text className="beat-tick" x={left} y={height - 6}>
        source
      </text>
      <text className="beat-tick" x={(left + right) / 2} y={height - 6} textAnchor="middle">
        {length}
      </text>
      <text className="beat-tick" x={right} y={height - 6} textAnchor="end">
        ram
      </text>
    </>
  );
}
