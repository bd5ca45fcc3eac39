/** The shapes that the service takes and gives: one for checking, for types, and for the OpenAPI page. */
import type { PlainRecord } from '@fallwright/records';
import { z } from '@hono/zod-openapi';
import {
  type Changes,
  type Heading,
  RECORD_KINDS,
  type StoredRecord,
  type StoredRevision,
} from '../store/store.ts';

/** Judgement: a price list of 3,000 rows is 700 kB as JSON; a document of more is a slip or an attack. */
export const LARGEST_BODY = 2 * 1024 * 1024;
/** Judgement: a site file is four deep; beyond this it is a slip or an attack. */
const DEEPEST = 30;
/** Judgement: some hundred documents of 5 kB are sent quickly over a poor line. */
const MOST_AT_ONCE = 200;

const kind = z.enum(RECORD_KINDS);
const revision = z.number().int().min(1).describe('Counts from 1; each save is one more.');
const words = z.string().max(200);
/** Names that devices make up: for themselves, and for each save. */
const ownName = z.string().regex(/^[\w.:-]{1,64}$/, 'letters, figures and . : - alone, at most 64');
const time = z.iso.datetime();

/** Looked at as it came: a schema of fields would leave `__proto__` out without a word. */
const document = z
  .custom<PlainRecord & { readonly fallwright: string }>(
    (value) => isMap(value) && typeof value.fallwright === 'string' && isShallow(value, DEEPEST),
    `must be a map of fields with its format in fallwright, at most ${DEEPEST} deep, with no field __proto__`,
  )
  .describe('The record as its file has it, finished or not; its format stands in `fallwright`.')
  .openapi('Document', {
    type: 'object',
    properties: { fallwright: { type: 'string' } },
    required: ['fallwright'],
  });

const unread = z
  .record(z.string().max(200), z.string().max(10_000))
  .describe('Text in boxes that could not be read yet, by field.');

export const namePath = z.object({
  kind: kind.openapi({ param: { name: 'kind', in: 'path' } }),
  id: z
    .string()
    .regex(/^[a-z0-9][a-z0-9-]{0,63}$/, 'small letters, figures and - alone, at most 64')
    .openapi({ param: { name: 'id', in: 'path' } }),
});

export const revisionPath = namePath.extend({
  revision: z.coerce
    .number()
    .int()
    .min(1)
    .openapi({ param: { name: 'revision', in: 'path' } }),
});

export const shaPath = z.object({
  sha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/, 'the SHA-256 of the content, as 64 small hexadecimal figures')
    .openapi({ param: { name: 'sha256', in: 'path' } }),
});

export const preconditions = z.object({
  'if-match': z
    .string()
    .regex(/^"\d{1,9}"$/, 'the revision that the change began from, in quotes: "3"')
    .optional(),
  'if-none-match': z.literal('*').optional().describe('For a record that is new.'),
});

const signature = {
  author: words.min(1).describe('Who wrote it.'),
  device: ownName.describe('The device’s own name for itself.'),
  operation: ownName.describe('The device’s own name for this save; sent again, it does nothing.'),
  deviceTime: time.optional().describe('By the device’s clock; it decides nothing.'),
};

export const saveBody = z
  .strictObject({
    document,
    unread: unread.optional(),
    deleted: z.boolean().optional().describe('True takes it out of the list; it can come back.'),
    changed: words.describe('Words for what was changed: the fall.'),
    ...signature,
  })
  .openapi('Save');

export const restoreBody = z
  .strictObject({ revision: revision.describe('Which state comes back.'), ...signature })
  .openapi('Restore');

/**
 * A schema of what the store gives, under the store's own type, whose lists cannot be changed and whose documents are any.
 * That the two say the same is not the compiler's to know: the tests hold every answer against the schema.
 */
function asStored<Stored>(schema: z.ZodType): z.ZodType<Stored> {
  return schema as z.ZodType<Stored>;
}

interface ConflictAnswer {
  readonly problem: string;
  readonly current: StoredRecord;
  readonly base?: StoredRevision;
}

const revisionShape = {
  kind,
  id: z.string(),
  revision,
  document,
  unread,
  deleted: z.boolean(),
  changed: z.string(),
  author: z.string(),
  device: z.string(),
  savedAt: time.describe('By the server’s clock.'),
  deviceTime: time.optional(),
};

export const revisionAnswer: z.ZodType<StoredRevision> = asStored(
  z.strictObject(revisionShape).openapi('Revision'),
);
export const recordAnswer: z.ZodType<StoredRecord> = asStored(
  z.strictObject({ ...revisionShape, change: z.number().int().min(1) }).openapi('Record'),
);

export const changesQuery = z.object({
  since: z.coerce.number().int().min(0).default(0).describe('The cursor of the last answer.'),
  limit: z.coerce.number().int().min(1).max(MOST_AT_ONCE).default(100),
});
export const changesAnswer: z.ZodType<Changes> = asStored(
  z
    .strictObject({
      records: z.array(recordAnswer),
      cursor: z.number().int().min(0).describe('Ask again from here.'),
      hasMore: z.boolean(),
    })
    .openapi('Changes'),
);

export const searchQuery = z.object({
  words: z.string().max(200).default(''),
  kind: kind.optional(),
  deleted: z.enum(['true', 'false']).default('false'),
  limit: z.coerce.number().int().min(1).max(MOST_AT_ONCE).default(50),
});
export const searchAnswer: z.ZodType<{ readonly records: readonly Heading[] }> = asStored(
  z
    .strictObject({
      records: z.array(
        z.strictObject({
          kind,
          id: z.string(),
          name: z.string(),
          revision,
          deleted: z.boolean(),
          savedAt: time,
        }),
      ),
    })
    .openapi('Found'),
);

export const historyAnswer: z.ZodType<{ readonly revisions: readonly StoredRevision[] }> = asStored(
  z.strictObject({ revisions: z.array(revisionAnswer) }).openapi('History'),
);

export const attachQuery = z.object({ author: words.min(1), device: ownName });
export const attachmentAnswer = z
  .strictObject({
    sha256: z.string(),
    size: z.number().int(),
    type: z.string(),
    author: z.string(),
    device: z.string(),
    addedAt: time,
  })
  .openapi('Attachment');

export const problemAnswer = z
  .strictObject({
    problem: z.string().describe('What is wrong, and what to do.'),
    problems: z.array(z.strictObject({ field: z.string(), message: z.string() })).optional(),
  })
  .openapi('Problem');

export const conflictAnswer: z.ZodType<ConflictAnswer> = asStored(
  z
    .strictObject({
      problem: z.string(),
      current: recordAnswer.describe('What stands here now.'),
      base: revisionAnswer.optional().describe('What the change began from, where it is known.'),
    })
    .openapi('Conflict'),
);

function isMap(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isShallow(value: unknown, left: number): boolean {
  if (typeof value !== 'object' || value === null) return true;
  if (left === 0 || Object.hasOwn(value, '__proto__')) return false;
  return Object.values(value).every((entry) => isShallow(entry, left - 1));
}
