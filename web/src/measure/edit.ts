/** Changes of a measurement as steps of the place: each is undone by itself and saved at once. */
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import type { SiteDocument } from '../state/site-document.ts';
import type { Spot } from './spot.ts';

export function useDocument(): SiteDocument {
  const { place } = useNotebook();
  return useStore(place, (state) => state.document);
}

export function useSystem() {
  const { settings } = useNotebook();
  return useStore(settings, (state) => state.system);
}

/** How a step on one part of a measurement is named: `the volume of measurement 1`. */
export const stepName = (what: string, { called }: Spot): string => `${what} of ${called}`;
