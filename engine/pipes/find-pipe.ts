/**
 * Pipes by the name that a person writes.
 *
 * A name is cut into words and brought to one spelling: `schedule 40` and `sch-40`, `1¼"` and `1-1/4 in`, `PVCU` and
 * `PVC-U`. Order does not matter and neither does the name of the standard. A size without its unit is taken when only
 * one pipe can be meant; a wrong unit is never.
 */
import { closestNames } from './name-search.ts';
import { ASME_B36_10M } from './tables/asme-b36-10m.ts';
import { ASTM_B88 } from './tables/astm-b88.ts';
import { ASTM_D1785 } from './tables/astm-d1785.ts';
import { ASTM_D2239 } from './tables/astm-d2239.ts';
import { EN_10255 } from './tables/en-10255.ts';
import { HOSES } from './tables/hoses.ts';
import { ISO_1452 } from './tables/iso-1452.ts';
import { ISO_4427 } from './tables/iso-4427.ts';
import type { TablePipe } from './tables/table-pipe.ts';

/** Every pipe of the tables. */
export const PIPES: readonly TablePipe[] = [
  ...ISO_4427,
  ...ASTM_D2239,
  ...ISO_1452,
  ...ASTM_D1785,
  ...ASME_B36_10M,
  ...EN_10255,
  ...ASTM_B88,
  ...HOSES,
];

/** The one name of every pipe, in the order of the tables. */
export function pipeNames(): readonly string[] {
  return PIPES.map(({ name }) => name);
}

/** A pipe by its name; or the names nearest to what was written. */
export function findPipe(
  name: string,
):
  | { readonly ok: true; readonly pipe: TablePipe }
  | { readonly ok: false; readonly suggestions: readonly string[] } {
  const pipe = PIPES_BY_NAME.get(name) ?? pipesByKey().get(key(pipeWords(name)));
  if (pipe) return { ok: true, pipe };
  return {
    ok: false,
    suggestions: closestNames(name, pipeNames(), { wordsOf: knownWordsInOneUnit }),
  };
}

const FRACTIONS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅝': '5/8',
};

/** Words that say nothing of which pipe is meant: standards, and what every name could carry. */
const NOISE =
  /\b(?:en|iso|astm|asme|bs|din)[\s-]*[bd]?\d+(?:\.\d+)?m?(?:-\d+)?\b|\b(?:pipe|tube|tubing|type|od|id|dia|bore|nominal|medium|of|reinforced|water)\b/g;

/** Other spellings, applied in this order to the name in lower case. */
const SPELLINGS: readonly (readonly [RegExp, string])[] = [
  // A decimal comma, unless the number belongs to a word: `12,5 mm` but `SDR11,25`.
  [/(?<![a-z\d])(\d+),(\d)/g, '$1.$2'],
  [/(?:''|["″”])/g, ' in '],
  [/\b(?:inches|inch|in)\b\.?|(?<=\d)(?:inches|inch|in)\b\.?/g, ' in '],
  [/(?:millimetres|millimeters|millimetre|millimeter|mm)\b/g, ' mm '],
  [/galvani[sz]ed|galv\b\.?|\bgi\b/g, 'galvanised'],
  [/galvanised(?! *steel)/g, 'galvanised steel'],
  [/polyethylene|\bpolythene\b/g, 'pe'],
  [/\bu?pvc[\s-]*u\b|\bupvc\b/g, 'pvcu'],
  [/schedule|sched\b\.?|sch\b\.?/g, 'sch'],
  [/\b(sch|sdr|sidr|pn|dn)[\s-]*(\d+(?:\.\d+)?)/g, ' $1$2 '],
  [/\bpe[\s-]*(100|80|4710)\b/g, ' pe$1 '],
  [/\bpe[\s-]*(?:3408|3608)\b/g, ' pe '],
  [/\bmdpe\b/g, 'pe80'],
  [/hosepipe/g, 'hose'],
];

const HOSE_KINDS: ReadonlySet<string> = new Set(['garden', 'pvc', 'rubber']);

/** The words of a pipe's name in one spelling, sizes as plain numbers with their unit. */
function pipeWords(name: string): readonly string[] {
  let text = name.toLowerCase().replace(/[½¼¾⅝]/g, (sign) => ` ${FRACTIONS[sign] ?? ''} `);
  for (const [pattern, spelling] of SPELLINGS) text = text.replace(pattern, spelling);
  text = text.replace(NOISE, ' ');
  let unit = '';
  const words: string[] = [];
  // Mixed numbers first, so that `1-1/4` is one size; then fractions, decimals and words.
  const parts = text.matchAll(
    /(\d+)[\s-]+(\d+)\/(\d+)|(\d+)\/(\d+)|[a-z]+\d*(?:\.\d+)?|\d*\.?\d+/g,
  );
  for (const [part, whole, over, under, numerator, denominator] of parts) {
    if (under) words.push(String(Number(whole) + Number(over) / Number(under)));
    else if (denominator) words.push(String(Number(numerator) / Number(denominator)));
    else if (part === 'in' || part === 'mm') unit = part;
    else words.push(/^[\d.]+$/.test(part) ? String(Number(part)) : part);
    // Only inches are written as fractions.
    if (under || denominator) unit ||= 'in';
  }
  // A hose without a material is the garden's.
  if (words.includes('hose') && !words.some((word) => HOSE_KINDS.has(word))) words.push('garden');
  return unit ? [...words, unit] : words;
}

/** The words of a pipe's name with inch sizes turned into millimetres, so that near sizes of both kinds are near. */
function wordsInOneUnit(name: string): readonly string[] {
  const words = pipeWords(name);
  const isImperial = words.includes('in');
  return words
    .filter((word) => word !== 'in' && word !== 'mm')
    .map((word) => (isImperial && Number(word) > 0 ? String(Number(word) * 25.4) : word));
}

const WORDS_OF_PIPES = new Map<string, readonly string[]>();

/** As `wordsInOneUnit`, which the names of the tables go through once only. */
function knownWordsInOneUnit(name: string): readonly string[] {
  const known = WORDS_OF_PIPES.get(name);
  if (known) return known;
  const words = wordsInOneUnit(name);
  if (PIPES_BY_NAME.has(name)) WORDS_OF_PIPES.set(name, words);
  return words;
}

const key = (words: readonly string[]): string => [...words].sort().join(' ');

/** Pressure classes that metric PE is also sold by, for the dimension ratio that gives them. */
const PRESSURE_CLASSES: Readonly<Record<string, string>> = {
  'pe100 sdr11': 'pn16',
  'pe100 sdr17': 'pn10',
  'pe80 sdr11': 'pn12.5',
};

/** Every pipe under its name, and under the name without or with its unit where that means no other pipe. */
function keyedPipes(): Map<string, TablePipe> {
  const byKey = new Map<string, TablePipe>();
  const named = PIPES.map((pipe) => ({ pipe, words: pipeWords(pipe.name) }));
  for (const { pipe, words } of named) byKey.set(key(words), pipe);
  for (const { pipe, words: all } of named) {
    const bare = all.filter((word) => word !== 'in' && word !== 'mm');
    const pressureClass = PRESSURE_CLASSES[bare.slice(0, 2).join(' ')];
    const byClass = bare.map((word) => (word.startsWith('sdr') ? (pressureClass ?? word) : word));
    const isMetric = pipe.nominal.endsWith('mm');
    for (const words of [bare, byClass].flatMap((w) => (isMetric ? [w, [...w, 'mm']] : [w]))) {
      if (!byKey.has(key(words))) byKey.set(key(words), pipe);
    }
  }
  return byKey;
}

let keyed: ReadonlyMap<string, TablePipe> | undefined;

/** Made when the first name is asked for that stands in no table: most names come from the tables as they are. */
function pipesByKey(): ReadonlyMap<string, TablePipe> {
  keyed ??= keyedPipes();
  return keyed;
}

const PIPES_BY_NAME: ReadonlyMap<string, TablePipe> = new Map(
  PIPES.map((pipe) => [pipe.name, pipe]),
);
