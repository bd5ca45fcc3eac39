/**
 * Records in one SQLite file, by Node's own SQLite: the default, for one server.
 *
 * Every commit is on the disk before it is acknowledged (`synchronous = FULL` over a write-ahead log). A second server is
 * kept out by a lock on a file beside it, which the operating system lets go when the process ends, however it ends; the
 * store itself stays readable for a copy while the server runs.
 */
import { join } from 'node:path';
import { DatabaseSync, type SQLInputValue } from 'node:sqlite';
import { Kysely, type SqliteDatabase, SqliteDialect, type SqliteStatement, sql } from 'kysely';
import { type MigrateOptions, migrate } from './migrate.ts';
import { createRecords } from './sql-records.ts';
import { type Records, StoreFullError, type StoreProblem, StoreTakenError } from './store.ts';
import type { Tables } from './tables.ts';

export const SQLITE_FILE = 'fallwright.sqlite';
const LOCK_FILE = 'fallwright.lock';

/** Judgement: a copy that is being taken holds the file for less; a person has not yet given up. */
const BUSY_WAIT = 5000;

const SQLITE_BUSY = 5;
const SQLITE_FULL = 13;

export interface SqliteOptions {
  readonly folder: string;
  readonly now: () => Date;
  readonly migrations?: NonNullable<MigrateOptions['migrations']>;
}

/** @throws StoreTakenError when another server has the folder; StoreNewerError when a newer version wrote it. */
export async function openSqliteRecords({
  folder,
  now,
  ...options
}: SqliteOptions): Promise<Records> {
  const lock = lockFolder(folder);
  try {
    const file = new DatabaseSync(join(folder, SQLITE_FILE), { timeout: BUSY_WAIT });
    file.exec('pragma journal_mode = wal; pragma synchronous = full; pragma foreign_keys = on');
    const db = new Kysely<Tables>({
      dialect: new SqliteDialect({ database: asDialectWants(file) }),
    });
    try {
      await migrate(db, { lock: async () => {}, ...options });
    } catch (error) {
      await db.destroy();
      throw error;
    }
    return createRecords(db, {
      now,
      isIntegrityKept: () => integrityProblems(file),
      close: async () => {
        await sql`pragma wal_checkpoint(truncate)`.execute(db).catch(() => undefined);
        await db.destroy();
        lock.close();
      },
    });
  } catch (error) {
    lock.close();
    throw error;
  }
}

function lockFolder(folder: string): DatabaseSync {
  const lock = new DatabaseSync(join(folder, LOCK_FILE));
  try {
    lock.exec('pragma locking_mode = exclusive; begin exclusive');
    return lock;
  } catch (error) {
    lock.close();
    if (errorNumber(error) === SQLITE_BUSY) throw new StoreTakenError(folder);
    throw error;
  }
}

function asDialectWants(file: DatabaseSync): SqliteDatabase {
  return {
    close: () => file.close(),
    prepare: (text) => orStoreFull(() => statementOf(file, text)),
  };
}

function statementOf(file: DatabaseSync, text: string): SqliteStatement {
  const statement = file.prepare(text);
  return {
    reader: statement.columns().length > 0,
    all: (values) => orStoreFull(() => statement.all(...asInputs(values))),
    run: (values) => orStoreFull(() => statement.run(...asInputs(values))),
    iterate: (values) => statement.iterate(...asInputs(values)),
  };
}

function asInputs(values: readonly unknown[]): SQLInputValue[] {
  return values.map((value) => {
    if (typeof value === 'string' || typeof value === 'number' || value === null) return value;
    throw new TypeError(`a value of a query must be text, a number or null, got ${typeof value}`);
  });
}

function orStoreFull<Value>(act: () => Value): Value {
  try {
    return act();
  } catch (error) {
    throw errorNumber(error) === SQLITE_FULL ? new StoreFullError(error) : error;
  }
}

function errorNumber(error: unknown): number | undefined {
  const code = (error as { readonly errcode?: unknown }).errcode;
  // The low byte is the kind of the error, what is above says more of it.
  return typeof code === 'number' ? code & 0xff : undefined;
}

async function integrityProblems(file: DatabaseSync): Promise<readonly StoreProblem[]> {
  return file
    .prepare('pragma integrity_check')
    .all()
    .map(({ integrity_check: found }) => String(found))
    .filter((found) => found !== 'ok')
    .map((message) => ({ where: SQLITE_FILE, message }));
}
