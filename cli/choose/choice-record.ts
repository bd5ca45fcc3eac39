/**
 * A choice for programs, `fallwright: choice@1`. Units stand in the names. Sums of money are whole numbers of the currency's
 * smallest unit, as `minorDigits` says: 2 for pence. What is not known is `null`.
 */
import { type Contender, type Field, partsListOf } from '@fallwright/engine';
import { minorDigits } from '@fallwright/records';
import {
  toBar,
  toBeatsPerMinute,
  toLitres,
  toLitresPerDay,
  toLitresPerMinute,
} from '@fallwright/units';
import { type ChoiceAbout, lacksOf, namedPicks, waterOf } from './choice-about.ts';
import { lackInWords, reasonGroup } from './choice-words.ts';

export function choiceRecord(about: ChoiceAbout) {
  const { choice, request, site, currency, assumptions, reader } = about;
  const { combinations, rejected, pruned, decided, distinctRuns, runs } = choice.progress;
  const { need, tankVolume } = request.wish;
  return {
    fallwright: 'choice@1',
    site: site.name ?? null,
    isComplete: choice.isComplete,
    currency: currency ?? null,
    minorDigits: currency === undefined ? null : minorDigits(currency),
    needLitresPerDay: need === undefined ? null : figures(toLitresPerDay(need)),
    tankLitres: tankVolume === undefined ? null : figures(toLitres(tankVolume)),
    mostRams: request.wish.mostRams ?? 1,
    priced: fieldRecord(about, choice.priced, true),
    unpriced: fieldRecord(about, choice.unpriced, false),
    withoutPrice: lacksOf(choice.unpriced).map(({ lack, count }) => ({
      kind: lack.kind,
      name: lack.name ?? null,
      sizeMillimetres: lack.size === undefined ? null : figures(1000 * lack.size),
      words: lackInWords(lack, reader).replaceAll('\u00a0', ' '),
      builds: count,
    })),
    leftOut: leftOutCounts(about),
    progress: { combinations, rejected, pruned, decided, distinctRuns, runs },
    assumptions: assumptions.map(({ field, what, why, basis }) => ({ field, what, why, basis })),
  };
}

export type ChoiceRecord = ReturnType<typeof choiceRecord>;

function fieldRecord(about: ChoiceAbout, field: Field, isPriced: boolean) {
  const { shortfall } = field.picks;
  return {
    front: field.front.map((contender) => buildRecord(about, contender)),
    picks: namedPicks(field, isPriced).map(({ names, pick }) => ({
      names,
      ...buildRecord(about, pick.contender),
      litresPerDay: figures(toLitresPerDay(waterOf(pick))),
      isQuoted: pick.answer !== undefined,
      pressures: (pick.answer?.pressureCheck?.rows ?? []).map(
        ({ part, governing, rating, outcome }) => ({
          part,
          governingBar: figures(toBar(governing)),
          ratingBar: rating === undefined ? null : figures(toBar(rating)),
          outcome,
        }),
      ),
      parts: partsListOf(
        about.request.place,
        about.request.offers,
        pick.contender.candidate.parts,
      ).rows.map((row) => ({
        group: row.group,
        kind: row.kind,
        line: row.line ?? null,
        name: row.name ?? null,
        sizeMillimetres: row.size === undefined ? null : figures(1000 * row.size),
        unit: row.unit,
        needed: figures(row.needed),
        bought: figures(row.bought),
        price: row.price ?? null,
        total: row.total ?? null,
        pieces: (row.pieces ?? []).map(({ length, cost, offCut }) => ({
          lengthMetres: figures(length),
          cost: cost ?? null,
          offCutMetres: figures(offCut),
        })),
      })),
    })),
    shortfall: shortfall
      ? {
          needLitresPerDay: figures(toLitresPerDay(shortfall.need)),
          mostLitresPerDay: figures(toLitresPerDay(shortfall.mostWater)),
          bestChance: shortfall.bestChance ?? null,
        }
      : null,
  };
}

function buildRecord({ reader }: ChoiceAbout, contender: Contender) {
  const { candidate, run, water, margins, judgement } = contender;
  const { parts } = candidate;
  const { least, ...each } = margins;
  return {
    key: candidate.key,
    ram: parts.ram.key,
    tuning: parts.tuning.name,
    count: parts.count,
    drivePipe: parts.drivePipe.key,
    driveLengthMetres: figures(parts.driveLength),
    feederPipe: parts.feeder?.pipe.key ?? null,
    standpipeMetres: parts.feeder ? figures(parts.feeder.standpipeHeight) : null,
    deliveryPipe: parts.deliveryPipe.key,
    vessel: parts.vessel?.key ?? null,
    tank: parts.tank?.key ?? null,
    cost: candidate.cost ?? null,
    litresPerDay: figures(toLitresPerDay(water)),
    supplyLitresPerMinute: figures(toLitresPerMinute(parts.count * run.supplyFlow)),
    beatsPerMinute: figures(toBeatsPerMinute(run.beatFrequency)),
    daubuissonEfficiency: figures(run.daubuissonEfficiency),
    margins: Object.fromEntries(Object.entries(each).map(([name, value]) => [name, finite(value)])),
    leastMargin: finite(least),
    chance: judgement?.chance ?? null,
    lowLitresPerDay: judgement ? figures(toLitresPerDay(parts.count * judgement.low)) : null,
    highLitresPerDay: judgement ? figures(toLitresPerDay(parts.count * judgement.high)) : null,
    withoutPrice: candidate.missing.map((lack) =>
      lackInWords(lack, reader).replaceAll('\u00a0', ' '),
    ),
  };
}

function leftOutCounts({ choice }: ChoiceAbout) {
  const counts = new Map<string, { kind: string; words: string; builds: number }>();
  for (const key of choice.keys()) {
    const reason = choice.reasonFor(key);
    if (!reason) continue;
    const words = reasonGroup(reason);
    const entry = counts.get(words) ?? { kind: reason.kind, words, builds: 0 };
    entry.builds += 1;
    counts.set(words, entry);
  }
  return [...counts.values()].sort((a, b) => b.builds - a.builds);
}

/** A source without end leaves a margin without end. */
function finite(value: number): number | null {
  return Number.isFinite(value) ? figures(value) : null;
}

/** Six figures: what is left of a simulation's last digits differs between machines. */
function figures(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`value must be a finite number, got ${value}`);
  return Number(value.toPrecision(6));
}
