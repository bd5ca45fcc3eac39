/** The pipes of a line, a card for each, and a way to add one. */
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import type { LineName } from '../state/lines.ts';
import { pipesOf, withPipeAdded } from '../state/lines.ts';
import { putDocument } from '../state/place.ts';
import { PipeCard } from './pipe-card.tsx';

export function LinePipes({
  line,
  called,
  add,
}: {
  readonly line: LineName;
  /** What undo says was changed: `the drive line`. */
  readonly called: string;
  readonly add: string;
}) {
  const { place } = useNotebook();
  const count = useStore(place, (state) => pipesOf(state.document, line).length);
  return (
    <>
      {Array.from({ length: count }, (_, index) => (
        // A pipe is known by its place in the line: that is what its path in the file says too.
        // biome-ignore lint/suspicious/noArrayIndexKey: the place in the line is the identity
        <PipeCard key={index} line={line} index={index} count={count} />
      ))}
      <button
        type="button"
        className="button plain"
        onClick={() =>
          place.update((state) =>
            putDocument(state, {
              path: [line],
              called,
              document: withPipeAdded(state.document, line),
            }),
          )
        }
      >
        {add}
      </button>
    </>
  );
}
