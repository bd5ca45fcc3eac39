/**
 * Which entry of a changed list is which entry of the list that it came from.
 *
 * Entries of a line have no names, so they are matched by likeness, in order, with the least total of change: an entry that
 * is the same costs nothing, one that shares fields costs the share that differs, one added or taken out costs 1. That is
 * the edit distance of Wagner and Fischer with a softer price for a replacement (method: memory, no page opened).
 */
import { fieldsIn, isPlainRecord, isSamePlain, type Plain } from './plain.ts';

export interface Alignment {
  /** For each entry of the base, where it stands in the changed list; undefined when it was taken out. */
  readonly matches: readonly (number | undefined)[];
  /** For each place before, between and after the entries of the base, what was added there. */
  readonly added: readonly (readonly Plain[])[];
}

/** Judgement: nothing alike is still one entry written over, not one out and one in (which together cost 2). */
const NOTHING_ALIKE = 1.5;

export function alignLists(base: readonly Plain[], changed: readonly Plain[]): Alignment {
  const matches: (number | undefined)[] = base.map(() => undefined);
  const added: Plain[][] = Array.from({ length: base.length + 1 }, () => []);
  const shorter = Math.min(base.length, changed.length);
  let start = 0;
  while (start < shorter && isSamePlain(base[start], changed[start])) {
    matches[start] = start;
    start += 1;
  }
  let end = 0;
  while (
    end < shorter - start &&
    isSamePlain(base[base.length - 1 - end], changed[changed.length - 1 - end])
  ) {
    end += 1;
    matches[base.length - end] = changed.length - end;
  }

  const from = base.slice(start, base.length - end);
  const to = changed.slice(start, changed.length - end);
  const width = to.length + 1;
  // cost[i][j]: least change from the entries of `from` after i to those of `to` after j.
  const cost = new Float64Array((from.length + 1) * width);
  const pairing = new Float64Array(from.length * to.length);
  for (let i = from.length; i >= 0; i -= 1) {
    for (let j = to.length; j >= 0; j -= 1) {
      if (i === from.length) cost[i * width + j] = to.length - j;
      else if (j === to.length) cost[i * width + j] = from.length - i;
      else {
        const pair = changeBetween(from[i], to[j]);
        pairing[i * to.length + j] = pair;
        cost[i * width + j] = Math.min(
          pair + (cost[(i + 1) * width + j + 1] ?? 0),
          1 + (cost[(i + 1) * width + j] ?? 0),
          1 + (cost[i * width + j + 1] ?? 0),
        );
      }
    }
  }
  let i = 0;
  let j = 0;
  while (i < from.length || j < to.length) {
    const here = cost[i * width + j] ?? 0;
    const isPair =
      i < from.length &&
      j < to.length &&
      here === (pairing[i * to.length + j] ?? 0) + (cost[(i + 1) * width + j + 1] ?? 0);
    if (isPair) {
      matches[start + i] = start + j;
      i += 1;
      j += 1;
    } else if (i < from.length && here === 1 + (cost[(i + 1) * width + j] ?? 0)) {
      i += 1;
    } else {
      const entry = to[j];
      if (entry !== undefined) added[start + i]?.push(entry);
      j += 1;
    }
  }
  return { matches, added };
}

function changeBetween(a: Plain | undefined, b: Plain | undefined): number {
  if (isSamePlain(a, b)) return 0;
  if (!isPlainRecord(a) || !isPlainRecord(b)) return NOTHING_ALIKE;
  const fields = new Set([...fieldsIn(a), ...fieldsIn(b)]);
  let alike = 0;
  for (const field of fields) {
    if (Object.hasOwn(a, field) && isSamePlain(a[field], b[field])) alike += 1;
  }
  return alike === 0 ? NOTHING_ALIKE : 1 - alike / fields.size;
}
