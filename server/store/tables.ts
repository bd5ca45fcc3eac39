/** The tables of a store, alike in SQLite and PostgreSQL. Yes and no are 1 and 0; times are ISO 8601 in UTC; JSON is text. */
import type { Kysely } from 'kysely';

export interface Tables {
  readonly store_meta: { readonly name: string; readonly value: string };
  /** One row: the number of the last change. Whoever changes anything takes it first, so changes are visible in their order. */
  readonly change_counter: { readonly id: number; readonly value: number };
  /** Where each record stands now; narrow, so that searching reads little. */
  readonly records: {
    readonly kind: string;
    readonly id: string;
    readonly revision: number;
    readonly change: number;
    readonly deleted: number;
    readonly saved_at: string;
    readonly name: string;
    /** What a search looks through: name, owner, place and notes, without case and accents. */
    readonly words: string;
  };
  /** Every state of every record; none is ever written over. */
  readonly revisions: {
    readonly kind: string;
    readonly id: string;
    readonly revision: number;
    readonly change: number;
    readonly document: string;
    readonly unread: string;
    readonly deleted: number;
    readonly changed: string;
    readonly author: string;
    readonly device: string;
    /** The device's own name for this save: a second one of that name is the same save sent twice. */
    readonly operation: string;
    readonly saved_at: string;
    /** What the device's clock said; for showing alone. */
    readonly device_time: string | null;
  };
  readonly attachments: {
    readonly sha256: string;
    readonly size: number;
    readonly type: string;
    readonly author: string;
    readonly device: string;
    readonly added_at: string;
  };
}

export type Database = Kysely<Tables>;
