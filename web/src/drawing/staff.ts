/** One staff of "what would change it": where the thing stands now, where the ram runs, where it stops. */
import type { Change, RunningStretch } from '@fallwright/engine';

export interface Span {
  readonly from: number;
  readonly to: number;
}

export interface StaffMark {
  readonly at: number;
  readonly value: number;
  /** On which side of its stretch it stands. */
  readonly side: 'low' | 'high';
}

/** All positions are shares of the width, 0 to 1. */
export interface StaffLayout {
  readonly now: number;
  readonly runs?: Span;
  /** Where it stops running. */
  readonly stops: readonly StaffMark[];
  /** Where it gives what is needed, when it does not now. */
  readonly enough?: Span;
  /** Where it begins to give enough; a stop that stands there too says more and is shown instead. */
  readonly enoughMarks: readonly StaffMark[];
}

/** Share of the staff kept free at both ends, for the words beside a turning point. */
const EDGE = 0.2;

type Turn = Omit<StaffMark, 'at'>;

/** The ends of a stretch where something turns; an end that is only the end of the search is none. */
function turnsOf(stretch: RunningStretch | undefined): Turn[] {
  if (stretch === undefined) return [];
  return [
    ...(stretch.belowLow === undefined ? [] : [{ value: stretch.low, side: 'low' as const }]),
    ...(stretch.aboveHigh === undefined ? [] : [{ value: stretch.high, side: 'high' as const }]),
  ];
}

/** Whether anything turns within what was searched. */
export function hasTurn(change: Change): boolean {
  return turnsOf(change.runs).length + turnsOf(change.enough).length > 0;
}

/**
 * Lays a change on its staff. The staff spans the present value and the turning points; a stretch that goes on past
 * what was searched runs off the end of the staff.
 */
export function layOutStaff(change: Change): StaffLayout {
  const { now, runs, enough, searchedLow, searchedHigh } = change;
  const stops = turnsOf(runs);
  const enoughTurns = turnsOf(enough).filter(
    ({ value }) => !stops.some((stop) => stop.value === value),
  );
  const values = [
    now,
    ...stops.map((turn) => turn.value),
    ...enoughTurns.map((turn) => turn.value),
  ];
  let low = Math.min(...values);
  let high = Math.max(...values);
  if (low === high) {
    // Nothing turns: show the present value against the whole search.
    low = Math.min(searchedLow, now);
    high = Math.max(searchedHigh, now);
  }
  const span = high - low || Math.abs(high) || 1;
  // A quantity that cannot be less than it is, such as air that is not there, stands at the very left.
  const from = low <= searchedLow && stops.every((stop) => stop.side === 'high') ? 0.04 : EDGE;
  const to = 1 - EDGE;
  const at = (value: number): number => from + ((value - low) / span) * (to - from);
  const mark = (turn: Turn): StaffMark => ({ ...turn, at: at(turn.value) });
  const spanOf = (stretch: RunningStretch): Span => ({
    from: stretch.belowLow === undefined ? 0 : at(stretch.low),
    to: stretch.aboveHigh === undefined ? 1 : Math.min(1, at(stretch.high)),
  });
  return {
    now: at(now),
    ...(runs === undefined ? {} : { runs: spanOf(runs) }),
    stops: stops.map(mark),
    ...(enough === undefined ? {} : { enough: spanOf(enough) }),
    enoughMarks: enoughTurns.map(mark),
  };
}
