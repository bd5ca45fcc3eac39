/** A drive line of the site file with one thing changed: its pipe, its length, or how it is laid. */
import type { System } from '@fallwright/units';
import { formatQuantity, readQuantity } from '@fallwright/units';
import { textOf } from '../state/entry.ts';
import type { Plain, PlainRecord } from '../state/site-document.ts';
import { isList, isRecord } from '../state/site-document.ts';

/** One pipe after another, from the source to the ram, as the site file has them. */
export type Line = readonly PlainRecord[];

/** A number in SI as a person would write it in a site file. */
export function written(
  value: number,
  purpose: 'pipeLength' | 'smallVolume' | 'stroke' | 'weight' | 'height' | 'sourceFlow' | 'bore',
  system: System,
  figures = 3,
): string {
  return formatQuantity(value, purpose, system, { figures }).replaceAll('\u00a0', ' ');
}

function metres(entry: Plain | undefined): number {
  const read = readQuantity(textOf(entry), 'pipeLength');
  return read.ok ? read.value.value : 0;
}

export function lengthOf(line: Line): number {
  return line.reduce((sum, pipe) => sum + metres(pipe.length), 0);
}

/** What describes a pipe and not how it lies: it goes with the pipe. */
const OF_THE_PIPE = ['pipe', 'material', 'bore', 'wall', 'roughness', 'rating'];

/** The same trench with another pipe in it: lengths, bends, profile and the way it is held stay. */
export function withPipe(line: Line, name: string): Line {
  return line.map((pipe) => ({
    pipe: name,
    ...Object.fromEntries(Object.entries(pipe).filter(([key]) => !OF_THE_PIPE.includes(key))),
  }));
}

/**
 * The line longer or shorter as a whole: every pipe, and every place that is told by its distance along a pipe, in proportion.
 * A line of one pipe takes `text` as it was typed.
 */
export function withLength(line: Line, text: string, system: System): Line {
  const wanted = readQuantity(text, 'pipeLength');
  const now = lengthOf(line);
  if (!wanted.ok || !(now > 0)) return line;
  const share = wanted.value.value / now;
  const scaled = (entry: Plain | undefined): Plain =>
    written(metres(entry) * share, 'pipeLength', system, 4);
  return line.map((pipe) => ({
    ...pipe,
    length: line.length === 1 ? text.trim() : scaled(pipe.length),
    ...(pipe.profile === undefined
      ? {}
      : { profile: eachOf(pipe.profile).map((point) => placed(point, scaled)) }),
    ...(pipe.air === undefined
      ? {}
      : { air: eachOf(pipe.air).map((caught) => placed(caught, scaled)) }),
  }));
}

type Scaled = (entry: Plain | undefined) => Plain;

/** A point of a profile or a pocket of air, `10 mL at 6 m` or a map with `at`. */
function placed(entry: Plain, scaled: Scaled): Plain {
  if (typeof entry === 'string') {
    const [what, at] = entry.split(/\s+at\s+/i);
    return at === undefined ? entry : `${what} at ${textOf(scaled(at))}`;
  }
  if (!isRecord(entry) || entry.at === undefined) return entry;
  return { ...entry, at: scaled(entry.at) };
}

function eachOf(entry: Plain): readonly Plain[] {
  return isList(entry) ? entry : [entry];
}

const HOW_IT_LIES = ['laid', 'air', 'freeAir', 'profile'];

/** Whether nothing is known that would keep the line from running straight and full of water. */
export function isStraight(line: Line): boolean {
  return line.every((pipe) =>
    HOW_IT_LIES.every((key) => pipe[key] === undefined || pipe[key] === 'straight'),
  );
}

/** Laid along one slope and bled: no crest, no air. */
export function straightened(line: Line): Line {
  return line.map((pipe) =>
    Object.fromEntries(Object.entries(pipe).filter(([key]) => !HOW_IT_LIES.includes(key))),
  );
}

/**
 * Laid over a crest that holds air: at the highest point of its profile, or in the middle of the pipe in which half of the
 * line's length lies. With no amount the file's own assumption holds: air that fills half the bore over ten bores.
 */
export function overCrest(line: Line, air: string): Line {
  const at = crestedPipe(line);
  return line.map((pipe, index) => {
    const { air: _air, laid: _laid, ...others } = pipe;
    if (index !== at) return others;
    const crest = highestPoint(pipe);
    const where = crest === undefined ? '' : ` at ${textOf(crest.at)}`;
    return {
      ...others,
      laid: 'over a crest',
      ...(air.trim() === '' ? {} : { air: `${air.trim()}${where}` }),
    };
  });
}

function crestedPipe(line: Line): number {
  const surveyed = line.findIndex((pipe) => highestPoint(pipe) !== undefined);
  if (surveyed >= 0) return surveyed;
  let left = lengthOf(line) / 2;
  for (const [index, pipe] of line.entries()) {
    left -= metres(pipe.length);
    if (left <= 0) return index;
  }
  return 0;
}

function highestPoint(pipe: PlainRecord): PlainRecord | undefined {
  const height = (point: PlainRecord): number => {
    const read = readQuantity(textOf(point.height), 'elevation');
    return read.ok ? read.value.value : Number.NEGATIVE_INFINITY;
  };
  const points = pipe.profile === undefined ? [] : eachOf(pipe.profile).filter(isRecord);
  return [...points].sort((a, b) => height(b) - height(a))[0];
}
