/** What every store must keep, whatever database is behind it: run by one test file for each. */
import { type ChildProcess, spawn } from 'node:child_process';
import { createHash, randomBytes } from 'node:crypto';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as rest } from 'node:timers/promises';
import type { PlainRecord } from '@fallwright/records';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { LARGEST_ATTACHMENT } from './attachment-files.ts';
import { openStore, type Store, type StoreOptions } from './open-store.ts';
import type { Save, SaveOutcome } from './store.ts';

/** An empty place for a store, and plain SQL run on what is there while no store has it open. */
export interface Place {
  readonly options: StoreOptions;
  readonly run: (text: string) => Promise<void>;
}

export const OLD_STORE = readFileSync(join(import.meta.dirname, 'fixtures', 'store-1.sql'), 'utf8');
const BUSY_STORE = join(import.meta.dirname, 'faults', 'busy-store.ts');

/** The long run kills as often as the store's figures promise; the short one often enough to see a rule broken. */
const KILLS = process.env.FALLWRIGHT_LONG === '1' ? 30 : 5;

export function storeContract(newPlace: () => Promise<Place>): void {
  let place: Place;
  let store: Store;
  let clock = Date.UTC(2026, 4, 1);
  const now = (): Date => {
    clock += 1000;
    return new Date(clock);
  };
  const open = (): Promise<Store> => openStore({ ...place.options, now });

  beforeEach(async () => {
    place = await newPlace();
    store = await open();
  });
  afterEach(async () => {
    await store.close();
  });

  let operations = 0;
  const save = (given: Partial<Save> = {}): Promise<SaveOutcome> => {
    operations += 1;
    return store.records.save({
      kind: 'site',
      id: 'larkrise',
      base: 0,
      document: larkrise('1.9 m'),
      changed: 'the fall',
      author: 'Ann',
      device: 'desk',
      operation: `${operations}`,
      ...given,
    });
  };

  describe('saving', () => {
    test('each save is a revision; none is written over', async () => {
      await save();
      await save({ base: 1, document: larkrise('2.1 m'), unread: { lift: '12' }, author: 'Ben' });
      const read = await store.records.read(LARKRISE);
      expect(read).toMatchObject({
        revision: 2,
        document: larkrise('2.1 m'),
        unread: { lift: '12' },
        author: 'Ben',
        deleted: false,
      });
      const history = await store.records.history(LARKRISE);
      expect(history.map(({ revision, document }) => [revision, document.fall])).toEqual([
        [2, '2.1 m'],
        [1, '1.9 m'],
      ]);
      expect(await store.records.read({ kind: 'site', id: 'nowhere' })).toBeUndefined();
    });

    test('a save from an older revision changes nothing and gives both', async () => {
      await save();
      await save({ base: 1, document: larkrise('2.1 m') });
      const outcome = await save({ base: 1, document: larkrise('1.8 m') });
      expect(outcome).toMatchObject({
        kind: 'conflict',
        current: { revision: 2, document: larkrise('2.1 m') },
        base: { revision: 1, document: larkrise('1.9 m') },
      });
      expect(await store.records.history(LARKRISE)).toHaveLength(2);
      expect(await save({ id: 'nowhere', base: 3 })).toEqual({ kind: 'missing' });
      expect(await save()).toMatchObject({ kind: 'conflict', base: undefined });
    });

    test('a save sent twice is made once, also after others', async () => {
      const first = await save({ operation: 'a' });
      expect(first).toMatchObject({ kind: 'saved', repeated: false });
      await save({ base: 1, document: larkrise('2 m'), device: 'tablet', operation: 'a' });
      const again = await save({ operation: 'a' });
      expect(again).toMatchObject({ kind: 'saved', repeated: true, record: { revision: 1 } });
      expect((await store.records.read(LARKRISE))?.document).toEqual(larkrise('2 m'));
      expect(await save({ operation: 'a', document: larkrise('3 m') })).toEqual({
        kind: 'otherOperation',
      });
    });

    test('of many who save from one revision at once, one wins and nobody is half done', async () => {
      await save();
      const outcomes = await Promise.all(
        Array.from({ length: 20 }, (_, i) => save({ base: 1, document: larkrise(`${i} m`) })),
      );
      expect(outcomes.filter(({ kind }) => kind === 'saved')).toHaveLength(1);
      expect(outcomes.filter(({ kind }) => kind === 'conflict')).toHaveLength(19);
      expect(await store.records.history(LARKRISE)).toHaveLength(2);
      expect(await store.problems()).toEqual([]);
    });

    test('a deletion is a revision that can be undone', async () => {
      await save();
      await save({ base: 1, deleted: true, changed: 'deleted' });
      expect(await store.records.search({ limit: 10 })).toEqual([]);
      expect(await store.records.search({ limit: 10, deleted: true })).toHaveLength(1);
      await save({ base: 2, changed: 'brought back' });
      expect(await store.records.search({ limit: 10 })).toMatchObject([{ id: 'larkrise' }]);
      expect(await store.records.history(LARKRISE)).toHaveLength(3);
    });

    test('any text comes back as it went in', async () => {
      const document = { ...larkrise('1.9 m'), notes: '0 \u0000 \ud83d 😀 \\ \' " %' };
      await save({ document, author: 'An\u0000n', changed: 'a\nb' });
      const read = await store.records.read(LARKRISE);
      expect(read?.document).toEqual(document);
      expect(read).toMatchObject({ author: 'An n', changed: 'a b' });
    });

    test('a device with a wrong clock is shown with it, and it decides nothing', async () => {
      await save({ deviceTime: '2099-01-01T00:00:00.000Z' });
      await save({ base: 1, document: larkrise('2 m'), deviceTime: '1970-01-01T00:00:00.000Z' });
      const read = await store.records.read(LARKRISE);
      expect(read).toMatchObject({ revision: 2, deviceTime: '1970-01-01T00:00:00.000Z' });
      expect(read?.savedAt).toMatch(/^2026-05-01/);
    });
  });

  describe('catching up', () => {
    test('a device asks for what changed after its cursor, and gets each record once', async () => {
      for (const id of ['a', 'b', 'c', 'd', 'e']) await save({ id });
      const first = await store.records.changesSince(0, 3);
      expect(first.records.map(({ id }) => id)).toEqual(['a', 'b', 'c']);
      expect(first.hasMore).toBe(true);
      await save({ id: 'a', base: 1, document: larkrise('2 m') });
      await save({ id: 'd', base: 1, deleted: true });
      const rest = await store.records.changesSince(first.cursor, 10);
      expect(rest.records.map(({ id, revision, deleted }) => [id, revision, deleted])).toEqual([
        ['e', 1, false],
        ['a', 2, false],
        ['d', 2, true],
      ]);
      expect(await store.records.changesSince(rest.cursor, 10)).toEqual({
        records: [],
        cursor: rest.cursor,
        hasMore: false,
      });
    });

    test('one who asks while others save misses nothing', async () => {
      const seen = new Map<string, number>();
      let cursor = 0;
      let isSaving = true;
      const watch = async (): Promise<void> => {
        while (true) {
          const wasSaving = isSaving;
          const changes = await store.records.changesSince(cursor, 7);
          for (const { id, revision } of changes.records) seen.set(id, revision);
          cursor = changes.cursor;
          if (!wasSaving && !changes.hasMore) return;
          await rest(1);
        }
      };
      const writers = Array.from({ length: 5 }, async (_, writer) => {
        for (let i = 0; i < 12; i += 1) await save({ id: `w${writer}-${i}` });
      });
      const watching = watch();
      await Promise.all(writers);
      isSaving = false;
      await watching;
      expect(seen.size).toBe(60);
    });
  });

  describe('searching', () => {
    test('every word must be in name, owner, place or notes; case and accents play no part', async () => {
      await save({
        id: 'one',
        document: {
          fallwright: 'site@1',
          name: 'Tarn Hollow',
          owner: 'M. Åkesson',
          notes: '100 %_! of it',
        },
      });
      await save({ id: 'two', document: { fallwright: 'site@1', name: 'Tarn End' } });
      const ids = async (words: string) =>
        (await store.records.search({ words, limit: 10 })).map(({ id }) => id);
      expect(await ids('tarn')).toEqual(['two', 'one']);
      expect(await ids('AKESSON tarn')).toEqual(['one']);
      expect(await ids('%_!')).toEqual(['one']);
      expect(await ids('100_%')).toEqual([]);
      expect(await store.records.search({ kind: 'test', words: 'tarn', limit: 10 })).toEqual([]);
      expect(await store.records.search({ limit: 1 })).toHaveLength(1);
    });
  });

  describe('attachments', () => {
    const photo = Buffer.concat([Buffer.from([0xff, 0xd8, 0xff]), randomBytes(100_000)]);
    const attach = (content: Buffer, sha256 = shaOf(content)) =>
      store.files.attach(inParts(content), { sha256, author: 'Ann', device: 'desk' });

    test('a photo is kept under what is in it, once', async () => {
      expect(await attach(photo)).toMatchObject({
        kind: 'attached',
        isNew: true,
        attachment: { size: photo.length, type: 'image/jpeg' },
      });
      expect(await attach(photo)).toMatchObject({ kind: 'attached', isNew: false });
      expect(readFileSync(store.files.pathOf(shaOf(photo))).equals(photo)).toBe(true);
      expect(await store.problems()).toEqual([]);
    });

    test('what was cut off, is no photo, or is too large leaves nothing', async () => {
      expect(await attach(photo.subarray(0, 50_000), shaOf(photo))).toMatchObject({
        kind: 'otherContent',
      });
      expect(await attach(Buffer.from('<svg onload="x()"></svg> and more'))).toEqual({
        kind: 'otherType',
      });
      expect(await attach(Buffer.alloc(0))).toEqual({ kind: 'otherType' });
      const huge = async function* () {
        for (let size = 0; size <= LARGEST_ATTACHMENT; size += photo.length) yield photo;
      };
      const about = { sha256: shaOf(photo), author: 'Ann', device: 'desk' };
      expect(await store.files.attach(huge(), about)).toEqual({ kind: 'tooLarge' });
      expect(await store.records.attachments()).toEqual([]);
      expect(await store.files.sweep(0)).toBe(0);
      expect(() => store.files.pathOf('../../etc/passwd')).toThrow(RangeError);
    });

    test('a file that was changed, lost or left over is told by the check', async () => {
      await attach(photo);
      const path = store.files.pathOf(shaOf(photo));
      await writeFile(path, 'something else');
      await writeFile(join(place.options.folder, 'attachments', 'incoming', 'left'), 'half');
      expect((await store.problems()).map(({ message }) => message)).toEqual([
        'its file holds something else',
        'no record of the store knows this file',
      ]);
      expect(await store.files.sweep(0)).toBe(1);
    });
  });

  describe('forward, never back', () => {
    test('an old store is brought forward with everything in it, and can be searched', async () => {
      await store.close();
      place = await newPlace();
      await place.run(OLD_STORE);
      store = await open();
      expect(await store.records.search({ words: 'akesson ford', limit: 10 })).toEqual([
        {
          kind: 'site',
          id: 'larkrise-spring',
          name: 'Larkrise spring',
          revision: 2,
          deleted: false,
          savedAt: '2026-01-12T08:00:00.000Z',
        },
      ]);
      const { records } = await store.records.changesSince(0, 10);
      expect(records.map(({ id, revision, deleted }) => [id, revision, deleted])).toEqual([
        ['range', 1, false],
        ['larkrise-spring', 2, false],
        ['tarn-hollow', 2, true],
      ]);
      const [, first] = await store.records.history({ kind: 'site', id: 'tarn-hollow' });
      expect(first).toMatchObject({
        unread: { lift: '12 or so' },
        deviceTime: '2031-04-01T00:00:00.000Z',
      });
      expect(await save({ id: 'larkrise-spring', base: 2 })).toMatchObject({ kind: 'saved' });
      expect(await store.problems()).toEqual([]);
    });

    test('a store of a newer version is refused and left as it is', async () => {
      await save();
      await store.close();
      await place.run("update store_meta set value = '999' where name = 'version'");
      await expect(open()).rejects.toThrow(/written by a newer Fallwright \(format 999/);
      await place.run("update store_meta set value = '2' where name = 'version'");
      store = await open();
      expect(await store.records.read(LARKRISE)).toMatchObject({ document: larkrise('1.9 m') });
    });
  });

  describe('killed', () => {
    const start = (name: string): ChildProcess =>
      spawn(process.execPath, [BUSY_STORE, JSON.stringify(place.options), name], {
        stdio: ['ignore', 'pipe', 'inherit'],
      });

    test(`at ${KILLS} moments of saving and uploading: what was acknowledged is there, nothing else`, async () => {
      let acknowledged = 0;
      for (let kill = 0; kill < KILLS; kill += 1) {
        await store.close();
        const name = `busy-${kill}`;
        const child = start(name);
        let said = '';
        child.stdout?.on('data', (text) => {
          said += text;
        });
        const ended = once(child, 'close');
        while (!said.includes('saved') && child.exitCode === null) await rest(2);
        await rest(((kill * 37) % 100) + kill / KILLS);
        child.kill('SIGKILL');
        await ended;
        store = await openStore({ ...place.options, now: () => new Date(Date.now() + HOURS) });

        const saved = [...said.matchAll(/^saved (\d+)$/gm)].length;
        const kept = (await store.records.read({ kind: 'site', id: name }))?.revision ?? 0;
        // The last one may have been kept and not been acknowledged any more.
        expect(kept - saved).toBeGreaterThanOrEqual(0);
        expect(kept - saved).toBeLessThanOrEqual(1);
        for (const [, sha256 = ''] of said.matchAll(/^attached (\w+)$/gm)) {
          expect(await store.records.attachment(sha256)).toBeDefined();
        }
        expect(await store.problems()).toEqual([]);
        acknowledged += saved;
      }
      expect(acknowledged).toBeGreaterThan(KILLS);
    }, 300_000);

    test(`at ${KILLS} moments of being brought forward: it opens and all is there`, async () => {
      let cutOff = 0;
      for (let kill = 0; kill < KILLS; kill += 1) {
        await store.close();
        place = await newPlace();
        await place.run(`${OLD_STORE}\n${manyOldRecords(1500)}`);
        const child = start('forward');
        let said = '';
        child.stdout?.on('data', (text) => {
          said += text;
        });
        const ended = once(child, 'close');
        while (!said.includes('begun')) await rest(1);
        // From the first moment on, closer together where the shorter of the two databases is still at it.
        await rest(250 * (kill / KILLS) ** 2);
        if (!said.includes('open')) cutOff += 1;
        child.kill('SIGKILL');
        await ended;
        store = await openStore({ ...place.options, now: () => new Date(Date.now() + HOURS) });
        expect(await store.records.search({ words: 'old', limit: 5000 })).toHaveLength(1500);
        expect((await store.problems()).map(({ message }) => message)).toEqual([]);
      }
      expect(cutOff).toBeGreaterThan(0);
    }, 300_000);
  });
}

/** So late that an upload of the killed server is nobody's any more. */
const HOURS = 2 * 60 * 60 * 1000;

const LARKRISE = { kind: 'site', id: 'larkrise' } as const;

function larkrise(fall: string): PlainRecord {
  return { fallwright: 'site@1', name: 'Larkrise spring', fall };
}

function shaOf(content: Buffer): string {
  return createHash('sha256').update(content).digest('hex');
}

async function* inParts(content: Buffer): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < content.length; at += 16_384) yield content.subarray(at, at + 16_384);
}

function manyOldRecords(count: number): string {
  const document = '{"fallwright":"site@1","name":"an old place"}';
  const rows = Array.from({ length: count }, (_, i) => i + 10);
  const revisions = rows.map(
    (n) =>
      `('site', 'old-${n}', 1, ${n}, '${document}', '{}', 0, 'begun', 'Ann', 'desk', 'old-${n}', '2026-02-01T08:00:00.000Z', null)`,
  );
  const records = rows.map((n) => `('site', 'old-${n}', 1, ${n}, 0, '2026-02-01T08:00:00.000Z')`);
  return `insert into revisions values ${revisions.join(', ')};
    insert into records values ${records.join(', ')};
    update change_counter set value = ${count + 10};`;
}
