/** The pairs of the screen, run in a worker for as long as the screen stands. */
import { useEffect, useRef, useState } from 'react';
import type { SiteAnswer } from '../answer/site-answer.ts';
import { useStore } from '../app/use-store.ts';
import { createStore } from '../state/store.ts';
import type { AlternativesRoom } from './alternatives-room.ts';
import { openAlternativesRoom } from './alternatives-room.ts';
import type { Pair } from './pairs.ts';
import { siteWith } from './pairs.ts';
import type { Sweep, SweepState } from './sweep.ts';
import { createSweep, NOTHING_RUN } from './sweep.ts';

export interface Sweeping {
  readonly state: SweepState;
  readonly stop: () => void;
  readonly goOn: () => void;
  /** The whole answer for one pair. */
  readonly answer: AlternativesRoom['answer'] | undefined;
}

interface Working {
  readonly room: AlternativesRoom;
  readonly sweep: Sweep;
}

export function useSweep(pairs: readonly Pair[]): Sweeping {
  const [store] = useState(() => createStore(NOTHING_RUN));
  const [working, setWorking] = useState<Working>();
  const state = useStore(store, (all) => all);
  useEffect(() => {
    const room = openAlternativesRoom();
    const sweep = createSweep(room, store, () => performance.now());
    setWorking({ room, sweep });
    return () => {
      sweep.stop();
      room.close();
    };
  }, [store]);
  useEffect(() => working?.sweep.want(pairs), [working, pairs]);
  return {
    state,
    stop: () => working?.sweep.stop(),
    goOn: () => working?.sweep.goOn(),
    answer: working?.room.answer,
  };
}

export interface PairAnswer {
  readonly key: string;
  readonly answer?: SiteAnswer;
  /** Why there is none. */
  readonly trouble?: string;
}

/** The chosen pair answered in full; the one before stays until the new one is there. */
export function usePairAnswer(
  pair: Pair | undefined,
  ask: AlternativesRoom['answer'] | undefined,
): PairAnswer | undefined {
  const [told, setTold] = useState<PairAnswer>();
  const latest = useRef<Pair>(undefined);
  latest.current = pair;
  const key = pair?.key;
  useEffect(() => {
    if (key === undefined || ask === undefined || latest.current === undefined) return;
    let isNewest = true;
    const tell = (answer: PairAnswer): void => {
      if (isNewest) setTold(answer);
    };
    ask(siteWith(latest.current)).then(
      (outcome) =>
        tell(
          outcome.ok
            ? { key, answer: outcome.value }
            : { key, trouble: outcome.problems.map(({ message }) => message).join(' ') },
        ),
      (error: unknown) =>
        tell({ key, trouble: error instanceof Error ? error.message : String(error) }),
    );
    return () => {
      isNewest = false;
    };
  }, [key, ask]);
  return told;
}
