/** Asks a real server with a real store over HTTP, and holds every answer against the OpenAPI page that it gives out. */
import { createHash, randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openStore, type RunningServer, type Store, startServer } from '../index.ts';
import { LARGEST_BODY } from './record-schemas.ts';

interface Page {
  readonly paths: Readonly<
    Record<string, Readonly<Record<string, { readonly responses: Readonly<Record<string, Told>> }>>>
  >;
}
interface Told {
  readonly content?: Readonly<Record<string, { readonly schema?: unknown }>>;
}
// biome-ignore lint/suspicious/noExplicitAny: the body of an answer, which the schema of the page judges
type Body = any;
interface Answer {
  readonly status: number;
  readonly headers: Headers;
  readonly body: Body;
}

let folder: string;
let store: Store;
let server: RunningServer;
let page: Page;
const ajv = new Ajv2020({ strict: false, validateFormats: false });
/** What was asked, as `put /api/records/{kind}/{id} 409`. */
const told = new Set<string>();

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fallwright-api-'));
  store = await openStore({ folder });
  server = await startServer({ port: 0, store });
  page = (await (await fetch(new URL('/api/openapi.json', server.address))).json()) as Page;
  ajv.addSchema(page, 'page');
});

afterAll(async () => {
  await server.stop();
  await store.close();
  rmSync(folder, { recursive: true });
});

/** Asks, and fails when the page does not foretell the answer. */
async function ask(method: string, path: string, init: RequestInit = {}): Promise<Answer> {
  const response = await fetch(new URL(path, server.address), { method, ...init });
  const { status, headers } = response;
  const bytes = Buffer.from(await response.arrayBuffer());
  const type = headers.get('content-type')?.split(';')[0] ?? '';
  const body = type === 'application/json' ? JSON.parse(bytes.toString()) : bytes;

  const [pathname = ''] = path.split('?');
  const template = Object.keys(page.paths).find((one) =>
    new RegExp(`^${one.replaceAll(/\{\w+\}/g, '[^/]+')}$`).test(pathname),
  );
  const verb = method.toLowerCase();
  const answer = page.paths[template ?? '']?.[verb]?.responses[String(status)];
  const where = `${verb} ${template} ${status}`;
  if (answer?.content?.[type] === undefined) throw new Error(`the page has no ${where} (${type})`);
  if (type === 'application/json') {
    const steps = ['paths', template ?? '', verb, 'responses', String(status), 'content', type];
    const at = steps.map((step) => encodeURIComponent(step.replaceAll('/', '~1'))).join('/');
    const isForetold = ajv.compile({ $ref: `page#/${at}/schema` });
    if (!isForetold(body)) throw new Error(`${where}: ${ajv.errorsText(isForetold.errors)}`);
  }
  told.add(where);
  return { status, headers, body };
}

let operations = 0;
function put(path: string, given: object = {}, headers: Record<string, string> = {}) {
  operations += 1;
  const isNew = headers['If-Match'] === undefined;
  return ask('PUT', path, {
    headers: {
      'Content-Type': 'application/json',
      ...(isNew ? { 'If-None-Match': '*' } : {}),
      ...headers,
    },
    body: JSON.stringify({ ...SAVE, operation: `${operations}`, ...given }),
  });
}

const DOCUMENT = { fallwright: 'site@1', name: 'Larkrise spring', fall: '1.9 m' };
const SAVE = { document: DOCUMENT, changed: 'begun', author: 'Ann', device: 'desk' };

describe('records', () => {
  test('a site is saved, read, changed, taken out, brought back; each state stays', async () => {
    const path = '/api/records/site/larkrise';
    expect((await ask('GET', path)).status).toBe(404);
    const made = await put(path, {
      deviceTime: '2031-01-01T00:00:00.000Z',
      unread: { lift: '12' },
    });
    expect(made).toMatchObject({ status: 200, body: { revision: 1, deleted: false } });
    expect(made.headers.get('etag')).toBe('"1"');
    const second = { ...DOCUMENT, fall: '2.1 m' };
    await put(path, { document: second, author: 'Ben' }, { 'If-Match': '"1"' });
    await put(path, { document: second, deleted: true }, { 'If-Match': '"2"' });
    expect((await ask('GET', '/api/search?words=larkrise')).body.records).toEqual([]);
    const restored = await ask('POST', `${path}/restore`, {
      headers: { 'Content-Type': 'application/json', 'If-Match': '"3"' },
      body: JSON.stringify({ revision: 1, author: 'Ann', device: 'desk', operation: 'back' }),
    });
    expect(restored.body).toMatchObject({ revision: 4, deleted: false, document: DOCUMENT });
    expect((await ask('GET', '/api/search?words=LARKRISE&kind=site')).body.records).toHaveLength(1);
    const { body } = await ask('GET', `${path}/history`);
    expect(body.revisions.map((one: Body) => [one.author, one.deleted])).toEqual([
      ['Ann', false],
      ['Ann', true],
      ['Ben', false],
      ['Ann', false],
    ]);
    expect((await ask('GET', `${path}/history/2`)).body.document).toEqual(second);
    expect((await ask('GET', `${path}/history/9`)).status).toBe(404);
    expect((await ask('GET', '/api/records/site/nowhere/history')).status).toBe(404);
  });

  test('a save from an older revision gets both; one sent twice is made once', async () => {
    const path = '/api/records/site/tarn-hollow';
    const first = { operation: 'sent-twice' };
    await put(path, first);
    expect(await put(path, first)).toMatchObject({ status: 200, body: { revision: 1 } });
    await put(
      path,
      { document: { ...DOCUMENT, fall: '2 m' }, author: 'Ben' },
      { 'If-Match': '"1"' },
    );
    const late = await put(path, { document: { ...DOCUMENT, fall: '3 m' } }, { 'If-Match': '"1"' });
    expect(late).toMatchObject({
      status: 409,
      body: {
        current: { revision: 2, author: 'Ben', document: { fall: '2 m' } },
        base: { revision: 1, document: { fall: '1.9 m' } },
      },
    });
    expect(late.body.problem).toMatch(/^Ben saved revision 2 in between/);
    const other = { ...first, document: { ...DOCUMENT, fall: '9 m' } };
    expect(await put(path, other)).toMatchObject({ status: 422 });
    expect(await put('/api/records/site/nowhere', {}, { 'If-Match': '"7"' })).toMatchObject({
      status: 404,
    });
  });

  test('a device that was away asks from its cursor, in parts', async () => {
    const { cursor } = (await ask('GET', '/api/records?limit=1')).body;
    for (const id of ['a', 'b', 'c'])
      await put(`/api/records/test/${id}`, {
        document: { fallwright: 'test@1' },
      });
    const seen: string[] = [];
    for (let since = cursor, hasMore = true; hasMore; ) {
      const { body } = await ask('GET', `/api/records?since=${since}&limit=2`);
      seen.push(...body.records.map(({ id }: Body) => id));
      ({ cursor: since, hasMore } = body);
    }
    expect(seen.slice(-3)).toEqual(['a', 'b', 'c']);
    expect(new Set(seen).size).toBe(seen.length);
  });

  test.each([
    ['without saying what it began from', 428, {}, { 'If-None-Match': '' }],
    ['without a device', 422, { device: undefined }, {}],
    ['of another kind', 422, { document: { fallwright: 'range@1' } }, {}],
    ['of a newer version', 422, { document: { fallwright: 'site@2' } }, {}],
    ['that is a list', 422, { document: [] }, {}],
    ['with fields we do not know', 422, { colour: 'blue' }, {}],
    ['too deep', 422, { document: { ...DOCUMENT, a: deep(40) } }, {}],
    ['too large', 413, { document: { ...DOCUMENT, notes: 'x'.repeat(LARGEST_BODY) } }, {}],
  ])('one %s is refused and nothing is saved', async (_, status, given, headers) => {
    const path = '/api/records/site/refused';
    const sent = Object.fromEntries(Object.entries(headers).filter(([, value]) => value !== ''));
    const answer =
      status === 428
        ? await ask('PUT', path, {
            headers: { 'Content-Type': 'application/json' },
            body: JSON.stringify({ ...SAVE, operation: 'x' }),
          })
        : await put(path, given, sent);
    expect(answer.status).toBe(status);
    expect(answer.body.problem).toMatch(/\w/);
    expect((await ask('GET', path)).status).toBe(404);
  });

  test('what is no JSON, has a path trick for a name, or asks for nonsense is refused in words', async () => {
    const headers = { 'Content-Type': 'application/json', 'If-None-Match': '*' };
    const path = '/api/records/site/refused';
    expect(await ask('PUT', path, { headers, body: '{"a":' })).toMatchObject({ status: 400 });
    const proto = JSON.stringify({ ...SAVE, operation: 'p' }).replace('"name"', '"__proto__"');
    expect(await ask('PUT', path, { headers, body: proto })).toMatchObject({ status: 422 });
    expect(await put('/api/records/site/..%2f..%2fetc')).toMatchObject({ status: 422 });
    expect(await ask('GET', '/api/records/secrets/one')).toMatchObject({ status: 422 });
    const { body } = await ask('GET', '/api/records?since=-1&limit=9999');
    expect(body.problems.map(({ field }: Body) => field)).toEqual(['since', 'limit']);
  });
});

describe('attachments', () => {
  const photo = Buffer.concat([Buffer.from([0xff, 0xd8, 0xff]), randomBytes(300_000)]);
  const address = (content: Buffer, query = '?author=Ann&device=phone') =>
    `/api/attachments/${createHash('sha256').update(content).digest('hex')}${query}`;

  test('a photo comes back as it was sent', async () => {
    const sent = await ask('PUT', address(photo), { body: photo });
    expect(sent.body).toMatchObject({ size: photo.length, type: 'image/jpeg', author: 'Ann' });
    expect((await ask('PUT', address(photo), { body: photo })).status).toBe(200);
    const got = await ask('GET', address(photo, ''));
    expect(got.body.equals(photo)).toBe(true);
    expect(got.headers.get('content-disposition')).toBe('attachment');
    expect(got.headers.get('x-content-type-options')).toBe('nosniff');
    expect((await ask('GET', `/api/attachments/${'0'.repeat(64)}`)).status).toBe(404);
  });

  test('what was cut off, is no photo or too large is refused, and the server goes on', async () => {
    const half = photo.subarray(0, 1000);
    expect((await ask('PUT', address(photo), { body: half })).status).toBe(422);
    const page = Buffer.from('<script>alert(1)</script>');
    expect((await ask('PUT', address(page), { body: page })).status).toBe(415);
    const huge = new ReadableStream({
      pull: (controller) => controller.enqueue(photo),
    });
    const init = { body: huge, duplex: 'half' } as RequestInit;
    const refused = await ask('PUT', address(photo), init).then(
      ({ status }) => status,
      // The service may close the line before the sender has seen why.
      () => 413,
    );
    expect(refused).toBe(413);
    expect(await store.problems()).toEqual([]);
    expect((await ask('GET', address(photo, ''))).status).toBe(200);
  });
});

describe('pages of others', () => {
  /** `fetch` sets both headers itself. */
  const status = (headers: Record<string, string>) =>
    new Promise<number | undefined>((resolve, reject) => {
      request(new URL('/api/records', server.address), { headers }, (response) => {
        response.resume();
        resolve(response.statusCode);
      })
        .on('error', reject)
        .end();
    });

  test.each([
    [{ Host: 'fallwright.example' }, 403],
    [{ Host: '127.0.0.1.example' }, 403],
    [{ Origin: 'http://elsewhere.example' }, 403],
    [{ Origin: 'null' }, 403],
    [{ Host: 'localhost:4740', Origin: 'http://localhost:4740' }, 200],
    [{ Host: '[::1]:4740' }, 200],
  ])('%j is answered with %d', async (headers, expected) => {
    expect(await status(headers)).toBe(expected);
  });
});

test('the tests have seen an answer of every address on the page', () => {
  const asked = new Set([...told].map((where) => where.replace(/ \d+$/, '')));
  const addresses = Object.entries(page.paths).flatMap(([path, verbs]) =>
    Object.keys(verbs).map((verb) => `${verb} ${path}`),
  );
  expect(addresses.filter((address) => !asked.has(address))).toEqual([]);
  expect(told.size).toBeGreaterThan(20);
});

function deep(levels: number): object {
  return levels === 0 ? {} : { a: deep(levels - 1) };
}
