/** A map that has one entry for each month, or for each of some other names. */
import { MONTHS } from '@fallwright/engine';
import * as z from 'zod/mini';
import { type About, fields } from './fields.ts';
import { MONTH_NAMES } from './season.ts';

export function each<Name extends string, Schema extends z.core.$ZodType>(
  names: readonly Name[],
  schema: (name: Name) => Schema,
): { readonly [Key in Name]: Schema } {
  // Every name has its entry, which Object.fromEntries cannot tell.
  return Object.fromEntries(names.map((name) => [name, schema(name)])) as {
    readonly [Key in Name]: Schema;
  };
}

/** `{ jul: …, aug: … }`: those months that differ from the usual. */
export function byMonth<Schema extends z.core.$ZodType>(
  schemaFor: (monthName: string) => Schema,
  about: About,
) {
  return fields(
    each(MONTHS, (month) => z.exactOptional(schemaFor(MONTH_NAMES[month]))),
    about,
  );
}
