/** Draws a chart that was laid out as shapes and words, at the width of its place. */
import type { Chart, ChartPoint } from '@fallwright/papers';
import { useWidth } from '../beat/use-width.ts';

const pathOf = (points: readonly ChartPoint[]): string =>
  points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');

export function ChartSvg({
  words,
  height,
  layOut,
}: {
  /** The whole in a sentence, for those who do not see it. */
  readonly words: string;
  /** Kept free before the width is known. */
  readonly height: number;
  readonly layOut: (width: number) => Chart;
}) {
  const { ref, width } = useWidth<HTMLDivElement>();
  return (
    <div ref={ref} className="need-chart" style={{ minHeight: height }}>
      {width > 0 && <Drawn chart={layOut(width)} words={words} />}
    </div>
  );
}

function Drawn({ chart, words }: { readonly chart: Chart; readonly words: string }) {
  const { width, height, grid, axes, shapes } = chart;
  return (
    <svg
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-label={words}
    >
      {grid.map(({ from, to }) => (
        <line
          key={`${from.x} ${from.y}`}
          className="grid"
          x1={from.x}
          x2={to.x}
          y1={from.y}
          y2={to.y}
        />
      ))}
      {shapes.map(({ kind, matter, points }, index) => {
        const d = kind === 'area' ? `${pathOf(points)}Z` : pathOf(points);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: shapes are known by their order, which is that of drawing
          <g key={index}>
            <path className={`${kind} ${matter}`} d={d} />
            {/* Water is told from paper by its level lines when colour is gone. */}
            {kind === 'area' && matter === 'water' && <path d={d} fill="url(#hatch-water)" />}
          </g>
        );
      })}
      {axes.map(({ from, to }) => (
        <line
          key={`${from.x} ${from.y}`}
          className="axis"
          x1={from.x}
          x2={to.x}
          y1={from.y}
          y2={to.y}
        />
      ))}
      {chart.words.map(({ text, x, y, anchor, matter }) => (
        <text key={`${text} ${x} ${y}`} className={matter} x={x} y={y} textAnchor={anchor}>
          {text}
        </text>
      ))}
    </svg>
  );
}
