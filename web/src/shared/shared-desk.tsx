/** The range or the price list on the page: opened, kept, begun where there is none. All fields inside write into it. */
import './shared.css';
import type { Problem } from '@fallwright/records';
import { useEffect, useMemo, useState } from 'react';
import { NO_ANSWER_YET } from '../answer/answerer.ts';
import type { SiteAnswerState } from '../answer/site-answer.ts';
import { NotebookContext, useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { Hatches } from '../drawing/hatches.tsx';
import { ConflictPanel } from '../screens/conflict-panel.tsx';
import { NotebookHead } from '../screens/notebook-head.tsx';
import { useUndoKeys } from '../screens/use-undo-keys.ts';
import type { SharedKind } from '../state/record-kind.ts';
import type { SiteDocument } from '../state/site-document.ts';
import { createStore } from '../state/store.ts';
import { WorkshopTabs } from './workshop-tabs.tsx';

export function SharedDesk({
  kind,
  title,
  problemsOf,
  whenNone,
  begin,
  children,
}: {
  readonly kind: SharedKind;
  readonly title: string;
  /** What cannot be read, told at the fields. */
  readonly problemsOf: (document: SiteDocument) => readonly Problem[];
  /** What it is for, said where none was begun. */
  readonly whenNone: string;
  readonly begin: string;
  readonly children: React.ReactNode;
}) {
  const notebook = useNotebook();
  const desk = notebook.shared[kind];
  const { keeper, place } = desk;
  const { workshop } = notebook;
  useEffect(() => {
    void keeper.open(kind);
    // Places are shown what was written here.
    return () => void keeper.close().then(workshop.refresh);
  }, [keeper, workshop, kind]);
  useUndoKeys(place);
  const standing = useStore(desk.standing, (state) => state);
  const answer = useProblems(place.get, place.subscribe, problemsOf);
  const value = useMemo(() => ({ ...notebook, ...desk, answer }), [notebook, desk, answer]);
  return (
    <NotebookContext value={value}>
      <Hatches />
      <NotebookHead />
      <main className="page">
        <WorkshopTabs leaf={kind} />
        {standing.kind === 'open' ? (
          <>
            <ConflictPanel />
            {children}
          </>
        ) : (
          <>
            <h1 className="shared-title">{title}</h1>
            {(standing.kind === 'missing' || standing.kind === 'deleted') && (
              <NoneYet kind={kind} words={whenNone} begin={begin} />
            )}
            {standing.kind === 'failed' && (
              <div className="slip danger" role="alert">
                <p>
                  <strong>It could not be read: {standing.why}.</strong> Nothing was changed; load
                  the page again.
                </p>
              </div>
            )}
          </>
        )}
      </main>
      <footer className="notebook-foot">
        Kept in this browser, with every earlier state. It travels in the file of the whole
        workshop. The demo workshop is invented.
      </footer>
    </NotebookContext>
  );
}

/** Problems of what is written, where every field looks for its own. */
function useProblems(
  get: () => { readonly document: SiteDocument },
  subscribe: (told: () => void) => () => void,
  problemsOf: (document: SiteDocument) => readonly Problem[],
) {
  const [store] = useState(() => createStore<SiteAnswerState>(NO_ANSWER_YET));
  useEffect(() => {
    let known: SiteDocument | undefined;
    const look = (): void => {
      const { document } = get();
      if (document === known) return;
      known = document;
      store.update((state) => ({ ...state, problems: problemsOf(document) }));
    };
    look();
    return subscribe(look);
  }, [store, get, subscribe, problemsOf]);
  return store;
}

function NoneYet({
  kind,
  words,
  begin,
}: {
  readonly kind: SharedKind;
  readonly words: string;
  readonly begin: string;
}) {
  const { workshop, keeper } = useNotebook();
  return (
    <div className="slip">
      <p>{words}</p>
      <button
        type="button"
        className="button main"
        onClick={() => void workshop.beginShared(kind).then((id) => keeper.open(id))}
      >
        {begin}
      </button>
    </div>
  );
}

/** Over a record of the demo workshop. */
export function SharedDemoSlip({ what }: { readonly what: string }) {
  const { place } = useNotebook();
  const isDemo = useStore(place, (state) => state.isDemo);
  if (!isDemo) return null;
  return (
    <div className="slip slip-row no-print">
      <span className="tag">Demo</span>
      <p>{what} Removed with the demo workshop.</p>
    </div>
  );
}
