/** A file on its way: opened in the worker, then one of its lines made ready again at each new choice. */
import { useEffect, useRef, useState } from 'react';
import type { SiteProblem } from '../answer/site-answer.ts';
import type { WalkChoice, WalkedRead, WalkListed } from './walk.ts';
import type { WalkRoom } from './walk-room.ts';
import { openWalkRoom } from './walk-room.ts';

export type WalkFileState =
  | { readonly kind: 'reading' }
  | {
      readonly kind: 'refused';
      readonly problems: readonly SiteProblem[];
      readonly readable?: readonly WalkListed[];
    }
  | { readonly kind: 'open'; readonly lines: readonly WalkListed[] }
  | { readonly kind: 'failed'; readonly why: string };

/** `goOn` takes what could be read of a damaged file. */
export function useWalkFile(file: File) {
  const [state, setState] = useState<WalkFileState>({ kind: 'reading' });
  const [room, setRoom] = useState<WalkRoom>();
  useEffect(() => {
    const mine = openWalkRoom();
    let isWanted = true;
    setRoom(mine);
    setState({ kind: 'reading' });
    mine.open(file).then(
      (opened) => {
        if (!isWanted) return;
        if (opened.ok) setState({ kind: 'open', lines: opened.lines });
        else {
          const { problems, readable } = opened;
          setState({ kind: 'refused', problems, ...(readable === undefined ? {} : { readable }) });
        }
      },
      (error: unknown) => {
        if (isWanted) setState({ kind: 'failed', why: reasonOf(error) });
      },
    );
    return () => {
      isWanted = false;
      mine.end();
    };
  }, [file]);
  const goOn = (): void =>
    setState((now) =>
      now.kind === 'refused' && now.readable !== undefined
        ? { kind: 'open', lines: now.readable }
        : now,
    );
  return { state, room, goOn };
}

export interface Walked {
  readonly read: WalkedRead;
  /** A newer choice is still being worked out. */
  readonly isOld: boolean;
}

/** The newest choice wins; what was shown stays until it has its answer. */
export function useWalked(
  room: WalkRoom | undefined,
  choice: WalkChoice | undefined,
  fail: (why: string) => void,
): Walked | undefined {
  const [walked, setWalked] = useState<{ readonly read: WalkedRead; readonly key: string }>();
  const key = choice === undefined ? undefined : JSON.stringify(choice);
  const latest = useRef(fail);
  latest.current = fail;
  useEffect(() => {
    if (room === undefined || key === undefined) return;
    let isWanted = true;
    const asked: WalkChoice = JSON.parse(key);
    room.treat(asked).then(
      (read) => {
        if (isWanted) setWalked({ read, key });
      },
      (error: unknown) => {
        if (isWanted) latest.current(reasonOf(error));
      },
    );
    return () => {
      isWanted = false;
    };
  }, [room, key]);
  return walked && { read: walked.read, isOld: walked.key !== key };
}

const reasonOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);
