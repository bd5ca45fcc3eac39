/** What a store of records promises, whatever database is behind it. */
import type { PlainRecord } from '@fallwright/records';

export const RECORD_KINDS = ['site', 'range', 'prices', 'test'] as const;
export type RecordKind = (typeof RECORD_KINDS)[number];

export interface RecordName {
  readonly kind: RecordKind;
  readonly id: string;
}

/** One state of a record. Every one is kept. */
export interface StoredRevision extends RecordName {
  /** Counts from 1. */
  readonly revision: number;
  readonly document: PlainRecord;
  /** Text in boxes that could not be read yet, by field. */
  readonly unread: Readonly<Record<string, string>>;
  readonly deleted: boolean;
  /** Words for what was changed: `the fall`. */
  readonly changed: string;
  readonly author: string;
  readonly device: string;
  /** By the server's clock. */
  readonly savedAt: string;
  /** By the device's clock, which may be wrong: for showing alone. */
  readonly deviceTime?: string;
}

export interface StoredRecord extends StoredRevision {
  /** The number of its last change among all changes of the store. */
  readonly change: number;
}

export interface Save extends RecordName {
  /** The revision that the change began from; 0 for a record that is new. */
  readonly base: number;
  readonly document: PlainRecord;
  readonly unread?: Readonly<Record<string, string>>;
  readonly deleted?: boolean;
  readonly changed: string;
  readonly author: string;
  readonly device: string;
  /** The device's own name for this save; sent again, it changes nothing. */
  readonly operation: string;
  readonly deviceTime?: string;
}

export type SaveOutcome =
  /** `repeated`: this save had been made before. */
  | { readonly kind: 'saved'; readonly record: StoredRecord; readonly repeated: boolean }
  /** Somebody saved in between. `base` is what both began from, where the store has it. */
  | {
      readonly kind: 'conflict';
      readonly current: StoredRecord;
      readonly base: StoredRevision | undefined;
    }
  | { readonly kind: 'missing' }
  /** The device used one name for two different saves. */
  | { readonly kind: 'otherOperation' };

export interface Heading extends RecordName {
  readonly name: string;
  readonly revision: number;
  readonly deleted: boolean;
  readonly savedAt: string;
}

export interface Changes {
  readonly records: readonly StoredRecord[];
  /** Ask again from here. */
  readonly cursor: number;
  readonly hasMore: boolean;
}

export interface Attachment {
  readonly sha256: string;
  readonly size: number;
  readonly type: string;
  readonly author: string;
  readonly device: string;
  readonly addedAt: string;
}

export interface StoreProblem {
  readonly where: string;
  readonly message: string;
}

export interface Records {
  readonly read: (name: RecordName) => Promise<StoredRecord | undefined>;
  readonly save: (save: Save) => Promise<SaveOutcome>;
  /** Each record that was changed after the cursor, as it is now, in the order of the changes. */
  readonly changesSince: (cursor: number, limit: number) => Promise<Changes>;
  /** Newest first. */
  readonly history: (name: RecordName) => Promise<readonly StoredRevision[]>;
  readonly revision: (name: RecordName, revision: number) => Promise<StoredRevision | undefined>;
  /** The one changed last first. */
  readonly search: (asked: {
    readonly kind?: RecordKind;
    readonly words?: string;
    readonly deleted?: boolean;
    readonly limit: number;
  }) => Promise<readonly Heading[]>;
  readonly attachment: (sha256: string) => Promise<Attachment | undefined>;
  /** False when it is there already. */
  readonly addAttachment: (attachment: Attachment) => Promise<boolean>;
  readonly attachments: () => Promise<readonly Attachment[]>;
  /** Whether the database is whole and every record has its revisions. */
  readonly problems: () => Promise<readonly StoreProblem[]>;
  readonly close: () => Promise<void>;
}

/** Another server has this store open. */
export class StoreTakenError extends Error {
  constructor(folder: string) {
    super(
      `The data in ${folder} are open in another Fallwright. Use that one, or end it, or name another folder: --data FOLDER.`,
    );
    this.name = 'StoreTakenError';
  }
}

/** The store was written by a version that knows more. */
export class StoreNewerError extends Error {
  constructor({ found, known }: { readonly found: number; readonly known: number }) {
    super(
      `These data were written by a newer Fallwright (format ${found}; this one knows formats up to ${known}). Nothing was changed. Use the newer version.`,
    );
    this.name = 'StoreNewerError';
  }
}

/** The disk is full, or the database may not grow. */
export class StoreFullError extends Error {
  constructor(cause: unknown) {
    super('The disk of the store is full: nothing was saved. Make room and send it again.', {
      cause,
    });
    this.name = 'StoreFullError';
  }
}
