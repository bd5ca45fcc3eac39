/** The rows of "what would change it": names, staffs and verdicts, ready to be drawn. */
import type { Change, Changeable, MaterialChange, VerdictKind } from '@fallwright/engine';
import { isRunning } from '@fallwright/papers';
import type { Purpose, System } from '@fallwright/units';
import { formatNumber, formatQuantity } from '@fallwright/units';
import type { OpenedAlternative } from '../alternatives/opened.ts';
import type { StaffLayout, StaffMark } from '../drawing/staff.ts';
import { hasTurn, layOutStaff } from '../drawing/staff.ts';
import type { Lean } from '../drawing/staff-labels.ts';
import { leanOf, leanOfNow } from '../drawing/staff-labels.ts';
import type { SiteChanges } from './site-answer.ts';
import { verdictWord } from './words.ts';

export interface LabelledMark extends StaffMark {
  readonly label: string;
  readonly lean: Lean;
}

export interface ChangeRow {
  readonly what: Changeable;
  readonly name: string;
  readonly layout: StaffLayout;
  readonly stops: readonly LabelledMark[];
  readonly enoughMarks: readonly LabelledMark[];
  readonly now: { readonly label: string; readonly lean: Lean };
  /** What it becomes beyond the turning points: enough, running, or one of the ways not to run. */
  readonly becomes: readonly { readonly kind: VerdictKind; readonly word: string }[];
  /** What it takes to change it. */
  readonly trouble: string;
  /** The change as an alternative to lay beside the present place. */
  readonly alternative: OpenedAlternative | undefined;
  /** The staff in words. */
  readonly inWords: string;
}

interface Thing {
  readonly name: string;
  readonly purpose: Purpose;
  readonly trouble: string;
}

const THINGS: Readonly<Record<Changeable, Thing>> = {
  fall: { name: 'Fall', purpose: 'height', trouble: 'move the ram or the intake' },
  lift: { name: 'Lift', purpose: 'height', trouble: 'move the tank' },
  driveLength: { name: 'Drive length', purpose: 'pipeLength', trouble: 'cut or lengthen the pipe' },
  driveBore: { name: 'Drive bore', purpose: 'bore', trouble: 'another pipe' },
  valveWeight: {
    name: 'Valve weight in water',
    purpose: 'weight',
    trouble: 'washers on the valve',
  },
  stroke: { name: 'Stroke', purpose: 'stroke', trouble: 'turn a nut' },
  sourceFlow: { name: 'Water of the source', purpose: 'sourceFlow', trouble: 'gather more of it' },
  trappedAir: { name: 'Air in the drive line', purpose: 'smallVolume', trouble: 'bleed it' },
};

/** The things that turn something, each on its staff. */
export function changeRows(
  { changes, alternatives, sentences }: SiteChanges,
  system: System,
): ChangeRow[] {
  return changes.flatMap((change, index) => {
    if (!hasTurn(change)) return [];
    const { name, purpose, trouble } = THINGS[change.what];
    const layout = layOutStaff(change);
    const full = (value: number): string =>
      value === 0 ? 'none' : formatQuantity(value, purpose, system);
    // The unit stands with the present value; where that is "none" it stands with the turning points.
    const bare = (value: number): string =>
      change.now === 0 ? full(value) : formatNumber(value, purpose, system);
    const labelled = (mark: StaffMark): LabelledMark => ({
      ...mark,
      label: bare(mark.value),
      lean: leanOf(mark),
    });
    return {
      what: change.what,
      name,
      layout,
      stops: layout.stops.map(labelled),
      enoughMarks: layout.enoughMarks.map(labelled),
      now: { label: full(change.now), lean: leanOfNow(layout) },
      becomes: verdictsBeyond(change),
      trouble,
      alternative: alternatives[index],
      inWords: sentences[system][index] ?? name,
    };
  });
}

/** Sentences on the things that turn nothing, however far they were tried. */
export function turnsNothing({ changes, sentences }: SiteChanges, system: System): string[] {
  return changes.flatMap((change, index) => {
    const sentence = sentences[system][index];
    return hasTurn(change) || sentence === undefined ? [] : [sentence];
  });
}

function verdictsBeyond({ now, runs, enough }: Change): ChangeRow['becomes'] {
  if (runs === undefined) return [];
  const gives = enough === undefined ? [] : [{ kind: 'runs' as const, word: 'Gives enough' }];
  const isInside = now >= runs.low && now <= runs.high;
  if (!isInside && gives.length === 0) return [{ kind: 'runs', word: 'Runs' }];
  const stops = isInside ? [runs.belowLow, runs.aboveHigh] : [];
  const told = [...new Set(stops)].filter((kind) => kind !== undefined);
  return [...gives, ...told.map((kind) => ({ kind, word: verdictWord(kind) }))];
}

export interface MaterialRow {
  readonly name: string;
  readonly kind: VerdictKind;
  readonly word: string;
  /** What reaches the tank; empty when nothing does. */
  readonly amount: string;
}

export function materialRows(materials: readonly MaterialChange[], system: System): MaterialRow[] {
  return materials.map(({ pipe, verdict, deliveryFlow }) => ({
    name: pipe,
    kind: verdict,
    word: verdictWord(verdict),
    amount: isRunning(verdict) ? formatQuantity(deliveryFlow, 'daily', system) : '',
  }));
}
