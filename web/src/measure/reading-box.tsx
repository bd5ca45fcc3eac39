/** One reading in a small box. It stays as typed, takes the unit of the reading before it, and tells its fault on leaving. */
import type { Purpose } from '@fallwright/units';
import { readQuantity } from '@fallwright/units';
import { useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { fieldId } from '../fields/field-ids.ts';
import { entryOf, originOf, textOf } from '../state/entry.ts';
import { keepUnread, putDocument, tellFault } from '../state/place.ts';
import type { Path, Plain } from '../state/site-document.ts';
import { pathText } from '../state/site-document.ts';
import { withUnitOfOthers } from './bare-number.ts';
import { goOnByEnter, stepName } from './edit.ts';
import type { Spot } from './spot.ts';
import { readAt, writeAt } from './spot.ts';

export function ReadingBox({
  spot,
  inner,
  label,
  isLabelShown = false,
  purpose,
  example,
  others,
  whenEmptied,
}: {
  readonly spot: Spot;
  /** Where it stands in the measurement. */
  readonly inner: Path;
  readonly label: string;
  readonly isLabelShown?: boolean;
  readonly purpose: Purpose;
  readonly example?: string | undefined;
  /** Readings of the same kind, whose unit a bare number takes. */
  readonly others: readonly string[];
  /** What an emptied box does on leaving, where it stands in a list. */
  readonly whenEmptied?: (() => void) | undefined;
}) {
  const { place } = useNotebook();
  const path = [...spot.path, ...inner];
  const key = pathText(path);
  const entry = useStore(place, (state) => readAt(spot, inner)(state.document));
  const unread = useStore(place, (state) => state.unread[key]);
  const [isInside, setInside] = useState(false);
  const called = stepName(label.charAt(0).toLowerCase() + label.slice(1), spot);
  const id = fieldId(path);
  const fault = isInside ? undefined : unread?.fault;

  const put = (value: Plain | undefined): void =>
    place.update((state) =>
      putDocument(state, { path, called, document: writeAt(spot, inner)(state.document, value) }),
    );

  const type = (typed: string): void => {
    if (typed.trim() === '' && whenEmptied === undefined) put(undefined);
    else if (readQuantity(typed.trim(), purpose, called).ok) put(entryOf(typed, originOf(entry)));
    else place.update((state) => keepUnread(state, path, typed));
  };

  const leave = (): void => {
    setInside(false);
    const left = place.get().unread[key];
    if (left === undefined) return;
    if (left.text.trim() === '') {
      if (textOf(entry) !== '') whenEmptied?.();
      return;
    }
    const whole = withUnitOfOthers(left.text, others, purpose);
    if (whole !== undefined) {
      put(entryOf(whole, originOf(entry)));
      return;
    }
    const read = readQuantity(left.text, purpose, `the ${called}`);
    if (read.ok) return;
    const said = read.problems.map(({ message }) => message).join(' ');
    place.update((state) => tellFault(state, path, said));
  };

  return (
    <div className={fault === undefined ? 'field reading-box' : 'field reading-box wrong'}>
      <label htmlFor={id} className={isLabelShown ? undefined : 'for-ears'}>
        {label}
      </label>
      <input
        id={id}
        type="text"
        aria-invalid={fault !== undefined}
        aria-describedby={fault === undefined ? undefined : `${id}-fault`}
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        enterKeyHint="next"
        placeholder={example}
        value={unread?.text ?? textOf(entry)}
        onChange={(event) => type(event.target.value)}
        onFocus={() => setInside(true)}
        onBlur={leave}
        onKeyDown={(event) => goOnByEnter(event, leave)}
      />
      {fault !== undefined && (
        <p id={`${id}-fault`} className="fault">
          {fault}
        </p>
      )}
    </div>
  );
}
