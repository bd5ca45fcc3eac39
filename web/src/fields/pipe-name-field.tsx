/** A pipe by its name in the tables: typed freely, with the names offered as one types. */
import { findPipe, pipeNames } from '@fallwright/engine';
import { formatQuantity } from '@fallwright/units';
import { useId, useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { textOf } from '../state/entry.ts';
import { keepUnread, putValue, tellFault } from '../state/place.ts';
import type { Path } from '../state/site-document.ts';
import { pathText, valueAt } from '../state/site-document.ts';
import { FieldFrame } from './field-frame.tsx';
import { Firm } from './origin-choice.tsx';

export function PipeNameField({
  path,
  called,
  isOptional,
  aside,
}: {
  readonly path: Path;
  readonly called: string;
  readonly isOptional: boolean;
  readonly aside: React.ReactNode;
}) {
  const { place, settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const key = pathText(path);
  const good = useStore(place, (state) => textOf(valueAt(state.document, path)));
  const unread = useStore(place, (state) => state.unread[key]);
  const [isInside, setInside] = useState(false);
  const names = useId();
  const text = unread?.text ?? good;
  const found = good === '' ? undefined : findPipe(good);
  const pipe = found?.ok && unread === undefined ? found.pipe : undefined;

  const type = (typed: string): void =>
    place.update((state) => {
      if (typed.trim() === '' && isOptional)
        return putValue(state, { path, value: undefined, called });
      return findPipe(typed.trim()).ok
        ? putValue(state, { path, value: typed, called })
        : keepUnread(state, path, typed);
    });

  const leave = (): void => {
    setInside(false);
    const left = place.get().unread[key];
    if (left === undefined || (left.text.trim() === '' && good === '')) return;
    place.update((state) => tellFault(state, path, unknownPipe(left.text)));
  };

  return (
    <FieldFrame
      path={path}
      label="Pipe"
      isInside={isInside}
      isOptional={isOptional}
      aside={aside}
      fault={unread?.fault}
      kept={unread?.fault === undefined || good === '' ? undefined : good}
      reading={
        pipe === undefined ? undefined : (
          <span>
            bore <Firm origin="table">{formatQuantity(pipe.innerDiameter, 'bore', system)}</Firm>,
            wall <Firm origin="table">{formatQuantity(pipe.wallThickness, 'bore', system)}</Firm>
          </span>
        )
      }
    >
      {(attributes) => (
        <>
          <input
            {...attributes}
            type="text"
            list={names}
            autoComplete="off"
            autoCapitalize="off"
            spellCheck={false}
            placeholder={system === 'us' ? 'like steel sch 40 1 in' : 'like PE100 SDR11 25'}
            value={text}
            onChange={(event) => type(event.target.value)}
            onFocus={() => setInside(true)}
            onBlur={leave}
          />
          {/* Some two hundred names, a quarter of the page: there while somebody is in the box. */}
          <datalist id={names}>
            {isInside && pipeNames().map((name) => <option key={name} value={name} />)}
          </datalist>
        </>
      )}
    </FieldFrame>
  );
}

function unknownPipe(written: string): string {
  if (written.trim() === '') return 'No pipe is named. Choose one from the list, or spell it out.';
  const found = findPipe(written);
  const nearest = found.ok ? [] : found.suggestions.slice(0, 3);
  const last =
    nearest.length > 1 ? `${nearest.slice(0, -1).join(', ')} or ${nearest.at(-1)}` : nearest[0];
  return last === undefined
    ? 'No pipe in the tables is called so. Choose one from the list, or spell it out.'
    : `No pipe in the tables is called so. Did you mean ${last}? Or spell it out.`;
}
