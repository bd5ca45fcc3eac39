/** Repeat readings, one box each. When the last is filled an empty one follows. */
import type { Purpose } from '@fallwright/units';
import { useNotebook } from '../app/notebook.ts';
import { fieldId } from '../fields/field-ids.ts';
import { textOf } from '../state/entry.ts';
import { useDocument, useSystem } from './edit.ts';
import { ReadingBox } from './reading-box.tsx';
import type { Spot } from './spot.ts';
import { listAt, withReadingTakenOut } from './spot.ts';

export function ReadingList({
  spot,
  name,
  label,
  one,
  purpose,
  example,
}: {
  readonly spot: Spot;
  readonly name: string;
  readonly label: string;
  readonly one: string;
  readonly purpose: Purpose;
  readonly example: { readonly metric: string; readonly us: string };
}) {
  const { place } = useNotebook();
  const document = useDocument();
  const system = useSystem();
  const texts = listAt(spot.read(document), name).map((entry) => textOf(entry));
  const legend = fieldId([...spot.path, name, 'legend']);

  const takeOut = (index: number): void => {
    place.update((state) => withReadingTakenOut(state, spot, name, index));
    window.document.getElementById(legend)?.focus();
  };

  return (
    <fieldset className="reading-list">
      <legend id={legend} tabIndex={-1}>
        {label}
      </legend>
      <ol>
        {[...texts, ''].map((text, index) => (
          // A reading is known by its place in the list: that is what its path in the file says too.
          // biome-ignore lint/suspicious/noArrayIndexKey: the place in the list is the identity
          <li key={index}>
            <ReadingBox
              spot={spot}
              inner={[name, index]}
              label={`${one.charAt(0).toUpperCase()}${one.slice(1)} ${index + 1}`}
              purpose={purpose}
              example={index === 0 ? `like ${example[system]}` : `${one} ${index + 1}`}
              others={texts.filter((_, at) => at !== index)}
              whenEmptied={index < texts.length ? () => takeOut(index) : () => {}}
            />
            {index < texts.length && (
              <button
                type="button"
                className="take-out"
                aria-label={`Take out ${one} ${index + 1}, ${text}`}
                onClick={() => takeOut(index)}
              >
                take out
              </button>
            )}
          </li>
        ))}
      </ol>
    </fieldset>
  );
}
