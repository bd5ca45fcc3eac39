/** The front of cost and water as a table: more money, more water, and nothing that another beats in both. */
import type { Field, Wish } from '@fallwright/engine';
import { perCent } from '../answered.ts';
import { combinationInWords } from './combination-words.ts';
import { leastMarginInWords } from './margin-words.ts';
import { PICK_NAMES, type PickName, pickName } from './pick-words.ts';
import { moneyInWords, type Reader, shown } from './reader.ts';

export interface FrontRow {
  readonly key: string;
  readonly what: string;
  /** Empty where a price is missing. */
  readonly cost: string;
  readonly water: string;
  readonly nearest: string;
  /** Empty where nobody judged it. */
  readonly chance: string;
  /** What it is picked as; empty when it is not. */
  readonly pickedAs: string;
}

/** The front, the cheapest first, and the picks that lie beside it. */
export function frontRows(field: Field, wish: Wish, reader: Reader): readonly FrontRow[] {
  const { contenders, picks } = field;
  const names = Object.keys(PICK_NAMES) as PickName[];
  const pickedAs = (key: string): string =>
    names
      .flatMap((name) => {
        const contender = picks[name]?.contender;
        return contender?.candidate.key === key ? [pickName(name, contender, wish)] : [];
      })
      .join('; ');
  return contenders
    .filter(({ isOnFront, candidate }) => isOnFront || pickedAs(candidate.key) !== '')
    .map(({ candidate, water, margins, judgement }) => ({
      key: candidate.key,
      what: combinationInWords(candidate.parts, reader),
      cost: candidate.cost === undefined ? '' : moneyInWords(candidate.cost, reader),
      water: shown(water, 'daily', reader),
      nearest: leastMarginInWords(margins),
      chance: judgement ? perCent(judgement.chance) : '',
      pickedAs: pickedAs(candidate.key),
    }));
}
