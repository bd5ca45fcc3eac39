import { useEffect } from 'react';
import type { Place } from '../state/place.ts';
import { redo, undo } from '../state/place.ts';
import type { Store } from '../state/store.ts';

/** Inside a box the keys take back letters, as everywhere; elsewhere they take back steps of the record. */
export function useUndoKeys(place: Store<Place>): void {
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      if (event.target instanceof Element && event.target.matches('input, textarea, select'))
        return;
      const key = event.key.toLowerCase();
      const step =
        key === 'y' || (key === 'z' && event.shiftKey) ? redo : key === 'z' ? undo : undefined;
      if (step === undefined) return;
      event.preventDefault();
      place.update(step);
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [place]);
}
