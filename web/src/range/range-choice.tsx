/** On the ram's card of a place that has no ram of the range: their names. What reads them is fetched when one is chosen. */
import { useId, useState } from 'react';
import { Link } from 'wouter';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { textOf } from '../state/entry.ts';
import { dropUnread, putDocument } from '../state/place.ts';
import { isRetired, RANGE_RAM_ID, ramsIn } from './range-document.ts';

const NO_RAMS: readonly never[] = [];

/** Judgement: the box is there within a few frames; after a second something else has the person's attention. */
const MOST_FRAMES = 60;

/** The box that takes this one's place, so that the keyboard goes on from there. */
function focusWhenThere(id: string, frames = MOST_FRAMES): void {
  if (frames === 0) return;
  requestAnimationFrame(() => {
    const box = document.getElementById(id);
    if (box === null) focusWhenThere(id, frames - 1);
    else box.focus();
  });
}

export function RangeChoice() {
  const { place, workshop } = useNotebook();
  const id = useId();
  const [trouble, setTrouble] = useState<string>();
  const rams = useStore(workshop.state, (state) =>
    state.phase === 'open' && state.shared.range !== undefined
      ? ramsIn(state.shared.range.document)
      : NO_RAMS,
  );
  const take = async (chosen: string): Promise<void> => {
    const { entryFor, offeredRams, readableRange, withRamEntry } = await import(
      './ram-of-place.ts'
    );
    const range = readableRange(rams);
    const ram = range && offeredRams(range).find((one) => one.id === chosen);
    const [tuning] = ram?.tunings ?? [];
    const entry =
      range === undefined || tuning === undefined ? undefined : entryFor(range, chosen, tuning);
    if (entry === undefined || ram === undefined) {
      setTrouble(chosen);
      return;
    }
    place.update((state) =>
      putDocument(dropUnread(state, ['ram']), {
        document: withRamEntry(state.document, entry),
        path: ['ram'],
        called: `the ram (to ${ram.name}, ${tuning})`,
      }),
    );
    focusWhenThere(RANGE_RAM_ID);
  };
  const made = rams.filter((ram) => !isRetired(ram));
  if (made.length === 0) return null;
  return (
    <div className={trouble === undefined ? 'field' : 'field wrong'}>
      <label htmlFor={id}>Ram of your range</label>
      <select
        id={id}
        value=""
        aria-describedby={`${id}-reading`}
        onChange={(event) => {
          const chosen = event.target.value;
          take(chosen).catch(() => setTrouble(chosen));
        }}
      >
        <option value="">none of them</option>
        {made.map((ram) => (
          <option key={textOf(ram.id)} value={textOf(ram.id)}>
            {textOf(ram.name) || textOf(ram.id)}
          </option>
        ))}
      </select>
      <div className="reading" id={`${id}-reading`}>
        {trouble === undefined ? (
          <Link href="/range">The range</Link>
        ) : (
          <p className="fault">
            It is not whole yet. <Link href={`/range/${trouble}`}>Look at it</Link>
          </p>
        )}
      </div>
    </div>
  );
}
