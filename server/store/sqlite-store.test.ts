/** The contract on a real SQLite file, and what is SQLite's alone. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Place, storeContract } from './contract.ts';
import { openStore } from './open-store.ts';
import { SQLITE_FILE } from './sqlite-records.ts';
import { StoreFullError, StoreTakenError } from './store.ts';

let root: string;
let places = 0;

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'fallwright-store-'));
});
afterAll(() => rmSync(root, { recursive: true }), 60_000);

async function newPlace(): Promise<Place> {
  places += 1;
  const folder = join(root, `place-${places}`);
  mkdirSync(folder);
  return {
    options: { folder },
    run: async (text) => {
      const file = new DatabaseSync(join(folder, SQLITE_FILE));
      file.exec(text);
      file.close();
    },
  };
}

storeContract(newPlace);

const SAVE = {
  kind: 'site',
  id: 'larkrise',
  base: 0,
  document: { fallwright: 'site@1', name: 'Larkrise spring' },
  changed: 'begun',
  author: 'Ann',
  device: 'desk',
  operation: '1',
} as const;

test('a second server on one folder is refused in words, and the first goes on', async () => {
  const { options } = await newPlace();
  const first = await openStore(options);
  await expect(openStore(options)).rejects.toThrow(StoreTakenError);
  await expect(openStore(options)).rejects.toThrow(/--data FOLDER/);
  expect(await first.records.save(SAVE)).toMatchObject({ kind: 'saved' });
  await first.close();
  const second = await openStore(options);
  expect(await second.records.read(SAVE)).toMatchObject({ revision: 1 });
  await second.close();
});

describe('a full disk', () => {
  /** A small file system of our own, where this machine lets us have one. */
  function smallDisk(): string | undefined {
    const folder = join(root, 'small');
    mkdirSync(folder);
    try {
      execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=2m', 'tmpfs', folder], { stdio: 'ignore' });
      return folder;
    } catch {
      return undefined;
    }
  }

  test('what does not fit is refused, what was acknowledged stays, and with room it goes on', async (context) => {
    const folder = smallDisk();
    if (folder === undefined) {
      console.error('\n!! SKIPPED: a full disk. Only root may mount a small one.\n');
      return context.skip();
    }
    try {
      const store = await openStore({ folder });
      let saved = 0;
      const fill = async (): Promise<void> => {
        while (true) {
          const notes = 'water '.repeat(5000);
          const document = { ...SAVE.document, notes };
          await store.records.save({ ...SAVE, base: saved, document, operation: `${saved}` });
          saved += 1;
        }
      };
      await expect(fill()).rejects.toThrow(StoreFullError);
      expect(saved).toBeGreaterThan(3);
      const photo = async function* () {
        yield Buffer.concat([Buffer.from([0xff, 0xd8, 0xff]), Buffer.alloc(2_000_000)]);
      };
      const about = { sha256: '0'.repeat(64), author: 'Ann', device: 'desk' };
      await expect(store.files.attach(photo(), about)).rejects.toThrow(StoreFullError);
      expect((await store.records.read(SAVE))?.revision).toBe(saved);
      expect(await store.problems()).toEqual([]);

      execFileSync('mount', ['-o', 'remount,size=8m', folder]);
      const next = { ...SAVE, base: saved, operation: 'with room' };
      expect(await store.records.save(next)).toMatchObject({ kind: 'saved' });
      await store.close();
    } finally {
      execFileSync('umount', ['-l', folder]);
    }
  });
});

test('twenty thousand places open within a second and are searched within 100 ms', async () => {
  const { options, run } = await newPlace();
  await (await openStore(options)).close();
  await run(twentyThousandPlaces());
  const started = performance.now();
  const store = await openStore(options);
  const opened = performance.now() - started;
  expect(opened).toBeLessThan(1000);
  const times: number[] = [];
  for (const words of ['hollow 19', 'no such word', 'ford', 'akesson']) {
    const asked = performance.now();
    await store.records.search({ kind: 'site', words, limit: 50 });
    times.push(performance.now() - asked);
  }
  expect(Math.min(...times)).toBeLessThan(100);
  const searched = times.map((time) => time.toFixed(1)).join(', ');
  console.log(`20,000 places: opened in ${opened.toFixed(0)} ms, searched in ${searched} ms`);
  await store.close();
}, 60_000);

/** As the store writes them, with documents of a usual length. */
function twentyThousandPlaces(): string {
  return `
    with recursive n(n) as (select 1 union all select n + 1 from n where n < 20000)
    insert into revisions select 'site', 'place-' || n, 1, n,
      '{"fallwright":"site@1","name":"Hollow ' || n || '","notes":"' ||
      replace(hex(zeroblob(1000)), '0', 'w') || '"}', '{}', 0, 'begun', 'Ann', 'desk', 'p' || n,
      '2026-02-01T08:00:00.000Z', null from n;
    insert into records select kind, id, revision, change, deleted, saved_at, 'Hollow ' || change,
      'hollow ' || change || ' m. akesson upper valley ford below the gate ' ||
      replace(hex(zeroblob(100)), '0', 'w') from revisions;
    update change_counter set value = 20000;`;
}
