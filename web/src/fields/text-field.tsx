/** A box for words that only the reading of the whole file can judge, such as fittings or caught air. */
import { useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { textOf } from '../state/entry.ts';
import { putDocument } from '../state/place.ts';
import type { Path, Plain, SiteDocument } from '../state/site-document.ts';
import { isList, isRecord, valueAt, withValue } from '../state/site-document.ts';
import { FieldFrame } from './field-frame.tsx';

export function TextField({
  path,
  label,
  called,
  placeholder,
  whenEmpty,
  isListed = false,
  isOptional = true,
  read = (document) => valueAt(document, path),
  write = (document, value) => withValue(document, path, value),
}: {
  readonly path: Path;
  readonly label: string;
  readonly called: string;
  readonly placeholder?: string;
  readonly whenEmpty?: React.ReactNode;
  /** Several entries, separated by commas. */
  readonly isListed?: boolean;
  readonly isOptional?: boolean;
  readonly read?: (document: SiteDocument) => Plain | undefined;
  /** How the entry is put into the document, where that is more than its path. */
  readonly write?: (document: SiteDocument, value: Plain | undefined) => SiteDocument;
}) {
  const { place } = useNotebook();
  const entry = useStore(place, (state) => read(state.document));
  const written = wordsOf(entry);
  // What is typed stays as typed, trailing comma and all, while the document holds the entries.
  const [typed, setTyped] = useState<string>();
  const [isInside, setInside] = useState(false);
  return (
    <FieldFrame
      path={path}
      label={label}
      isInside={isInside}
      isOptional={isOptional}
      reading={written === '' ? whenEmpty : undefined}
    >
      {(attributes) => (
        <input
          {...attributes}
          type="text"
          autoComplete="off"
          spellCheck={false}
          placeholder={placeholder}
          value={typed ?? written}
          onFocus={() => setInside(true)}
          onChange={(event) => {
            setTyped(event.target.value);
            const value = entryFrom(event.target.value, isListed);
            place.update((state) =>
              putDocument(state, { path, called, document: write(state.document, value) }),
            );
          }}
          onBlur={() => {
            setInside(false);
            setTyped(undefined);
          }}
        />
      )}
    </FieldFrame>
  );
}

function wordsOf(entry: Plain | undefined): string {
  if (isList(entry)) return entry.map(wordsOf).join(', ');
  if (isRecord(entry)) {
    // Air as a map reads as it would be written: 10 mL at 6 m.
    const volume = textOf(entry.volume);
    const at = textOf(entry.at);
    return at === '' ? volume : `${volume} at ${at}`;
  }
  return textOf(entry);
}

function entryFrom(typed: string, isListed: boolean): Plain | undefined {
  const parts = isListed ? typed.split(',').map((part) => part.trim()) : [typed.trim()];
  const entries = parts.filter((part) => part !== '');
  if (entries.length === 0) return undefined;
  return isListed ? entries : entries[0];
}
