/** What open tabs of one browser tell one another: what was saved, and who is there. */
import { newId } from './site-record.ts';

export interface SavedNews {
  readonly siteId: string;
  readonly revision: number;
}

type Message =
  | ({ readonly kind: 'saved' } & SavedNews)
  | { readonly kind: 'whoIsThere' }
  | { readonly kind: 'here'; readonly tab: string };

/** As much of a `BroadcastChannel` as is needed. */
export interface Line {
  postMessage(message: Message): void;
  onmessage: ((event: MessageEvent<Message>) => void) | null;
}

export interface Tabs {
  readonly mine: string;
  readonly tellSaved: (news: SavedNews) => void;
  readonly onSaved: (hear: (news: SavedNews) => void) => void;
  /** The other tabs that are open: what they have not saved yet is still in their hands. */
  readonly others: () => Promise<ReadonlySet<string>>;
}

/** Judgement: a tab in the background answers within a few milliseconds; nobody waits longer for a page to open. */
const ANSWER_TIME = 120;

export function createTabs(line: Line | undefined, answerTime = ANSWER_TIME): Tabs {
  const mine = newId();
  const hearers = new Set<(news: SavedNews) => void>();
  const asking = new Set<Set<string>>();
  if (line !== undefined) {
    line.onmessage = ({ data }) => {
      if (data.kind === 'saved') for (const hear of hearers) hear(data);
      else if (data.kind === 'whoIsThere') line.postMessage({ kind: 'here', tab: mine });
      else for (const heard of asking) heard.add(data.tab);
    };
  }
  return {
    mine,
    tellSaved: ({ siteId, revision }) => line?.postMessage({ kind: 'saved', siteId, revision }),
    onSaved: (hear) => void hearers.add(hear),
    others: async () => {
      if (line === undefined) return new Set();
      const heard = new Set<string>();
      asking.add(heard);
      line.postMessage({ kind: 'whoIsThere' });
      await new Promise((resolve) => setTimeout(resolve, answerTime));
      asking.delete(heard);
      return heard;
    },
  };
}
