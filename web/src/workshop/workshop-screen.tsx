/** All places: sought, begun, named, copied, deleted and brought back, and the workshop as one file. */
import { useEffect, useMemo, useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { InstallButton } from '../offline/install-button.tsx';
import { EmptyPlaceButton } from '../screens/empty-place-button.tsx';
import { NotebookHead } from '../screens/notebook-head.tsx';
import { WorkshopTabs } from '../shared/workshop-tabs.tsx';
import type { SiteRecord } from '../state/site-record.ts';
import type { WorkshopState } from '../state/workshop.ts';
import { listed, nameOf } from '../state/workshop.ts';
import { DeletedRecords } from './deleted-records.tsx';
import { DEMO_PLACES } from './demo.ts';
import { PlaceRow } from './place-row.tsx';
import { boxFor, outlineOf } from './thumbnails.ts';
import { useAct, WorkshopNews } from './workshop-acts.tsx';
import { WorkshopFiles } from './workshop-files.tsx';

export function WorkshopScreen() {
  const { workshop } = useNotebook();
  const state = useStore(workshop.state, (now) => now);
  const acts = useAct();
  return (
    <>
      <NotebookHead />
      <main className="page">
        <WorkshopTabs leaf="places" />
        <div className="place-title">
          <h1 className="grow">Places</h1>
          <div className="row buttons">
            <EmptyPlaceButton isMain />
            <WorkshopFiles acts={acts} />
          </div>
        </div>
        <WorkshopNews acts={acts} />
        {state.phase === 'failed' && (
          <div className="slip danger" role="alert">
            <p>
              <strong>The places could not be read: {state.why}.</strong> Load the page again.
            </p>
          </div>
        )}
        {state.phase === 'open' && <Places sites={state.sites} acts={acts} />}
      </main>
      <footer className="notebook-foot">
        A prediction, not a promise. Local codes and licensed practice come first. Places are kept
        in this browser; save the workshop as a file to have them elsewhere too. The demo workshop
        is invented. <InstallButton />
      </footer>
    </>
  );
}

function Places({
  sites,
  acts,
}: {
  readonly sites: readonly SiteRecord[];
  readonly acts: ReturnType<typeof useAct>;
}) {
  const { workshop, glances } = useNotebook();
  const [sought, setSought] = useState('');
  const all = useMemo(() => listed(sites, ''), [sites]);
  const found = useMemo(() => listed(sites, sought), [sites, sought]);
  const demo = all.filter(({ isDemo }) => isDemo).map(({ id }) => id);
  const { state } = workshop;
  const sharedDemo = useStore(state, demoShared)
    .split(' ')
    .filter((id) => id !== '');
  const whole = [...demo, ...sharedDemo];
  useEffect(() => glances.workThrough(found), [glances, found]);
  const box = boxFor(all.map(({ document }) => outlineOf(document)));
  const loadAll = async (): Promise<void> => {
    // Its range, price list and test are fetched when they are asked for.
    const { DEMO_PRICES, DEMO_RANGE, DEMO_TEST } = await import('./demo-shared.ts');
    await workshop.loadDemo([...DEMO_PLACES, DEMO_RANGE, DEMO_PRICES, DEMO_TEST]);
  };
  const loadDemo = (
    <button
      type="button"
      className="button"
      onClick={() => acts.act(loadAll(), 'The demo workshop is loaded.')}
    >
      Load the demo workshop
    </button>
  );
  return (
    <>
      {all.length === 0 ? (
        <div className="slip">
          <p>
            No places yet. Begin an empty one, open a file, or look around in an invented workshop
            first.
          </p>
          {loadDemo}
        </div>
      ) : (
        <div className="seek">
          <label>
            <span>Search</span>
            <input
              type="search"
              value={sought}
              placeholder="name, owner or valley"
              onChange={(event) => setSought(event.target.value)}
            />
          </label>
          <p className="note">
            All drawn to one scale: the box is {box.height} m high and {box.length} m long.
          </p>
        </div>
      )}
      {all.length > 0 && (
        <section aria-label="List of places">
          <p className="for-ears" role="status">
            {sought.trim() === '' ? '' : `${found.length} of ${all.length} places`}
          </p>
          {found.length === 0 && (
            <p className="slip">No place has “{sought.trim()}” in its name, owner or valley.</p>
          )}
          <ol className="places">
            {found.map((site) => (
              <PlaceRow key={site.id} site={site} box={box} acts={acts} />
            ))}
          </ol>
        </section>
      )}
      {all.length > 0 &&
        (demo.length === 0 ? (
          <div className="row demo-row">{loadDemo}</div>
        ) : (
          <div className="slip slip-row demo-row">
            <span className="tag">Demo</span>
            <p>
              {demo.length} invented places are in the list
              {sharedDemo.length > 0 && ', with an invented range, price list and bench test'}.
            </p>
            <button
              type="button"
              className="button"
              onClick={() =>
                acts.act(workshop.takeOut(whole), 'The demo workshop was removed.', whole)
              }
            >
              Remove the demo workshop
            </button>
          </div>
        ))}
      <DeletedRecords
        deleted={sites.filter(({ deletedAt }) => deletedAt !== undefined)}
        what="place"
        titleOf={(site) => nameOf(site) || 'A place without a name'}
        acts={acts}
      />
    </>
  );
}

/** Ids of the demo's range, price list and tests, in one word, so that who watches them sees whether they changed. */
function demoShared(state: WorkshopState): string {
  if (state.phase !== 'open') return '';
  const tests = state.tests.filter(({ deletedAt }) => deletedAt === undefined);
  return [...Object.values(state.shared), ...tests]
    .flatMap((record) => (record?.isDemo === true ? [record.id] : []))
    .join(' ');
}
