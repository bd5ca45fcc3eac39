/**
 * A box for a quantity as people write it. It says underneath how it was read, carries where the number comes from, keeps
 * what was typed when it cannot be read, and tells the fault on leaving the box.
 */

import type { Purpose, System } from '@fallwright/units';
import { formatQuantity, PURPOSES, readQuantity } from '@fallwright/units';
import { useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import type { Origin } from '../state/entry.ts';
import { entryOf, originOf, textOf } from '../state/entry.ts';
import { keepUnread, putDocument, tellFault } from '../state/place.ts';
import type { Path, Plain, SiteDocument } from '../state/site-document.ts';
import { pathText, valueAt, withValue } from '../state/site-document.ts';
import { FieldFrame } from './field-frame.tsx';
import { Firm, useOriginChoice } from './origin-choice.tsx';

export interface QuantityFieldProps {
  readonly path: Path;
  readonly label: string;
  /** How sentences name it: `the fall`. */
  readonly called: string;
  readonly purpose: Purpose;
  /** Said under an empty box: what is taken instead, or what to write. */
  readonly whenEmpty?: React.ReactNode;
  readonly isRequired?: boolean;
  /** What to write, where the usual example of such a quantity would mislead. */
  readonly example?: Readonly<Record<System, string>> | undefined;
  /** Words that stand for a quantity, such as `plenty`. */
  readonly words?: readonly string[];
  /** How the entry is put into the document, where that is more than its path. */
  readonly write?: (document: SiteDocument, entry: Plain | undefined) => SiteDocument;
  readonly read?: (document: SiteDocument) => Plain | undefined;
  /** What the answer makes of readings or parts that the file has in place of one amount, in SI. */
  readonly workedOut?: { readonly value: number; readonly from: string } | undefined;
  /** Needed, but it may be emptied again: readings give it, or it is a reading. */
  readonly mayBeEmptied?: boolean;
  /** The box is a reading itself: where it comes from is not asked. */
  readonly isReading?: boolean;
  /** Said under what was read. */
  readonly after?: React.ReactNode;
}

export function QuantityField(props: QuantityFieldProps) {
  const { path, label, called, purpose, isRequired = false, words = [] } = props;
  const { place, settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const key = pathText(path);
  const document = useStore(place, (state) => state.document);
  const unread = useStore(place, (state) => state.unread[key]);
  const entry = props.read === undefined ? valueAt(document, path) : props.read(document);
  const [isInside, setInside] = useState(false);
  const good = textOf(entry);
  const text = unread?.text ?? good;
  const origin = originOf(entry);

  const put = (value: Plain | undefined): void =>
    place.update((state) =>
      putDocument(state, {
        path,
        called,
        document: (props.write ?? ((from, put) => withValue(from, path, put)))(
          state.document,
          value,
        ),
      }),
    );

  const type = (typed: string): void => {
    const written = typed.trim();
    if (written === '' && (!isRequired || props.mayBeEmptied)) put(undefined);
    else if (words.includes(written)) put(written);
    else if (readQuantity(written, purpose, called).ok) put(entryOf(typed, origin));
    else place.update((state) => keepUnread(state, path, typed));
  };

  const leave = (): void => {
    setInside(false);
    const left = place.get().unread[key];
    if (left === undefined) return;
    const read = readQuantity(left.text, purpose, called);
    // An empty box of a new place is not a fault yet: the answer says what is still needed.
    if (read.ok || (left.text.trim() === '' && good === '')) return;
    const fault = read.problems.map((problem) => problem.message).join(' ');
    place.update((state) => tellFault(state, path, fault));
  };

  const { opener, choices } = useOriginChoice({
    origin,
    label,
    onChoose: (chosen) => put(entryOf(good, chosen)),
  });
  const isNumber = good !== '' && unread === undefined && !words.includes(good);
  return (
    <FieldFrame
      path={path}
      label={label}
      isInside={isInside}
      isOptional={!isRequired}
      fault={unread?.fault}
      kept={unread?.fault === undefined || good === '' ? undefined : good}
      reading={
        isNumber ? (
          <ReadBack
            text={good}
            purpose={purpose}
            system={system}
            origin={props.isReading ? 'measured' : origin}
          />
        ) : text !== '' ? undefined : props.workedOut !== undefined ? (
          <WorkedOut {...props.workedOut} purpose={purpose} system={system} />
        ) : (
          props.whenEmpty
        )
      }
      aside={isNumber && !props.isReading && opener}
      after={
        <>
          {isNumber && choices}
          {props.after}
        </>
      }
    >
      {(attributes) => (
        <input
          {...attributes}
          type="text"
          autoComplete="off"
          autoCapitalize="off"
          spellCheck={false}
          placeholder={`like ${props.example?.[system] ?? usualExample(purpose, system)}`}
          value={text}
          onChange={(event) => type(event.target.value)}
          onFocus={() => setInside(true)}
          onBlur={leave}
        />
      )}
    </FieldFrame>
  );
}

/** What to write, in the reader's own units. */
function usualExample(purpose: Purpose, system: System): string {
  const [metric = '', us = metric] = PURPOSES[purpose].examples;
  return system === 'us' ? us : metric;
}

/** An amount that is written nowhere: it comes from what stands elsewhere in the file. */
function WorkedOut({
  value,
  from,
  purpose,
  system,
}: {
  readonly value: number;
  readonly from: string;
  readonly purpose: Purpose;
  readonly system: System;
}) {
  return (
    <span>
      <Firm origin="measured">{formatQuantity(value, purpose, system)}</Firm>, {from}
    </span>
  );
}

function ReadBack({
  text,
  purpose,
  system,
  origin,
}: {
  readonly text: string;
  readonly purpose: Purpose;
  readonly system: System;
  readonly origin: Origin;
}) {
  const read = readQuantity(text, purpose);
  if (!read.ok) return null;
  const { value, spread } = read.value;
  return (
    <span>
      <span className="for-ears">read as </span>
      <Firm origin={origin}>
        {formatQuantity(value, purpose, system, spread === undefined ? {} : { spread })}
      </Firm>
    </span>
  );
}
