/** A box whose text is checked by itself: what cannot be read stays as it was typed, and its fault is told on leaving. */
import { useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { textOf } from '../state/entry.ts';
import { keepUnread, putDocument, tellFault } from '../state/place.ts';
import type { Path, Plain, SiteDocument } from '../state/site-document.ts';
import { pathText } from '../state/site-document.ts';

export type Checked =
  | { readonly ok: true; readonly value: Plain }
  | { readonly ok: false; readonly fault: string };

export interface CheckedBoxProps {
  readonly path: Path;
  /** How sentences and steps name it: `the number of people`. */
  readonly called: string;
  readonly check: (text: string, before: Plain | undefined) => Checked;
  readonly read: (document: SiteDocument) => Plain | undefined;
  readonly write: (document: SiteDocument, value: Plain | undefined) => SiteDocument;
  /** What a text that cannot be read could have meant, once the person has left: a bare number with the unit of the others. */
  readonly mend?: (text: string) => string | undefined;
}

export function useCheckedBox({ path, called, check, read, write, mend }: CheckedBoxProps) {
  const { place } = useNotebook();
  const key = pathText(path);
  const entry = useStore(place, (state) => read(state.document));
  const unread = useStore(place, (state) => state.unread[key]);
  const [isInside, setInside] = useState(false);
  // While one types, `4.` is not turned into `4` under the hands.
  const [typed, setTyped] = useState<string>();
  const good = textOf(entry);

  const put = (value: Plain | undefined): void =>
    place.update((state) =>
      putDocument(state, { path, called, document: write(state.document, value) }),
    );

  const type = (text: string): void => {
    setTyped(text);
    const written = text.trim();
    const checked = check(written, entry);
    if (written === '') put(undefined);
    else if (checked.ok) put(checked.value);
    else place.update((state) => keepUnread(state, path, text));
  };

  const leave = (): void => {
    setInside(false);
    setTyped(undefined);
    const left = place.get().unread[key];
    if (left === undefined) return;
    const mended = mend?.(left.text);
    const checked = check((mended ?? left.text).trim(), entry);
    if (checked.ok) put(checked.value);
    else place.update((state) => tellFault(state, path, checked.fault));
  };

  return {
    good,
    isUnread: unread !== undefined,
    fault: unread?.fault,
    isInside,
    box: {
      type: 'text' as const,
      autoComplete: 'off',
      autoCapitalize: 'off',
      spellCheck: false,
      value: unread?.text ?? typed ?? good,
      onChange: (event: React.ChangeEvent<HTMLInputElement>) => type(event.target.value),
      onFocus: () => setInside(true),
      onBlur: leave,
    },
  };
}
