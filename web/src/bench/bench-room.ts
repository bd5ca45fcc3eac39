/** Predictions beside what was measured, worked out away from the page. */
import type { ReadingAnswer } from '@fallwright/engine';
import type { AgainstCurve } from '@fallwright/papers';
import { createContext, useContext } from 'react';
import { room } from '../answer/worker-room.ts';
import type { BenchWork, CurveAsked } from './bench-worker.ts';
import type { WorkList } from './work-list.ts';
import { createWorkList } from './work-list.ts';

export interface BenchRoom {
  /** By `asked` of a reading. */
  readonly answers: WorkList<ReadingAnswer>;
  /** By `curveKey`. */
  readonly curves: WorkList<AgainstCurve['points']>;
  readonly close: () => void;
}

export const curveKey = (asked: CurveAsked): string => JSON.stringify(asked);

export function openBenchRoom(): BenchRoom {
  const { ask, end } = room<BenchWork>(
    () => new Worker(new URL('./bench-worker.ts', import.meta.url), { type: 'module' }),
  );
  const answers = createWorkList((test) => ask((work) => work.answer(test)));
  const curves = createWorkList<AgainstCurve['points']>(async (key) => [
    ...(await ask((work) => work.curve(JSON.parse(key) as CurveAsked))),
  ]);
  return {
    answers,
    curves,
    close: () => {
      answers.end();
      curves.end();
      end();
    },
  };
}

export const BenchRoomContext = createContext<BenchRoom | undefined>(undefined);

export function useBenchRoom(): BenchRoom {
  const found = useContext(BenchRoomContext);
  if (found === undefined) throw new Error('a bench screen must stand inside a BenchRoomContext');
  return found;
}
