/**
 * Records on any of the databases: every read and every save, once.
 *
 * A save takes the counter of changes first and holds it to its end. So saves come one after another, a number is never
 * seen before a lower one, and a device that asks for all after its cursor misses nothing.
 */
import type { PlainRecord } from '@fallwright/records';
import { sql, type Transaction } from 'kysely';
import { clean, folded, nameIn, wordsIn } from './search-words.ts';
import type {
  Attachment,
  RecordKind,
  RecordName,
  Records,
  Save,
  SaveOutcome,
  StoredRecord,
  StoredRevision,
  StoreProblem,
} from './store.ts';
import type { Database, Tables } from './tables.ts';

export interface RecordsOptions {
  readonly now: () => Date;
  readonly isIntegrityKept: () => Promise<readonly StoreProblem[]>;
  readonly asOurError?: (error: unknown) => unknown;
  readonly close: () => Promise<void>;
}

type Row = Tables['revisions'];

export function createRecords(
  db: Database,
  { now, isIntegrityKept, asOurError = (error) => error, close }: RecordsOptions,
): Records {
  const save = async (change: Save): Promise<SaveOutcome> => {
    const step = await db.startTransaction().execute();
    try {
      const outcome = await saveIn(step, change, now().toISOString());
      const isWritten = outcome.kind === 'saved' && !outcome.repeated;
      await (isWritten ? step.commit() : step.rollback()).execute();
      return outcome;
    } catch (error) {
      // What broke the save may have ended the transaction already.
      await step
        .rollback()
        .execute()
        .catch(() => undefined);
      throw asOurError(error);
    }
  };

  return {
    save,
    close,
    read: (name) => readIn(db, name),
    changesSince: async (cursor, limit) => {
      const rows = await currentRows(db)
        .where('records.change', '>', cursor)
        .orderBy('records.change')
        .limit(limit + 1)
        .execute();
      const records = rows.slice(0, limit).map(recordOf);
      return {
        records,
        cursor: records.at(-1)?.change ?? cursor,
        hasMore: rows.length > limit,
      };
    },
    history: async ({ kind, id }) => {
      const rows = await db
        .selectFrom('revisions')
        .selectAll()
        .where('kind', '=', kind)
        .where('id', '=', id)
        .orderBy('revision', 'desc')
        .execute();
      return rows.map(revisionOf);
    },
    revision: (name, revision) => revisionIn(db, name, revision),
    search: async ({ kind, words = '', deleted = false, limit }) => {
      let query = db
        .selectFrom('records')
        .select(['kind', 'id', 'name', 'revision', 'deleted', 'saved_at'])
        .where('deleted', '=', deleted ? 1 : 0);
      if (kind !== undefined) query = query.where('kind', '=', kind);
      for (const word of folded(words).split(/\s+/)) {
        if (word === '') continue;
        query = query.where(sql<boolean>`words like ${`%${literally(word)}%`} escape '!'`);
      }
      const rows = await query.orderBy('saved_at', 'desc').orderBy('id').limit(limit).execute();
      return rows.map((row) => ({
        kind: row.kind as RecordKind,
        id: row.id,
        name: row.name,
        revision: row.revision,
        deleted: row.deleted === 1,
        savedAt: row.saved_at,
      }));
    },
    attachment: async (sha256) => {
      const row = await db
        .selectFrom('attachments')
        .selectAll()
        .where('sha256', '=', sha256)
        .executeTakeFirst();
      return row && attachmentOf(row);
    },
    addAttachment: async ({ addedAt, ...attachment }) => {
      try {
        const added = await db
          .insertInto('attachments')
          .values({ ...attachment, author: clean(attachment.author), added_at: addedAt })
          .onConflict((there) => there.column('sha256').doNothing())
          .executeTakeFirst();
        return added.numInsertedOrUpdatedRows === 1n;
      } catch (error) {
        throw asOurError(error);
      }
    },
    attachments: async () => {
      const rows = await db.selectFrom('attachments').selectAll().orderBy('sha256').execute();
      return rows.map(attachmentOf);
    },
    problems: async () => [...(await isIntegrityKept()), ...(await recordProblems(db))],
  };
}

async function saveIn(
  db: Transaction<Tables>,
  { kind, id, base, ...given }: Save,
  savedAt: string,
): Promise<SaveOutcome> {
  const name = { kind, id };
  const { value: change } = await db
    .updateTable('change_counter')
    .set((row) => ({ value: row('value', '+', 1) }))
    .where('id', '=', 1)
    .returning('value')
    .executeTakeFirstOrThrow();
  const document = JSON.stringify(given.document);
  const unread = JSON.stringify(given.unread ?? {});
  const deleted = given.deleted === true ? 1 : 0;

  const before = await db
    .selectFrom('revisions')
    .selectAll()
    .where('device', '=', given.device)
    .where('operation', '=', given.operation)
    .executeTakeFirst();
  if (before !== undefined) {
    const isSame =
      before.kind === kind &&
      before.id === id &&
      before.revision === base + 1 &&
      before.document === document &&
      before.unread === unread &&
      before.deleted === deleted;
    if (!isSame) return { kind: 'otherOperation' };
    return {
      kind: 'saved',
      repeated: true,
      record: { ...revisionOf(before), change: before.change },
    };
  }

  const current = await readIn(db, name);
  if ((current?.revision ?? 0) !== base) {
    if (current === undefined) return { kind: 'missing' };
    return { kind: 'conflict', current, base: await revisionIn(db, name, base) };
  }

  const row: Row = {
    ...name,
    revision: base + 1,
    change,
    document,
    unread,
    deleted,
    changed: clean(given.changed),
    author: clean(given.author),
    device: given.device,
    operation: given.operation,
    saved_at: savedAt,
    device_time: given.deviceTime ?? null,
  };
  const heading = {
    revision: row.revision,
    change,
    deleted,
    saved_at: savedAt,
    name: nameIn(given.document),
    words: wordsIn(given.document),
  };
  await db.insertInto('revisions').values(row).execute();
  await db
    .insertInto('records')
    .values({ ...name, ...heading })
    .onConflict((there) => there.columns(['kind', 'id']).doUpdateSet(heading))
    .execute();
  return { kind: 'saved', repeated: false, record: { ...revisionOf(row), change } };
}

function currentRows(db: Database) {
  return db
    .selectFrom('records')
    .innerJoin('revisions', (join) =>
      join
        .onRef('revisions.kind', '=', 'records.kind')
        .onRef('revisions.id', '=', 'records.id')
        .onRef('revisions.revision', '=', 'records.revision'),
    )
    .selectAll('revisions');
}

async function readIn(db: Database, { kind, id }: RecordName): Promise<StoredRecord | undefined> {
  const row = await currentRows(db)
    .where('records.kind', '=', kind)
    .where('records.id', '=', id)
    .executeTakeFirst();
  return row && recordOf(row);
}

async function revisionIn(
  db: Database,
  { kind, id }: RecordName,
  revision: number,
): Promise<StoredRevision | undefined> {
  const row = await db
    .selectFrom('revisions')
    .selectAll()
    .where('kind', '=', kind)
    .where('id', '=', id)
    .where('revision', '=', revision)
    .executeTakeFirst();
  return row && revisionOf(row);
}

function recordOf(row: Row): StoredRecord {
  return { ...revisionOf(row), change: row.change };
}

function revisionOf(row: Row): StoredRevision {
  return {
    kind: row.kind as RecordKind,
    id: row.id,
    revision: row.revision,
    document: JSON.parse(row.document) as PlainRecord,
    unread: JSON.parse(row.unread) as Record<string, string>,
    deleted: row.deleted === 1,
    changed: row.changed,
    author: row.author,
    device: row.device,
    savedAt: row.saved_at,
    ...(row.device_time === null ? {} : { deviceTime: row.device_time }),
  };
}

function attachmentOf({ added_at: addedAt, ...row }: Tables['attachments']): Attachment {
  return { ...row, addedAt };
}

/** `%`, `_` and `!` mean themselves. */
function literally(word: string): string {
  return word.replace(/[!%_]/g, '!$&');
}

async function recordProblems(db: Database): Promise<readonly StoreProblem[]> {
  const problems: StoreProblem[] = [];
  const counted = await db
    .selectFrom('revisions')
    .select((row) => [
      'kind',
      'id',
      row.fn.countAll<number>().as('count'),
      row.fn.max('revision').as('newest'),
      row.fn.min('revision').as('oldest'),
    ])
    .groupBy(['kind', 'id'])
    .execute();
  const heads = new Map(
    (await db.selectFrom('records').select(['kind', 'id', 'revision']).execute()).map((row) => [
      `${row.kind}/${row.id}`,
      row.revision,
    ]),
  );
  for (const { kind, id, count, newest, oldest } of counted) {
    const where = `${kind}/${id}`;
    if (heads.get(where) !== newest) {
      problems.push({ where, message: `its newest revision is ${newest}, its place says another` });
    }
    if (oldest !== 1 || count !== newest) {
      problems.push({ where, message: `it has ${count} of its ${newest} revisions` });
    }
    heads.delete(where);
  }
  for (const where of heads.keys()) problems.push({ where, message: 'it has no revision' });

  let after = 0;
  while (true) {
    const rows = await db
      .selectFrom('revisions')
      .select(['kind', 'id', 'revision', 'change', 'document', 'unread'])
      .where('change', '>', after)
      .orderBy('change')
      .limit(1000)
      .execute();
    for (const row of rows) {
      after = row.change;
      if (![row.document, row.unread].every(isRecordText)) {
        const where = `${row.kind}/${row.id}, revision ${row.revision}`;
        problems.push({ where, message: 'its document cannot be read' });
      }
    }
    if (rows.length < 1000) return problems;
  }
}

function isRecordText(text: string): boolean {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null && !Array.isArray(value);
  } catch {
    return false;
  }
}
