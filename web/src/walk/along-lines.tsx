/** What lies along the lines: crests with their air, sags, pressures at rest, and what would help, with the vent one press away. */
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { writtenMetres } from '../profile/written-metres.ts';
import { ventAt, ventPutIn } from './vents.ts';

export function AlongLines() {
  const { place, answer, settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const shown = useStore(answer, (state) => state.shown?.value);
  const document = useStore(place, (state) => state.document);
  if (shown === undefined) return null;
  const notes = shown.words[system].along;
  return (
    <section aria-labelledby="along-title" className="along-lines">
      <h2 id="along-title">Along the lines</h2>
      <ul>
        {notes.map(({ line, text, ventAt: station }) => (
          <li key={text}>
            {text}
            {station !== undefined && ventAt(document, line, station) === undefined && (
              <button
                type="button"
                className="button plain"
                onClick={() =>
                  place.update((state) => ventPutIn(state, line, station, system) ?? state)
                }
              >
                Put a vent at {writtenMetres(station, system)}
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
