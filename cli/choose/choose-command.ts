/** `fallwright choose`: what to build at a place, from a range of rams and a price list. */
import { writeFile } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import type {
  ChoiceRequest,
  Installation,
  PlaceToFit,
  Ram,
  UncertainInput,
  Wish,
} from '@fallwright/engine';
import type { PickName } from '@fallwright/papers';
import {
  type AssembledOffers,
  LONGEST_PRICES,
  LONGEST_RANGE,
  LONGEST_TEXT,
  offersOf,
  type PriceList,
  type Problem,
  placeToFit,
  type Range,
  readPlace,
  readPrices,
  readRange,
  type Site,
  siteOfBuild,
  systemOf,
  unsureOfBuild,
  writeSite,
} from '@fallwright/records';
import { readQuantity, type System } from '@fallwright/units';
import { BadInput } from '../bad-input.ts';
import { nameOf, textOf } from '../read-file.ts';
import { samplePlan } from '../sampled-in-view.ts';
import { type ChoiceAbout, fieldShown, namedPicks } from './choice-about.ts';
import { choicePage } from './choice-page.ts';
import { choiceRecord } from './choice-record.ts';
import { chooseInView } from './choose-in-view.ts';

export interface ChooseOptions {
  readonly range?: string;
  readonly prices?: string;
  readonly keepGood?: boolean;
  readonly need?: string;
  readonly rams: string;
  readonly lengths?: string;
  readonly likely: string;
  readonly vessels?: boolean;
  readonly why?: string;
  readonly write?: string;
  readonly pick: 'cheapest' | 'water' | 'forgiving';
  readonly units?: System;
  readonly json?: boolean;
  readonly samples: string;
  readonly seed: string;
  readonly chance: boolean;
  readonly workers?: string;
}

type Warning = ChoiceAbout['warnings'][number];

/** Judgement: more rams than this side by side want a trough and a plan of their own. */
const MOST_RAMS = 6;
/** Judgement: no way is laid out in so many lengths, and each is a run for every ram and pipe. */
const MOST_LENGTHS = 20;
/** Judgement: threads beyond this wait for the one that hands out. */
const MOST_WORKERS = 64;
/** As shells tell a program that Ctrl-C ended. */
const STOPPED = 130;

export async function chooseCommand(file: string, options: ChooseOptions): Promise<void> {
  const plan = samplePlan(options);
  const asked = wishFrom(options);
  const { site, warnings: ofSite } = await siteIn(file);
  const range = options.range === undefined ? undefined : await rangeIn(options.range);
  const prices = options.prices === undefined ? undefined : await pricesIn(options.prices, options);
  const assembled = placeToFit(site);
  const wish = { ...assembled.wish, ...asked.wish };
  const made = offersOf({
    ...(range && { range: range.value }),
    ...(prices && { prices: prices.value }),
    ...(wish.tankVolume !== undefined && { tankVolume: wish.tankVolume }),
    otherVessels: options.vessels === true,
  });
  if (!made.ok)
    throw new BadInput(
      [options.range, options.prices].flatMap((f) => f ?? []).join(' and '),
      made.problems,
    );
  const { offers, forms, currency, assumptions } = made.value;
  const place = prices ? assembled.place : inDryTime(assembled.place);
  const request: ChoiceRequest = { place, wish, offers };
  const stop = new AbortController();
  // The second one ends the program at once, as it would have without this.
  process.once('SIGINT', () => stop.abort());
  const { choice, seconds } = await chooseInView(
    request,
    { place, ...plan },
    {
      workers: asked.workers,
      ...(options.chance && { unsureOf: unsureAt(site, made.value) }),
      signal: stop.signal,
    },
  );
  const system = options.units ?? systemOf(site);
  const about: ChoiceAbout = {
    choice,
    request,
    site,
    forms,
    system,
    // No money is shown where nothing has a price. Source of the code for none: ISO 4217.
    reader: { system, currency: currency ?? 'XXX' },
    ...(currency !== undefined && { currency }),
    hasRange: range !== undefined,
    hasPrices: prices !== undefined,
    isJudged: options.chance,
    assumptions: [...assembled.assumptions, ...assumptions],
    warnings: [...ofSite, ...(range?.warnings ?? []), ...(prices?.warnings ?? [])],
  };
  const output = options.json
    ? JSON.stringify(choiceRecord(about), null, 2)
    : choicePage(about, options.why);
  process.stdout.write(`${output}\n`);
  if (process.stderr.isTTY) {
    process.stderr.write(`${seconds.toFixed(1)} s on ${asked.workers} threads\n`);
  }
  if (options.write !== undefined) await writePick(options.write, options.pick, about);
  if (!choice.isComplete) process.exitCode = STOPPED;
}

/** What is not sure of each build at a site, by what is told of its ram. */
export function unsureAt(
  site: Site,
  { offers, forms }: Pick<AssembledOffers, 'offers' | 'forms'>,
): (installation: Installation) => readonly UncertainInput[] {
  // A vessel may have been changed; name and waste valve tell rams and tunings apart.
  const nameOfRam = ({ name, wasteValve }: Ram): string => JSON.stringify([name, wasteValve]);
  const told = new Map(
    offers.rams.flatMap(({ key, tunings }) =>
      tunings.map(({ name, ram }) => [nameOfRam(ram), forms.ram(key, name)] as const),
    ),
  );
  return (installation) => unsureOfBuild(site, installation, told.get(nameOfRam(installation.ram)));
}

/** Where nothing is known of prices, what lasts all year is what counts: so it is run on what the driest month brings. */
function inDryTime(place: PlaceToFit): PlaceToFit {
  const { dryFlow, source } = place;
  if (dryFlow === undefined) return place;
  const dry =
    source.kind === 'steady' ? { ...source, yield: dryFlow } : { ...source, inflow: dryFlow };
  return { ...place, source: dry };
}

async function siteIn(
  file: string,
): Promise<{ readonly site: Site; readonly warnings: readonly Warning[] }> {
  const read = readPlace(await textOf(file, { longest: LONGEST_TEXT, called: 'site file' }));
  if (!read.ok) throw new BadInput(nameOf(file), read.problems);
  return { site: read.site, warnings: named(file, read.warnings) };
}

interface ReadFile<Value> {
  readonly value: Value;
  readonly warnings: readonly Warning[];
}

/** @throws BadInput when there is no such file, or it is no range. */
export async function rangeIn(file: string): Promise<ReadFile<Range>> {
  const read = readRange(await textOf(file, { longest: LONGEST_RANGE, called: 'range file' }));
  if (!read.ok) throw new BadInput(nameOf(file), read.problems);
  return { value: read.range, warnings: named(file, read.warnings) };
}

async function pricesIn(
  file: string,
  { keepGood }: Pick<ChooseOptions, 'keepGood'>,
): Promise<ReadFile<PriceList>> {
  const read = readPrices(await textOf(file, { longest: LONGEST_PRICES, called: 'price list' }));
  if (read.ok) return { value: read.list, warnings: named(file, read.warnings) };
  if (keepGood && read.good && read.good.rows.length > 0) {
    const left = read.problems.map((problem) => ({
      ...problem,
      message: `${problem.message} The row is left out.`,
    }));
    return { value: read.good, warnings: named(file, left) };
  }
  const good = read.good?.rows.length ?? 0;
  const advice =
    good === 0 ? undefined : `${good} rows can be read. --keep-good goes on with them alone.`;
  throw new BadInput(nameOf(file), read.problems, advice);
}

function named(file: string, problems: readonly Problem[]): readonly Warning[] {
  return problems.map((problem) => ({ file: nameOf(file), problem }));
}

/** @throws BadInput when an option cannot be read. */
function wishFrom(options: ChooseOptions): { readonly wish: Wish; readonly workers: number } {
  const faults: { readonly field: string; readonly message: string }[] = [];
  const fault = (field: string, message: string): undefined => {
    faults.push({ field, message });
    return undefined;
  };
  const whole = (field: string, text: string, most: number): number => {
    const value = Number(text);
    if (Number.isInteger(value) && value >= 1 && value <= most) return value;
    fault(field, `${text} is no such number. Write a whole number from 1 to ${most}.`);
    return 1;
  };
  const need = options.need === undefined ? undefined : flowIn(options.need, fault);
  const driveLengths =
    options.lengths === undefined ? undefined : lengthsIn(options.lengths, fault);
  const chance = readQuantity(options.likely, 'share', 'the chance');
  if (!chance.ok || !(chance.value.value > 0 && chance.value.value < 1)) {
    fault('--likely', `${options.likely} is no chance. Write it like --likely "80 %".`);
  }
  const mostRams = whole('--rams', options.rams, MOST_RAMS);
  const workers =
    options.workers === undefined
      ? Math.min(availableParallelism(), MOST_WORKERS)
      : whole('--workers', options.workers, MOST_WORKERS);
  if (options.write !== undefined && options.json && options.write === '-') {
    fault('--write', 'Standard output has the record already. Name a file.');
  }
  if (faults.length > 0) throw new BadInput('the command line', faults);
  return {
    wish: {
      mostRams,
      ...(need !== undefined && { need }),
      ...(driveLengths && { driveLengths }),
      ...(chance.ok && { wantedChance: chance.value.value }),
    },
    workers,
  };
}

type Fault = (field: string, message: string) => undefined;

function flowIn(text: string, fault: Fault): number | undefined {
  const read = readQuantity(text, 'daily', 'the need');
  if (!read.ok) {
    return fault('--need', read.problems.map(({ message }) => message).join(' '));
  }
  if (read.value.value > 0) return read.value.value;
  return fault('--need', 'The need is nought. Write it like --need "900 L/day".');
}

function lengthsIn(text: string, fault: Fault): readonly number[] | undefined {
  const write = 'Write them like --lengths "12 m, 15 m".';
  const lengths: number[] = [];
  // A comma between figures is a decimal one.
  for (const part of text.split(/;|,(?!\d)/)) {
    const read = readQuantity(part.trim(), 'pipeLength', 'a drive length');
    if (!read.ok) {
      return fault(
        '--lengths',
        `${read.problems.map(({ message }) => message).join(' ')} ${write}`,
      );
    }
    if (!(read.value.value > 0)) return fault('--lengths', `A length is nought. ${write}`);
    lengths.push(read.value.value);
  }
  const different = [...new Set(lengths)].sort((a, b) => a - b);
  if (different.length > MOST_LENGTHS) {
    return fault(
      '--lengths',
      `These are ${different.length} lengths; at most ${MOST_LENGTHS} can be tried.`,
    );
  }
  return different;
}

const PICKS: Readonly<Record<ChooseOptions['pick'], PickName>> = {
  cheapest: 'cheapest',
  water: 'mostWater',
  forgiving: 'mostForgiving',
};

/** The pick as a site file, to be answered and mailed. @throws BadInput when there is none, or it cannot be written there. */
async function writePick(
  file: string,
  which: ChooseOptions['pick'],
  about: ChoiceAbout,
): Promise<void> {
  const { field, isPriced } = fieldShown(about);
  const picks = namedPicks(field, isPriced);
  const named = picks.find(({ names }) => names.includes(PICKS[which]));
  const refuse = (message: string): BadInput => new BadInput(file, [{ field: '--write', message }]);
  if (!named) {
    const others = picks.flatMap(({ names }) => names);
    throw refuse(
      others.length === 0
        ? 'There is no pick to write: nothing works here.'
        : `There is no such pick to write. Take --pick ${others.includes('mostWater') ? 'water' : 'forgiving'}.`,
    );
  }
  const built = siteOfBuild(about.site, named.pick.contender.candidate.parts, about.forms);
  if (built.kind !== 'site') {
    throw refuse(
      built.kind === 'fed'
        ? 'A site file cannot hold a feeder and its standpipe yet. Take another pick, or choose with --lengths of the whole way.'
        : 'A site file holds one ram. Choose with --rams 1, or divide the flow of the source by hand.',
    );
  }
  try {
    await writeFile(file, writeSite(built.site), { flag: 'wx' });
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    throw refuse(
      code === 'EEXIST'
        ? 'There is such a file already. Name another, so that nothing is lost.'
        : `It cannot be written: ${message}.`,
    );
  }
}
