/**
 * The site file as plain data: what is saved, mailed and sent to the engine.
 *
 * The page edits this tree by path and leaves everything it does not know untouched, so that a file written by hand
 * with more in it than the page asks comes back whole.
 */
export type Path = readonly (string | number)[];

export type Plain = string | number | boolean | null | readonly Plain[] | PlainRecord;
export interface PlainRecord {
  readonly [key: string]: Plain | undefined;
}

export type SiteDocument = PlainRecord;

/** A path as people and problems write it: `drive[0].length`. */
export function pathText(path: Path): string {
  return path
    .map((key, i) => (typeof key === 'number' ? `[${key}]` : i === 0 ? key : `.${key}`))
    .join('');
}

export function isRecord(value: unknown): value is PlainRecord {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

export function isList(value: unknown): value is readonly Plain[] {
  return Array.isArray(value);
}

export function valueAt(document: SiteDocument, path: Path): Plain | undefined {
  let here: Plain | undefined = document;
  for (const key of path) {
    if (isList(here) && typeof key === 'number') here = here[key];
    else if (isRecord(here) && typeof key === 'string') here = here[key];
    else return undefined;
  }
  return here;
}

/**
 * The document with `value` at `path`; `undefined` takes the entry out. Records on the way are made where there are
 * none, and a record that becomes empty goes with its last entry.
 */
export function withValue(
  document: SiteDocument,
  path: Path,
  value: Plain | undefined,
): SiteDocument {
  const changed = changeAt(document, path, value);
  return isRecord(changed) ? changed : {};
}

function changeAt(
  here: Plain | undefined,
  path: Path,
  value: Plain | undefined,
): Plain | undefined {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  if (typeof key === 'number') {
    const list = isList(here) ? here : [];
    const entry = changeAt(list[key], rest, value);
    if (entry === undefined && rest.length === 0) return list.filter((_, i) => i !== key);
    const copy = [...list];
    // An emptied pipe stays in its line until it is taken out itself: its boxes must not vanish while one types.
    copy[key] = entry ?? {};
    return copy;
  }
  const record = isRecord(here) ? here : {};
  const entry = changeAt(record[key], rest, value);
  if (entry !== undefined) return { ...record, [key]: entry };
  const { [key]: _gone, ...others } = record;
  return rest.length === 0 && path.length > 0 && Object.keys(others).length === 0
    ? undefined
    : others;
}
