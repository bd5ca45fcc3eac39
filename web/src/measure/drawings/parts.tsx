/** What the small drawings of measuring share: the leaf they stand on, ticks of earth, a staff, a dimension. */

export function Leaf({
  height,
  says,
  children,
}: {
  readonly height: number;
  /** The drawing in words. */
  readonly says: string;
  readonly children: React.ReactNode;
}) {
  return (
    <svg className="drawing how-to" viewBox={`0 0 328 ${height}`} role="img" aria-label={says}>
      {children}
    </svg>
  );
}

/** Three short strokes under the ground line, at each place given. */
export function Ticks({ at }: { readonly at: readonly (readonly [x: number, y: number])[] }) {
  return (
    <path
      className="d-tick"
      d={at.map(([x, y]) => `M${x} ${y}l-8 8M${x + 5} ${y}l-8 8M${x + 10} ${y}l-8 8`).join('')}
    />
  );
}

export function Water({ d, surface }: { readonly d: string; readonly surface: string }) {
  return (
    <>
      <path className="d-water" d={d} />
      <path className="d-waterhatch" d={d} />
      <path className="d-surface" d={surface} />
    </>
  );
}

/** A staff with its marks, from its foot upwards. */
export function StaffRod({
  x,
  foot,
  tall,
}: {
  readonly x: number;
  readonly foot: number;
  readonly tall: number;
}) {
  const marks = Array.from({ length: Math.floor(tall / 20) }, (_, i) => foot - 10 - 20 * i);
  return (
    <>
      <rect className="d-stone" x={x} y={foot - tall} width={9} height={tall} />
      <path className="d-solid" d={marks.map((y) => `M${x} ${y}h5v-10h-5z`).join('')} />
    </>
  );
}

/** A height or a width between two ends, with its letter. */
export function Measure({
  from,
  to,
  letter,
  lean = 'start',
}: {
  readonly from: readonly [x: number, y: number];
  readonly to: readonly [x: number, y: number];
  readonly letter?: string;
  readonly lean?: 'start' | 'middle' | 'end';
}) {
  const [x1, y1] = from;
  const [x2, y2] = to;
  const isUpright = x1 === x2;
  const end = isUpright ? 'h8' : 'v8';
  const start = ([x, y]: readonly [number, number]) =>
    isUpright ? `M${x - 4} ${y}` : `M${x} ${y - 4}`;
  const away = lean === 'start' ? 7 : lean === 'end' ? -7 : 0;
  return (
    <>
      <path
        className="d-edge"
        d={`M${x1} ${y1}L${x2} ${y2}${start(from)}${end}${start(to)}${end}`}
      />
      {letter !== undefined && (
        <text
          className="d-label strong"
          x={isUpright ? x1 + away : (x1 + x2) / 2}
          y={isUpright ? (y1 + y2) / 2 + 5 : y1 - 7}
          textAnchor={isUpright ? lean : 'middle'}
        >
          {letter}
        </text>
      )}
    </>
  );
}

export function Says({
  x,
  y,
  lean = 'start',
  tone = '',
  children,
}: {
  readonly x: number;
  readonly y: number;
  readonly lean?: 'start' | 'middle' | 'end';
  readonly tone?: 'strong' | 'second' | 'of-water' | 'water-value' | 'of-metal' | '';
  readonly children: string;
}) {
  return (
    <text className={`d-label ${tone}`} x={x} y={y} textAnchor={lean}>
      {children}
    </text>
  );
}

export function Watch({
  x,
  y,
  reads,
}: {
  readonly x: number;
  readonly y: number;
  readonly reads: string;
}) {
  return (
    <g transform={`translate(${x} ${y})`}>
      <circle className="d-stone" r="27" />
      <path className="d-ink" d="M-5 -34h10M0 -34v7M20 -21l4 -4M0 0L-7 -22" />
      <path className="d-edge" d="M0 -24v4M0 20v4M-24 0h4M20 0h4" />
      <circle className="d-solid" r="2.5" />
      <Says x={0} y={45} lean="middle" tone="strong">
        {reads}
      </Says>
    </g>
  );
}
