/** The drive line and the delivery line in a site document: one pipe after another, in the order of the water. */
import type { Plain, PlainRecord, SiteDocument } from './site-document.ts';
import { isList, isRecord, valueAt, withValue } from './site-document.ts';

export type LineName = 'drive' | 'delivery';

/**
 * The document with both lines as lists and each pipe spelled out flat, whichever of the allowed ways the file wrote
 * them. The page then has one path to each box.
 */
export function withListedLines(document: SiteDocument): SiteDocument {
  return (['drive', 'delivery'] as const).reduce((changed, line) => {
    const written = valueAt(changed, [line]);
    if (written === undefined) return changed;
    const list = isList(written) ? written : [written];
    return withValue(changed, [line], list.map(flatPipe));
  }, document);
}

function flatPipe(entry: Plain): Plain {
  if (!isRecord(entry) || !isRecord(entry.pipe)) return entry;
  const { pipe, ...others } = entry;
  return { ...pipe, ...others };
}

/** Always the same list, so that who watches it sees that nothing changed. */
const ONE_EMPTY_PIPE: readonly PlainRecord[] = [{}];

/** The pipes of a line; one empty pipe when the document has none, so that there is a box to write in. */
export function pipesOf(document: SiteDocument, line: LineName): readonly PlainRecord[] {
  const written = valueAt(document, [line]);
  const pipes = isList(written) ? written.filter(isRecord) : [];
  return pipes.length === 0 ? ONE_EMPTY_PIPE : pipes;
}

export function withPipeAdded(document: SiteDocument, line: LineName): SiteDocument {
  return withValue(document, [line], [...pipesOf(document, line), {}]);
}

export function withoutPipe(document: SiteDocument, line: LineName, index: number): SiteDocument {
  return withValue(document, [line, index], undefined);
}

/** Whether a pipe is described by its material and sizes and not by a name. */
export function isSpelledOut(pipe: PlainRecord): boolean {
  return ['material', 'bore', 'wall'].some((key) => pipe[key] !== undefined);
}

/** The document without pipes of which nothing is known yet: a box that waits is no pipe. */
export function withoutEmptyPipes(document: SiteDocument): SiteDocument {
  return (['drive', 'delivery'] as const).reduce((changed, line) => {
    const written = valueAt(changed, [line]);
    if (!isList(written)) return changed;
    const known = written.filter((pipe) => !isRecord(pipe) || Object.keys(pipe).length > 0);
    return known.length === written.length
      ? changed
      : withValue(changed, [line], known.length === 0 ? undefined : known);
  }, document);
}
