/** Where two states of one place differ, field by field, and one state put together from choices between them. */
import { originOf, textOf } from './entry.ts';
import type { Remembered } from './place.ts';
import type { Path, Plain, SiteDocument } from './site-document.ts';
import { isList, isRecord, pathText, valueAt, withValue } from './site-document.ts';
import { isSame } from './site-record.ts';

export type Side = 'mine' | 'theirs';

export interface Difference {
  readonly key: string;
  /** `Drive line, pipe 1, length`. */
  readonly label: string;
  readonly path: Path;
  /** Text in a box that cannot be read yet, not a value of the document. */
  readonly isUnread: boolean;
  /** In words; empty where there is nothing. */
  readonly mine: string;
  readonly theirs: string;
  /** Who changed it since both began; both when that is not known. */
  readonly changedBy: Side | 'both';
}

export function differencesOf(
  mine: Remembered,
  theirs: Remembered,
  base?: Remembered,
): readonly Difference[] {
  const inDocument = pathsApart(mine.document, theirs.document).map((path): Difference => {
    const values = [mine, theirs].map(({ document }) => valueAt(document, path));
    const began = base && { value: valueAt(base.document, path) };
    return {
      key: pathText(path),
      label: labelOf(path),
      path,
      isUnread: false,
      mine: inWords(values[0]),
      theirs: inWords(values[1]),
      changedBy: changedBy(values[0], values[1], began),
    };
  });
  const keys = [...new Set([...Object.keys(mine.unread), ...Object.keys(theirs.unread)])];
  const inBoxes = keys.flatMap((key): Difference[] => {
    const texts = [mine, theirs].map(({ unread }) => unread[key]?.text);
    if (texts[0] === texts[1]) return [];
    const path = pathFrom(key);
    const began = base && { value: base.unread[key]?.text };
    return [
      {
        key: `unread ${key}`,
        label: `${labelOf(path)}, not readable yet`,
        path,
        isUnread: true,
        mine: texts[0] ?? '',
        theirs: texts[1] ?? '',
        changedBy: changedBy(texts[0], texts[1], began),
      },
    ];
  });
  return [...inDocument, ...inBoxes];
}

/** This tab's state with the other's values where they were chosen. */
export function chosenFrom(
  mine: Remembered,
  theirs: Remembered,
  choices: readonly { readonly difference: Difference; readonly side: Side }[],
): Remembered {
  let { document } = mine;
  const unread = { ...mine.unread };
  for (const { difference, side } of choices) {
    if (side === 'mine') continue;
    const { path, isUnread } = difference;
    if (!isUnread) {
      document = withValue(document, path, valueAt(theirs.document, path));
      continue;
    }
    const key = pathText(path);
    const text = theirs.unread[key];
    if (text === undefined) delete unread[key];
    else unread[key] = text;
  }
  return { document, unread };
}

function changedBy(
  mine: Plain | undefined,
  theirs: Plain | undefined,
  began: { readonly value: Plain | undefined } | undefined,
): Difference['changedBy'] {
  if (began === undefined) return 'both';
  if (isSame(began.value, theirs)) return 'mine';
  return isSame(began.value, mine) ? 'theirs' : 'both';
}

function pathsApart(a: Plain | undefined, b: Plain | undefined, path: Path = []): Path[] {
  if (isSame(a, b)) return [];
  if (isRecord(a) && isRecord(b) && !isQuantity(a) && !isQuantity(b)) {
    const keys = [...new Set([...Object.keys(a), ...Object.keys(b)])];
    return keys.flatMap((key) => pathsApart(a[key], b[key], [...path, key]));
  }
  // Lines of other lengths are other lines: their pipes cannot be told apart by number.
  if (isList(a) && isList(b) && a.length === b.length) {
    return a.flatMap((entry, index) => pathsApart(entry, b[index], [...path, index]));
  }
  return [path];
}

const isQuantity = (entry: Plain): boolean => isRecord(entry) && entry.value !== undefined;

/** A value as it can be read beside another: a quantity with its origin, a list entry by entry. */
export function inWords(value: Plain | undefined): string {
  if (value === undefined || value === null) return '';
  if (isList(value)) return value.map(inWords).join('; ');
  if (!isRecord(value)) return String(value);
  if (isQuantity(value)) return `${textOf(value)}, ${originOf(value)}`;
  return Object.entries(value)
    .map(([key, entry]) => `${key} ${inWords(entry)}`)
    .join(', ');
}

const FIRST_WORDS: Readonly<Record<string, string>> = {
  drive: 'Drive line',
  delivery: 'Delivery line',
  demand: 'Water needed',
  rams: 'Range',
};

/** What the entries of a list are, where they are no pipes. */
const ENTRY_WORDS: Readonly<Record<string, string>> = { rams: 'ram', rows: 'row', prices: 'row' };

/** A path in the words of the sheet: `drive[0].length` is the length of pipe 1 of the drive line. */
export function labelOf(path: Path): string {
  const words = path.map((step, depth) => {
    if (typeof step === 'number') {
      return depth === 1 ? `${ENTRY_WORDS[String(path[0])] ?? 'pipe'} ${step + 1}` : `${step + 1}`;
    }
    const spaced = step.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
    return depth === 0 ? (FIRST_WORDS[step] ?? capital(spaced)) : spaced;
  });
  return words.join(', ');
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function pathFrom(key: string): Path {
  return [...key.matchAll(/\[(\d+)\]|[^.[\]]+/g)].map(([step, index]) =>
    index === undefined ? step : Number(index),
  );
}

/** Everything that a document says, line by line, for looking at a revision. */
export function linesOf(
  document: SiteDocument,
): readonly { readonly label: string; readonly words: string }[] {
  return pathsApart(document, {})
    .filter(([first]) => first !== 'fallwright')
    .flatMap((path) => leavesAt(document, path))
    .map((path) => ({ label: labelOf(path), words: inWords(valueAt(document, path)) }));
}

function leavesAt(document: SiteDocument, path: Path): Path[] {
  const value = valueAt(document, path);
  if (isList(value)) return value.flatMap((_, index) => leavesAt(document, [...path, index]));
  if (!isRecord(value) || isQuantity(value)) return [path];
  return Object.keys(value).flatMap((key) => leavesAt(document, [...path, key]));
}
