/** A glance in words: the verdict or the water, then what a person asks next. */
import { isRunning, perCent } from '@fallwright/papers';
import type { System } from '@fallwright/units';
import { formatNumber, formatQuantity } from '@fallwright/units';
import { boxFor } from '../answer/boxes.ts';
import type { Glance } from '../answer/glance.ts';
import { verdictWord } from '../answer/words.ts';

export interface GlanceWords {
  readonly main: string;
  readonly note: string;
}

export function glanceInWords(glance: Glance, system: System): GlanceWords {
  if (glance.kind === 'notEnoughYet') {
    return { main: 'Not enough yet', note: `look at ${boxFor(glance.first).name}` };
  }
  const { kind, delivered } = glance;
  if (delivered === undefined || !isRunning(kind)) {
    return { main: verdictWord(kind), note: kind === 'staysOpen' ? flows(glance, system) : '' };
  }
  return { main: formatQuantity(delivered, 'daily', system), note: notesOn(glance, system) };
}

function notesOn(glance: Exclude<Glance, { kind: 'notEnoughYet' }>, system: System): string {
  const { kind, delivered = 0, needed, handStrokes } = glance;
  const byHand =
    kind === 'runsAfterHandStart'
      ? [handStrokes === undefined ? 'started by hand' : `${handStrokes} strokes by hand to start`]
      : [];
  if (needed === undefined) return byHand.join('; ');
  const share =
    delivered >= needed
      ? `enough for ${formatNumber(needed, 'daily', system)}`
      : `${perCent(delivered / needed)} of what is needed`;
  return [share, ...byHand].join('; ');
}

function flows(
  { terminalFlow, closingFlow }: { readonly terminalFlow: number; readonly closingFlow: number },
  system: System,
): string {
  const passes = formatNumber(terminalFlow, 'sourceFlow', system);
  return `line passes ${passes}, valve shuts at ${formatQuantity(closingFlow, 'sourceFlow', system)}`;
}
