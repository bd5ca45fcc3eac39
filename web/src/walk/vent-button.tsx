/** A crest's vent, put in and taken out with one press. */
import { useNotebook } from '../app/notebook.ts';
import type { LineName } from '../state/lines.ts';
import { ventAt, ventPutIn, ventTakenOut } from './vents.ts';

export function VentButton({
  line,
  station,
  number,
  isVented,
}: {
  readonly line: LineName;
  readonly station: number;
  /** Of the point, as in the drawing. */
  readonly number: number;
  readonly isVented: boolean;
}) {
  const { place, settings } = useNotebook();
  const turn = (): void =>
    place.update((state) => {
      const vent = ventAt(state.document, line, station);
      if (vent !== undefined) return ventTakenOut(state, line, vent);
      return ventPutIn(state, line, station, settings.get().system) ?? state;
    });
  const words = isVented ? 'take its vent out' : 'put a vent on it';
  return (
    <button
      type="button"
      className="take-out"
      aria-label={`${words}, point ${number}`}
      onClick={turn}
    >
      {words}
    </button>
  );
}
