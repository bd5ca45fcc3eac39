/**
 * How the tables came to be, step by step. A step that has been released is never edited: a store of any age is brought
 * forward by the steps it lacks, each in one transaction, and never back.
 */
import { type Kysely, sql } from 'kysely';
import { nameIn, wordsIn } from './search-words.ts';

// biome-ignore lint/suspicious/noExplicitAny: a step works on tables as they were, which no type describes any more
export type AnyDatabase = Kysely<any>;

export const MIGRATIONS: readonly ((db: AnyDatabase) => Promise<void>)[] = [
  createTables,
  addSearchWords,
];

/** Judgement: rows that fit in memory many times over, and few enough turns to be quick. */
const ROWS_AT_ONCE = 500;

async function createTables(db: AnyDatabase): Promise<void> {
  await sql`create table change_counter (id integer primary key, value bigint not null)`.execute(
    db,
  );
  await sql`insert into change_counter (id, value) values (1, 0)`.execute(db);
  await sql`create table records (
    kind text not null,
    id text not null,
    revision integer not null,
    change bigint not null,
    deleted integer not null,
    saved_at text not null,
    primary key (kind, id)
  )`.execute(db);
  await sql`create unique index records_by_change on records (change)`.execute(db);
  await sql`create table revisions (
    kind text not null,
    id text not null,
    revision integer not null,
    change bigint not null,
    document text not null,
    unread text not null,
    deleted integer not null,
    changed text not null,
    author text not null,
    device text not null,
    operation text not null,
    saved_at text not null,
    device_time text,
    primary key (kind, id, revision)
  )`.execute(db);
  await sql`create unique index revisions_by_change on revisions (change)`.execute(db);
  await sql`create unique index revisions_by_operation on revisions (device, operation)`.execute(
    db,
  );
  await sql`create table attachments (
    sha256 text primary key,
    size bigint not null,
    type text not null,
    author text not null,
    device text not null,
    added_at text not null
  )`.execute(db);
}

async function addSearchWords(db: AnyDatabase): Promise<void> {
  await sql`alter table records add column name text not null default ''`.execute(db);
  await sql`alter table records add column words text not null default ''`.execute(db);
  let after = 0;
  while (true) {
    const rows = await db
      .selectFrom('records')
      .innerJoin('revisions', (join) =>
        join
          .onRef('revisions.kind', '=', 'records.kind')
          .onRef('revisions.id', '=', 'records.id')
          .onRef('revisions.revision', '=', 'records.revision'),
      )
      .select(['records.kind', 'records.id', 'records.change', 'revisions.document'])
      .where('records.change', '>', after)
      .orderBy('records.change')
      .limit(ROWS_AT_ONCE)
      .execute();
    for (const row of rows) {
      const document = JSON.parse(row.document);
      await db
        .updateTable('records')
        .set({ name: nameIn(document), words: wordsIn(document) })
        .where('kind', '=', row.kind)
        .where('id', '=', row.id)
        .execute();
      after = Number(row.change);
    }
    if (rows.length < ROWS_AT_ONCE) break;
  }
}
