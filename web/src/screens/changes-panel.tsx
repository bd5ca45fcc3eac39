/** What would change it: one staff for each thing the owner can change. */
import { useMemo } from 'react';
import { useLocation } from 'wouter';
import { withAsked } from '../alternatives/kept-comparison.ts';
import type { OpenedAlternative } from '../alternatives/opened.ts';
import type { ChangeRow, MaterialRow } from '../answer/change-rows.ts';
import { changeRows, materialRows, turnsNothing } from '../answer/change-rows.ts';
import type { SiteAnswerState } from '../answer/site-answer.ts';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { VerdictMark, wordTone } from '../marks/verdict-mark.tsx';
import { Staff } from './staff.tsx';

/** Whether what is shown belongs to an older input. */
function isWaiting({ phase, areChangesRunning }: SiteAnswerState): boolean {
  return areChangesRunning || phase === 'slow' || phase === 'refused' || phase === 'failed';
}

export function ChangesPanel() {
  const { answer, settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const changes = useStore(answer, (state) => state.changes);
  const hasAnswer = useStore(answer, (state) => state.shown !== undefined);
  const failure = useStore(answer, (state) => state.failure);
  const isRunning = useStore(answer, isWaiting);
  const rows = useMemo(
    () => (changes === undefined ? [] : changeRows(changes, system)),
    [changes, system],
  );
  const still = useMemo(
    () => (changes === undefined ? [] : turnsNothing(changes, system)),
    [changes, system],
  );
  const hasEnough = rows.some((row) => row.layout.enough !== undefined);
  if (!hasAnswer) return <div />;
  return (
    <section className="changes" aria-labelledby="changes-title">
      <h2 id="changes-title">What would change it</h2>
      {changes === undefined ? (
        <p className="note">
          {isRunning
            ? 'Trying each thing you can change …'
            : `This could not be worked out${failure === undefined ? '' : `: ${failure}`}. The answer beside it stands.`}
        </p>
      ) : (
        <div className={isRunning ? 'answer-body stale' : 'answer-body'}>
          {rows.length > 0 && (
            <table>
              <thead>
                <tr>
                  <th scope="col">you can change</th>
                  <th scope="col" className="staff-head">
                    now, and where it turns
                  </th>
                  <th scope="col">it then</th>
                  <th scope="col">what it takes</th>
                </tr>
              </thead>
              <tbody>
                {rows.map((row) => (
                  <Row key={row.what} row={row} />
                ))}
              </tbody>
            </table>
          )}
          <p className="note">
            Ink wedge: now. Blue: it runs. {hasEnough && 'Deep blue: it gives what is needed. '}Red
            stroke: where it stops. Everything else is held as it is.
          </p>
          {still.length > 0 && (
            <ul className="turns-nothing note">
              {still.map((sentence) => (
                <li key={sentence}>{sentence}</li>
              ))}
            </ul>
          )}
          {changes.materials.length > 0 && (
            <OtherMaterials rows={materialRows(changes.materials, system)} />
          )}
        </div>
      )}
    </section>
  );
}

/** The same drive line, as long and as wide, of something else. */
function OtherMaterials({ rows }: { readonly rows: readonly MaterialRow[] }) {
  return (
    <>
      <h3>The same drive line of another material</h3>
      <ul className="materials">
        {rows.map((row) => (
          <li key={row.name}>
            <span className="material">{row.name}</span>
            <span className={`becomes ${wordTone(row.kind)}`}>
              <VerdictMark kind={row.kind} width={36} />
              {row.word}
            </span>
            <span className="keep amount">{row.amount}</span>
            <CompareButton asked={{ kind: 'pipe', name: row.name }} called={row.name} />
          </li>
        ))}
      </ul>
    </>
  );
}

/** Lays the change beside the present place, on the leaf where places are compared. */
function CompareButton({
  asked,
  called,
}: {
  readonly asked: OpenedAlternative;
  readonly called: string;
}) {
  const { comparison, standing } = useNotebook();
  const id = useStore(standing, (state) => (state.kind === 'open' ? state.id : undefined));
  const [, go] = useLocation();
  if (id === undefined) return null;
  return (
    <button
      type="button"
      className="button plain compare"
      aria-label={`Compare: ${called}`}
      onClick={() => {
        comparison.update((state) => withAsked(state, asked));
        go(`/places/${id}/pipes`);
      }}
    >
      compare
    </button>
  );
}

function Row({ row }: { readonly row: ChangeRow }) {
  return (
    <tr>
      <th scope="row">{row.name}</th>
      <td className="on-staff">
        <Staff row={row} />
      </td>
      <td className="becomes">
        {row.becomes.map((verdict) => (
          <span key={verdict.kind} className={wordTone(verdict.kind)}>
            <VerdictMark kind={verdict.kind} width={36} />
            {verdict.word}
          </span>
        ))}
      </td>
      <td className="trouble">
        {row.trouble}
        {row.alternative !== undefined && (
          <CompareButton asked={row.alternative} called={row.name} />
        )}
      </td>
    </tr>
  );
}
