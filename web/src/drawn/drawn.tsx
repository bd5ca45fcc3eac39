/** A drawing from papers as SVG: each matter and each kind of line in the colours of the page. */
import './drawn.css';
import type { Drawing, Matter, Point, Shape } from '@fallwright/papers';
import { memo } from 'react';

/** What is laid over a fill, so that matter shows without its colour. */
const HATCHED: Partial<Record<Matter, string>> = {
  water: 'd-waterhatch',
  metalCut: 'd-metalhatch',
};
const LINE_HEIGHT = 15.5;

export const Drawn = memo(function Drawn({
  drawing,
  name,
  children,
}: {
  readonly drawing: Drawing;
  /** What is read out in place of the drawing. */
  readonly name: string;
  /** More over it, in the same coordinates. */
  readonly children?: React.ReactNode;
}) {
  const { width, height, shapes } = drawing;
  return (
    <svg
      className="drawing drawn"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={name}
    >
      <Shapes shapes={shapes} />
      {children}
    </svg>
  );
});

export const Shapes = memo(function Shapes({ shapes }: { readonly shapes: readonly Shape[] }) {
  return shapes.map((shape, i) => (
    // A drawing is made anew as a whole: its shapes have no other name than their place in it.
    // biome-ignore lint/suspicious/noArrayIndexKey: the place in the drawing is the identity
    <One key={i} shape={shape} />
  ));
});

function One({ shape }: { readonly shape: Shape }) {
  switch (shape.kind) {
    case 'area': {
      const d = `${pathOf(shape.outline)}Z`;
      const hatch = HATCHED[shape.of];
      return (
        <>
          <path className={`drawn-${shape.of}`} d={d} />
          {hatch !== undefined && <path className={hatch} d={d} />}
        </>
      );
    }
    case 'line':
      return <path className={`drawn-line of-${shape.of}`} d={pathOf(shape.points)} />;
    case 'key':
      return (
        <g className="drawn-key">
          <circle cx={shape.at.x} cy={shape.at.y} r={12} />
          <text x={shape.at.x} y={shape.at.y + 4.5} textAnchor="middle">
            {shape.text}
          </text>
        </g>
      );
    case 'words':
      return (
        <text className={`d-label drawn-words ${shape.tone}`} textAnchor={shape.anchor}>
          {shape.lines.map((text, i) => (
            <tspan
              key={text}
              x={shape.at.x}
              y={shape.at.y + i * LINE_HEIGHT}
              className={i === 0 ? undefined : 'further'}
            >
              {text}
            </tspan>
          ))}
        </text>
      );
  }
}

function pathOf(points: readonly Point[]): string {
  return points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${round(x)} ${round(y)}`).join('');
}

/** A hundredth of a pixel is as fine as a screen can tell. */
function round(value: number): number {
  return Math.round(value * 100) / 100;
}
