/** The level book: a card for each point, its readings, and what came of them. When the last is filled an empty one follows. */
import type { LevelBookRow } from '@fallwright/papers';
import { unitShown } from '@fallwright/units';
import { useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { fieldId } from '../fields/field-ids.ts';
import { textOf } from '../state/entry.ts';
import { putDocument } from '../state/place.ts';
import type { PlainRecord } from '../state/site-document.ts';
import { isRecord } from '../state/site-document.ts';
import { goOnByEnter, stepName, useDocument, useSystem } from './edit.ts';
import { ReadingBox } from './reading-box.tsx';
import type { Spot } from './spot.ts';
import { listAt, readAt, withReadingTakenOut, writeAt } from './spot.ts';

const SIGHTS = [
  { key: 'fore', label: 'fore', purpose: 'staff' },
  { key: 'back', label: 'back', purpose: 'staff' },
  { key: 'inter', label: 'in between', purpose: 'staff' },
  { key: 'distance', label: 'distance', purpose: 'pipeLength' },
] as const;

export function LevelBookTable({
  spot,
  worked,
}: {
  readonly spot: Spot;
  readonly worked: readonly LevelBookRow[];
}) {
  const { place } = useNotebook();
  const document = useDocument();
  const system = useSystem();
  const points = listAt(spot.read(document), 'levels').map(
    (row): PlainRecord => (isRecord(row) ? row : {}),
  );
  const isWide = points.some((row) => row.inter !== undefined || row.distance !== undefined);
  const [wantsWide, setWide] = useState(false);
  const legend = fieldId([...spot.path, 'levels', 'legend']);
  const texts = points.flatMap((row) =>
    (['back', 'fore', 'inter'] as const).map((key) => textOf(row[key])),
  );
  const distances = points.map((row) => textOf(row.distance));

  const takeOut = (index: number): void => {
    place.update((state) => withReadingTakenOut(state, spot, 'levels', index));
    window.document.getElementById(legend)?.focus();
  };

  return (
    <fieldset className="reading-list level-book">
      <legend id={legend} tabIndex={-1}>
        Points, in the order of the work
      </legend>
      {worked.length > 0 && (
        <p className="note">Worked out in {unitShown('staff', system)}; falls are below nought.</p>
      )}
      <ol>
        {[...points, {}].map((row, index) => {
          const shown = SIGHTS.filter(
            ({ key }) =>
              (key === 'back' || index > 0) &&
              (key === 'back' || key === 'fore' || wantsWide || isWide),
          );
          const result = worked[index];
          return (
            // A point is known by its place in the book: that is what its path in the file says too.
            // biome-ignore lint/suspicious/noArrayIndexKey: the place in the list is the identity
            <li key={index} className="level-point">
              <PointName spot={spot} index={index} isFirst={index === 0} />
              {shown.map(({ key, label, purpose }) => (
                <ReadingBox
                  key={key}
                  spot={spot}
                  inner={['levels', index, key]}
                  label={`Point ${index + 1}, ${label}`}
                  isLabelShown
                  purpose={purpose}
                  example={
                    index === 0 ? `like ${system === 'us' ? '4.86 ft' : '1.482 m'}` : undefined
                  }
                  others={key === 'distance' ? distances : texts}
                />
              ))}
              {result !== undefined && <Worked row={result} />}
              {index < points.length && (
                <button
                  type="button"
                  className="take-out"
                  aria-label={`Take out point ${index + 1}, ${textOf(row.at)}`}
                  onClick={() => takeOut(index)}
                >
                  take out
                </button>
              )}
            </li>
          );
        })}
      </ol>
      {!isWide && (
        <label className="tick">
          <input
            type="checkbox"
            checked={wantsWide}
            onChange={(event) => setWide(event.target.checked)}
          />
          <span>Points beside the way, and distances</span>
        </label>
      )}
    </fieldset>
  );
}

function PointName({
  spot,
  index,
  isFirst,
}: {
  readonly spot: Spot;
  readonly index: number;
  readonly isFirst: boolean;
}) {
  const { place } = useNotebook();
  const inner = ['levels', index, 'at'];
  const path = [...spot.path, ...inner];
  const name = useStore(place, (state) => textOf(readAt(spot, inner)(state.document)));
  const id = fieldId(path);
  return (
    <div className="field reading-box point-name">
      <label htmlFor={id}>Point {index + 1}</label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        autoCapitalize="off"
        placeholder={isFirst ? 'like water' : 'its name'}
        enterKeyHint="next"
        value={name}
        onKeyDown={(event) => goOnByEnter(event)}
        onChange={(event) => {
          const { value } = event.target;
          place.update((state) =>
            putDocument(state, {
              path,
              called: stepName(`the name of point ${index + 1}`, spot),
              document: writeAt(spot, inner)(state.document, value === '' ? undefined : value),
            }),
          );
        }}
      />
    </div>
  );
}

/** Rise and fall, and height of instrument, side by side. */
function Worked({ row }: { readonly row: LevelBookRow }) {
  const { rise, instrument, level, adjusted } = row;
  const parts = [
    ['rise', rise],
    ['line of sight', instrument],
    ['level', level],
    ['shared out', adjusted],
  ].filter(([, number]) => number !== '');
  return (
    <dl className="worked">
      {parts.map(([name, number]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{number}</dd>
        </div>
      ))}
    </dl>
  );
}

/** Between which two points the height lies, where the book comes back to its first. */
export function BetweenPoints({ spot }: { readonly spot: Spot }) {
  const { place } = useNotebook();
  const readings = spot.read(useDocument());
  const names = [
    ...new Set(
      listAt(readings, 'levels').flatMap((row) => (isRecord(row) ? [textOf(row.at)] : [])),
    ),
  ].filter((name) => name !== '');
  const chosen = listAt(readings, 'between').map(textOf);
  const ends = listAt(readings, 'levels').map((row) => (isRecord(row) ? textOf(row.at) : ''));
  const isClosed = ends.length > 2 && ends[0] !== '' && ends[0] === ends.at(-1);
  if (names.length < 2 || (!isClosed && chosen.length === 0)) return null;

  const choose = (which: 0 | 1, name: string): void => {
    const pair = [chosen[0] ?? '', chosen[1] ?? ''];
    pair[which] = name;
    const isEmpty = pair.every((one) => one === '');
    place.update((state) =>
      putDocument(state, {
        path: [...spot.path, 'between'],
        called: stepName('the two points', spot),
        document: writeAt(spot, ['between'])(state.document, isEmpty ? undefined : pair),
      }),
    );
  };
  return (
    <div className="between">
      {(['Upper point', 'Lower point'] as const).map((label, which) => {
        const id = fieldId([...spot.path, 'between', which]);
        return (
          <div key={label} className="field">
            <label htmlFor={id}>{label}</label>
            <select
              id={id}
              value={chosen[which] ?? ''}
              onChange={(event) => choose(which === 0 ? 0 : 1, event.target.value)}
            >
              <option value="">choose</option>
              {names.map((name) => (
                <option key={name} value={name}>
                  {name}
                </option>
              ))}
            </select>
          </div>
        );
      })}
    </div>
  );
}
