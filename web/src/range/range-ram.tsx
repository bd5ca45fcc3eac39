/** On the ram's card of a place: the rams of the range with their tunings, and what has become of the one that stands there. */
import './range-ram.css';
import { useEffect, useId, useMemo, useRef } from 'react';
import { Link } from 'wouter';
import type { Glance } from '../answer/glance.ts';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { RamDrawing } from '../drawn/ram-drawing.tsx';
import { VerdictMark } from '../marks/verdict-mark.tsx';
import { textOf } from '../state/entry.ts';
import { dropUnread, putDocument } from '../state/place.ts';
import { ramPart } from '../state/ram-entry.ts';
import type { Plain } from '../state/site-document.ts';
import { glanceInWords } from '../workshop/glance-words.ts';
import { askedText } from '../workshop/glances.ts';
import type { OfferedRam, Standing } from './ram-of-place.ts';
import { entryFor, offeredRams, readableRange, standingOf, withRamEntry } from './ram-of-place.ts';
import { RANGE_RAM_ID, ramsIn } from './range-document.ts';

const NO_RAMS: readonly never[] = [];

export function RangeRam() {
  const { place, workshop } = useNotebook();
  const document = useStore(place, (state) => state.document);
  const kept = useStore(workshop.state, (state) =>
    state.phase === 'open' ? state.shared.range?.document : undefined,
  );
  const rams = kept === undefined ? NO_RAMS : ramsIn(kept);
  const range = useMemo(() => readableRange(rams), [rams]);
  const offered = useMemo(() => (range === undefined ? NO_RAMS : offeredRams(range)), [range]);
  const { ram } = document;
  const standing = useMemo(
    (): Standing | undefined => (range === undefined ? undefined : standingOf({ ram }, range)),
    [ram, range],
  );
  const reference = textOf(ramPart(document, ['range']));
  if (range === undefined) {
    return reference === '' ? null : (
      <p className="note">
        It is {reference} of a range that is not here; the place keeps its own copy of it.
      </p>
    );
  }
  const put = (entry: Plain | undefined, called: string): void => {
    if (entry === undefined) return;
    place.update((state) =>
      putDocument(dropUnread(state, ['ram']), {
        document: withRamEntry(state.document, entry),
        path: ['ram'],
        called,
      }),
    );
  };
  return (
    <div className="range-ram">
      <Choosing
        offered={offered}
        reference={reference}
        tuning={textOf(ramPart(document, ['tuning']))}
        onChoose={(one, tuning) =>
          put(entryFor(range, one.id, tuning), `the ram (to ${one.name}, ${tuning})`)
        }
      />
      {standing !== undefined && (
        <Told standing={standing} called={(one) => inWords(one, offered)} put={put} />
      )}
    </div>
  );
}

function Choosing({
  offered,
  reference,
  tuning,
  onChoose,
}: {
  readonly offered: readonly OfferedRam[];
  readonly reference: string;
  readonly tuning: string;
  readonly onChoose: (ram: OfferedRam, tuning: string) => void;
}) {
  const id = useId();
  const [chosenId = ''] = reference.split('@');
  const chosen = offered.find((one) => one.id === chosenId);
  const isNewest = chosen !== undefined && reference === `${chosen.id}@${chosen.revision}`;
  const [asBuilt = ''] = chosen?.tunings ?? [];
  return (
    <>
      <div className="field">
        <label htmlFor={RANGE_RAM_ID}>Ram of your range</label>
        <select
          id={RANGE_RAM_ID}
          value={chosen?.id ?? ''}
          onChange={(event) => {
            const one = offered.find((ram) => ram.id === event.target.value);
            const [first] = one?.tunings ?? [];
            if (one !== undefined && first !== undefined) onChoose(one, first);
          }}
        >
          <option value="" disabled={chosen !== undefined}>
            {reference === '' ? 'none of them' : reference}
          </option>
          {offered.map((one) => (
            <option key={one.id} value={one.id}>
              {one.name}
            </option>
          ))}
        </select>
        <div className="reading">
          {chosen === undefined ? (
            <Link href="/range">The range</Link>
          ) : (
            <>
              <span>{`revision ${reference.split('@')[1] ?? ''}`}</span>
              <Link href={`/range/${chosen.id}`}>Look at it</Link>
            </>
          )}
        </div>
      </div>
      {chosen !== undefined && isNewest && chosen.tunings.length > 1 && (
        <div className="field">
          <label htmlFor={`${id}-tuning`}>Set up with</label>
          <select
            id={`${id}-tuning`}
            value={chosen.tunings.includes(tuning) ? tuning : asBuilt}
            onChange={(event) => onChoose(chosen, event.target.value)}
          >
            {chosen.tunings.map((one) => (
              <option key={one} value={one}>
                {one}
              </option>
            ))}
          </select>
          <div className="reading" />
        </div>
      )}
    </>
  );
}

/** `swallow-25@3` as people say it: Swallow 25, revision 3. */
function inWords(reference: string, offered: readonly OfferedRam[]): string {
  const [id = '', revision = ''] = reference.split('@');
  return `${offered.find((one) => one.id === id)?.name ?? id}, revision ${revision}`;
}

function Told({
  standing,
  called,
  put,
}: {
  readonly standing: Standing;
  readonly called: (reference: string) => string;
  readonly put: (entry: Plain | undefined, called: string) => void;
}) {
  switch (standing.kind) {
    case 'unknownRam':
      return (
        <p className="note">
          Your range has no {called(standing.reference)}; the place keeps its own copy of it.
        </p>
      );
    case 'copyDiffers':
      return (
        <div className="slip">
          <p>It differs from {called(standing.reference)}, as your range has it.</p>
          {standing.entry !== undefined && (
            <button
              type="button"
              className="button plain"
              onClick={() => put(standing.entry, 'the ram, as the range has it')}
            >
              Put it back as in the range
            </button>
          )}
        </div>
      );
    case 'noSuchTuning':
      return (
        <p className="slip">
          {called(standing.newest)} is no longer set up with {standing.tuning}. Choose the ram again
          to take the newer one.
        </p>
      );
    case 'newer':
      return <Newer standing={standing} called={called} put={put} />;
    case 'isNewest':
      return standing.isRetired === true ? (
        <p className="note">It is retired: it is not proposed any more.</p>
      ) : null;
    default:
      return null;
  }
}

/** The newer revision at this very place, beside the one that it was answered with. */
function Newer({
  standing,
  called,
  put,
}: {
  readonly standing: Standing & { readonly kind: 'newer' };
  readonly called: (reference: string) => string;
  readonly put: (entry: Plain | undefined, called: string) => void;
}) {
  const { place, settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const document = useStore(place, (state) => state.document);
  const both = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  const newer = useMemo(() => withRamEntry(document, standing.entry), [document, standing.entry]);
  const [before, after] = useGlances(document, newer);
  const words = [before, after].map((glance) =>
    glance === undefined ? undefined : glanceInWords(glance, system),
  );
  const take = (
    <button
      type="button"
      className="button main"
      onClick={() => put(standing.entry, `the ram (to ${called(standing.newest)})`)}
    >
      Take the newer
    </button>
  );
  const isSame =
    words[0] !== undefined && words[0].main === words[1]?.main && words[0].note === words[1]?.note;
  return (
    <div className="slip newer-ram">
      <p>
        <strong>{called(standing.newest)} is newer.</strong>{' '}
        {standing.changes.length > 0 && `${capital(standing.changes.join('; '))}. `}
        {words[0] === undefined || words[1] === undefined
          ? 'What it would give here is being worked out.'
          : isSame
            ? 'It would answer the same here.'
            : `It would answer differently here: ${words[1].main} in place of ${words[0].main}.`}
      </p>
      <div className="row">
        <button type="button" className="button" onClick={() => both.current?.showModal()}>
          Show both
        </button>
        {take}
      </div>
      <dialog ref={both} className="both-rams" aria-labelledby={titleId}>
        <h2 id={titleId}>Both revisions at this place</h2>
        <div className="both-columns">
          {(
            [
              [standing.reference, standing.now, before],
              [standing.newest, standing.newestRam, after],
            ] as const
          ).map(([reference, ram, glance]) => (
            <div key={reference}>
              <h3>{called(reference)}</h3>
              {glance !== undefined && <Seen glance={glance} />}
              <RamDrawing ram={ram} system={system} />
            </div>
          ))}
        </div>
        <div className="row">
          {take}
          <button type="button" className="button" onClick={() => both.current?.close()}>
            Leave it as it is
          </button>
        </div>
      </dialog>
    </div>
  );
}

function Seen({ glance }: { readonly glance: Glance }) {
  const { settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const { main, note } = glanceInWords(glance, system);
  return (
    <p className="seen">
      <VerdictMark kind={glance.kind} width={44} />
      <span>
        <b>{main}</b> <span className="note">{note}</span>
      </span>
    </p>
  );
}

function useGlances(...documents: readonly [object, object]): readonly (Glance | undefined)[] {
  const { glances } = useNotebook();
  const [first, second] = documents as readonly Parameters<typeof askedText>[0][];
  const known = useStore(glances.known, (all) => all);
  useEffect(() => {
    if (first === undefined || second === undefined) return undefined;
    // While one types the answer of the sheet goes first.
    const timer = setTimeout(
      () => glances.workThrough([{ document: first }, { document: second }]),
      400,
    );
    return () => clearTimeout(timer);
  }, [glances, first, second]);
  return [first, second].map((one) => (one === undefined ? undefined : known.get(askedText(one))));
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
