/** A whole store: records in a database, attachments in a folder. */
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { type AttachmentFiles, LONGEST_UPLOAD, openAttachmentFiles } from './attachment-files.ts';
import { openSqliteRecords } from './sqlite-records.ts';
import type { Records, StoreProblem } from './store.ts';

export interface Store {
  readonly records: Records;
  readonly files: AttachmentFiles;
  /** Whether the database and every attachment are whole. */
  readonly problems: () => Promise<readonly StoreProblem[]>;
  /** Files of broken uploads that were swept up when it was opened. */
  readonly swept: number;
  readonly close: () => Promise<void>;
}

export interface StoreOptions {
  readonly folder: string;
  /** `postgres://…`; SQLite in the folder when left out. Servers that share a database must share the folder. */
  readonly connection?: string;
  readonly now?: () => Date;
}

export async function openStore({
  folder,
  connection,
  now = () => new Date(),
}: StoreOptions): Promise<Store> {
  // What owners tell a workshop is nobody else's on this machine.
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const records = await (connection === undefined
    ? openSqliteRecords({ folder, now })
    : import('./postgres-records.ts').then((it) => it.openPostgresRecords({ connection, now })));
  try {
    const files = await openAttachmentFiles({ folder: join(folder, 'attachments'), records, now });
    // SQLite's folder is ours alone, so what lies about is nobody's.
    const swept = await files.sweep(connection === undefined ? 0 : LONGEST_UPLOAD);
    return {
      records,
      files,
      swept,
      problems: async () => [...(await records.problems()), ...(await files.problems())],
      close: records.close,
    };
  } catch (error) {
    await records.close();
    throw error;
  }
}
