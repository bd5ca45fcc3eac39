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

/** Enter goes on to the next box of the list, which may only stand there once this one is read. */
export function goOnByEnter(
  event: React.KeyboardEvent<HTMLInputElement>,
  leave?: () => void,
): void {
  if (event.key !== 'Enter' || event.nativeEvent.isComposing) return;
  event.preventDefault();
  const box = event.currentTarget;
  leave?.();
  requestAnimationFrame(() => {
    const boxes = [...(box.closest('fieldset')?.querySelectorAll('input[type="text"]') ?? [])];
    const next = boxes[boxes.indexOf(box) + 1];
    if (next instanceof HTMLInputElement) next.focus();
  });
}

/** How a step on one part of a measurement is named: `the volume of measurement 1`. */
export const stepName = (what: string, { called }: Spot): string => `${what} of ${called}`;
