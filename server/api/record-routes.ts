/** Records and attachments over HTTP. */
import { createReadStream } from 'node:fs';
import { Readable } from 'node:stream';
import { createRoute, OpenAPIHono, z } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import packageFile from '../package.json' with { type: 'json' };
import { LARGEST_ATTACHMENT } from '../store/attachment-files.ts';
import { ATTACHMENT_TYPES } from '../store/attachment-kinds.ts';
import type { Store } from '../store/open-store.ts';
import type { RecordName, Save, StoredRevision } from '../store/store.ts';
import { ownPagesOnly } from './own-pages-only.ts';
import {
  attachmentAnswer,
  attachQuery,
  changesAnswer,
  changesQuery,
  conflictAnswer,
  historyAnswer,
  LARGEST_BODY,
  namePath,
  preconditions,
  problemAnswer,
  recordAnswer,
  restoreBody,
  revisionAnswer,
  revisionPath,
  saveBody,
  searchAnswer,
  searchQuery,
  shaPath,
} from './record-schemas.ts';

const json = <Schema extends z.ZodType>(schema: Schema, description: string) => ({
  description,
  content: { 'application/json': { schema } },
});
const body = <Schema extends z.ZodType>(schema: Schema) => ({
  required: true,
  content: { 'application/json': { schema } },
});
const anyBytes = z.string().openapi({ format: 'binary' });
const bytes = Object.fromEntries(ATTACHMENT_TYPES.map((type) => [type, { schema: anyBytes }]));

const always = {
  400: json(problemAnswer, 'The request cannot be read.'),
  403: json(problemAnswer, 'A page from another place asked.'),
  422: json(problemAnswer, 'Something in the request is wrong; each is named.'),
  500: json(problemAnswer, 'The service made a mistake of its own; nothing is half done.'),
};
const notThere = { 404: json(problemAnswer, 'It is not here.') };
const saving = {
  ...always,
  ...notThere,
  200: json(recordAnswer, 'Saved, or saved before by the same save.'),
  409: json(conflictAnswer, 'Somebody saved in between: nothing was changed.'),
  413: json(problemAnswer, 'Larger than any record.'),
  428: json(problemAnswer, 'Neither If-Match nor If-None-Match was sent.'),
  507: json(problemAnswer, 'The disk is full: nothing was saved.'),
};

const listRoute = createRoute({
  method: 'get',
  path: '/api/records',
  summary: 'What changed since a cursor, each record as it is now; deleted ones too',
  request: { query: changesQuery },
  responses: { ...always, 200: json(changesAnswer, 'In the order of the changes.') },
});
const searchRoute = createRoute({
  method: 'get',
  path: '/api/search',
  summary: 'Records with all these words in name, owner, place or notes',
  request: { query: searchQuery },
  responses: { ...always, 200: json(searchAnswer, 'The one changed last first.') },
});
const readRoute = createRoute({
  method: 'get',
  path: '/api/records/{kind}/{id}',
  summary: 'A record as it is now',
  request: { params: namePath },
  responses: { ...always, ...notThere, 200: json(recordAnswer, 'ETag is its revision.') },
});
const saveRoute = createRoute({
  method: 'put',
  path: '/api/records/{kind}/{id}',
  summary: 'Save a record, take it out, or bring it back: each is a new revision',
  request: { params: namePath, headers: preconditions, body: body(saveBody) },
  responses: saving,
});
const restoreRoute = createRoute({
  method: 'post',
  path: '/api/records/{kind}/{id}/restore',
  summary: 'Bring an earlier state back, as a new revision',
  request: { params: namePath, headers: preconditions, body: body(restoreBody) },
  responses: saving,
});
const historyRoute = createRoute({
  method: 'get',
  path: '/api/records/{kind}/{id}/history',
  summary: 'Every state of a record',
  request: { params: namePath },
  responses: { ...always, ...notThere, 200: json(historyAnswer, 'Newest first.') },
});
const revisionRoute = createRoute({
  method: 'get',
  path: '/api/records/{kind}/{id}/history/{revision}',
  summary: 'One state of a record',
  request: { params: revisionPath },
  responses: { ...always, ...notThere, 200: json(revisionAnswer, 'It never changes.') },
});
const attachRoute = createRoute({
  method: 'put',
  path: '/api/attachments/{sha256}',
  summary: 'Send a photo, recording or paper, named by the SHA-256 of its bytes',
  request: { params: shaPath, query: attachQuery, body: { required: true, content: bytes } },
  responses: {
    ...always,
    200: json(attachmentAnswer, 'It is here, now or already.'),
    413: json(problemAnswer, 'Too large.'),
    415: json(problemAnswer, 'None of the types that can be kept.'),
    507: json(problemAnswer, 'The disk is full: nothing was kept.'),
  },
});
const attachmentRoute = createRoute({
  method: 'get',
  path: '/api/attachments/{sha256}',
  summary: 'The bytes of an attachment',
  request: { params: shaPath },
  responses: {
    ...always,
    ...notThere,
    200: { description: 'As they were sent.', content: bytes },
  },
});

const NOT_THERE = { problem: 'There is no such record here.' };

export function recordRoutes({ records, files }: Store): OpenAPIHono {
  const app = new OpenAPIHono({
    defaultHook: (result, c) => {
      if (result.success) return undefined;
      const problems = result.error.issues.map(({ path, message }) => ({
        field: path.join('.'),
        message,
      }));
      return c.json({ problem: 'Something in the request is wrong.', problems }, 422);
    },
  });
  for (const path of ['/api/records', '/api/records/*', '/api/search', '/api/attachments/*']) {
    app.use(path, ownPagesOnly);
    app.use(path, async (c, next) => {
      c.header('Cache-Control', 'no-store');
      await next();
    });
  }
  app.use(
    '/api/records/*',
    bodyLimit({
      maxSize: LARGEST_BODY,
      onError: (c) => {
        endLine(c);
        return c.json({ problem: `A record is at most ${LARGEST_BODY} bytes.` }, 413);
      },
    }),
  );

  app.openapi(listRoute, async (c) => {
    const { since, limit } = c.req.valid('query');
    return c.json(await records.changesSince(since, limit), 200);
  });
  app.openapi(searchRoute, async (c) => {
    const { words, kind, deleted, limit } = c.req.valid('query');
    const found = await records.search({
      words,
      limit,
      deleted: deleted === 'true',
      ...(kind === undefined ? {} : { kind }),
    });
    return c.json({ records: found }, 200);
  });
  app.openapi(readRoute, async (c) => {
    const record = await records.read(c.req.valid('param'));
    if (record === undefined) return c.json(NOT_THERE, 404);
    c.header('ETag', etagOf(record));
    return c.json(record, 200);
  });

  const saveAs = async (c: Context, save: Save) => {
    const outcome = await records.save(save);
    if (outcome.kind === 'saved') {
      c.header('ETag', etagOf(outcome.record));
      return c.json(outcome.record, 200);
    }
    if (outcome.kind === 'missing') return c.json(NOT_THERE, 404);
    if (outcome.kind === 'otherOperation') {
      const problem = `This device has used the name ${save.operation} for another save. Nothing was changed.`;
      return c.json({ problem }, 422);
    }
    const { current, base } = outcome;
    const problem = `${current.author} saved revision ${current.revision} in between. Nothing was changed: bring both together and send it again.`;
    return c.json({ problem, current, ...(base === undefined ? {} : { base }) }, 409);
  };

  app.openapi(saveRoute, async (c) => {
    const name = c.req.valid('param');
    const base = baseOf(c.req.valid('header'));
    if (base === undefined) return c.json(NO_PRECONDITION, 428);
    const { document, ...given } = c.req.valid('json');
    const wrong = wrongFormat(name, document.fallwright);
    if (wrong !== undefined) return c.json(wrong, 422);
    return saveAs(c, { ...name, base, document, ...present(given) });
  });
  app.openapi(restoreRoute, async (c) => {
    const name = c.req.valid('param');
    const base = baseOf(c.req.valid('header'));
    if (base === undefined) return c.json(NO_PRECONDITION, 428);
    const { revision, ...given } = c.req.valid('json');
    const earlier = await records.revision(name, revision);
    if (earlier === undefined) return c.json({ problem: 'There is no such revision here.' }, 404);
    const { document, unread } = earlier;
    const changed = `revision ${revision} brought back`;
    return saveAs(c, { ...name, base, document, unread, changed, ...present(given) });
  });

  app.openapi(historyRoute, async (c) => {
    const revisions = await records.history(c.req.valid('param'));
    if (revisions.length === 0) return c.json(NOT_THERE, 404);
    return c.json({ revisions: [...revisions] }, 200);
  });
  app.openapi(revisionRoute, async (c) => {
    const { revision, ...name } = c.req.valid('param');
    const found = await records.revision(name, revision);
    if (found === undefined) return c.json({ problem: 'There is no such revision here.' }, 404);
    return c.json(found, 200);
  });

  app.openapi(attachRoute, async (c) => {
    const { sha256 } = c.req.valid('param');
    const stream = c.req.raw.body;
    const tooLarge = { problem: `An attachment is at most ${LARGEST_ATTACHMENT} bytes.` };
    if (Number(c.req.header('content-length') ?? 0) > LARGEST_ATTACHMENT) {
      endLine(c);
      return c.json(tooLarge, 413);
    }
    if (stream === null) return c.json({ problem: 'No bytes were sent.' }, 422);
    const outcome = await files.attach(stream, { sha256, ...c.req.valid('query') });
    if (outcome.kind === 'attached') return c.json(outcome.attachment, 200);
    endLine(c);
    if (outcome.kind === 'tooLarge') return c.json(tooLarge, 413);
    if (outcome.kind === 'otherType') {
      const problem = `Only these can be kept: ${ATTACHMENT_TYPES.join(', ')}.`;
      return c.json({ problem }, 415);
    }
    const problem = `What came has the SHA-256 ${outcome.sha256}: it was cut off or changed on the way. Send it again.`;
    return c.json({ problem }, 422);
  });
  app.openapi(attachmentRoute, async (c) => {
    const { sha256 } = c.req.valid('param');
    const attachment = await records.attachment(sha256);
    if (attachment === undefined) return c.json({ problem: 'There is no such attachment.' }, 404);
    // What is under this name can never be something else.
    return c.body(Readable.toWeb(createReadStream(files.pathOf(sha256))) as ReadableStream, 200, {
      'Content-Type': attachment.type,
      'Content-Length': String(attachment.size),
      'Content-Disposition': 'attachment',
      'Cache-Control': 'private, max-age=31536000, immutable',
    });
  });

  app.doc31('/api/openapi.json', {
    openapi: '3.1.0',
    info: {
      title: 'Fallwright',
      version: packageFile.version,
      description: 'Records of a workshop for ram pumps: saved, shared, never written over.',
    },
  });
  return app;
}

const NO_PRECONDITION = {
  problem:
    'Say what the change began from: If-Match with the revision in quotes, or If-None-Match: * for a new record.',
};

function baseOf(sent: z.infer<typeof preconditions>): number | undefined {
  if (sent['if-match'] !== undefined) return Number(sent['if-match'].slice(1, -1));
  return sent['if-none-match'] === '*' ? 0 : undefined;
}

/** Bytes that are not read any more would stand before the next request of this line. */
function endLine(c: Context): void {
  c.header('Connection', 'close');
}

function etagOf({ revision }: StoredRevision): string {
  return `"${revision}"`;
}

/** Undefined when the document says that it is what its address says. */
function wrongFormat({ kind }: RecordName, written: string) {
  const format = `${kind}@1`;
  if (written === format) return undefined;
  const message = `this must be ${format}, and is ${written.slice(0, 40)}`;
  return {
    problem: 'The document is of another kind or version.',
    problems: [{ field: 'document.fallwright', message }],
  };
}

/** Fields that were left out are not there, rather than undefined. */
function present<Given extends object>(
  given: Given,
): { [Field in keyof Given]: Exclude<Given[Field], undefined> } {
  // Only entries that hold undefined go, and those the type leaves out.
  return Object.fromEntries(
    Object.entries(given).filter(([, value]) => value !== undefined),
  ) as never;
}
