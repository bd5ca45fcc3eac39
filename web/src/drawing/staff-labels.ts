/**
 * Where the words on a staff go, so that none stands on another. Above the line stand the present value and the turning
 * points where it stops; below it those where it begins to give enough. A turning point's words lean away from its stretch.
 */
import type { StaffLayout, StaffMark } from './staff.ts';

export type Lean = 'left' | 'right' | 'middle';

/** Judgement: a value with its unit takes about this share of a staff as wide as a table column. */
const WIDTH = 0.2;

interface Taken {
  readonly from: number;
  readonly to: number;
}

function taken(at: number, lean: Lean): Taken {
  if (lean === 'left') return { from: at - WIDTH, to: at };
  if (lean === 'right') return { from: at, to: at + WIDTH };
  return { from: at - WIDTH / 2, to: at + WIDTH / 2 };
}

const overlap = (a: Taken, b: Taken): number =>
  Math.max(0, Math.min(a.to, b.to) - Math.max(a.from, b.from));

/** How much of a label hangs over the ends of the staff. */
const overhang = ({ from, to }: Taken): number => Math.max(0, -from) + Math.max(0, to - 1);

export const leanOf = ({ side }: StaffMark): Lean => (side === 'low' ? 'left' : 'right');

/** The present value stands in the middle over its wedge, and leans away from a turning point close beside it. */
export function leanOfNow({ now, stops }: StaffLayout): Lean {
  const others = stops.map((mark) => taken(mark.at, leanOf(mark)));
  const cost = (lean: Lean): number => {
    const here = taken(now, lean);
    return overhang(here) + others.reduce((sum, other) => sum + overlap(here, other), 0);
  };
  const leans: readonly Lean[] = ['middle', 'right', 'left'];
  return leans.reduce((best, lean) => (cost(lean) < cost(best) - 1e-9 ? lean : best));
}
