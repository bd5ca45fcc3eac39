/** What can be taken hold of in the drawing: points of the lines, the source's level and the tank's. */
import type { LinePoint, PointPlace } from '../profile/line-points.ts';
import { isSamePoint } from '../profile/line-points.ts';
import type { Station, Turns } from './developed-place.ts';
import type { Point } from './points.ts';
import { spacedOut } from './thin.ts';

/** From metres to pixels and back, for one drawing of one line. */
export interface Projection {
  readonly toPoint: (station: Station) => Point;
  /** The station under a pixel. `before` is the corner of the line upstream of it, where lengths along a slope count. */
  readonly toStation: (at: Point, before: Station) => Station;
  readonly metresPerPixel: { readonly along: number; readonly up: number };
}

/** Judgement: forty tab stops are as many as anyone walks through; what is left out stands in the table. */
export const MOST_HANDLES = 40;
/** WCAG 2.2, 2.5.8: a target is 24 px, or has that much room round it. */
const TARGET = 24;

export interface PointHandle {
  readonly point: LinePoint;
  readonly at: Point;
  readonly turn?: 'crest' | 'sag';
  /** Radius of what the pointer can take hold of. */
  readonly reach: number;
}

/**
 * The points that are handles in the drawing. All of them, up to forty; of a longer profile the crests and sags first,
 * the deepest before the flat ones, then what else has room.
 */
export function pointHandles(
  points: readonly LinePoint[],
  {
    from,
    projection,
    turns,
    grip,
    inHand,
  }: {
    /** Where the line begins, in metres of pipe from the source. */
    readonly from: number;
    readonly projection: Projection;
    readonly turns: Turns;
    /** Radius that a finger or a pointer needs. */
    readonly grip: number;
    /** Always shown: a point does not vanish from under the hand that moves it. */
    readonly inHand?: PointPlace | undefined;
  },
): readonly PointHandle[] {
  const placed = points.map((point) => {
    const station = from + point.station;
    return {
      point,
      at: projection.toPoint({ station, height: point.height }),
      turn: turns.get(station),
    };
  });
  const shown =
    placed.length <= MOST_HANDLES
      ? placed
      : spacedOut(placed, {
          xOf: ({ at }) => at.x,
          rankOf: ({ point, turn }) => (isSamePoint(point, inHand) ? Infinity : (turn?.depth ?? 0)),
          gap: TARGET,
          most: MOST_HANDLES,
        });
  return shown.map(({ point, at, turn }, i) => {
    const gaps = [shown[i - 1], shown[i + 1]].map((other) =>
      other === undefined ? Infinity : Math.hypot(other.at.x - at.x, other.at.y - at.y),
    );
    return {
      point,
      at,
      reach: Math.max(8, Math.min(grip, ...gaps.map((gap) => gap / 2))),
      ...(turn === undefined ? {} : { turn: turn.kind }),
    };
  });
}

/** The corner of a line upstream of a station. */
export function cornerBefore(line: readonly Station[], station: number): Station {
  const before = line.findLast((corner) => corner.station < station - 1e-9);
  return before ?? line[0] ?? { station: 0, height: 0 };
}
