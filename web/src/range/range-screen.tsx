/** The maker's own rams: all of them drawn to one scale, or one of them with its parts. */
import './range.css';
import type { Ram } from '@fallwright/engine';
import { ramExtent, ramThumb } from '@fallwright/papers';
import { formatQuantity } from '@fallwright/units';
import { useMemo, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { Drawn } from '../drawn/drawn.tsx';
import { UndoButtons } from '../screens/undo-buttons.tsx';
import { SharedDemoSlip, SharedDesk } from '../shared/shared-desk.tsx';
import { textOf } from '../state/entry.ts';
import { putDocument } from '../state/place.ts';
import { RamPage } from './ram-page.tsx';
import {
  isRetired,
  placesOn,
  ramsIn,
  referenceOf,
  revisionOf,
  withCopy,
  withNewRam,
  withRetired,
} from './range-document.ts';
import { RangeFiles } from './range-files.tsx';
import { rangeProblems, readRam } from './range-reading.ts';
import { SIZES } from './sizes.ts';

export function RangeScreen({ id }: { readonly id: string }) {
  return (
    <SharedDesk
      kind="range"
      title="Range of rams"
      problemsOf={rangeProblems}
      whenNone="No range yet. The rams you build, with what each can be set up to and what it costs: places and the choice for a place are made from them."
      begin="Begin your range"
    >
      {id === '' ? <RamList /> : <RamPage key={id} id={id} />}
    </SharedDesk>
  );
}

/** Height of the room in which the largest ram stands. */
const THUMB = { width: 168, height: 112, margin: 6 } as const;

function RamList() {
  const { place } = useNotebook();
  const rams = useStore(place, ({ document }) => ramsIn(document));
  const read = useMemo(() => rams.map((ram) => ({ ram, reading: readRam(ram) })), [rams]);
  const extents = read.flatMap(({ reading }) => (reading.ok ? [ramExtent(reading.built)] : []));
  const scale = Math.min(
    ...extents.map(({ width, height }) =>
      Math.min((THUMB.width - THUMB.margin) / width, (THUMB.height - THUMB.margin) / height),
    ),
  );
  return (
    <>
      <div className="place-title">
        <h1 className="grow">Range of rams</h1>
        <RangeFiles>
          <NewRam />
          <UndoButtons />
        </RangeFiles>
      </div>
      <SharedDemoSlip what="Four invented rams." />
      {rams.length === 0 ? (
        <p className="slip">
          No ram yet. Begin one from the typical rule of its size; then put its own parts in.
        </p>
      ) : (
        <section aria-label="Rams of the range">
          {rams.length > 1 && <p className="note rams-scale">All drawn to one scale.</p>}
          <ol className="rams">
            {read.map(({ ram, reading }, index) => (
              <RamRow
                key={textOf(ram.id)}
                index={index}
                built={reading.ok ? reading.built : undefined}
                scale={scale}
              />
            ))}
          </ol>
        </section>
      )}
    </>
  );
}

function NewRam() {
  const { place } = useNotebook();
  const [, goTo] = useLocation();
  const [size, setSize] = useState('DN25');
  const begin = (): void => {
    const { document, id } = withNewRam(place.get().document, size);
    place.update((state) => putDocument(state, { document, path: ['rams'], called: 'a new ram' }));
    goTo(`/range/${id}`);
  };
  return (
    <div className="new-ram">
      <label>
        <span className="for-ears">Size of the new ram</span>
        <select value={size} onChange={(event) => setSize(event.target.value)}>
          {SIZES.map((one) => (
            <option key={one.value} value={one.value}>
              {one.label}
            </option>
          ))}
        </select>
      </label>
      <button type="button" className="button main" onClick={begin}>
        Begin a ram
      </button>
    </div>
  );
}

function RamRow({
  index,
  built,
  scale,
}: {
  readonly index: number;
  readonly built: Ram | undefined;
  readonly scale: number;
}) {
  const { place, settings, workshop } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const ram = useStore(place, ({ document }) => ramsIn(document)[index]);
  const sites = useStore(workshop.state, (state) => (state.phase === 'open' ? state.sites : NONE));
  const drawing = useMemo(
    () =>
      built === undefined
        ? undefined
        : ramThumb(built, { scale, width: THUMB.width, height: THUMB.height }),
    [built, scale],
  );
  if (ram === undefined) return null;
  const id = textOf(ram.id);
  const name = textOf(ram.name) || 'A ram without a name';
  const used = placesOn(sites, referenceOf(ram)).length;
  const facts = [
    ...(built === undefined ? [] : [`bore ${formatQuantity(built.bore, 'bore', system)}`]),
    `revision ${revisionOf(ram)}`,
    ...(ram.leadTime === undefined ? [] : [`lead time ${textOf(ram.leadTime)}`]),
  ];
  return (
    <li className={isRetired(ram) ? 'is-retired' : undefined}>
      <Link href={`/range/${id}`} className="ram-thumb" aria-hidden="true" tabIndex={-1}>
        {drawing !== undefined && <Drawn drawing={drawing} name="" />}
      </Link>
      <div className="who">
        <h2>
          <Link href={`/range/${id}`}>{name}</Link>
          {isRetired(ram) && <span className="tag">Retired</span>}
        </h2>
        <p>{facts.join(', ')}</p>
        {used > 0 && (
          <p className="note">
            {used === 1 ? 'one place stands on it' : `${used} places stand on it`}
          </p>
        )}
        {built === undefined && (
          <p className="fault">Not whole yet: open it to see what is missing.</p>
        )}
      </div>
      <p className="ram-price">{textOf(ram.price) || <span className="note">no price</span>}</p>
      <RamActs index={index} name={name} />
    </li>
  );
}

const NONE: readonly never[] = [];

export function RamActs({
  index,
  name,
  after,
}: {
  readonly index: number;
  readonly name: string;
  /** Where the page goes after a copy. */
  readonly after?: (id: string) => void;
}) {
  const { place } = useNotebook();
  const isGone = useStore(place, ({ document }) => isRetired(ramsIn(document)[index] ?? {}));
  const copy = (): void => {
    const { document, id } = withCopy(place.get().document, index);
    place.update((state) =>
      putDocument(state, { document, path: ['rams'], called: `a copy of ${name}` }),
    );
    after?.(id);
  };
  const retire = (): void =>
    place.update((state) =>
      putDocument(state, {
        document: withRetired(state.document, index, !isGone),
        path: ['rams', index, 'retired'],
        called: isGone ? `${name}, made again` : `${name}, retired`,
      }),
    );
  return (
    <div className="row acts">
      <button type="button" className="button plain" onClick={copy}>
        Copy<span className="for-ears"> {name}</span>
      </button>
      <button type="button" className="button plain" onClick={retire}>
        {isGone ? 'Make again' : 'Retire'}
        <span className="for-ears"> {name}</span>
      </button>
    </div>
  );
}
