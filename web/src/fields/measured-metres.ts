/** The fall or the lift in metres, where nothing but its readings gives it. What works them out is fetched when there are any. */
import { useEffect, useMemo, useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import type { HeightName } from '../state/measured-entry.ts';
import { hasReadings, writtenHeight } from '../state/measured-entry.ts';

type WorkOut = typeof import('../measure/results.ts').measuredMetres;

export function useMeasuredMetres(height: HeightName): number | undefined {
  const { place } = useNotebook();
  const entry = useStore(place, ({ document }) => document[height]);
  const isAlone =
    hasReadings({ [height]: entry }, height) &&
    writtenHeight({ [height]: entry }, height) === undefined;
  const [workOut, setWorkOut] = useState<WorkOut>();
  useEffect(() => {
    if (!isAlone) return;
    import('../measure/panels.ts').then(
      ({ measuredMetres }) => setWorkOut(() => measuredMetres),
      // Not fetched: the page says so where the readings stand.
      () => {},
    );
  }, [isAlone]);
  return useMemo(
    () => (isAlone ? workOut?.({ [height]: entry }, height) : undefined),
    [isAlone, workOut, entry, height],
  );
}
