/** Records in PostgreSQL, where several servers share one store. */
import { Kysely, PostgresDialect, sql } from 'kysely';
import pg from 'pg';
import { type MigrateOptions, migrate } from './migrate.ts';
import { createRecords } from './sql-records.ts';
import { type Records, StoreFullError } from './store.ts';
import type { Tables } from './tables.ts';

/** Any number of our own, by which servers know that they mean the same lock. */
const MIGRATION_LOCK = 4_740_001;
const DISK_FULL = '53100';
/** Judgement: saves come one after another anyway, so more than these would only wait in the database. */
const MOST_CONNECTIONS = 8;
/** Judgement: a person at a form waits this long; then a clear error is better. */
const LONGEST_WAIT = 10_000;

export interface PostgresOptions {
  readonly connection: string;
  readonly now: () => Date;
  readonly migrations?: NonNullable<MigrateOptions['migrations']>;
}

export async function openPostgresRecords({
  connection,
  now,
  ...options
}: PostgresOptions): Promise<Records> {
  const pool = new pg.Pool({
    connectionString: connection,
    max: MOST_CONNECTIONS,
    connectionTimeoutMillis: LONGEST_WAIT,
    types: { getTypeParser },
  });
  // A connection that breaks while it rests is replaced when the next one is asked for.
  pool.on('error', () => undefined);
  const db = new Kysely<Tables>({
    dialect: new PostgresDialect({
      pool,
      onCreateConnection: async (created) => {
        // A role may have been given `off`, which acknowledges what is not on the disk.
        await created.executeQuery(sql`set synchronous_commit to on`.compile(COMPILER));
        await created.executeQuery(
          sql`set statement_timeout to ${sql.lit(LONGEST_WAIT)}`.compile(COMPILER),
        );
      },
    }),
  });
  try {
    await migrate(db, {
      lock: async (step) => {
        await sql`set local statement_timeout to 0`.execute(step);
        await sql`select pg_advisory_xact_lock(${sql.lit(MIGRATION_LOCK)})`.execute(step);
      },
      ...options,
    });
  } catch (error) {
    await db.destroy();
    throw error;
  }
  return createRecords(db, {
    now,
    isIntegrityKept: async () => [],
    asOurError: (error) =>
      (error as { readonly code?: unknown }).code === DISK_FULL ? new StoreFullError(error) : error,
    close: () => db.destroy(),
  });
}

/** Turns statements without parameters into SQL; it is never connected. */
const COMPILER = new Kysely<Tables>({
  dialect: new PostgresDialect({ pool: () => Promise.reject(new Error('never connected')) }),
});

/** Counts are far below 2⁵³, and a number that is a text would compare wrongly. */
const getTypeParser: typeof pg.types.getTypeParser = (type, format) =>
  type === pg.types.builtins.INT8 ? Number : pg.types.getTypeParser(type, format);
