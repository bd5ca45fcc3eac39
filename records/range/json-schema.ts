import * as z from 'zod/mini';
import { rangeSchema } from './range-schema.ts';

/** The JSON Schema (draft 2020-12) of the range file, made from the schema that reads it. */
export function rangeJsonSchema(): unknown {
  return {
    $id: 'urn:fallwright:range:1',
    title: 'Fallwright range, version 1',
    ...z.toJSONSchema(rangeSchema, { io: 'input', reused: 'ref' }),
  };
}
