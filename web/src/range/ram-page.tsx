/** One ram of the range: drawn in section to scale, following what is typed in the fields beside it. */
import type { Ram } from '@fallwright/engine';
import { useMemo, useRef, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { RamDrawing } from '../drawn/ram-drawing.tsx';
import { TextField } from '../fields/text-field.tsx';
import { UndoButtons } from '../screens/undo-buttons.tsx';
import { SharedDemoSlip } from '../shared/shared-desk.tsx';
import { textOf } from '../state/entry.ts';
import { putDocument, putValue } from '../state/place.ts';
import { nameOf } from '../state/workshop.ts';
import { PartFields } from './part-fields.tsx';
import type { RamDocument } from './range-document.ts';
import {
  earlierRevisions,
  isRetired,
  placesOn,
  ramIndex,
  ramPath,
  ramsIn,
  referenceOf,
  revisionOf,
  withNewRevision,
  withoutRam,
} from './range-document.ts';
import type { ReadRam } from './range-reading.ts';
import { readRam } from './range-reading.ts';
import { RamActs } from './range-screen.tsx';
import { SettingFields } from './setting-fields.tsx';

const NO_SITES: readonly never[] = [];

export function RamPage({ id }: { readonly id: string }) {
  const { place, workshop } = useNotebook();
  const [, goTo] = useLocation();
  const ram = useStore(place, ({ document }) => ramsIn(document)[ramIndex(document, id) ?? -1]);
  const index = useStore(place, ({ document }) => ramIndex(document, id));
  const sites = useStore(workshop.state, (state) =>
    state.phase === 'open' ? state.sites : NO_SITES,
  );
  const reading = useMemo(() => (ram === undefined ? undefined : readRam(ram)), [ram]);
  if (ram === undefined || index === undefined || reading === undefined) {
    return (
      <div className="slip not-open" role="alert">
        <h1>No such ram in the range</h1>
        <p>It was taken out, or its name in files was changed.</p>
        <Link href="/range" className="button">
          To the whole range
        </Link>
      </div>
    );
  }
  const name = textOf(ram.name);
  const on = placesOn(sites, referenceOf(ram));
  const isFixed = on.length > 0;
  const isNowhere = earlierRevisions(ram).length === 0 && !isFixed && ram.serials === undefined;
  return (
    <>
      <p className="to-range">
        <Link href="/range">All rams of the range</Link>
      </p>
      <div className="place-title">
        <div className="grow">
          <h1>
            <input
              type="text"
              aria-label="Name of this ram"
              placeholder="Name this ram"
              autoComplete="off"
              spellCheck={false}
              disabled={isFixed}
              value={name}
              onChange={(event) => {
                const written = event.target.value;
                place.update((state) =>
                  putValue(state, {
                    path: ramPath(index, 'name'),
                    value: written === '' ? undefined : written,
                    called: 'the name of the ram',
                  }),
                );
              }}
            />
          </h1>
          <p className="note">
            {`Revision ${revisionOf(ram)}${ram.date === undefined ? '' : ` of ${textOf(ram.date)}`}; files name it ${referenceOf(ram)}`}
            {isRetired(ram) && ' '}
            {isRetired(ram) && <span className="tag">Retired</span>}
          </p>
        </div>
        <div className="row buttons">
          <RamActs index={index} name={name} after={(copy) => goTo(`/range/${copy}`)} />
          <UndoButtons />
        </div>
      </div>
      <SharedDemoSlip what="An invented ram." />
      <Standing ram={ram} index={index} on={on} />
      <div className="ram-page">
        <div className="ram-page-drawing">
          <DrawnRam reading={reading} />
        </div>
        <div className="ram-page-fields">
          <fieldset className="ram-parts" disabled={isFixed}>
            <legend className="for-ears">Parts of the ram</legend>
            <PartFields index={index} built={reading.ok ? reading.built : undefined} />
            <SettingFields index={index} />
          </fieldset>
          <MakingFields index={index} />
          <Revisions ram={ram} index={index} />
          {isNowhere && (
            <button
              type="button"
              className="button plain"
              onClick={() => {
                place.update((state) =>
                  putDocument(state, {
                    document: withoutRam(state.document, index),
                    path: ['rams'],
                    called: `${name}, taken out`,
                  }),
                );
                goTo('/range');
              }}
            >
              Take it out of the range
            </button>
          )}
        </div>
      </div>
    </>
  );
}

/** That places stand on this revision, and the way to change the ram all the same. */
function Standing({
  ram,
  index,
  on,
}: {
  readonly ram: RamDocument;
  readonly index: number;
  readonly on: readonly { readonly id: string; readonly document: RamDocument }[];
}) {
  const { place } = useNotebook();
  if (on.length === 0) return null;
  const revise = (): void => {
    const today = new Date().toISOString().slice(0, 10);
    place.update((state) =>
      putDocument(state, {
        document: withNewRevision(state.document, index, today),
        path: ramPath(index, 'revision'),
        called: `revision ${revisionOf(ram) + 1}`,
      }),
    );
  };
  return (
    <div className="slip slip-row">
      <p>
        <strong>Revision {revisionOf(ram)} stays as it is:</strong>{' '}
        {on.slice(0, MOST_NAMED).map((site, i) => (
          <span key={site.id}>
            {i > 0 && ', '}
            <Link href={`/places/${site.id}`}>{nameOf(site) || 'a place without a name'}</Link>
          </span>
        ))}
        {on.length > MOST_NAMED && ` and ${on.length - MOST_NAMED} more`}{' '}
        {on.length === 1 ? 'was' : 'were'} answered with it. Price, lead time and serial numbers can
        be changed all the same.
      </p>
      <button type="button" className="button main" onClick={revise}>
        Make a new revision
      </button>
    </div>
  );
}

/** Judgement: three names tell which kind of places; the others are a number. */
const MOST_NAMED = 3;

/** As it is built, or set up in one of its ways. What cannot be read leaves the drawing before in its place. */
function DrawnRam({ reading }: { readonly reading: ReadRam }) {
  const { settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const [tuning, setTuning] = useState('');
  const last = useRef<Ram>(undefined);
  const tunings = reading.ok ? reading.tunings : [];
  const chosen = tunings.find(({ name }) => name === tuning);
  const ram = reading.ok ? (chosen?.ram ?? reading.built) : last.current;
  last.current = ram;
  return (
    <>
      {ram !== undefined && <RamDrawing ram={ram} system={system} />}
      {tunings.length > 1 && (
        <label className="drawn-tuning">
          <span>Drawn as</span>
          <select value={chosen?.name ?? ''} onChange={(event) => setTuning(event.target.value)}>
            <option value="">it is built</option>
            {tunings.map(({ name }) => (
              <option key={name} value={name}>
                {name}
              </option>
            ))}
          </select>
        </label>
      )}
      {!reading.ok && (
        <div className="slip ram-faults" role="status">
          <p>
            <strong>Not whole yet.</strong>
            {ram !== undefined && ' Drawn as it last could be read.'}
          </p>
          <ul>
            {reading.problems.map(({ message }) => (
              <li key={message}>{message}</li>
            ))}
          </ul>
        </div>
      )}
    </>
  );
}

/** What may change without a new revision: no answer rests on it. */
function MakingFields({ index }: { readonly index: number }) {
  const at = (key: string) => ramPath(index, key);
  return (
    <section className="ram-section" aria-labelledby="making-title">
      <h2 id="making-title">Making and selling</h2>
      <div className="ram-fields">
        <TextField path={at('mass')} label="Weighs" called="the mass" placeholder="like 9.5 kg" />
        <TextField path={at('price')} label="Price" called="the price" placeholder="like 320 GBP" />
        <TextField
          path={at('leadTime')}
          label="Lead time"
          called="the lead time"
          placeholder="like 3 weeks"
        />
        <TextField
          path={at('setUp')}
          label="Time to set it up"
          called="the time to set it up"
          placeholder="like 4 h"
          whenEmpty="on its footing, joined and started"
        />
      </div>
      <TextField
        path={at('serials')}
        label="Serial numbers"
        called="the serial numbers"
        placeholder="like S25-031 to S25-040, S25-042"
        isListed
      />
      <TextField path={at('remarks')} label="Remarks" called="the remarks" />
    </section>
  );
}

function Revisions({ ram, index }: { readonly ram: RamDocument; readonly index: number }) {
  const earlier = earlierRevisions(ram);
  if (earlier.length === 0) return null;
  return (
    <section className="ram-section" aria-labelledby="revisions-title">
      <h2 id="revisions-title">Revisions</h2>
      <TextField
        path={ramPath(index, 'change')}
        label={`What revision ${revisionOf(ram)} changes`}
        called="what the revision changes"
        placeholder="like a wider seat"
      />
      <ol className="revisions">
        {earlier.map((one) => (
          <li key={revisionOf(one)}>
            <b>Revision {revisionOf(one)}</b>
            {one.date !== undefined && <span className="note"> since {textOf(one.date)}</span>}
            <EarlierRam revision={one} id={textOf(ram.id)} />
          </li>
        ))}
      </ol>
    </section>
  );
}

function EarlierRam({ revision, id }: { readonly revision: RamDocument; readonly id: string }) {
  const { settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const [isOpen, setOpen] = useState(false);
  const reading = useMemo(
    () => (isOpen ? readRam({ ...revision, id }) : undefined),
    [isOpen, revision, id],
  );
  const change = textOf(revision.change);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{change === '' ? 'as it was made first' : change}</summary>
      {reading?.ok === true && <RamDrawing ram={reading.built} system={system} />}
    </details>
  );
}
