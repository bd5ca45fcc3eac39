/** One step back and one forth, of whichever record lies open. */
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { redo, undo } from '../state/place.ts';

export function UndoButtons() {
  const { place } = useNotebook();
  const canUndo = useStore(place, (state) => state.past.length > 0);
  const canRedo = useStore(place, (state) => state.future.length > 0);
  return (
    <>
      <button
        type="button"
        className="button plain"
        disabled={!canUndo}
        onClick={() => place.update(undo)}
      >
        Undo
      </button>
      <button
        type="button"
        className="button plain"
        disabled={!canRedo}
        onClick={() => place.update(redo)}
      >
        Redo
      </button>
    </>
  );
}
