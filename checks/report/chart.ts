/** Plain charts as SVG text: axes, lines, points, bands, labels. Colours are those of the app's paper. */

const INK = '#1e241d';
const SECOND = '#4a5246';
const EDGE = '#788070';
const RULE = '#c6cdb8';
const SHEET = '#f9faf3';
/** Ours is water, what others measured or printed is ink. */
export const OURS = '#0d5a8a';
export const OURS_LIGHT = '#4f97bd';
export const THEIRS = INK;
export const SPREAD = '#ecd8b4';
const FONT = 'font-family="system-ui, sans-serif"';

export type Point = readonly [x: number, y: number];

export interface Axis {
  readonly label: string;
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly number[];
  readonly scale?: 'linear' | 'log';
  /** How a tick is written; as it stands by default. */
  readonly write?: (tick: number) => string;
}

export type Mark =
  | {
      readonly kind: 'line';
      readonly points: readonly Point[];
      readonly colour: string;
      readonly width?: number;
      readonly dash?: string;
    }
  | {
      readonly kind: 'dots';
      readonly points: readonly Point[];
      readonly colour: string;
      readonly radius?: number;
    }
  | {
      readonly kind: 'band';
      readonly low: readonly Point[];
      readonly high: readonly Point[];
      readonly colour: string;
    }
  | {
      readonly kind: 'text';
      readonly at: Point;
      readonly text: string;
      readonly colour: string;
      readonly anchor?: 'start' | 'middle' | 'end';
    };

export interface Panel {
  readonly title: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly marks: readonly Mark[];
}

const WIDTH = 720;
const PANEL_HEIGHT = 300;
const LEFT = 64;
const RIGHT = 24;
const TOP = 34;
const BOTTOM = 46;

/** One chart of one or more panels under each other. `describes` says in words what it shows. */
export function chart(describes: string, panels: readonly Panel[]): string {
  const height = panels.length * PANEL_HEIGHT;
  const parts = panels.map((panel, i) => drawn(panel, i * PANEL_HEIGHT));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" width="${WIDTH}" height="${height}" role="img">`,
    `<title>${escaped(describes)}</title>`,
    `<rect width="${WIDTH}" height="${height}" fill="${SHEET}"/>`,
    ...parts,
    '</svg>',
    '',
  ].join('\n');
}

function drawn(panel: Panel, top: number): string {
  const { x, y } = panel;
  const floor = top + PANEL_HEIGHT - BOTTOM;
  const ceiling = top + TOP;
  const toX = (value: number): number => LEFT + share(x, value) * (WIDTH - LEFT - RIGHT);
  const toY = (value: number): number => floor - share(y, value) * (floor - ceiling);
  const out: string[] = [];
  out.push(text(LEFT, top + 20, panel.title, { size: 14, weight: 600, colour: INK }));
  for (const tick of x.ticks) {
    const at = fixed(toX(tick));
    out.push(`<path d="M${at} ${ceiling}V${floor}" stroke="${RULE}"/>`);
    out.push(text(toX(tick), floor + 16, written(x, tick), { anchor: 'middle' }));
  }
  for (const tick of y.ticks) {
    const at = fixed(toY(tick));
    out.push(`<path d="M${LEFT} ${at}H${WIDTH - RIGHT}" stroke="${RULE}"/>`);
    out.push(text(LEFT - 8, toY(tick) + 4, written(y, tick), { anchor: 'end' }));
  }
  out.push(
    `<path d="M${LEFT} ${ceiling}V${floor}H${WIDTH - RIGHT}" fill="none" stroke="${EDGE}"/>`,
  );
  out.push(text((LEFT + WIDTH - RIGHT) / 2, floor + 36, x.label, { anchor: 'middle' }));
  const middle = (ceiling + floor) / 2;
  out.push(
    text(16, middle, y.label, { anchor: 'middle', turn: `rotate(-90 16 ${fixed(middle)})` }),
  );
  for (const mark of panel.marks) out.push(markDrawn(mark, toX, toY));
  return out.join('\n');
}

function markDrawn(mark: Mark, toX: (x: number) => number, toY: (y: number) => number): string {
  const at = ([x, y]: Point): string => `${fixed(toX(x))} ${fixed(toY(y))}`;
  switch (mark.kind) {
    case 'line': {
      const dash = mark.dash === undefined ? '' : ` stroke-dasharray="${mark.dash}"`;
      return `<path d="M${mark.points.map(at).join('L')}" fill="none" stroke="${mark.colour}" stroke-width="${mark.width ?? 1.5}" stroke-linejoin="round"${dash}/>`;
    }
    case 'band': {
      const back = [...mark.high].reverse();
      return `<path d="M${[...mark.low, ...back].map(at).join('L')}Z" fill="${mark.colour}" fill-opacity="0.6"/>`;
    }
    case 'dots':
      return mark.points
        .map(([x, y]) => {
          const centre = `cx="${fixed(toX(x))}" cy="${fixed(toY(y))}"`;
          return `<circle ${centre} r="${mark.radius ?? 4}" fill="${mark.colour}"/>`;
        })
        .join('\n');
    case 'text':
      return text(toX(mark.at[0]), toY(mark.at[1]), mark.text, {
        colour: mark.colour,
        ...(mark.anchor === undefined ? {} : { anchor: mark.anchor }),
      });
  }
}

function text(
  x: number,
  y: number,
  words: string,
  style: {
    readonly anchor?: 'start' | 'middle' | 'end';
    readonly size?: number;
    readonly weight?: number;
    readonly colour?: string;
    readonly turn?: string;
  },
): string {
  const { anchor = 'start', size = 12, weight = 400, colour = SECOND, turn } = style;
  const turned = turn === undefined ? '' : ` transform="${turn}"`;
  return `<text x="${fixed(x)}" y="${fixed(y)}" ${FONT} font-size="${size}" font-weight="${weight}" fill="${colour}" text-anchor="${anchor}"${turned}>${escaped(words)}</text>`;
}

function share(axis: Axis, value: number): number {
  if (axis.scale !== 'log') return (value - axis.low) / (axis.high - axis.low);
  return Math.log(value / axis.low) / Math.log(axis.high / axis.low);
}

function written(axis: Axis, tick: number): string {
  return axis.write ? axis.write(tick) : String(tick);
}

/** A tenth of a pixel, so that the file is small and the same everywhere. */
function fixed(value: number): string {
  return String(Math.round(value * 10) / 10);
}

function escaped(words: string): string {
  return words.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
