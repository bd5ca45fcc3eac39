/** Brings a store forward to the newest form of its tables, or refuses one that is newer than this version. */
import { sql } from 'kysely';
import { type AnyDatabase, MIGRATIONS } from './migrations.ts';
import { StoreNewerError } from './store.ts';

const VERSION = 'version';

export interface MigrateOptions {
  /** Keeps a second server from bringing the same store forward at the same time. */
  readonly lock: (db: AnyDatabase) => Promise<void>;
  readonly migrations?: typeof MIGRATIONS;
}

/** The number of steps that were taken now. */
export async function migrate(
  db: AnyDatabase,
  { lock, migrations = MIGRATIONS }: MigrateOptions,
): Promise<number> {
  let taken = 0;
  while (await takeNext(db, { lock, migrations })) taken += 1;
  return taken;
}

function takeNext(
  db: AnyDatabase,
  { lock, migrations }: Required<MigrateOptions>,
): Promise<boolean> {
  return db.transaction().execute(async (step) => {
    await lock(step);
    await sql`create table if not exists store_meta (name text primary key, value text not null)`.execute(
      step,
    );
    const row = await step
      .selectFrom('store_meta')
      .select('value')
      .where('name', '=', VERSION)
      .executeTakeFirst();
    const version = Number(row?.value ?? 0);
    if (version > migrations.length) {
      throw new StoreNewerError({ found: version, known: migrations.length });
    }
    const next = migrations[version];
    if (next === undefined) return false;
    await next(step);
    await step
      .insertInto('store_meta')
      .values({ name: VERSION, value: String(version + 1) })
      .onConflict((there) => there.column('name').doUpdateSet({ value: String(version + 1) }))
      .execute();
    return true;
  });
}
