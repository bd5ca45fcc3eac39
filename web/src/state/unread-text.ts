/** Text that waits in boxes, read back from where it was kept. */
import type { Unread } from './place.ts';
import { isRecord } from './site-document.ts';

export function readUnread(kept: unknown): Record<string, Unread> {
  if (!isRecord(kept)) return {};
  const entries = Object.entries(kept).flatMap(([key, entry]): [string, Unread][] => {
    if (!isRecord(entry) || typeof entry.text !== 'string') return [];
    const { text, fault } = entry;
    return [[key, typeof fault === 'string' ? { text, fault } : { text }]];
  });
  return Object.fromEntries(entries);
}
