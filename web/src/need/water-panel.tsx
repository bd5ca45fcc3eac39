/** Need and tank: in words at once, and drawn as soon as that part of the page has come. */
import type { System } from '@fallwright/units';
import { lazy, Suspense } from 'react';
import type { SiteAnswer } from '../answer/site-answer.ts';
import { newestAnswer } from '../answer/site-answer.ts';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';

interface Drawn {
  readonly default: React.ComponentType<{ readonly shown: SiteAnswer; readonly system: System }>;
}

const WaterDrawn = lazy(() =>
  import('./water-drawn.tsx').then(
    (part): Drawn => ({ default: part.WaterDrawn }),
    // Without a connection the words stand alone.
    (): Drawn => ({ default: () => null }),
  ),
);

export function WaterPanel() {
  const { answer, settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const shown = useStore(answer, newestAnswer);
  if (shown === undefined) return null;
  const { water } = shown.words[system];
  const hasStore = shown.answer.emptying !== undefined;
  if (shown.plan === undefined && !hasStore) return null;
  return (
    <section className="water-panel" aria-labelledby="water-title">
      <h2 id="water-title">{shown.plan === undefined ? 'The store' : 'Need and tank'}</h2>
      <div className="water-body">
        <div className="water-figures">
          <Suspense>
            <WaterDrawn shown={shown} system={system} />
          </Suspense>
        </div>
        {water.length > 0 && (
          <ul>
            {water.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        )}
      </div>
    </section>
  );
}
