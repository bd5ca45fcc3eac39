/** What was measured at the place: the flow by each method, what of it counts, and how the heights were found. */
import {
  conditionInWords,
  type Gauging,
  type GaugingMethod,
  type Given,
  gaugedSource,
  heightOf,
  type MeasuredHeight,
  type Site,
  sourceFlowOf,
  supplyOf,
} from '@fallwright/records';
import {
  formatNumber,
  formatQuantity,
  type Purpose,
  type System,
  toLitresPerMinute,
} from '@fallwright/units';
import { perCent } from './answered.ts';

/** Sentences about everything measured; empty when the file holds quantities only. */
export function measuredInWords(site: Site, system: System): readonly string[] {
  return [
    ...flowInWords(site, system),
    ...limitsInWords(site, system),
    ...heightInWords('fall', site.fall, system),
    ...heightInWords('lift', site.lift, system),
  ];
}

const ONE_OF: Readonly<Record<GaugingMethod, string>> = {
  bucket: 'a timed container',
  'v-notch': 'a V-notch',
  'rectangular weir': 'a rectangular weir',
  float: 'floats',
  drop: 'a stored volume that drops',
};

/** What is read again and again, and how it is shown. */
const READ: Readonly<Record<GaugingMethod, { readonly one: string; readonly purpose: Purpose }>> = {
  bucket: { one: 'filling', purpose: 'time' },
  'v-notch': { one: 'head', purpose: 'waterDepth' },
  'rectangular weir': { one: 'head', purpose: 'waterDepth' },
  float: { one: 'float', purpose: 'time' },
  drop: { one: 'drop', purpose: 'time' },
};

function flowInWords({ source }: Site, system: System): readonly string[] {
  const measured = gaugedSource(source);
  if (!measured) return [];
  const { gaugings, combined } = measured;
  const name = source.store === undefined ? 'flow' : 'inflow';
  const written = source.store === undefined ? source.flow : source.inflow;
  const isUsed = written === undefined;
  const total = flowOf(combined, system);
  const [only, ...more] = gaugings;
  const sentences =
    only && more.length === 0
      ? [`The ${name}, ${total}, was measured by ${gaugingInWords(only, system)}.`]
      : [
          ...gaugings.map(
            (one) =>
              `${startOfSentence(flowOf(one.gauged, system))} by ${gaugingInWords(one, system)}.`,
          ),
          `Together they make a${name === 'inflow' ? 'n' : ''} ${name} of ${total}, the surer counting more.${
            combined.misfit > 1
              ? ' They lie further apart than their spreads explain, and the spread is wider for it.'
              : ''
          }`,
        ];
  return isUsed
    ? sentences
    : [
        ...sentences,
        `The ${name} that is written, ${written === 'plenty' ? 'plenty' : written.text}, is used in its place.`,
      ];
}

/** How one flow was measured, for the end of a sentence. */
export function gaugingInWords({ form, gauged }: Gauging, system: System): string {
  const { count, mean, scatter } = gauged.readings;
  const { one, purpose } = READ[form.method];
  const show = (value: number, figures: number): string =>
    formatQuantity(value, purpose, system, { figures });
  const readings =
    scatter === undefined
      ? `one ${one} of ${show(mean, 3)}`
      : `the mean of ${counted(count)} ${one}s, ${show(mean, 3)}, which scatter by ${show(scatter, 2)}`;
  const [date, by] = [form.date, form.by];
  const when = `${date === undefined ? '' : ` on ${date}`}${by === undefined ? '' : ` by ${by}`}`;
  const outside = gauged.outside.some(({ kind }) => kind !== 'approachUnknown')
    ? '; outside the range of its formula'
    : '';
  return `${ONE_OF[form.method]}${when}: ${readings}${outside}`;
}

function limitsInWords({ source }: Site, system: System): readonly string[] {
  const { drySeason, share } = source;
  if (!drySeason && !share) return [];
  const supply = supplyOf(source);
  const flow = sourceFlowOf(source);
  const show = (value: number): string => formatQuantity(value, 'sourceFlow', system);
  const isDry = supply.from === 'drySeason';
  const dry = !drySeason
    ? []
    : [
        isDry
          ? `The dry-season flow, ${show(drySeason.value)}, limits the supply${flow ? `, as it is less than ${show(flow.value)}` : ''}.`
          : `The dry-season flow, ${show(drySeason.value)}, does not limit the supply, as it is no less than the flow.`,
      ];
  const taken =
    share && supply.flow !== undefined
      ? [
          `${isDry || !flow ? 'Of that' : `Of the flow, ${show(flow.value)}`}, ${perCent(share.value)} may be taken, so the ram is counted on ${show(supply.flow)}.`,
        ]
      : [];
  return [[...dry, ...taken].join(' ')].filter((sentence) => sentence !== '');
}

function heightInWords(field: 'fall' | 'lift', given: Given, system: System): readonly string[] {
  const read = given.readings && heightOf(given.readings);
  if (!read?.ok) return [];
  const { value } = read;
  const total = formatQuantity(value.height, 'height', system, {
    figures: 4,
    spread: value.spread,
  });
  const coarse = value.isTooCoarse ? ' That is too coarse to choose a ram by.' : '';
  const { value: written } = given.readings ?? {};
  const used = written
    ? [`The ${field} that is written, ${written.text}, is used in its place.`]
    : [];
  return [`The ${field}, ${total}, ${heightWayInWords(value, given, system)}.${coarse}`, ...used];
}

/** How a height was measured, for the end of a sentence that begins with it. */
export function heightWayInWords(value: MeasuredHeight, given: Given, system: System): string {
  const small = (size: number): string =>
    formatQuantity(Math.abs(size), 'waterDepth', system, { figures: 2 });
  switch (value.kind) {
    case 'levels': {
      const { closingError, allowedError, sharedBy, setUps } = value.book;
      const book = `is from a level book of ${value.rows.length} points and ${setUps === 1 ? 'one set-up' : `${counted(Math.max(1, setUps))} set-ups`}`;
      if (closingError === undefined || allowedError === undefined) {
        return `${book} that does not come back, so that a slip would not show`;
      }
      const shared = sharedBy === 'distance' ? 'by distance' : 'by set-ups';
      return `${book}, which closes ${small(closingError)} out (${small(allowedError)} are allowed); that was shared out ${shared}`;
    }
    case 'hops':
      return `is the sum of ${value.hops.length === 1 ? 'one hop' : `${counted(value.hops.length)} hops`}`;
    case 'gauge': {
      const over = formatQuantity(value.gauge.overGauge, 'height', system);
      const leaves = formatQuantity(value.gauge.classHead, 'height', system, { figures: 2 });
      return `is from a gauge that read ${given.readings?.gauge?.text}, ${over} of water over it; its class alone lets it err by ${leaves}`;
    }
    case 'barometric':
      return 'is the difference of two heights by barometer';
    case 'satellite':
      return 'is the difference of two heights by satellite';
  }
}

/** A level book as it stands on paper, worked out; heights as numbers in the unit named. */
export interface LevelBookRow {
  readonly point: string;
  readonly back: string;
  readonly inter: string;
  readonly fore: string;
  readonly rise: string;
  readonly instrument: string;
  readonly level: string;
  /** With the closing error shared out; blank for a book that does not come back. */
  readonly adjusted: string;
}

/** Empty when the height was not levelled. */
export function levelBookRows(given: Given, system: System): readonly LevelBookRow[] {
  const read = given.readings && heightOf(given.readings);
  if (!read?.ok || read.value.kind !== 'levels') return [];
  const { book, rows } = read.value;
  const show = (value: number | undefined): string =>
    value === undefined ? '' : threeDecimals(formatNumber(value, 'staff', system, 6));
  return book.stations.map((station, index) => {
    const row = rows[index];
    return {
      point: station.at ?? '',
      back: show(row?.back?.value),
      inter: show(row?.inter?.value),
      fore: show(row?.fore?.value),
      rise: show(station.rise),
      instrument: show(station.instrument),
      level: show(station.level),
      adjusted: book.closingError === undefined ? '' : show(station.adjusted),
    };
  });
}

/** Readings in one column are told apart by their last digit: `0.64` stands as `0.640`. */
function threeDecimals(number: string): string {
  const [whole = '', decimals = ''] = number.split('.');
  return `${whole}.${decimals.slice(0, 3).padEnd(3, '0')}`;
}

/** The same for programs, units in the names; `null` where nothing was measured. */
export function measuredRecord(site: Site, system: System) {
  const { source } = site;
  const measured = gaugedSource(source);
  const isLimited = measured !== undefined || source.drySeason !== undefined || source.share;
  const supply = supplyOf(source);
  return {
    flow: measured
      ? {
          litresPerMinute: inLitres(measured.combined.flow),
          spreadLitresPerMinute: inLitres(measured.combined.spread),
          misfit: figures(measured.combined.misfit),
          methods: measured.gaugings.map((one) => gaugingRecord(one, system)),
        }
      : null,
    supply: isLimited
      ? {
          litresPerMinute: supply.flow === undefined ? null : inLitres(supply.flow),
          limitedBy: supply.from,
          share: supply.share,
        }
      : null,
    fall: heightRecord(site.fall),
    lift: heightRecord(site.lift),
  };
}

function gaugingRecord({ form, gauged }: Gauging, system: System) {
  const conditions = (list: typeof gauged.outside) =>
    list.map((condition) => ({
      kind: condition.kind,
      has: figures(condition.has),
      bound: figures(condition.bound),
      words: conditionInWords(condition, system),
    }));
  return {
    method: form.method,
    litresPerMinute: inLitres(gauged.flow),
    spreadLitresPerMinute: inLitres(gauged.spread),
    readings: gauged.readings.count,
    date: form.date ?? null,
    by: form.by ?? null,
    note: form.note ?? null,
    outside: conditions(gauged.outside),
    doubts: conditions(gauged.doubts),
  };
}

function heightRecord(given: Given) {
  const read = given.readings && heightOf(given.readings);
  if (!read?.ok) return null;
  const { value } = read;
  return {
    way: value.kind,
    metres: figures(value.height),
    spreadMetres: figures(value.spread),
    isTooCoarse: value.isTooCoarse,
    levelBook: value.kind === 'levels' ? bookRecord(value.book) : null,
  };
}

function bookRecord(book: Extract<MeasuredHeight, { kind: 'levels' }>['book']) {
  const orNull = (metres: number | undefined) => (metres === undefined ? null : figures(metres));
  return {
    setUps: book.setUps,
    closingErrorMetres: orNull(book.closingError),
    allowedErrorMetres: orNull(book.allowedError),
    sharedBy: book.sharedBy ?? null,
    points: book.stations.map(({ at, rise, instrument, level, adjusted }) => ({
      at: at ?? null,
      riseMetres: orNull(rise),
      instrumentMetres: orNull(instrument),
      levelMetres: figures(level),
      adjustedMetres: figures(adjusted),
    })),
  };
}

const NUMBERS = ['two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

function counted(count: number): string {
  return NUMBERS[count - 2] ?? String(count);
}

function flowOf(
  { flow, spread }: { readonly flow: number; readonly spread: number },
  system: System,
): string {
  return formatQuantity(flow, 'sourceFlow', system, { spread });
}

function inLitres(flow: number): number {
  return figures(toLitresPerMinute(flow));
}

function figures(value: number): number {
  return Number(value.toPrecision(6));
}

function startOfSentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
