/** The three picks: what each is, what it gives and costs, how far it is from its limits. */
import {
  adviceFor,
  type ChoicePick,
  type ChoiceRequest,
  type Contender,
  type Field,
  type PartsList,
  partsListOf,
  type Sizing,
  sizingOf,
  type Wish,
} from '@fallwright/engine';
import { brokenAdvice } from './advice-words.ts';
import { combinationInWords } from './combination-words.ts';
import { type DeliveryPipeWords, deliveryPipesInWords } from './delivery-pipe-words.ts';
import { missingInWords } from './item-words.ts';
import { chanceInWords, leastMarginInWords, type MarginRow, marginRows } from './margin-words.ts';
import { type PrintedPart, partsRows, totalInWords } from './parts-rows.ts';
import { moneyInWords, type Reader, shown } from './reader.ts';
import { type SizeRow, sizingRows } from './sizing-rows.ts';

export type PickName = 'cheapest' | 'mostWater' | 'mostForgiving';

export const PICK_NAMES = {
  cheapest: 'cheapest that meets the need',
  mostWater: 'most water',
  mostForgiving: 'most forgiving',
} as const satisfies Record<PickName, string>;

/** How a pick is called. Where it was judged, most water is told of what can be counted on, and not of the nominal figure. */
export function pickName(name: PickName, { judgement }: Contender, { need }: Wish): string {
  if (name === 'cheapest' && need === undefined) return 'cheapest that runs';
  if (name === 'mostWater' && judgement) return 'most water to count on';
  return PICK_NAMES[name];
}

/** Everything that is said of one pick. */
export interface Proposal {
  readonly key: string;
  /** What it is picked as, one name or several. */
  readonly names: readonly string[];
  readonly summary: string;
  readonly chance?: string;
  readonly nearestLimit: string;
  readonly margins: readonly MarginRow[];
  /** Rules of the trade that it does not keep. */
  readonly advice: readonly string[];
  readonly sizes: readonly SizeRow[];
  /** All delivery pipes on offer, for the friction of each against its cost. */
  readonly deliveryPipes: readonly DeliveryPipeWords[];
  readonly parts: readonly PrintedPart[];
  /** Absent while a price is missing. */
  readonly total?: string;
  readonly missing: readonly string[];
  /** The same as data, for who draws or reckons on. */
  readonly list: PartsList;
  readonly sizing: Sizing;
}

/** The picks of a field, each once, the cheapest first. */
export function proposals(request: ChoiceRequest, field: Field, reader: Reader): Proposal[] {
  const names = Object.keys(PICK_NAMES) as PickName[];
  const picks = new Map<string, { pick: ChoicePick; names: string[] }>();
  for (const name of names) {
    const pick = field.picks[name];
    if (!pick) continue;
    const { key } = pick.contender.candidate;
    const known = picks.get(key);
    const called = pickName(name, pick.contender, request.wish);
    if (known) known.names.push(called);
    else picks.set(key, { pick, names: [called] });
  }
  return [...picks.values()].map(({ pick, names: called }) =>
    proposalOf(request, pick, called, reader),
  );
}

/** What is proposed with one contender, a pick or any other. */
export function proposalOf(
  request: ChoiceRequest,
  pick: ChoicePick,
  names: readonly string[],
  reader: Reader,
): Proposal {
  const { place, wish, offers } = request;
  const { contender } = pick;
  const { candidate, run, margins } = contender;
  const list = partsListOf(place, offers, candidate.parts);
  const sizing = sizingOf(place, wish, candidate, run);
  const chance = chanceInWords(contender, wish, reader);
  const total = totalInWords(list, reader);
  return {
    key: candidate.key,
    names,
    summary: proposalSummary(pick, reader),
    ...(chance === undefined ? {} : { chance }),
    nearestLimit: leastMarginInWords(margins),
    margins: marginRows(margins),
    advice: brokenAdvice(adviceFor(place, candidate, run), reader),
    sizes: sizingRows(sizing, reader),
    deliveryPipes: deliveryPipesInWords(request, contender, reader),
    parts: partsRows(list, reader),
    ...(total === undefined ? {} : { total }),
    missing: missingInWords(list.missing, reader),
    list,
    sizing,
  };
}

/** `2 × Swallow 25, each on 14 m of …: 1,240 L a day, taking 22 L/min, for €1,234.00.` */
export function proposalSummary(pick: ChoicePick, reader: Reader): string {
  const { candidate } = pick.contender;
  const price =
    candidate.cost === undefined
      ? '; not all of it has a price'
      : `, for ${moneyInWords(candidate.cost, reader)}`;
  const water = shown(waterOf(pick), 'daily', reader);
  const taken = shown(supplyOf(pick), 'sourceFlow', reader);
  return `${combinationInWords(candidate.parts, reader)}: ${water}, taking ${taken} from the source${price}.`;
}

/** By the figure on the fine grid where it was quoted. */
function waterOf({ contender, answer }: ChoicePick): number {
  const quoted = answer?.operatingPoint?.deliveryFlow;
  return quoted === undefined ? contender.water : countOf(contender) * quoted;
}

function supplyOf({ contender, answer }: ChoicePick): number {
  return countOf(contender) * (answer?.operatingPoint ?? contender.run).supplyFlow;
}

function countOf({ candidate }: Contender): number {
  return candidate.parts.count;
}
