/** One place: its name, the ways to look at it, and one of them. */
import { lazy, Suspense } from 'react';
import { Link } from 'wouter';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { Hatches } from '../drawing/hatches.tsx';
import { ConflictPanel } from './conflict-panel.tsx';
import { NotebookHead } from './notebook-head.tsx';
import { PlaceTabs } from './place-tabs.tsx';
import { DemoSlip, PlaceTitle } from './place-title.tsx';
import { Sheet } from './sheet.tsx';
import { useUndoKeys } from './use-undo-keys.ts';

export function PlaceScreen({ id, view }: { readonly id: string; readonly view: string }) {
  const { place, standing } = useNotebook();
  useUndoKeys(place);
  const now = useStore(standing, (state) => state);
  return (
    <>
      <Hatches />
      <NotebookHead />
      <main className="page">
        {now.kind === 'open' && now.id === id ? (
          <>
            <PlaceTitle />
            <DemoSlip />
            <ConflictPanel />
            <PlaceTabs id={id} view={view} />
            <Suspense fallback={<p>Opening the leaf</p>}>
              <Leaf id={id} view={view} />
            </Suspense>
          </>
        ) : (
          <NotOpen id={id} />
        )}
      </main>
      <footer className="notebook-foot">
        A prediction, not a promise. Local codes and licensed practice come first. The demo workshop
        is invented.
      </footer>
    </>
  );
}

/** Leaves that few first visits need come when they are turned to. */
const BeatScreen = lazy(() =>
  import('../beat/beat-screen.tsx').then((leaf) => ({ default: leaf.BeatScreen })),
);
const History = lazy(() => import('./history.tsx').then((leaf) => ({ default: leaf.History })));
const AlternativesScreen = lazy(() =>
  import('../alternatives/alternatives-screen.tsx').then((leaf) => ({
    default: leaf.AlternativesScreen,
  })),
);

const ChoiceScreen = lazy(() =>
  import('../choice/choice-screen.tsx').then((leaf) => ({ default: leaf.ChoiceScreen })),
);

function Leaf({ id, view }: { readonly id: string; readonly view: string }) {
  switch (view) {
    case 'history':
      return <History id={id} />;
    case 'pipes':
      return <AlternativesScreen key={id} />;
    case 'choice':
      return <ChoiceScreen key={id} />;
    case 'beat':
      return <BeatScreen key={id} />;
    default:
      return <Sheet />;
  }
}

function NotOpen({ id }: { readonly id: string }) {
  const { standing, workshop } = useNotebook();
  const now = useStore(standing, (state) => state);
  if (now.kind === 'none' || now.kind === 'opening' || now.kind === 'open') {
    return <h1 className="for-ears">Opening the place</h1>;
  }
  return (
    <div className="slip not-open" role="alert">
      <h1>{WORDS[now.kind].title}</h1>
      <p>{now.kind === 'failed' ? `${WORDS.failed.next} (${now.why})` : WORDS[now.kind].next}</p>
      <div className="row">
        {now.kind === 'deleted' && (
          <button type="button" className="button" onClick={() => void workshop.bringBack([id])}>
            Bring it back
          </button>
        )}
        <Link href="/" className="button">
          To all places
        </Link>
      </div>
    </div>
  );
}

const WORDS = {
  missing: {
    title: 'No such place here',
    next: 'Places are kept in the browser in which they were made. Open its file to have it here too.',
  },
  deleted: {
    title: 'This place was deleted',
    next: 'It can still be brought back with all that was written in it.',
  },
  failed: {
    title: 'This place could not be read',
    next: 'The browser did not hand it out. Nothing was changed; load the page again.',
  },
} as const;
