/** Small drawings of places, all on one scale, so that they compare at a glance. Lengths in metres until they are drawn. */
import type { Purpose } from '@fallwright/units';
import { readQuantity } from '@fallwright/units';
import { textOf } from '../state/entry.ts';
import type { LineName } from '../state/lines.ts';
import { pipesOf } from '../state/lines.ts';
import type { Plain, SiteDocument } from '../state/site-document.ts';

export interface Outline {
  readonly fall: number | undefined;
  readonly lift: number | undefined;
  readonly driveLength: number | undefined;
  readonly deliveryLength: number | undefined;
}

/** The box that all places fit into. */
export interface Box {
  readonly length: number;
  readonly height: number;
}

export interface Thumbnail {
  readonly source: { readonly x: number; readonly y: number } | undefined;
  readonly ram: { readonly x: number; readonly y: number };
  readonly tank: { readonly x: number; readonly y: number } | undefined;
}

export const WIDTH = 210;
export const HEIGHT = 80;
const MARGIN = { left: 8, right: 14, top: 14, foot: 12 };

export function outlineOf(document: SiteDocument): Outline {
  return {
    fall: read(document.fall, 'height'),
    lift: read(document.lift, 'height'),
    driveLength: lengthOf(document, 'drive'),
    deliveryLength: lengthOf(document, 'delivery'),
  };
}

function read(entry: Plain | undefined, purpose: Purpose): number | undefined {
  const written = readQuantity(textOf(entry), purpose);
  return written.ok ? written.value.value : undefined;
}

function lengthOf(document: SiteDocument, line: LineName): number | undefined {
  const lengths = pipesOf(document, line).map(({ length }) => read(length, 'pipeLength'));
  return lengths.includes(undefined)
    ? undefined
    : lengths.reduce<number>((sum, length) => sum + (length ?? 0), 0);
}

/** 200 m by 15 m where that holds all places; else the next round size that does. */
export function boxFor(outlines: readonly Outline[]): Box {
  const lengths = outlines.map((o) => (o.driveLength ?? 0) + (o.deliveryLength ?? 0));
  const heights = outlines.map((o) => Math.max(o.fall ?? 0, o.lift ?? 0));
  return {
    length: roundUp(Math.max(200, ...lengths), 50),
    height: roundUp(Math.max(15, ...heights), 5),
  };
}

const roundUp = (value: number, step: number): number => Math.ceil(value / step) * step;

/** Undefined parts are not drawn. Lines are drawn straight: a thumbnail shows no profile. */
export function thumbnailOf(outline: Outline, box: Box): Thumbnail {
  const across = (WIDTH - MARGIN.left - MARGIN.right) / box.length;
  const up = (HEIGHT - MARGIN.top - MARGIN.foot) / box.height;
  const ground = HEIGHT - MARGIN.foot;
  const { fall, lift, driveLength, deliveryLength } = outline;
  const ram = { x: MARGIN.left + (driveLength ?? 0) * across, y: ground };
  return {
    ram,
    source:
      fall === undefined || driveLength === undefined
        ? undefined
        : { x: MARGIN.left, y: ground - fall * up },
    tank:
      lift === undefined || deliveryLength === undefined
        ? undefined
        : { x: ram.x + deliveryLength * across, y: ground - lift * up },
  };
}
