/** The way to a place of one's own, from nothing. */
import { useNotebook } from '../app/notebook.ts';
import { fieldId } from '../fields/field-ids.ts';
import { EMPTY_DOCUMENT, replacePlace } from '../state/place.ts';

export function EmptyPlaceButton({ isMain = false }: { readonly isMain?: boolean }) {
  const { place } = useNotebook();
  return (
    <button
      type="button"
      className={isMain ? 'button main' : 'button'}
      onClick={() => {
        place.update((state) =>
          replacePlace(state, { document: EMPTY_DOCUMENT, isExample: false, order: 'fieldsFirst' }),
        );
        focusSoon(fieldId(['source', 'flow']));
      }}
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

/** After the page has changed: the first box of the new place. */
function focusSoon(id: string): void {
  requestAnimationFrame(() => document.getElementById(id)?.focus());
}
