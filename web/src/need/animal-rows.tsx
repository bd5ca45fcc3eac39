/** The animals, kind by kind: how many there are, and what one drinks where that is known better than published. */
import type { SourcedValue } from '@fallwright/engine';
import type { System } from '@fallwright/units';
import { formatQuantity } from '@fallwright/units';
import { useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { fieldId } from '../fields/field-ids.ts';
import { QuantityField } from '../fields/quantity-field.tsx';
import { dropUnread, putDocument } from '../state/place.ts';
import { isRecord } from '../state/site-document.ts';
import { readCount } from './bare-count.ts';
import { CheckedField } from './checked-field.tsx';
import { ANIMALS, animalFigure } from './figures.ts';
import { animalsAt, needPart, withAnimals } from './need-entry.ts';
import { Published } from './published.tsx';

export function AnimalRows({ lacks }: { readonly lacks: Readonly<Record<string, string>> }) {
  const { place } = useNotebook();
  // A kind that was asked for and is not counted yet stands nowhere in the file.
  const [added, setAdded] = useState<readonly string[]>([]);
  const written = useStore(place, ({ document, unread }) => {
    const animals = needPart(document, ['animals']);
    const waiting = Object.keys(unread).flatMap(
      (key) => /^demand\.animals\.([^.[]+)/.exec(key)?.[1] ?? [],
    );
    return [...Object.keys(isRecord(animals) ? animals : {}), ...waiting].join('|');
  });
  const isThere = (name: string): boolean =>
    written.split('|').includes(name) || added.includes(name);
  const others = written.split('|').filter((name) => name !== '' && !isKnown(name));
  const rows = [...ANIMALS.map(({ value }) => value), ...others].filter(isThere);

  const add = (name: string): void => {
    setAdded([...added, name]);
    // The new row is there after the next drawing of the page.
    setTimeout(() =>
      window.document.getElementById(fieldId(['demand', 'animals', name, 'count']))?.focus(),
    );
  };

  const takeOut = (name: string): void => {
    setAdded(added.filter((one) => one !== name));
    place.update((state) =>
      dropUnread(
        putDocument(state, {
          path: ['demand', 'animals', name],
          called: `the ${manyOf(name)}`,
          document: withAnimals(state.document, name, {}),
        }),
        ['demand', 'animals', name],
      ),
    );
    window.document.getElementById('add-animals')?.focus();
  };

  return (
    <>
      {rows.map((name) => (
        <AnimalRow key={name} name={name} lack={lacks[`animals.${name}`]} takeOut={takeOut} />
      ))}
      <div className="field">
        <label htmlFor="add-animals">Add animals</label>
        <select id="add-animals" value="" onChange={(event) => add(event.target.value)}>
          <option value="">choose a kind</option>
          {ANIMALS.filter(({ value }) => !isThere(value)).map(({ value, many }) => (
            <option key={value} value={value}>
              {many}
            </option>
          ))}
        </select>
      </div>
    </>
  );
}

const isKnown = (name: string): boolean => ANIMALS.some(({ value }) => value === name);
const manyOf = (name: string): string => ANIMALS.find(({ value }) => value === name)?.many ?? name;

function AnimalRow({
  name,
  lack,
  takeOut,
}: {
  readonly name: string;
  readonly lack: string | undefined;
  readonly takeOut: (name: string) => void;
}) {
  const many = manyOf(name);
  const one = ANIMALS.find(({ value }) => value === name)?.label ?? name;
  const called = `the number of ${many}`;
  const figure = animalFigure(name);
  return (
    <fieldset className="animal-row">
      <legend className="for-ears">{many}</legend>
      <CheckedField
        path={['demand', 'animals', name, 'count']}
        label={capital(many)}
        called={called}
        placeholder="like 4"
        isOptional={false}
        isDecimal
        lack={lack}
        whenEmpty="how many"
        check={(text) => readCount(text, called, '4')}
        read={(document) => animalsAt(document, name).count}
        write={(document, count) =>
          withAnimals(document, name, { ...animalsAt(document, name), count })
        }
      />
      <QuantityField
        path={['demand', 'animals', name, 'each']}
        label={`One ${one} drinks`}
        called={`the need of a ${one}`}
        purpose="daily"
        example={figure && examplesOf(figure)}
        whenEmpty={figure && <Published figure={figure} purpose="daily" />}
        read={(document) => animalsAt(document, name).each}
        write={(document, each) =>
          withAnimals(document, name, { ...animalsAt(document, name), each })
        }
      />
      <button
        type="button"
        className="take-out"
        aria-label={`Take out the ${many}`}
        onClick={() => takeOut(name)}
      >
        take out
      </button>
    </fieldset>
  );
}

/** The published figure itself: what to write differs a hundredfold between a hen and a cow. */
function examplesOf({ value }: SourcedValue): Readonly<Record<System, string>> {
  return {
    metric: formatQuantity(value, 'daily', 'metric'),
    us: formatQuantity(value, 'daily', 'us', { figures: 2 }),
  };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
