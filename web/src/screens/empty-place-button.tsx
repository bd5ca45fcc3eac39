/** The way to a place of one's own, from nothing. */
import { useLocation } from 'wouter';
import { useNotebook } from '../app/notebook.ts';
import { fieldId } from '../fields/field-ids.ts';

export function EmptyPlaceButton({ isMain = false }: { readonly isMain?: boolean }) {
  const { workshop } = useNotebook();
  const [, goTo] = useLocation();
  const begin = async (): Promise<void> => {
    goTo(`/places/${await workshop.begin()}`);
    focusWhenThere(fieldId(['source', 'flow']));
  };
  return (
    <button
      type="button"
      className={isMain ? 'button main' : 'button'}
      onClick={() => void begin()}
    >
      {isMain ? (
        'Begin an empty place'
      ) : (
        <span>
          New<span className="longer"> place</span>
        </span>
      )}
    </button>
  );
}

/** Judgement: a place is open within a few frames; after a second something else has the person's attention. */
const MOST_FRAMES = 60;

/** The first box of the new place, as soon as the page shows it empty. */
function focusWhenThere(id: string, frames = MOST_FRAMES): void {
  if (frames === 0) return;
  requestAnimationFrame(() => {
    const box = document.getElementById(id);
    if (box instanceof HTMLInputElement && box.value === '') box.focus();
    else focusWhenThere(id, frames - 1);
  });
}
