/**
 * The last resort when a tab closes in mid-word: each change is written down at once, before the database has it, and
 * struck out when the database has it. One entry for each tab and place, so that tabs never write over one another.
 */
import type { Keep } from './settings.ts';
import type { SiteDocument } from './site-document.ts';
import { isRecord } from './site-document.ts';
import type { Written } from './site-record.ts';
import { readUnread } from './unread-text.ts';

const PREFIX = 'fallwright.journal@1';

export interface JournalEntry extends Written {
  readonly tab: string;
  readonly siteId: string;
  /** The revision that the change began from. */
  readonly base: number;
  readonly changed: string;
}

export interface KeyedKeep extends Keep {
  readonly removeItem: (key: string) => void;
  readonly keys: () => readonly string[];
}

export interface Journal {
  readonly write: (entry: JournalEntry) => void;
  readonly strike: (entry: Pick<JournalEntry, 'tab' | 'siteId'>) => void;
  readonly entries: () => readonly JournalEntry[];
}

export function createJournal(keep: KeyedKeep): Journal {
  return {
    write: (entry) => {
      try {
        keep.setItem(keyOf(entry), JSON.stringify(entry));
      } catch {
        // Full or forbidden: the database still gets the change a moment later, and says so when it cannot.
      }
    },
    strike: (entry) => {
      try {
        keep.removeItem(keyOf(entry));
      } catch {
        // Where nothing can be removed nothing was written.
      }
    },
    entries: () => keysOf(keep).flatMap((key) => readEntry(keep, key)),
  };
}

function keyOf({ tab, siteId }: Pick<JournalEntry, 'tab' | 'siteId'>): string {
  return `${PREFIX}:${siteId}:${tab}`;
}

function keysOf(keep: KeyedKeep): readonly string[] {
  try {
    return keep.keys().filter((key) => key.startsWith(`${PREFIX}:`));
  } catch {
    // Storage forbidden: then there is no journal.
    return [];
  }
}

function readEntry(keep: KeyedKeep, key: string): JournalEntry[] {
  const kept = parse(keep.getItem(key));
  if (!isRecord(kept) || !isRecord(kept.document)) return [];
  const { tab, siteId, base, changed } = kept;
  if (typeof tab !== 'string' || typeof siteId !== 'string' || typeof base !== 'number') return [];
  const document: SiteDocument = kept.document;
  return [
    {
      tab,
      siteId,
      base,
      changed: typeof changed === 'string' ? changed : 'what was typed last',
      document,
      unread: readUnread(kept.unread),
    },
  ];
}

function parse(text: string | null): unknown {
  if (text === null) return undefined;
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
