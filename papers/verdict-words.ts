import type { VerdictKind } from '@fallwright/engine';

const WORDS = {
  runs: 'runs by itself',
  runsAfterHandStart: 'runs once started',
  staysOpen: 'stays open',
  staysShut: 'stays shut',
  flutters: 'flutters',
  doesNotLift: 'does not lift',
  starves: 'starves',
} as const satisfies Record<VerdictKind, string>;

/** The verdict in the words of the trade. */
export function verdictWords(kind: VerdictKind): string {
  return WORDS[kind];
}

/** Whether the ram goes on delivering. */
export function isRunning(kind: VerdictKind): boolean {
  return kind === 'runs' || kind === 'runsAfterHandStart';
}

/** The verdict as a sentence with the name of the ram. */
export function verdictSentence(kind: VerdictKind, ramName: string): string {
  return `The ${ramName} ${WORDS[kind]}.`;
}
