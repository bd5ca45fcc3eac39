/**
 * Stopwatches that run. Each start is written down at once, so that a watch goes on when its page is folded away, loaded
 * again or closed, as a tank that drops may take hours. A watch is no part of the place: only the time it took is.
 */
import type { KeyedKeep } from './journal.ts';
import { createStore, type Store } from './store.ts';

const PREFIX = 'fallwright.watch@1:';

/** Judgement: a watch that has run for a day was forgotten. */
const LONGEST = 24 * 3600 * 1000;

/** When each began, in milliseconds of the clock, by place and path. */
export type Running = Readonly<Record<string, number>>;

export interface Watches {
  readonly running: Store<Running>;
  readonly start: (name: string, since: number) => void;
  readonly stop: (name: string) => void;
  /** An entry of a list was taken out: its watch ends, and those behind it move up with their entries. */
  readonly takenOut: (list: string, index: number) => void;
}

export function watchName(siteId: string, path: string): string {
  return `${siteId}:${path}`;
}

/** Whether a watch runs for something inside. */
export function runsInside(running: Running, name: string): boolean {
  return Object.keys(running).some((one) => one === name || one.startsWith(`${name}[`));
}

export function createWatches(keep: KeyedKeep, now: () => number): Watches {
  const running = createStore(readRunning(keep, now()));

  const write = (next: Running): void => {
    const before = running.get();
    for (const name of Object.keys(before)) {
      if (next[name] === undefined) quietly(() => keep.removeItem(PREFIX + name));
    }
    for (const [name, since] of Object.entries(next)) {
      if (before[name] !== since) quietly(() => keep.setItem(PREFIX + name, String(since)));
    }
    running.update(() => next);
  };

  return {
    running,
    start: (name, since) => write({ ...running.get(), [name]: since }),
    stop: (name) => {
      const { [name]: _stopped, ...others } = running.get();
      write(others);
    },
    takenOut: (list, index) =>
      write(
        Object.fromEntries(
          Object.entries(running.get()).flatMap(([name, since]): [string, number][] => {
            const at = name.startsWith(`${list}[`)
              ? Number(name.slice(list.length + 1, name.indexOf(']', list.length)))
              : -1;
            if (at === index) return [];
            return [[at > index ? `${list}[${at - 1}]` : name, since]];
          }),
        ),
      ),
  };
}

function readRunning(keep: KeyedKeep, now: number): Running {
  const found: Record<string, number> = {};
  quietly(() => {
    for (const key of keep.keys().filter((one) => one.startsWith(PREFIX))) {
      const since = Number(keep.getItem(key));
      if (since > now - LONGEST && since <= now) found[key.slice(PREFIX.length)] = since;
      else keep.removeItem(key);
    }
  });
  return found;
}

/** Storage may be full or forbidden: then a watch runs as long as its page. */
function quietly(act: () => void): void {
  try {
    act();
  } catch {
    // As said above.
  }
}
