/** The name of the place, what can be done with it as a whole, and what to do first with an invented one. */
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { textOf } from '../state/entry.ts';
import { putValue } from '../state/place.ts';
import { EmptyPlaceButton } from './empty-place-button.tsx';
import { FileActions } from './file-actions.tsx';

export function PlaceTitle() {
  const { place } = useNotebook();
  const name = useStore(place, (state) => textOf(state.document.name));
  const about = useStore(place, ({ document }) =>
    [textOf(document.owner), textOf(document.place)].filter((part) => part !== '').join(', '),
  );
  return (
    <div className="place-title">
      <div className="grow">
        <h1>
          <input
            type="text"
            aria-label="Name of this place"
            placeholder="Name this place"
            autoComplete="off"
            spellCheck={false}
            value={name}
            onChange={(event) => {
              const written = event.target.value;
              const value = written === '' ? undefined : written;
              place.update((state) =>
                putValue(state, { path: ['name'], value, called: 'the name' }),
              );
            }}
          />
        </h1>
        {about !== '' && <p className="note">{about}</p>}
      </div>
      <FileActions />
    </div>
  );
}

/** Over a place of the demo workshop: that it is one, and the way to a place of one's own. */
export function DemoSlip() {
  const { place } = useNotebook();
  const isDemo = useStore(place, (state) => state.isDemo);
  if (!isDemo) return null;
  return (
    <div className="slip slip-row no-print">
      <span className="tag">Demo</span>
      <p>
        An invented place. <a href="#source">Change its numbers</a> and watch, or begin with your
        own.
      </p>
      <EmptyPlaceButton isMain />
    </div>
  );
}
