/** A box with a few words to choose from. */
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { textOf } from '../state/entry.ts';
import { putDocument } from '../state/place.ts';
import type { Path, Plain, SiteDocument } from '../state/site-document.ts';
import { valueAt, withValue } from '../state/site-document.ts';
import { FieldFrame } from './field-frame.tsx';

export function SelectField({
  path,
  label,
  called,
  none,
  options,
  isOptional = true,
  reading,
  read = (document) => valueAt(document, path),
  write = (document, value) => withValue(document, path, value),
}: {
  readonly path: Path;
  readonly label: string;
  readonly called: string;
  /** What stands in the box when nothing is chosen. */
  readonly none: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly isOptional?: boolean;
  readonly reading?: React.ReactNode;
  readonly read?: (document: SiteDocument) => Plain | undefined;
  readonly write?: (document: SiteDocument, value: string | undefined) => SiteDocument;
}) {
  const { place } = useNotebook();
  const chosen = useStore(place, (state) => textOf(read(state.document)));
  const isKnown = chosen === '' || options.some((option) => option.value === chosen);
  return (
    <FieldFrame
      path={path}
      label={label}
      isInside={false}
      isOptional={isOptional}
      reading={reading}
    >
      {(attributes) => (
        <select
          {...attributes}
          value={chosen}
          onChange={(event) => {
            const value = event.target.value === '' ? undefined : event.target.value;
            place.update((state) =>
              putDocument(state, { path, called, document: write(state.document, value) }),
            );
          }}
        >
          <option value="">{none}</option>
          {/* A word that the file spells in its own way stays as it is. */}
          {!isKnown && <option value={chosen}>{chosen}</option>}
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      )}
    </FieldFrame>
  );
}
