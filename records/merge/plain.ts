/** A saved document as plain data, whatever its kind: what JSON can hold, finished or not. */
export type Plain = string | number | boolean | null | readonly Plain[] | PlainRecord;

export interface PlainRecord {
  readonly [field: string]: Plain | undefined;
}

export function isPlainRecord(value: unknown): value is PlainRecord {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

export function isPlainList(value: unknown): value is readonly Plain[] {
  return Array.isArray(value);
}

/** Nothing, or alike in every field; a field that holds `undefined` is a field that is not there. */
export function isSamePlain(a: Plain | undefined, b: Plain | undefined): boolean {
  if (Object.is(a, b)) return true;
  if (isPlainList(a) && isPlainList(b)) {
    return a.length === b.length && a.every((entry, index) => isSamePlain(entry, b[index]));
  }
  if (!isPlainRecord(a) || !isPlainRecord(b)) return false;
  const fields = fieldsIn(a);
  return (
    fields.length === fieldsIn(b).length &&
    fields.every((field) => Object.hasOwn(b, field) && isSamePlain(a[field], b[field]))
  );
}

export function fieldsIn(record: PlainRecord): readonly string[] {
  return Object.keys(record).filter((field) => record[field] !== undefined);
}
