/** The contract on a real PostgreSQL server, and what is PostgreSQL's alone. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Place, storeContract } from './contract.ts';
import { openStore } from './open-store.ts';
import { type PrivatePostgres, postgresPrograms, startPostgres } from './private-postgres.ts';

const programs = postgresPrograms();
if (programs === undefined) {
  console.error('\n!! SKIPPED: the store on PostgreSQL. No server in /usr/lib/postgresql.\n');
}

describe.skipIf(programs === undefined)('on PostgreSQL', () => {
  let server: PrivatePostgres;
  let root: string;

  beforeAll(async () => {
    root = mkdtempSync(join(tmpdir(), 'fallwright-store-'));
    server = await startPostgres(programs ?? '');
  }, 60_000);
  afterAll(() => {
    server.stop();
    rmSync(root, { recursive: true });
  }, 60_000);

  async function newPlace(): Promise<Place> {
    const connection = await server.newDatabase();
    return {
      options: { folder: mkdtempSync(join(root, 'place-')), connection },
      run: async (text) => {
        const client = new pg.Client({ connectionString: connection });
        await client.connect();
        await client.query(text);
        await client.end();
      },
    };
  }

  storeContract(newPlace);

  test('two servers that start at once on an old store bring it forward once, and share it', async () => {
    const { options, run } = await newPlace();
    const { OLD_STORE } = await import('./contract.ts');
    await run(OLD_STORE);
    const [one, other] = await Promise.all([openStore(options), openStore(options)]);
    const save = (store: typeof one, device: string) =>
      store.records.save({
        kind: 'site',
        id: 'larkrise-spring',
        base: 2,
        document: { fallwright: 'site@1', name: device },
        changed: 'the name',
        author: 'Ann',
        device,
        operation: '1',
      });
    const outcomes = await Promise.all([save(one, 'desk'), save(other, 'tablet')]);
    expect(outcomes.map(({ kind }) => kind).sort()).toEqual(['conflict', 'saved']);
    await one.close();
    await other.close();
  });
});
