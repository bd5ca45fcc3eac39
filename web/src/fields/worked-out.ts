/** The need that a file gives by who and what needs it, as the answer makes of it: what its box shows while empty. */
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { isRecord, valueAt } from '../state/site-document.ts';

export interface WorkedOut {
  readonly value: number;
  readonly from: string;
}

export function useNeedWorkedOut(): WorkedOut | undefined {
  const { place, answer } = useNotebook();
  const isFromParts = useStore(place, ({ document }) => {
    const entry = valueAt(document, ['demand']);
    return isRecord(entry) && !('value' in entry);
  });
  const needed = useStore(answer, (state) => state.shown?.value.answer.demand?.needed);
  return isFromParts && needed !== undefined
    ? {
        value: needed,
        from: 'from the needs in the file; an amount written here takes their place',
      }
    : undefined;
}
