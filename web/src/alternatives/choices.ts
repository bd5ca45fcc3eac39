/**
 * What a person wants compared. It begins from the line and the ram on the sheet and keeps them as its starting point when
 * another pair is adopted, so that the table does not change under the reader's hands.
 */
import type { Installation } from '@fallwright/engine';
import { findPipe, GRAVITY, TYPICAL_SIZES, type TypicalSize } from '@fallwright/engine';
import type { System } from '@fallwright/units';
import { textOf } from '../state/entry.ts';
import { isSpelledOut, pipesOf } from '../state/lines.ts';
import type { Plain, SiteDocument } from '../state/site-document.ts';
import { valueAt } from '../state/site-document.ts';
import { familiesNear } from './candidates.ts';
import type { Line } from './changed-line.ts';
import { lengthOf, written } from './changed-line.ts';
import type { OpenedAlternative } from './opened.ts';
import { sameText } from './same-text.ts';

/** Stands for the line's own pipe or pipes among the names of pipes. */
export const OWN_PIPE = '';

export interface LengthChoice {
  readonly isChosen: boolean;
  /** As typed; may be unreadable. */
  readonly text: string;
}

export interface Choices {
  /** The drive line that the others are made from. */
  readonly line: Line;
  /** Bore at the ram of that line, in m. */
  readonly bore: number;
  readonly pipes: readonly string[];
  /** Pipes that the person named besides those offered. */
  readonly added: readonly string[];
  readonly lengths: {
    readonly asItIs: boolean;
    readonly shorter: LengthChoice;
    readonly longer: LengthChoice;
  };
  readonly laid: {
    readonly asItIs: boolean;
    readonly straight: boolean;
    readonly overCrest: boolean;
    /** Air that the crest holds, as typed; empty for what a site file assumes. */
    readonly air: string;
  };
  /** The ram that tuned ones are made from, as the site file has it. */
  readonly ram: Plain;
  readonly ramNow: {
    readonly stroke: number;
    /** Weight in air of the valve's moving parts; absent when no weight holds it open. */
    readonly weight?: number;
  };
  /** Rams to compare, as site files have them. */
  readonly rams: readonly Plain[];
  readonly opened: readonly OpenedAlternative[];
}

/** Judgement: a third off and half as much again are changes that one can see, and undo one another. */
export const SHORTER = 2 / 3;
export const LONGER = 3 / 2;

/** The ram on the sheet. A file that names none gets the typical one that fits its pipe, and is then held to it. */
export function ramOn(document: SiteDocument, installation: Installation): Plain {
  return valueAt(document, ['ram']) ?? installation.ram.name;
}

export function choicesFor(
  document: SiteDocument,
  installation: Installation,
  system: System,
): Choices {
  const line = pipesOf(document, 'drive');
  const bore = installation.driveLine.segments.at(-1)?.pipe.innerDiameter ?? 0;
  const ram = ramOn(document, installation);
  const total = lengthOf(line);
  const { wasteValve } = installation.ram;
  return {
    line,
    bore,
    pipes: usualPipes(line, bore, system),
    added: [],
    lengths: {
      asItIs: true,
      shorter: { isChosen: false, text: written(total * SHORTER, 'pipeLength', system, 2) },
      longer: { isChosen: false, text: written(total * LONGER, 'pipeLength', system, 2) },
    },
    laid: { asItIs: true, straight: false, overCrest: false, air: '' },
    ram,
    ramNow: {
      stroke: wasteValve.stroke,
      ...(wasteValve.kind === 'weighted' ? { weight: wasteValve.movingMass * GRAVITY } : {}),
    },
    rams: [ram, ...sizesBeside(installation.ram.bore).filter((size) => size !== nameOf(ram))],
    opened: [],
  };
}

/** The own pipe, one bore down and up of its kind, and of each other kind the nearest bore. */
function usualPipes(line: Line, bore: number, system: System): readonly string[] {
  const own = tableName(line);
  const names = familiesNear(bore, system).flatMap(({ pipes, nearest }) =>
    pipes.some(({ name }) => name === own) ? pipes.map(({ name }) => name) : [nearest.name],
  );
  return [OWN_PIPE, ...names.filter((name) => name !== own)];
}

/** The one table pipe that a line is made of; undefined when it is spelled out or made of several. */
export function tableName(line: Line): string | undefined {
  const names = new Set(
    line.map((pipe) => {
      const found = isSpelledOut(pipe) ? undefined : findPipe(textOf(pipe.pipe));
      return found?.ok ? found.pipe.name : undefined;
    }),
  );
  const [only] = names;
  return names.size === 1 ? only : undefined;
}

const SIZES = Object.keys(TYPICAL_SIZES) as TypicalSize[];

/** The typical size nearest to a bore, with one size down and one up. */
export function sizesBeside(bore: number): readonly TypicalSize[] {
  const gap = (size: TypicalSize): number => Math.abs(Math.log(TYPICAL_SIZES[size] / bore));
  const nearest = SIZES.reduce((best, size) => (gap(size) < gap(best) ? size : best));
  const at = SIZES.indexOf(nearest);
  return SIZES.slice(Math.max(0, at - 1), at + 2);
}

/** The typical size that a ram is and nothing else; undefined for one with parts of its own. */
export function nameOf(ram: Plain): string | undefined {
  return typeof ram === 'string' ? SIZES.find((size) => size === ram.trim()) : undefined;
}

/** The list with a thing in it, or without it when it was there. */
function toggled<Thing>(
  list: readonly Thing[],
  thing: Thing,
  isSame: (a: Thing, b: Thing) => boolean,
): readonly Thing[] {
  const without = list.filter((other) => !isSame(other, thing));
  return without.length === list.length ? [...list, thing] : without;
}

export function withPipeToggled(choices: Choices, name: string): Choices {
  return { ...choices, pipes: toggled(choices.pipes, name, (a, b) => a === b) };
}

export function withPipeAdded(choices: Choices, name: string): Choices {
  const has = (list: readonly string[]): boolean => list.includes(name);
  return {
    ...choices,
    pipes: has(choices.pipes) ? choices.pipes : [...choices.pipes, name],
    added: has(choices.added) ? choices.added : [...choices.added, name],
  };
}

export function withRamToggled(choices: Choices, ram: Plain): Choices {
  return {
    ...choices,
    rams: toggled(choices.rams, ram, (a, b) => sameText(a) === sameText(b)),
  };
}

/** With one more alternative that was opened elsewhere. */
export function withOpened(choices: Choices, alternative: OpenedAlternative): Choices {
  if (alternative.kind === 'pipe') return withPipeAdded(choices, alternative.name);
  const isKnown = choices.opened.some(
    (other) => JSON.stringify(other) === JSON.stringify(alternative),
  );
  return isKnown ? choices : { ...choices, opened: [...choices.opened, alternative] };
}

export function withoutOpened(choices: Choices, alternative: OpenedAlternative): Choices {
  return { ...choices, opened: choices.opened.filter((other) => other !== alternative) };
}
