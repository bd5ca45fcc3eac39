/** A finished choice put into words, a part at a time. */
import type { Choice, ChoicePick, Contender, Field } from '@fallwright/engine';
import { installationOfParts, missesOf, whatWouldChange } from '@fallwright/engine';
import type { FrontRow, Reader } from '@fallwright/papers';
import {
  assumptionsInWords,
  changesNeeded,
  combinationInWords,
  frontRows,
  missesInWords,
  missingInWords,
  proposalOf,
  shortfallInWords,
  whyNotRow,
} from '@fallwright/papers';
import { siteOfBuild } from '@fallwright/records';
import type { System } from '@fallwright/units';
import { formatQuantity } from '@fallwright/units';
import { plainOf } from '../answer/document-of.ts';
import type { Plain } from '../state/site-document.ts';
import { isList, isRecord } from '../state/site-document.ts';
import type { ReadChoice } from './choice-request.ts';
import type { ChoiceView, ProposalView, PutFields, WhyNotPage } from './choice-view.ts';

/** Money has to be in some currency for its words; without a price none is written. */
const NO_CURRENCY = 'XXX';

/** Judgement: more misses than this are variations of the same. */
const MOST_MISSES = 6;
/** Judgement: what lies near the front is drawn small beside it; more of them hide it. */
const MOST_NEAR = 60;

function readerFor({ currency = NO_CURRENCY }: ReadChoice, system: System): Reader {
  return { system, currency };
}

/** What has prices, or where nothing that works has them, water alone. */
function fieldShown(choice: Choice): { readonly field: Field; readonly isPriced: boolean } {
  const isPriced = choice.priced.contenders.length > 0;
  return { field: isPriced ? choice.priced : choice.unpriced, isPriced };
}

export function choiceView(
  about: ReadChoice,
  choice: Choice,
  {
    system,
    hasPrices,
    hasRange,
  }: { readonly system: System; readonly hasPrices: boolean; readonly hasRange: boolean },
): ChoiceView {
  const reader = readerFor(about, system);
  const { field, isPriced } = fieldShown(choice);
  const { request, currency } = about;
  const rows = asQuoted(frontRows(field, request.wish, reader), field, system).map((row) => ({
    ...row,
    pickedAs: pickWords(row.pickedAs, isPriced),
  }));
  const picked = new Map(rows.map(({ key, pickedAs }) => [key, pickedAs]));
  const shown = isPriced ? nearFront(field) : differing(field);
  const shortfall = shortfallInWords(field, reader);
  const { need } = request.wish;
  return {
    isComplete: choice.isComplete,
    progress: choice.progress,
    isPriced,
    hasPrices,
    hasRange,
    ...(currency === undefined ? {} : { currency }),
    ...(need === undefined ? {} : { need }),
    points: shown.map(({ candidate, water, isOnFront }) => ({
      key: candidate.key,
      ...(candidate.cost === undefined ? {} : { cost: candidate.cost }),
      water,
      isOnFront,
      what: combinationInWords(candidate.parts, reader),
      pickedAs: picked.get(candidate.key) ?? '',
    })),
    rows,
    picks: pickKeys(field, isPriced),
    ...(shortfall === undefined ? {} : { shortfall }),
    ...(field.contenders.length > 0 || !choice.isComplete
      ? {}
      : { nothing: whatWouldHelp(about, choice, reader) }),
    lacks: hasPrices && !isPriced ? lacksOf(field, reader) : [],
    assumptions: assumptionsInWords(about.assumptions, system),
    leftOut: about.leftOut,
  };
}

/** A pick gives what it gives on the fine grid. */
function asQuoted(
  rows: readonly FrontRow[],
  { picks }: Field,
  system: System,
): readonly FrontRow[] {
  const quoted = new Map(
    [picks.cheapest, picks.mostWater, picks.mostForgiving].flatMap((pick) => {
      const flow = pick?.answer?.operatingPoint?.deliveryFlow;
      if (pick === undefined || flow === undefined) return [];
      const { key, parts } = pick.contender.candidate;
      return [[key, formatQuantity(parts.count * flow, 'daily', system)] as const];
    }),
  );
  return rows.map((row) => ({ ...row, water: quoted.get(row.key) ?? row.water }));
}

/** Without prices nothing is the cheapest. */
function pickWords(pickedAs: string, isPriced: boolean): string {
  const names = pickedAs.split('; ').filter((name) => isPriced || !name.startsWith('cheapest'));
  return names.join(', ');
}

/** Each build once. Without prices there is no cheapest. */
function pickKeys({ picks }: Field, isPriced: boolean): readonly string[] {
  const order = [...(isPriced ? [picks.cheapest] : []), picks.mostWater, picks.mostForgiving];
  return [...new Set(order.flatMap((pick) => pick?.contender.candidate.key ?? []))];
}

/** The whole front, and the nearest of what lies beside it. */
function nearFront({ contenders, picks }: Field): readonly Contender[] {
  const picked = new Set(
    [picks.cheapest, picks.mostWater, picks.mostForgiving].map(
      (pick) => pick?.contender.candidate.key,
    ),
  );
  const isKept = ({ isOnFront, candidate }: Contender): boolean =>
    isOnFront || picked.has(candidate.key);
  const beside = contenders
    .filter((contender) => !isKept(contender))
    .sort((a, b) => b.margins.least - a.margins.least)
    .slice(0, MOST_NEAR);
  return [...contenders.filter(isKept), ...beside];
}

/** One of each ram, tuning and drive pipe, most water first: what differs only behind the ram is alike in water. */
function differing({ contenders, picks }: Field): readonly Contender[] {
  const first = [picks.mostWater, picks.mostForgiving].flatMap((pick) => pick?.contender ?? []);
  const seen = new Set<string>();
  return [...first, ...contenders]
    .filter(({ candidate: { parts } }) => {
      const key = `${parts.ram.key}|${parts.tuning.name}|${parts.count}|${parts.drivePipe.key}`;
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    })
    .sort((a, b) => b.water - a.water);
}

function lacksOf({ contenders }: Field, reader: Reader): readonly string[] {
  return [
    ...new Set(contenders.flatMap(({ candidate }) => missingInWords(candidate.missing, reader))),
  ];
}

function whatWouldHelp(
  about: ReadChoice,
  choice: Choice,
  reader: Reader,
): NonNullable<ChoiceView['nothing']> {
  const [nearest] = missesOf(choice);
  const parts = nearest && choice.candidate(nearest.key)?.parts;
  return {
    misses: missesInWords(choice, reader).slice(0, MOST_MISSES),
    changes:
      nearest === undefined || parts === undefined
        ? []
        : changesNeeded(
            choice,
            nearest,
            drained(whatWouldChange(installationOfParts(about.request.place, parts))),
            reader,
          ),
  };
}

function drained<Result>(steps: Generator<void, Result, void>): Result {
  let step = steps.next();
  while (step.done !== true) step = steps.next();
  return step.value;
}

/** What is proposed with a build near the front. @throws RangeError for any other. */
export function proposalView(
  about: ReadChoice,
  choice: Choice,
  key: string,
  system: System,
): ProposalView {
  const reader = readerFor(about, system);
  const { field, isPriced } = fieldShown(choice);
  const contender = field.contenders.find(({ candidate }) => candidate.key === key);
  if (contender === undefined) throw new RangeError(`key must be that of a contender, got ${key}`);
  const { picks } = field;
  const quoted = [picks.cheapest, picks.mostWater, picks.mostForgiving].find(
    (pick) => pick?.contender.candidate.key === key,
  );
  const pick: ChoicePick = quoted ?? { contender };
  const called =
    frontRows(field, about.request.wish, reader).find((row) => row.key === key)?.pickedAs ?? '';
  const names = pickWords(called, isPriced)
    .split(', ')
    .filter((name) => name !== '');
  const { list: _list, sizing: _sizing, ...shown } = proposalOf(about.request, pick, names, reader);
  return {
    ...shown,
    what: combinationInWords(contender.candidate.parts, reader),
    putting: puttingOf(about, contender),
  };
}

function puttingOf({ site, forms }: ReadChoice, { candidate }: Contender): ProposalView['putting'] {
  const { parts } = candidate;
  const built = siteOfBuild(site, parts, forms);
  if (built.kind !== 'site') return built;
  const { drive, ram, delivery, tank } = built.site;
  const volume = parts.tank?.volume;
  const fields: PutFields = {
    ...field('drive', drive),
    ...field('ram', ram),
    ...field('delivery', delivery),
    ...(volume === undefined
      ? field('tank', tank)
      : { tank: { ...recordOf(plainOf(tank)), volume: `${Math.round(volume * 1e6) / 1000} L` } }),
  };
  return { kind: 'site', fields };
}

function field(name: keyof PutFields, value: unknown): PutFields {
  const plain = plainOf(value);
  if (plain === undefined) return {};
  return { [name]: isList(plain) ? plain.map(flat) : plain };
}

/** As the page edits a line: each pipe spelled out flat. */
function flat(entry: Plain): Plain {
  if (!isRecord(entry) || !isRecord(entry.pipe)) return entry;
  const { pipe, ...others } = entry;
  return { ...pipe, ...others };
}

function recordOf(plain: Plain | undefined) {
  return isRecord(plain) ? plain : {};
}

/** All combinations, for looking up why one lost. Words are made when they are first looked at. */
export function whyNotFinder(about: ReadChoice, choice: Choice) {
  const texts = new Map<System, readonly { readonly key: string; readonly text: string }[]>();
  const ordered = [...choice.keys()].sort(
    (a, b) =>
      (choice.candidate(a)?.cost ?? Infinity) - (choice.candidate(b)?.cost ?? Infinity) ||
      (a < b ? -1 : 1),
  );
  const textsIn = (system: System) => {
    const known = texts.get(system);
    if (known !== undefined) return known;
    const reader = readerFor(about, system);
    const made = ordered.map((key) => {
      const { what, why } = whyNotRow(choice, key, reader);
      return { key, text: `${what} ${why || 'on the front'}`.toLowerCase() };
    });
    texts.set(system, made);
    return made;
  };
  return (
    sought: string,
    {
      from,
      count,
      system,
    }: { readonly from: number; readonly count: number; readonly system: System },
  ): WhyNotPage => {
    const words = sought
      .toLowerCase()
      .split(/\s+/)
      .filter((word) => word !== '');
    const found =
      words.length === 0
        ? ordered
        : textsIn(system)
            .filter(({ text }) => words.every((word) => text.includes(word)))
            .map(({ key }) => key);
    const reader = readerFor(about, system);
    return {
      found: found.length,
      from,
      rows: found.slice(from, from + count).map((key) => whyNotRow(choice, key, reader)),
    };
  };
}
