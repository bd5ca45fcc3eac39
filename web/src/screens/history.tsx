/** Every saved state of a place: looked at, compared with now, brought back. */
import { useEffect, useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { differencesOf, linesOf } from '../state/differences.ts';
import { putWhole } from '../state/place.ts';
import type { Revision } from '../state/site-record.ts';
import { whenInWords } from '../workshop/when.ts';

/** Judgement: more rows at once slow a phone; the older ones are one touch away. */
const ROWS_AT_ONCE = 60;

export function History({ id }: { readonly id: string }) {
  const { workshop, saved, place } = useNotebook();
  const [revisions, setRevisions] = useState<readonly Revision[]>();
  const [count, setCount] = useState(ROWS_AT_ONCE);
  const [shown, setShown] = useState<number>();
  const document = useStore(place, (state) => state.document);
  const isSaved = useStore(saved, (state) => state.kind === 'saved');
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is written now is the newest entry a moment later
  useEffect(() => {
    let isWanted = true;
    const read = async (): Promise<void> => {
      const all = await workshop.historyOf(id);
      if (isWanted) setRevisions(all);
    };
    void read();
    // The keeper saves when the keys rest.
    const later = setTimeout(() => void read(), 600);
    return () => {
      isWanted = false;
      clearTimeout(later);
    };
  }, [workshop, id, document, isSaved]);
  if (revisions === undefined) return <h2 className="for-ears">Reading the history</h2>;
  return (
    <section className="history" aria-labelledby="history-title">
      <h2 id="history-title">Every state that was saved</h2>
      <ol>
        {revisions.slice(0, count).map((entry) => (
          <li key={entry.revision}>
            <div className="row">
              <span className="when">{whenInWords(entry.savedAt)}</span>
              <span className="what">{entry.changed}</span>
              <button
                type="button"
                className="button plain"
                aria-expanded={shown === entry.revision}
                onClick={() => setShown(shown === entry.revision ? undefined : entry.revision)}
              >
                Look at it<span className="for-ears"> ({whenInWords(entry.savedAt)})</span>
              </button>
            </div>
            {shown === entry.revision && <Look revision={entry} />}
          </li>
        ))}
      </ol>
      {revisions.length > count && (
        <button
          type="button"
          className="button"
          onClick={() => setCount((before) => before + ROWS_AT_ONCE)}
        >
          Show older ones
        </button>
      )}
    </section>
  );
}

function Look({ revision }: { readonly revision: Revision }) {
  const { place } = useNotebook();
  const now = useStore(place, (state) => state);
  const differences = differencesOf(now, revision);
  return (
    <div className="look">
      {differences.length === 0 ? (
        <p className="note">This is what stands on the sheet now.</p>
      ) : (
        <>
          <table>
            <thead>
              <tr>
                <th scope="col">What differs</th>
                <th scope="col">Then</th>
                <th scope="col">Now</th>
              </tr>
            </thead>
            <tbody>
              {differences.map(({ key, label, mine, theirs }) => (
                <tr key={key}>
                  <th scope="row">{label}</th>
                  <td>{theirs === '' ? 'nothing' : theirs}</td>
                  <td>{mine === '' ? 'nothing' : mine}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <button
            type="button"
            className="button"
            onClick={() =>
              place.update((state) =>
                putWhole(
                  state,
                  revision,
                  `the whole place, back to ${whenInWords(revision.savedAt)}`,
                ),
              )
            }
          >
            Bring this back
          </button>
        </>
      )}
      <details>
        <summary>All that it said</summary>
        <dl>
          {linesOf(revision.document).map(({ label, words }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{words}</dd>
            </div>
          ))}
        </dl>
      </details>
    </div>
  );
}
