/** The worker for survey files, hired with the first one and ended with the leaf that asked for it. */
import { room } from '../answer/worker-room.ts';
import type { OpenedWalk, WalkChoice, WalkedRead } from './walk.ts';
import type { WalkWork } from './walk-worker.ts';

export interface WalkRoom {
  readonly open: (file: File) => Promise<OpenedWalk>;
  readonly treat: (choice: WalkChoice) => Promise<WalkedRead>;
  readonly end: () => void;
}

export function openWalkRoom(): WalkRoom {
  const { ask, end } = room<WalkWork>(
    () => new Worker(new URL('./walk-worker.ts', import.meta.url), { type: 'module' }),
  );
  return {
    open: (file) => ask(async (work) => (await work.open(file)).outcome),
    treat: (choice) => ask(async (work) => (await work.treat(choice)).outcome),
    end,
  };
}
