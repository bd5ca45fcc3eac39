/** When nothing on offer does what is wished: which bounds failed and by how much, and what would have to change. */
import {
  type Choice,
  type Field,
  type Miss,
  missesOf,
  type WhatWouldChange,
} from '@fallwright/engine';
import { perCent } from '../answered.ts';
import { changesInWords } from '../changes.ts';
import { isRunning } from '../verdict-words.ts';
import { combinationInWords } from './combination-words.ts';
import { type Reader, shown } from './reader.ts';
import { reasonInWords } from './why-not.ts';

/** Each bound that failed, the nearest to holding first. Empty where nothing failed. */
export function missesInWords(choice: Choice, reader: Reader): readonly string[] {
  const { combinations } = choice.progress;
  return missesOf(choice).map((miss) => {
    const parts = choice.candidate(miss.key)?.parts;
    const nearest = parts ? combinationInWords(parts, reader) : miss.key;
    const which =
      miss.count === combinations
        ? `All ${combinations} combinations`
        : `${miss.count} of ${combinations} combinations`;
    return `${which}, nearest ${nearest}. ${reasonInWords(miss.reason, choice, reader)}${shortInWords(miss)}`;
  });
}

function shortInWords({ shortBy }: Miss): string {
  return shortBy > 0 && Number.isFinite(shortBy) ? ` It is short by ${perCent(shortBy)}.` : '';
}

/** What would have to change at the combination that came nearest. */
export function changesNeeded(
  choice: Choice,
  miss: Miss,
  changes: WhatWouldChange,
  reader: Reader,
): readonly string[] {
  const parts = choice.candidate(miss.key)?.parts;
  if (!parts) throw new RangeError(`key must be that of a combination, got ${miss.key}`);
  const nearest = combinationInWords(parts, reader);
  const helps = {
    changes: changes.changes.filter(({ runs }) => runs !== undefined),
    materials: changes.materials.filter(({ verdict }) => isRunning(verdict)),
  };
  const words = changesInWords(helps, reader.system);
  return words.length > 0
    ? [`Nearest to working: ${nearest}. Each of these alone would make it run:`, ...words]
    : [`Nearest to working: ${nearest}. No one change makes it run: several have to go together.`];
}

/** Why there is no pick that meets the need: the most that can be had, and the best chance of it. */
export function shortfallInWords({ picks }: Field, reader: Reader): string | undefined {
  const { shortfall } = picks;
  if (!shortfall) return undefined;
  const { need, mostWater, bestChance } = shortfall;
  const needed = shown(need, 'daily', reader);
  if (!(mostWater > 0)) return `Nothing on offer works here, so none of the ${needed} come.`;
  return mostWater < need
    ? `${needed} are needed, and nothing on offer gives more than ${shown(mostWater, 'daily', reader)}.`
    : `${needed} are needed. That much can be had, but not surely enough${
        bestChance === undefined ? '' : `: the best chance is ${perCent(bestChance)}`
      }.`;
}
