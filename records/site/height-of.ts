/** The height that its readings give, by whichever way they were taken. */
import {
  type CoarseWay,
  coarseHeight,
  type GaugeHead,
  gaugeHead,
  heightBetween,
  heightByHops,
  isTooCoarse,
  type LevelBook,
  type LevelBookFault,
  levelBook,
  levelBookFaults,
} from '@fallwright/engine';
import type { Given } from '../given.ts';
import type { Path, ProblemKind } from '../problem.ts';
import { orList } from './fields.ts';
import type { HeightReadings, LevelRow } from './height-readings.ts';

interface Height {
  readonly height: number;
  readonly spread: number;
}

export type MeasuredHeight = Height & { readonly isTooCoarse: boolean } & (
    | {
        readonly kind: 'levels';
        readonly book: LevelBook;
        readonly rows: readonly LevelRow[];
        readonly upper: number;
        readonly lower: number;
      }
    | { readonly kind: 'hops'; readonly hops: readonly Given[] }
    | { readonly kind: 'gauge'; readonly gauge: GaugeHead }
    | { readonly kind: CoarseWay }
  );

export interface HeightFault {
  readonly kind: ProblemKind;
  /** Below the height itself. */
  readonly path: Path;
  readonly message: string;
}

export type HeightRead =
  | { readonly ok: true; readonly value: MeasuredHeight }
  | { readonly ok: false; readonly faults: readonly HeightFault[] };

export const HEIGHT_WAYS = ['levels', 'hops', 'gauge', 'barometric', 'satellite'] as const;

const BELONGS: Readonly<Record<(typeof HEIGHT_WAYS)[number], readonly string[]>> = {
  levels: ['between', 'each'],
  hops: ['each'],
  gauge: ['class', 'range', 'gaugeHeight'],
  barometric: ['each'],
  satellite: ['each'],
};
const COMMON: readonly string[] = ['value', 'date', 'by', 'note'];

/** The height by its readings, or every reason why it cannot be worked out. */
export function heightOf(readings: HeightReadings): HeightRead {
  const ways = HEIGHT_WAYS.filter((way) => readings[way] !== undefined);
  const [way, second] = ways;
  if (way === undefined) {
    return refused('missing', [], `The readings are missing. Write ${orList(HEIGHT_WAYS)}.`);
  }
  if (second !== undefined) {
    return refused(
      'contradiction',
      [second],
      `The height is measured in two ways here, by ${way} and by ${second}. Keep the surer one, and put the other into the notes.`,
    );
  }
  const stray = Object.keys(readings).filter(
    (field) => field !== way && ![...BELONGS[way], ...COMMON].includes(field),
  );
  if (stray.length > 0) {
    return {
      ok: false,
      faults: stray.map((field) => ({
        kind: 'contradiction',
        path: [field],
        message: `A height by ${way} has no ${field}. It may have ${orList(BELONGS[way])}.`,
      })),
    };
  }
  switch (way) {
    case 'levels':
      return byLevels(readings.levels ?? [], readings);
    case 'hops':
      return measured({
        kind: 'hops',
        hops: readings.hops ?? [],
        ...heightByHops(readings.hops ?? [], readings.each?.value),
      });
    case 'gauge':
      return byGauge(readings);
    default:
      return byCoarse(way, readings[way] ?? [], readings.each?.value);
  }
}

type WithoutMark<Part> = Part extends unknown ? Omit<Part, 'isTooCoarse'> : never;

function measured(value: WithoutMark<MeasuredHeight>): HeightRead {
  return { ok: true, value: { ...value, isTooCoarse: isTooCoarse(value) } };
}

function refused(kind: ProblemKind, path: Path, message: string): HeightRead {
  return { ok: false, faults: [{ kind, path, message }] };
}

function byLevels(rows: readonly LevelRow[], { between, each }: HeightReadings): HeightRead {
  const stations = rows.map(({ at, back, inter, fore, distance }) => ({
    at,
    back: back?.value,
    inter: inter?.value,
    fore: fore?.value,
    distance: distance?.value,
  }));
  const faults = levelBookFaults(stations);
  if (faults.length > 0) return { ok: false, faults: faults.map(bookFault) };
  const book = levelBook(stations, each?.value);
  const last = rows.length - 1;
  if (between === undefined) {
    if (book.closingError !== undefined) {
      return refused(
        'missing',
        [],
        `This level book comes back to ${rows[0]?.at}, so say between which two points the height lies, the upper one first: between: [water, ram].`,
      );
    }
    // A book from one end to the other may have been walked either way.
    const isDown = (book.stations[last]?.level ?? 0) < 0;
    const ends = isDown ? { upper: 0, lower: last } : { upper: last, lower: 0 };
    return measured({ kind: 'levels', book, rows, ...ends, ...heightBetween(book, ends) });
  }
  const places = between.map((name) => rows.findIndex(({ at }) => at === name));
  const unknown = between.filter((_, i) => places[i] === -1);
  const [upper, lower] = places;
  if (unknown.length > 0 || upper === undefined || lower === undefined || upper === lower) {
    const names = [...new Set(rows.flatMap(({ at }) => at ?? []))];
    return refused(
      'unknownWord',
      ['between'],
      `between names two different points of the level book, the upper one first. ${unknown.length > 0 ? `It has no point called ${orList(unknown)}. ` : ''}Points with a name: ${names.length === 0 ? 'none; write at: water beside a reading' : names.join(', ')}.`,
    );
  }
  const height = heightBetween(book, { upper, lower });
  if (height.height <= 0) {
    return refused(
      'contradiction',
      ['between'],
      `By this level book ${between[0]} does not lie above ${between[1]}. between names the upper point first. Check the readings, and that none was booked as back in place of fore.`,
    );
  }
  return measured({ kind: 'levels', book, rows, upper, lower, ...height });
}

function bookFault(fault: LevelBookFault): HeightFault {
  if (fault.kind === 'tooShort') {
    return {
      kind: 'missing',
      path: ['levels'],
      message: 'A level book needs at least two points: { back: 1.482 m } and { fore: 0.31 m }.',
    };
  }
  const kind =
    fault.kind === 'twoReadings' || fault.kind === 'openEnd' ? 'contradiction' : 'missing';
  return { kind, path: ['levels', fault.station], message: BOOK_FAULTS[fault.kind] };
}

const BOOK_FAULTS: Readonly<Record<Exclude<LevelBookFault['kind'], 'tooShort'>, string>> = {
  noBack:
    'A back sight is missing: it is the first reading from each new place of the instrument, on the first point and on every point from which the work goes on.',
  noReading:
    'A fore sight is missing: it is the last reading before the instrument is moved. A point beside the way has an inter in its place.',
  twoReadings: 'A point read in between has an inter alone, without back or fore. Take one out.',
  openEnd:
    'The last point has a back sight that leads nowhere. Take it out, or write what followed.',
};

function byGauge(readings: HeightReadings): HeightRead {
  const { gauge, class: accuracy, range, gaugeHeight } = readings;
  if (!gauge || !accuracy || !range) {
    const missing = [...(accuracy ? [] : ['class: 1.6 %']), ...(range ? [] : ['range: 2.5 bar'])];
    return refused(
      'missing',
      [],
      `How good the gauge is stands on its dial, and decides how well the height is known. Write ${missing.join(' and ')}.`,
    );
  }
  if (!(range.value > 0) || !(accuracy.value > 0) || accuracy.value > WORST_CLASS) {
    const isRange = !(range.value > 0);
    return refused(
      'outOfRange',
      [isRange ? 'range' : 'class'],
      isRange
        ? 'The range of the gauge is nought. It is the largest pressure on its dial, like 2.5 bar.'
        : `The class of the gauge is ${accuracy.text}, and lies between 0.1 % and 10 %. Write it like 1.6 %.`,
    );
  }
  if (gauge.value > range.value) {
    return refused(
      'contradiction',
      ['gauge'],
      `The gauge reads ${gauge.text}, and its range ends at ${range.text}. Check both.`,
    );
  }
  const head = gaugeHead({
    pressure: gauge,
    accuracyClass: accuracy.value,
    fullScale: range.value,
    ...(gaugeHeight && { gaugeHeight }),
  });
  return measured({ kind: 'gauge', gauge: head, height: head.height, spread: head.spread });
}

/** Judgement: a gauge that errs by more than a tenth of its dial is no gauge. */
const WORST_CLASS = 0.1;

function byCoarse(way: CoarseWay, ends: readonly Given[], each: number | undefined): HeightRead {
  const [upper, lower] = ends;
  if (!upper || !lower || ends.length !== 2) {
    return refused(
      'missing',
      [way],
      `A height by ${way} needs two readings, the upper place first, like ${way}: [312 m, 288 m].`,
    );
  }
  const height = coarseHeight(way, { upper, lower, each });
  if (height.height <= 0) {
    return refused(
      'contradiction',
      [way],
      `The first place, ${upper.text}, does not lie above the second, ${lower.text}. The upper one comes first.`,
    );
  }
  return measured({ kind: way, ...height });
}
