import * as z from 'zod/mini';
import { siteSchema } from './site-schema.ts';

/** The JSON Schema (draft 2020-12) of the site file, made from the schema that reads it. */
export function siteJsonSchema(): unknown {
  return {
    $id: 'urn:fallwright:site:1',
    title: 'Fallwright site, version 1',
    ...z.toJSONSchema(siteSchema, { io: 'input', reused: 'ref' }),
  };
}
