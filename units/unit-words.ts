/**
 * The unit words that people write, and what each means.
 *
 * A gallon, an ounce, a gpm without more words is the US one: "imp gal" and "UK gal" name the imperial. Factors come
 * from the conversion library by unit name (see unit-factors.ts); none is typed in except the conventional metre of water.
 */
import type { Kind } from './kinds.ts';
import { UNIT_FACTORS } from './unit-factors.ts';

/** Which way of measuring a unit belongs to; `both` when it tells nothing. */
export type System = 'metric' | 'us';
export type UnitSystem = System | 'both';

export interface Unit {
  readonly kind: Kind;
  readonly system: UnitSystem;
  /** SI = value × factor + offset. */
  readonly factor: number;
  readonly offset: number;
}

/**
 * Conventional metre of water, in pascals.
 * Source: ISO 80000-4 (remarks) prints 1 mmH2O = 9.80665 Pa; a column of real cold water is 0.1 % lighter or less.
 */
export const PASCALS_PER_METRE_OF_WATER = 9806.65;

const PASCALS_PER_FOOT_OF_WATER = PASCALS_PER_METRE_OF_WATER * UNIT_FACTORS.length.ft;

function unit<K extends keyof typeof UNIT_FACTORS>(
  kind: K,
  system: UnitSystem,
  name: keyof (typeof UNIT_FACTORS)[K],
): Unit {
  return { kind, system, factor: Number(UNIT_FACTORS[kind][name]), offset: 0 };
}

function own(kind: Kind, system: UnitSystem, factor: number, offset = 0): Unit {
  return { kind, system, factor, offset };
}

/** Every spelling of one unit, separated by commas. Spellings are compared in lower case, without dots. */
const SPELLINGS: readonly (readonly [string, Unit])[] = [
  ['m, metre, metres, meter, meters, mtr, mtrs', unit('length', 'metric', 'm')],
  ['cm, centimetre, centimetres, centimeter, centimeters', unit('length', 'metric', 'cm')],
  ['mm, millimetre, millimetres, millimeter, millimeters', unit('length', 'metric', 'mm')],
  ['km, kilometre, kilometres, kilometer, kilometers', unit('length', 'metric', 'km')],
  ["ft, foot, feet, '", unit('length', 'us', 'ft')],
  ['in, inch, inches, "', unit('length', 'us', 'in')],
  ['yd, yds, yard, yards', unit('length', 'us', 'yd')],
  ['mi, mile, miles', unit('length', 'us', 'mi')],
  [
    'm2, sq m, square metre, square metres, square meter, square meters',
    unit('area', 'metric', 'm2'),
  ],
  ['cm2, sq cm, square centimetre, square centimetres', unit('area', 'metric', 'cm2')],
  ['mm2, sq mm, square millimetre, square millimetres', unit('area', 'metric', 'mm2')],
  ['ha, hectare, hectares', unit('area', 'metric', 'hectare')],
  ['ft2, sq ft, square foot, square feet', unit('area', 'us', 'ft2')],
  ['in2, sq in, square inch, square inches', unit('area', 'us', 'in2')],
  ['acre, acres', unit('area', 'us', 'acre')],
  [
    'm3, cu m, cubic metre, cubic metres, cubic meter, cubic meters',
    unit('volume', 'metric', 'm3'),
  ],
  ['l, lt, ltr, ltrs, litre, litres, liter, liters, dm3', unit('volume', 'metric', 'L')],
  ['ml, millilitre, millilitres, milliliter, milliliters, cc, cm3', unit('volume', 'metric', 'mL')],
  [
    'gal, gals, gallon, gallons, us gal, us gals, us gallon, us gallons',
    unit('volume', 'us', 'gal'),
  ],
  [
    'imp gal, imp gals, imp gallon, imp gallons, imperial gallon, imperial gallons, uk gal, uk gallon, uk gallons',
    unit('volume', 'both', 'gallon-imp'),
  ],
  ['qt, qts, quart, quarts', unit('volume', 'us', 'quart')],
  ['pt, pts, pint, pints', unit('volume', 'us', 'pint')],
  ['fl oz, floz, fluid ounce, fluid ounces', unit('volume', 'us', 'floz')],
  ['ft3, cu ft, cubic foot, cubic feet', unit('volume', 'us', 'ft3')],
  ['in3, cu in, cubic inch, cubic inches', unit('volume', 'us', 'in3')],
  ['lpm', unit('flow', 'metric', 'L/min')],
  ['lps', unit('flow', 'metric', 'L/s')],
  ['lpd', unit('flow', 'metric', 'L/day')],
  ['gpm, us gpm', unit('flow', 'us', 'gal/min')],
  ['imp gpm, uk gpm', unit('flow', 'both', 'gallon-imp/min')],
  ['gph', unit('flow', 'us', 'gal/h')],
  ['gpd', unit('flow', 'us', 'gal/day')],
  ['cfs, cusec, cusecs', unit('flow', 'us', 'ft3/s')],
  ['cfm', unit('flow', 'us', 'ft3/min')],
  ['bar, bars', unit('pressure', 'metric', 'bar')],
  ['mbar', unit('pressure', 'metric', 'mbar')],
  ['pa, pascal, pascals', unit('pressure', 'metric', 'Pa')],
  ['kpa', unit('pressure', 'metric', 'kPa')],
  ['mpa, n/mm2', unit('pressure', 'metric', 'MPa')],
  ['gpa', unit('pressure', 'metric', 'GPa')],
  ['kgf/cm2, kg/cm2', own('pressure', 'metric', 98066.5)],
  [
    'psi, psig, lb/in2, lbs/in2, pound per square inch, pounds per square inch',
    unit('pressure', 'us', 'psi'),
  ],
  ['atm', unit('pressure', 'both', 'atm')],
  [
    'mh2o, mwc, m h2o, m of water, m of head, m head, m water, metre of water, metres of water, meters of water, metres of head, metres head, meters of head',
    own('pressure', 'metric', PASCALS_PER_METRE_OF_WATER),
  ],
  [
    'fth2o, ft h2o, ft of water, ft of head, ft head, ft water, feet of water, feet of head, feet head',
    own('pressure', 'us', PASCALS_PER_FOOT_OF_WATER),
  ],
  ['kg, kilo, kilos, kilogram, kilograms', unit('mass', 'metric', 'kg')],
  ['g, gr, gram, grams, gramme, grammes', unit('mass', 'metric', 'g')],
  ['oz, ounce, ounces', unit('mass', 'us', 'oz')],
  ['lb, lbs, pound, pounds', unit('mass', 'us', 'lb')],
  ['n, newton, newtons', unit('force', 'metric', 'N')],
  ['kn', unit('force', 'metric', 'kN')],
  ['kgf', own('force', 'metric', 9.80665)],
  ['gf', own('force', 'metric', 9.80665e-3)],
  ['lbf', unit('force', 'us', 'lbf')],
  ['ozf', own('force', 'us', UNIT_FACTORS.force.lbf / 16)],
  [
    '°c, c, deg c, degc, degree c, degrees c, celsius, degree celsius, degrees celsius',
    own('temperature', 'metric', 1),
  ],
  [
    '°f, f, deg f, degf, degree f, degrees f, fahrenheit, degree fahrenheit, degrees fahrenheit',
    own('temperature', 'us', 5 / 9, -160 / 9),
  ],
  ['s, sec, secs, second, seconds', unit('time', 'both', 's')],
  ['ms', unit('time', 'both', 'ms')],
  ['min, mins, minute, minutes', unit('time', 'both', 'min')],
  ['h, hr, hrs, hour, hours', unit('time', 'both', 'h')],
  ['d, day, days', unit('time', 'both', 'day')],
  [
    'm/s, metre per second, metres per second, meters per second',
    unit('velocity', 'metric', 'm/s'),
  ],
  ['cm/s', unit('velocity', 'metric', 'cm/s')],
  ['ft/s, fps, feet per second', unit('velocity', 'us', 'ft/s')],
  ['hz, beats/s', unit('frequency', 'both', '1/s')],
  [
    '/min, 1/min, bpm, rpm, beats/min, beats per minute, beats a minute, a minute',
    unit('frequency', 'both', '1/min'),
  ],
  ['°, deg, degree, degrees', unit('angle', 'both', 'deg')],
  ['rad', unit('angle', 'both', 'rad')],
  ['%, percent, per cent', own('share', 'both', 0.01)],
];

const BY_SPELLING: ReadonlyMap<string, Unit> = new Map(
  SPELLINGS.flatMap(([spellings, meaning]) =>
    spellings.split(', ').map((spelling) => [spelling, meaning] as const),
  ),
);

/** Water spread on ground: a litre on a square metre is a millimetre deep. Only read as an amount in some time. */
const DEPTHS_OF_WATER: ReadonlyMap<string, Unit> = new Map([
  ['l/m2', unit('length', 'metric', 'mm')],
  ['gal/ft2', own('length', 'us', UNIT_FACTORS.volume.gal / UNIT_FACTORS.area.ft2)],
]);

const FLOW_SEPARATOR = /^(.+?)\s*(?:\/|\bper\b|\ban?\b|\beach\b)\s*([a-z]+)$/;

function tidy(text: string): string {
  return text
    .toLowerCase()
    .replace(/[²]/g, '2')
    .replace(/[³]/g, '3')
    .replace(/\^/g, '')
    .replace(/[’′]/g, "'")
    .replace(/[”″]|''/g, '"')
    .replace(/º/g, '°')
    .replace(/\./g, '')
    .replace(/°\s+/g, '°')
    .replace(/\s*\/\s*/g, '/')
    .replace(/\s+/g, ' ')
    .trim();
}

/** What an amount of a kind in some time is. */
const KIND_IN_TIME: Partial<Readonly<Record<Kind, Kind>>> = { volume: 'flow', length: 'velocity' };

/** The unit that a word or a phrase such as `L/min`, `m³ a day`, `mm/day` or `US gal per minute` means. */
export function unitCalled(text: string): Unit | undefined {
  const word = tidy(text);
  const known = BY_SPELLING.get(word);
  if (known) return known;
  const [, amountWord, timeWord] = FLOW_SEPARATOR.exec(word) ?? [];
  if (amountWord === undefined || timeWord === undefined) return undefined;
  const amount = BY_SPELLING.get(amountWord.trim()) ?? DEPTHS_OF_WATER.get(amountWord.trim());
  const time = BY_SPELLING.get(timeWord);
  if (!amount || time?.kind !== 'time') return undefined;
  const kind = KIND_IN_TIME[amount.kind];
  return kind && own(kind, amount.system, amount.factor / time.factor);
}
