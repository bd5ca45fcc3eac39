/** Amounts that the file gives by readings or parts, as the answer makes of them: what their boxes show while empty. */
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import type { SiteDocument } from '../state/site-document.ts';
import { isRecord, valueAt } from '../state/site-document.ts';

export interface WorkedOut {
  readonly value: number;
  readonly from: string;
}

const isParts = (document: SiteDocument, field: string): boolean => {
  const entry = valueAt(document, [field]);
  return isRecord(entry) && !('value' in entry);
};

const READINGS = 'from the readings in the file; a height written here takes their place';

export function useWorkedOut(
  what: 'fall' | 'lift' | 'demand' | 'sourceFlow',
): WorkedOut | undefined {
  const { place, answer } = useNotebook();
  const isFromParts = useStore(place, ({ document }) =>
    what === 'sourceFlow'
      ? valueAt(document, ['source', 'gauging']) !== undefined
      : isParts(document, what),
  );
  const shown = useStore(answer, (state) => state.shown?.value);
  if (!isFromParts || shown === undefined) return undefined;
  const { installation } = shown;
  switch (what) {
    case 'fall':
      return { value: installation.fall, from: READINGS };
    case 'lift':
      return { value: installation.lift, from: READINGS };
    case 'sourceFlow': {
      const { source } = installation;
      const value = source.kind === 'store' ? source.inflow : source.yield;
      return value === undefined
        ? undefined
        : { value, from: 'from the gauging in the file; a flow written here is used before it' };
    }
    case 'demand': {
      const needed = shown.answer.demand?.needed;
      return needed === undefined
        ? undefined
        : {
            value: needed,
            from: 'from the needs in the file; an amount written here takes their place',
          };
    }
  }
}
