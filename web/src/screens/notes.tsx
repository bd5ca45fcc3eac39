/** How it was measured, what was taken for granted, and what can hurt. */
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { AlongLines } from '../walk/along-lines.tsx';

export function Notes() {
  const { answer, settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const shown = useStore(answer, (state) => state.shown?.value);
  if (shown === undefined) return null;
  const { measured } = shown.words[system];
  return (
    <div className="notes">
      <div>
        <Lines title="Measured" id="measured-title" lines={measured} />
        <AlongLines />
        <section aria-labelledby="assumed-title">
          <h2 id="assumed-title">Taken for granted</h2>
          <ul>
            {shown.warnings.map((warning) => (
              <li key={warning.message}>
                <strong>Look again:</strong> {warning.message}
              </li>
            ))}
            {shown.words[system].assumptions.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </section>
      </div>
      <section className="cautions" aria-labelledby="cautions-title">
        <h2 id="cautions-title">Cautions</h2>
        <ul>
          {shown.cautions.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </section>
    </div>
  );
}

function Lines({
  title,
  id,
  lines,
}: {
  readonly title: string;
  readonly id: string;
  readonly lines: readonly string[];
}) {
  if (lines.length === 0) return null;
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}
