/** The walk before it is put in, as a small profile: what was read pale, what would be kept over it. */
import type { System } from '@fallwright/units';
import { formatQuantity } from '@fallwright/units';
import type { Point } from '../drawing/points.ts';
import { pathThrough } from '../drawing/points.ts';
import { fitScales, multiples, roundStep } from '../drawing/scale.ts';
import { metresPerUnit } from '../profile/written-metres.ts';
import type { WalkedLine, WalkPoint } from './walk.ts';

export interface WalkPreviewLayout {
  readonly width: number;
  readonly height: number;
  readonly grid: readonly { readonly y: number; readonly label: string }[];
  readonly asRead: string;
  readonly kept: string;
  readonly dots: readonly Point[];
  readonly crests: readonly Point[];
  /** Where the plot itself begins and ends. */
  readonly left: number;
  readonly right: number;
  readonly foot: number;
  readonly length: string;
  readonly stretch: string;
}

const LEFT = 52;
const RIGHT = 10;
const TOP = 12;
const FOOT = 40;
/** Judgement: nearer than this, dots run together to a second line. */
const LEAST_GAP = 6;

export function layOutWalkPreview(
  { kept, asRead, crests }: WalkedLine,
  { width, system }: { readonly width: number; readonly system: System },
): WalkPreviewLayout {
  const heights = [...kept, ...asRead].map(({ elevation }) => elevation);
  const least = Math.min(0, ...heights);
  const most = Math.max(...heights);
  const length = kept.at(-1)?.distance ?? 1;
  const frame = { width: width - LEFT - RIGHT, height: Math.min(200, Math.max(110, width / 3)) };
  const { along, up, stretch } = fitScales({
    length,
    height: most - least,
    frameWidth: frame.width,
    frameHeight: frame.height,
  });
  const foot = TOP + (most - least) * up;
  const toPoint = ({ distance, elevation }: WalkPoint): Point => ({
    x: LEFT + distance * along,
    y: foot - (elevation - least) * up,
  });
  const unit = metresPerUnit(system);
  const step = roundStep((most - least) / unit, 4);
  const dots = kept.map(toPoint);
  const gap = (length * along) / Math.max(1, dots.length - 1);
  return {
    width,
    height: foot + FOOT,
    grid: multiples(least / unit, most / unit, step).map((height) => ({
      y: foot - (height * unit - least) * up,
      label: `${Number(height.toFixed(2))}`.replace('-', '−'),
    })),
    asRead: pathThrough(asRead.map(toPoint)),
    kept: pathThrough(dots),
    dots: gap < LEAST_GAP ? [] : dots,
    crests: crests.map(toPoint),
    left: LEFT,
    right: LEFT + length * along,
    foot,
    length: formatQuantity(length, 'pipeLength', system, { figures: 4 }),
    stretch:
      stretch === 1 ? 'heights and lengths to one scale' : `heights drawn ${stretch} × lengths`,
  };
}
