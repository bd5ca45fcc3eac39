/** What would change the verdict: for each thing the owner can change, where it turns. */
import type {
  Answer,
  Change,
  Changeable,
  RunningStretch,
  VerdictKind,
  WhatWouldChange,
} from '@fallwright/engine';
import { formatQuantity, type Purpose, type System } from '@fallwright/units';
import { isRunning, verdictWords } from './verdict-words.ts';

const THINGS = {
  fall: { words: 'fall', purpose: 'height' },
  lift: { words: 'lift', purpose: 'height' },
  driveLength: { words: 'drive length', purpose: 'pipeLength' },
  driveBore: { words: 'drive bore', purpose: 'bore' },
  valveWeight: { words: 'valve weight', purpose: 'weight' },
  stroke: { words: 'valve stroke', purpose: 'stroke' },
  sourceFlow: { words: 'source flow', purpose: 'sourceFlow' },
  trappedAir: { words: 'air in the line', purpose: 'smallVolume' },
} as const satisfies Record<Changeable, { readonly words: string; readonly purpose: Purpose }>;

/** A stretch of values on which the ram runs, for a table. */
export interface ChangeRow {
  readonly what: string;
  readonly now: string;
  /** Least value found at which it runs. */
  readonly from: string;
  /** What it does below that; empty when it runs down to the end of the search. */
  readonly below: string;
  readonly to: string;
  readonly above: string;
  readonly effort: Change['effort'];
}

/** The things that can make it run, or stop it; those that cannot are in `changesInWords` only. */
export function changeRows(answer: Answer, system: System): readonly ChangeRow[] {
  const show = (value: number, purpose: Purpose): string => formatQuantity(value, purpose, system);
  return answer.changes.flatMap(({ what, now, runs, effort }) => {
    if (!runs) return [];
    const { words, purpose } = THINGS[what];
    return {
      what: words,
      now: show(now, purpose),
      from: show(runs.low, purpose),
      below: turnInWords(runs.belowLow),
      to: show(runs.high, purpose),
      above: turnInWords(runs.aboveHigh),
      effort,
    };
  });
}

function turnInWords(kind: VerdictKind | undefined): string {
  return kind === undefined ? '' : verdictWords(kind);
}

/** Every change as a sentence, then the other materials. */
export function changesInWords(answer: WhatWouldChange, system: System): readonly string[] {
  return [
    ...answer.changes.map((change) => changeInWords(change, system)),
    ...materialsInWords(answer, system),
  ];
}

/** What a changeable thing is called, and how its value is written. */
export function thingChanged(what: Changeable): {
  readonly words: string;
  readonly purpose: Purpose;
} {
  return THINGS[what];
}

export function changeInWords(change: Change, system: System): string {
  const { words, purpose } = THINGS[change.what];
  const value = (size: number): string => formatQuantity(size, purpose, system);
  const now = `(now ${value(change.now)})`;
  const { runs } = change;
  if (!runs) {
    const searched = `from ${value(change.searchedLow)} to ${value(change.searchedHigh)}`;
    return `Changing the ${words} alone, ${searched}, does not make it run ${now}.`;
  }
  const subject = words.charAt(0).toUpperCase() + words.slice(1);
  const turns = [
    ...(runs.belowLow ? [`below ${value(runs.low)} it ${verdictWords(runs.belowLow)}`] : []),
    ...(runs.aboveHigh ? [`above ${value(runs.high)} it ${verdictWords(runs.aboveHigh)}`] : []),
  ];
  const isOutside = change.now < runs.low || change.now > runs.high;
  const stretch = `runs from ${value(runs.low)} to ${value(runs.high)}`;
  const said = isOutside ? [stretch, ...turns] : turns;
  if (said.length === 0) said.push(`${stretch}, as far as was tried`);
  if (change.enough) said.push(enoughInWords(change.enough, value));
  return `${subject}: ${said.join(', ')} ${now}.`;
}

function enoughInWords(enough: RunningStretch, value: (size: number) => string): string {
  return `gives enough from ${value(enough.low)} to ${value(enough.high)}`;
}

/** Where it would give what is needed, when it does not do so now. */
export function enoughChanges(answer: Answer, system: System): readonly string[] {
  return answer.changes.flatMap(({ what, enough }) => {
    if (!enough) return [];
    const { words, purpose } = THINGS[what];
    const value = (size: number): string => formatQuantity(size, purpose, system);
    return [`${words} from ${value(enough.low)} to ${value(enough.high)}`];
  });
}

export interface MaterialRow {
  readonly pipe: string;
  readonly verdict: string;
  /** Empty when it does not run. */
  readonly delivers: string;
}

/** The same drive line in other pipes. */
export function materialRows(answer: WhatWouldChange, system: System): readonly MaterialRow[] {
  return answer.materials.map(({ pipe, verdict, deliveryFlow }) => ({
    pipe,
    verdict: verdictWords(verdict),
    delivers: isRunning(verdict) ? formatQuantity(deliveryFlow, 'daily', system) : '',
  }));
}

function materialsInWords(answer: WhatWouldChange, system: System): readonly string[] {
  return materialRows(answer, system).map(
    ({ pipe, verdict, delivers }) =>
      `With ${pipe} as the drive line it ${verdict}${delivers && ` and delivers ${delivers}`}.`,
  );
}
