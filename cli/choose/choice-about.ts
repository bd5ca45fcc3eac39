/** Everything that the page and the record of a choice are made from. */
import type { Choice, ChoicePick, ChoiceRequest, Field, Lack } from '@fallwright/engine';
import type { PickName, Reader } from '@fallwright/papers';
import type { Assumption, OfferForms, Problem, Site } from '@fallwright/records';
import type { System } from '@fallwright/units';

export interface ChoiceAbout {
  readonly choice: Choice;
  readonly request: ChoiceRequest;
  readonly site: Site;
  readonly forms: OfferForms;
  readonly system: System;
  /** The units, and the currency of the prices. */
  readonly reader: Reader;
  /** Absent when nothing has a price. */
  readonly currency?: string;
  readonly hasRange: boolean;
  readonly hasPrices: boolean;
  readonly isJudged: boolean;
  readonly assumptions: readonly Assumption[];
  /** Worth a second look, each with the file it is in. */
  readonly warnings: readonly { readonly file: string; readonly problem: Problem }[];
}

/** What the page is about: what has prices, or where nothing that works has them, water alone. */
export function fieldShown({ choice }: ChoiceAbout): {
  readonly field: Field;
  readonly isPriced: boolean;
} {
  const isPriced = choice.priced.contenders.length > 0;
  return { field: isPriced ? choice.priced : choice.unpriced, isPriced };
}

export interface NamedPick {
  /** All that it is: one build is often more than one of the three. */
  readonly names: readonly PickName[];
  readonly pick: ChoicePick;
}

/** The picks, each build once. Without prices there is no cheapest. */
export function namedPicks(field: Field, isPriced: boolean): readonly NamedPick[] {
  const order: readonly PickName[] = isPriced
    ? ['cheapest', 'mostWater', 'mostForgiving']
    : ['mostWater', 'mostForgiving'];
  const found: { names: PickName[]; pick: ChoicePick }[] = [];
  for (const name of order) {
    const pick = field.picks[name];
    if (!pick) continue;
    const same = found.find((f) => f.pick.contender.candidate.key === pick.contender.candidate.key);
    if (same) same.names.push(name);
    else found.push({ names: [name], pick });
  }
  return found;
}

/** What all rams of a pick deliver: as quoted on the fine grid, or as run when it was not quoted. */
export function waterOf({ contender, answer }: ChoicePick): number {
  const quoted = answer?.operatingPoint?.deliveryFlow;
  return quoted === undefined ? contender.water : contender.candidate.parts.count * quoted;
}

/** What lacks a price among builds that would work, each once, with how many of them need it; the most needed first. */
export function lacksOf(field: Field): readonly { readonly lack: Lack; readonly count: number }[] {
  const found = new Map<string, { lack: Lack; count: number }>();
  for (const { candidate } of field.contenders) {
    for (const lack of candidate.missing) {
      const key = `${lack.kind}|${lack.name ?? ''}|${lack.size ?? ''}`;
      const entry = found.get(key) ?? { lack, count: 0 };
      entry.count += 1;
      found.set(key, entry);
    }
  }
  return [...found.values()].sort((a, b) => b.count - a.count);
}
