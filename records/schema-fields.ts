/** The names of the fields that a schema allows at a path, whatever wrappers stand between. */
import type * as z from 'zod/mini';
import type { Path } from './problem.ts';

type Schema = z.core.$ZodType;

export function fieldsAt(schema: Schema, path: Path): readonly string[] {
  let here: readonly Schema[] = [schema];
  for (const step of path) here = here.flatMap((one) => inside(one, step));
  return [...new Set(here.flatMap((one) => objects(one).flatMap((map) => Object.keys(map.shape))))];
}

function inside(schema: Schema, step: string | number): readonly Schema[] {
  if (typeof step === 'string') {
    return objects(schema).flatMap((map) => {
      const next = Object.hasOwn(map.shape, step) ? map.shape[step] : undefined;
      return next ? [next] : [];
    });
  }
  // A single map may stand where a list of one is meant.
  const { def } = (schema as z.core.$ZodTypes)._zod;
  if (def.type === 'array') return [def.element];
  return unwrapped(schema)?.flatMap((one) => inside(one, step)) ?? [schema];
}

function objects(schema: Schema): readonly z.core.$ZodObjectDef[] {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  if (def.type === 'object') return [def];
  return unwrapped(schema)?.flatMap(objects) ?? [];
}

function unwrapped(schema: Schema): readonly Schema[] | undefined {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  switch (def.type) {
    case 'optional':
    case 'default':
      return [def.innerType];
    case 'pipe':
      return [def.in];
    case 'union':
      return def.options;
    default:
      return undefined;
  }
}
