/** Signs for the parts: a pipe, the ram, a free surface, a letter. They stand at a point and are not to scale. */
import type { Point } from './points.ts';
import type { PlacedText } from './whole-place.ts';

/** A pipe is one centre line stroked twice, wall and bore, so it always meets what it enters. */
export function PipeLine({
  d,
  wall,
  bore,
  isMetal = false,
}: {
  readonly d: string;
  readonly wall: number;
  readonly bore: number;
  readonly isMetal?: boolean;
}) {
  return (
    <>
      <path
        className={isMetal ? 'd-wall is-metal' : 'd-wall'}
        d={d}
        style={{ strokeWidth: wall }}
      />
      <path className="d-bore" d={d} style={{ strokeWidth: bore }} />
    </>
  );
}

/** Path data with every number times `size`: lines and hatches keep their weight, which a transform would not. */
const enlarged = (path: string, size: number): string =>
  path.replace(/-?\d+(?:\.\d+)?/g, (number) =>
    String(Math.round(Number(number) * size * 100) / 100),
  );

/** The ram as a small sign: `at` is where the drive line enters it. `size` 1 is 14 px wide. */
export function RamSign({ at, size }: { readonly at: Point; readonly size: number }) {
  return (
    <g transform={`translate(${at.x} ${at.y})`}>
      <path className="d-metal" d={enlarged('M-3 -3H11V4H-3Z', size)} />
      <path className="d-metalhatch" d={enlarged('M-3 -3H11V4H-3Z', size)} />
      <path className="d-metal" d={enlarged('M4 -3V-12.5C4 -16.5 10 -16.5 10 -12.5V-3Z', size)} />
      <path
        className="d-metal"
        d={enlarged(
          'M-1.6 -3V-6.4H2.2V-3ZM-0.1 -6.4V-9.2H0.7V-6.4ZM-1.1 -9.2H1.7V-10.6H-1.1Z',
          size,
        )}
      />
    </g>
  );
}

/** The sign of a free water surface. */
export function SurfaceSign({ at }: { readonly at: Point }) {
  return (
    <path
      className="d-surface"
      d={`M${at.x - 7} ${at.y - 13}h14l-7 11zM${at.x - 9} ${at.y + 4}h18M${at.x - 5} ${at.y + 7}h10`}
      style={{ strokeWidth: 1 }}
    />
  );
}

export function WaterBox(box: {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}) {
  return (
    <>
      <rect className="d-water" {...box} />
      <rect className="d-waterhatch" {...box} />
      <path className="d-surface" d={`M${box.x} ${box.y}h${box.width}`} />
    </>
  );
}

export function Letter({ text, tone = '' }: { readonly text: PlacedText; readonly tone?: string }) {
  return (
    <text className={`d-label ${tone}`} x={text.x} y={text.y} textAnchor={text.anchor}>
      {text.text}
    </text>
  );
}

/** A high point where air collects: an open ring with its place beside it, and its vent where it has one. */
export function CrestRing({
  at,
  label,
  isVented,
}: {
  readonly at: Point;
  readonly label?: PlacedText | undefined;
  readonly isVented: boolean;
}) {
  return (
    <>
      {label !== undefined && (
        <path
          className="d-dim"
          d={`M${at.x} ${label.y < at.y ? at.y - 5 : at.y + 5}V${label.y < at.y ? label.y + 4 : label.y - 12}`}
        />
      )}
      {/* A cock: a stem out of the pipe with its lever across. */}
      {isVented && <path className="d-ink" d={`M${at.x} ${at.y - 5}v-8m-5 0h10`} />}
      <circle className="d-open" cx={at.x} cy={at.y} r={5} />
      {label !== undefined && <Letter text={label} tone="strong" />}
    </>
  );
}

/** A part of a pipe that its pressure is too much for, or too little: a line in the alarm colour along it. */
export function TroubleLines({ lines }: { readonly lines: readonly string[] }) {
  return lines.map((d) => <path key={d} className="d-trouble" d={d} />);
}

/**
 * A part of the drawing that leads to its fields. Where a part is drawn twice the second is for the pointer only, so
 * that the keyboard meets every part once, in water order.
 */
export function Part({
  to,
  name,
  isRepeated = false,
  children,
}: {
  readonly to: string;
  readonly name: string;
  readonly isRepeated?: boolean;
  readonly children: React.ReactNode;
}) {
  return isRepeated ? (
    <a href={`#${to}`} tabIndex={-1} aria-hidden="true" onDragStart={noDragging}>
      {children}
    </a>
  ) : (
    <a href={`#${to}`} aria-label={name} onDragStart={noDragging}>
      {children}
    </a>
  );
}

/** The browser would drag a link away; here a drag bends the line. */
const noDragging = (event: React.DragEvent): void => event.preventDefault();
