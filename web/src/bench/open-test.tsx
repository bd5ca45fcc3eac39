/** One test, opened and kept. All fields inside write into it. */
import type { Problem } from '@fallwright/records';
import { useEffect, useMemo, useState } from 'react';
import { Link } from 'wouter';
import { NO_ANSWER_YET } from '../answer/answerer.ts';
import type { SiteAnswerState } from '../answer/site-answer.ts';
import { NotebookContext, useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { Hatches } from '../drawing/hatches.tsx';
import { ConflictPanel } from '../screens/conflict-panel.tsx';
import { NotebookHead } from '../screens/notebook-head.tsx';
import { useUndoKeys } from '../screens/use-undo-keys.ts';
import { WorkshopTabs } from '../shared/workshop-tabs.tsx';
import { kindOf } from '../state/record-kind.ts';
import { createStore } from '../state/store.ts';
import { TestPage } from './test-page.tsx';
import { readTestOnPage } from './test-reading.ts';

export function OpenTest({ id }: { readonly id: string }) {
  const notebook = useNotebook();
  const { bench: desk, workshop } = notebook;
  const { keeper, place } = desk;
  useEffect(() => {
    void keeper.open(id);
    // The list shows what was written here.
    return () => void keeper.close().then(workshop.refresh);
  }, [keeper, workshop, id]);
  useUndoKeys(place);
  const standing = useStore(desk.standing, (state) => state);
  const isTest = useStore(place, ({ document }) => kindOf(document) === 'test');
  const document = useStore(place, (state) => state.document);
  const read = useMemo(() => readTestOnPage(document), [document]);
  const answer = useProblems(read.problems);
  const value = useMemo(() => ({ ...notebook, ...desk, answer }), [notebook, desk, answer]);
  return (
    <NotebookContext value={value}>
      <Hatches />
      <NotebookHead />
      <main className="page">
        <WorkshopTabs leaf="bench" />
        <p className="to-bench">
          <Link href="/bench">All tests</Link>
        </p>
        {standing.kind === 'open' && standing.id === id && isTest ? (
          <>
            <ConflictPanel />
            <TestPage read={read} />
          </>
        ) : (
          <NotOpen kind={standing.kind} id={id} isTest={isTest} />
        )}
      </main>
      <footer className="notebook-foot">
        A prediction beside a measurement proves neither. Local codes and licensed practice come
        first. Every field is kept as you type, with or without a network.
      </footer>
    </NotebookContext>
  );
}

/** Where every field looks for what is wrong with it. */
function useProblems(problems: readonly Problem[]) {
  const [store] = useState(() => createStore<SiteAnswerState>(NO_ANSWER_YET));
  useEffect(() => {
    store.update((state) => ({ ...state, problems }));
  }, [store, problems]);
  return store;
}

function NotOpen({
  kind,
  id,
  isTest,
}: {
  readonly kind: string;
  readonly id: string;
  readonly isTest: boolean;
}) {
  const { standing, workshop, keeper } = useNotebook();
  const state = useStore(standing, (now) => now);
  if (kind === 'deleted') {
    return (
      <div className="slip not-open" role="alert">
        <h1>This test was deleted</h1>
        <p>It can be brought back as it was.</p>
        <button
          type="button"
          className="button main"
          onClick={() => void workshop.bringBack([id]).then(() => keeper.open(id))}
        >
          Bring it back
        </button>
      </div>
    );
  }
  if (kind === 'missing' || (kind === 'open' && !isTest)) {
    return (
      <div className="slip not-open" role="alert">
        <h1>No such test in this browser</h1>
        <p>It was deleted for good, or it is kept in another browser.</p>
        <Link href="/bench" className="button">
          To all tests
        </Link>
      </div>
    );
  }
  if (state.kind === 'failed') {
    return (
      <div className="slip danger" role="alert">
        <p>
          <strong>It could not be read: {state.why}.</strong> Nothing was changed; load the page
          again.
        </p>
      </div>
    );
  }
  return <h1 className="for-ears">Opening the test</h1>;
}
