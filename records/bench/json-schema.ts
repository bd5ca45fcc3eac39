import * as z from 'zod/mini';
import { testSchema } from './test-schema.ts';

/** The JSON Schema (draft 2020-12) of the test record, made from the schema that reads it. */
export function testJsonSchema(): unknown {
  return {
    $id: 'urn:fallwright:test:1',
    title: 'Fallwright test, version 1',
    ...z.toJSONSchema(testSchema, { io: 'input', reused: 'ref' }),
  };
}
