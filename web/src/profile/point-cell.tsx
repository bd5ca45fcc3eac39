/** A box of the table of points: what was typed stays, and a fault is told beside it on leaving. */
import { readQuantity } from '@fallwright/units';
import { useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { fieldId } from '../fields/field-ids.ts';
import { entryOf, originOf, textOf } from '../state/entry.ts';
import { keepUnread, putValue, tellFault } from '../state/place.ts';
import { pathText, valueAt } from '../state/site-document.ts';
import type { PointPlace } from './line-points.ts';
import { pointPath } from './line-points.ts';
import { pointCalled } from './profile-steps.ts';

const PARTS = {
  at: { purpose: 'pipeLength', label: 'along the pipe', called: 'the place of' },
  height: { purpose: 'elevation', label: 'height', called: 'the height of' },
} as const;

export function PointCell({
  place: point,
  part,
  number,
  problem,
}: {
  readonly place: PointPlace;
  readonly part: keyof typeof PARTS;
  /** Counts along the line, as in the drawing. */
  readonly number: number;
  /** What is wrong with the point among the others, told while nobody writes in the box. */
  readonly problem: string | undefined;
}) {
  const { place } = useNotebook();
  const { purpose, label, called: whichPart } = PARTS[part];
  const path = [...pointPath(point), part];
  const key = pathText(path);
  const called = `${whichPart} ${pointCalled(point)}`;
  const entry = useStore(place, (state) => valueAt(state.document, path));
  const unread = useStore(place, (state) => state.unread[key]);
  const [isInside, setInside] = useState(false);
  const fault = unread?.fault ?? (isInside ? undefined : problem);
  const id = fieldId(path);

  const type = (typed: string): void =>
    place.update((state) =>
      readQuantity(typed.trim(), purpose, called).ok
        ? putValue(state, { path, value: entryOf(typed, originOf(entry)), called })
        : keepUnread(state, path, typed),
    );

  const leave = (): void => {
    setInside(false);
    const left = place.get().unread[key];
    if (left === undefined) return;
    const read = readQuantity(left.text, purpose, called);
    if (read.ok) return;
    const said = read.problems.map(({ message }) => message).join(' ');
    place.update((state) => tellFault(state, path, said));
  };

  return (
    // biome-ignore lint/a11y/noRedundantRoles: the table is laid out as a grid
    <td role="cell" className={fault === undefined ? 'field' : 'field wrong'}>
      <input
        id={id}
        type="text"
        aria-label={`Point ${number}, ${label}`}
        aria-invalid={fault !== undefined}
        aria-describedby={fault === undefined ? undefined : `${id}-fault`}
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        value={unread?.text ?? textOf(entry)}
        onChange={(event) => type(event.target.value)}
        onFocus={() => setInside(true)}
        onBlur={leave}
      />
      {fault !== undefined && (
        <p id={`${id}-fault`} className="fault">
          {fault}
        </p>
      )}
    </td>
  );
}
