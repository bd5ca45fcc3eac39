import type { ChangeRow, LabelledMark } from '../answer/change-rows.ts';

const LEANING = {
  left: { dx: -4, textAnchor: 'end' },
  right: { dx: 4, textAnchor: 'start' },
  middle: { dx: 0, textAnchor: 'middle' },
} as const;

const percent = (share: number): string => `${(100 * share).toFixed(2)}%`;

/** Ink wedge now, blue where it runs, red stroke where it stops. Laid out in shares, so letters keep their size. */
export function Staff({ row }: { readonly row: ChangeRow }) {
  const { layout } = row;
  return (
    <svg
      className={row.enoughMarks.length > 0 ? 'staff two-rows' : 'staff'}
      role="img"
      aria-label={row.inWords}
    >
      {layout.runs !== undefined && (
        <rect
          className="runs"
          x={percent(layout.runs.from)}
          y="15"
          width={percent(Math.max(0, layout.runs.to - layout.runs.from))}
          height="8"
        />
      )}
      {layout.enough !== undefined && (
        <rect
          className="enough"
          x={percent(layout.enough.from)}
          y="15"
          width={percent(Math.max(0, layout.enough.to - layout.enough.from))}
          height="8"
        />
      )}
      <line className="line" x1="0" x2="100%" y1="23" y2="23" />
      {row.stops.map((mark) => (
        <Turn key={mark.side} mark={mark} className="stop" y={11} />
      ))}
      {row.enoughMarks.map((mark) => (
        <Turn key={mark.side} mark={mark} className="begins" y={38} />
      ))}
      <svg x={percent(layout.now)} y="13" style={{ overflow: 'visible' }} aria-hidden="true">
        <path className="now" d="M0 9l-5-9h10z" />
      </svg>
      <text x={percent(layout.now)} y="11" {...LEANING[row.now.lean]}>
        {row.now.label}
      </text>
    </svg>
  );
}

function Turn({
  mark,
  className,
  y,
}: {
  readonly mark: LabelledMark;
  readonly className: 'stop' | 'begins';
  readonly y: number;
}) {
  const x = percent(mark.at);
  return (
    <g className={className}>
      <line x1={x} x2={x} y1="12" y2="28" />
      <text x={x} y={y} {...LEANING[mark.lean]}>
        {mark.label}
      </text>
    </g>
  );
}
