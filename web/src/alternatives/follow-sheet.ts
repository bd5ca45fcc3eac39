/** The choices after the sheet was changed elsewhere: what they begin from follows it, what the person ticked stays. */
import type { Installation } from '@fallwright/engine';
import type { System } from '@fallwright/units';
import { pipesOf } from '../state/lines.ts';
import type { SiteDocument } from '../state/site-document.ts';
import type { Choices } from './choices.ts';
import { choicesFor, nameOf, ramOn } from './choices.ts';
import { driveRows } from './drive-rows.ts';
import { sameText } from './same-text.ts';

/** A line or ram that stands in the table already was adopted from it: then nothing moves. */
export function followingSheet(
  choices: Choices,
  document: SiteDocument,
  installation: Installation,
  system: System,
): Choices {
  const fresh = choicesFor(document, installation, system);
  return withRamOf(fresh, withLineOf(fresh, choices, document, system), document, installation);
}

function withLineOf(
  fresh: Choices,
  choices: Choices,
  document: SiteDocument,
  system: System,
): Choices {
  const line = sameText(pipesOf(document, 'drive'));
  const isKnown =
    line === sameText(choices.line) ||
    driveRows(choices, document, system).some(
      (row) => row.changes.length > 0 && sameText(pipesOf(row.site, 'drive')) === line,
    );
  if (isKnown) return choices;
  return {
    ...choices,
    line: fresh.line,
    bore: fresh.bore,
    pipes: [...new Set([...fresh.pipes, ...choices.added])],
    lengths: {
      ...choices.lengths,
      shorter: { ...fresh.lengths.shorter, isChosen: choices.lengths.shorter.isChosen },
      longer: { ...fresh.lengths.longer, isChosen: choices.lengths.longer.isChosen },
    },
  };
}

function withRamOf(
  fresh: Choices,
  choices: Choices,
  document: SiteDocument,
  installation: Installation,
): Choices {
  const ram = ramOn(document, installation);
  const key = sameText(ram);
  if (choices.rams.some((known) => sameText(known) === key)) return choices;
  // Tunings of the ram before it say nothing of this one; sizes do.
  const sizes = choices.rams.filter((known) => nameOf(known) !== undefined);
  return { ...choices, ram, ramNow: fresh.ramNow, rams: [ram, ...sizes] };
}
