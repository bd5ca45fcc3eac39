/** Asks the browser not to clear the places when the disk is full, once there is something of a person's own. */
import type { Keep } from '../state/settings.ts';
import type { SiteRecord } from '../state/site-record.ts';
import type { Store } from '../state/store.ts';
import type { WorkshopState } from '../state/workshop.ts';

const ASKED_AT_KEY = 'fallwright.asked-to-last';
/**
 * Judgement: some browsers decide by how much a page is used, so a refusal may not stand; others ask the person, who must
 * not be asked at each visit.
 */
const ASK_AGAIN_AFTER = 7 * 24 * 3_600_000;

export function askToLast(
  workshop: Store<WorkshopState>,
  keep: Keep,
  storage: Pick<StorageManager, 'persist' | 'persisted'> | undefined,
  now: () => number,
): void {
  if (storage === undefined) return;
  const look = (): void => {
    const state = workshop.get();
    if (state.phase !== 'open' || !state.sites.some(isOwn)) return;
    stop();
    void ask();
  };
  const ask = async (): Promise<void> => {
    try {
      if (await storage.persisted()) return;
      const askedAt = Number(keep.getItem(ASKED_AT_KEY));
      if (now() - askedAt < ASK_AGAIN_AFTER) return;
      keep.setItem(ASKED_AT_KEY, String(now()));
      await storage.persist();
    } catch {
      // Refused or unknown: the places are kept as before, and the page says that a file is the safer place.
    }
  };
  const stop = workshop.subscribe(look);
  look();
}

function isOwn({ isDemo, revision }: SiteRecord): boolean {
  return !isDemo || revision > 1;
}
