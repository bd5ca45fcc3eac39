/** How a ram can be set up: strokes from least to most, weights or springs that can be fitted, and ways that have a name. */
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { textOf } from '../state/entry.ts';
import { dropUnread, putDocument } from '../state/place.ts';
import { ramPart } from '../state/ram-entry.ts';
import type { Path, Plain, PlainRecord, SiteDocument } from '../state/site-document.ts';
import { isRecord, valueAt, withValue } from '../state/site-document.ts';
import { ramPath, ramsIn, recordsIn } from './range-document.ts';

export function SettingFields({ index }: { readonly index: number }) {
  const { place } = useNotebook();
  const kind = useStore(place, ({ document }) =>
    textOf(ramPart(ramsIn(document)[index] ?? {}, ['wasteValve', 'kind'])),
  );
  const isHeldByForce = kind === 'sprung' || kind === 'swing';
  const at = (...path: Path) => ramPath(index, 'settings', ...path);
  return (
    <section className="ram-section" aria-labelledby="settings-title">
      <h2 id="settings-title">What it can be set up to</h2>
      <p className="note">
        Every pair of a stroke and a weight or spring is a way of setting it up; ways with a name of
        their own stand below. With none it is tried as it is built.
      </p>
      <div className="ram-fields">
        <QuantityField
          path={at('stroke', 'least')}
          label="Shortest stroke"
          called="the shortest stroke"
          purpose="stroke"
          write={(document, value) => withStroke(document, index, 'least', value)}
        />
        <QuantityField
          path={at('stroke', 'most')}
          label="Longest stroke"
          called="the longest stroke"
          purpose="stroke"
          write={(document, value) => withStroke(document, index, 'most', value)}
        />
        <StepsField index={index} />
        {!isHeldByForce && (
          <TextField
            path={at('weights')}
            label="Weights that can be fitted"
            called="the weights that can be fitted"
            placeholder="like 70 g, 95 g"
            whenEmpty="what the moving parts weigh with each"
            isListed
          />
        )}
      </div>
      {isHeldByForce && (
        <Rows
          path={at('springs')}
          called="the springs"
          one="spring"
          columns={[
            { key: 'name', label: 'Spring' },
            { key: 'forceOpen', label: 'Force when open', purpose: 'force' },
            { key: 'forceShut', label: 'Force when shut', purpose: 'force' },
          ]}
        />
      )}
      <Rows
        path={ramPath(index, 'tunings')}
        called="the ways of setting it up"
        one="way with a name"
        columns={[
          { key: 'name', label: 'Way' },
          { key: 'stroke', label: 'Stroke', purpose: 'stroke' },
          isHeldByForce
            ? { key: 'forceOpen', label: 'Force when open', purpose: 'force' }
            : { key: 'weight', label: 'Valve weight', purpose: 'weight' },
        ]}
      />
    </section>
  );
}

/** Judgement: both ends and the middle, until the person says otherwise. */
const USUAL_STEPS = 3;

/** Steps belong to a range of strokes: they come and go with it. */
function withStroke(
  document: SiteDocument,
  index: number,
  end: 'least' | 'most',
  value: Plain | undefined,
): SiteDocument {
  const at = ramPath(index, 'settings', 'stroke');
  const written = withValue(document, [...at, end], value);
  const stroke = valueAt(written, at);
  if (!isRecord(stroke)) return written;
  if (stroke.least === undefined && stroke.most === undefined) {
    return withValue(written, at, undefined);
  }
  return stroke.steps === undefined ? withValue(written, [...at, 'steps'], USUAL_STEPS) : written;
}

function StepsField({ index }: { readonly index: number }) {
  const { place } = useNotebook();
  const at = ramPath(index, 'settings', 'stroke');
  const hasStroke = useStore(place, ({ document }) => isRecord(valueAt(document, at)));
  if (!hasStroke) return null;
  return (
    <TextField
      path={[...at, 'steps']}
      label="Strokes to try"
      called="how many strokes to try"
      placeholder="like 3"
      isOptional={false}
      write={(document, value) =>
        withValue(document, [...at, 'steps'], numberOr(value) ?? USUAL_STEPS)
      }
    />
  );
}

/** A count is a number in the file; what is none stays as typed, and the reading tells. */
function numberOr(value: Plain | undefined): Plain | undefined {
  return typeof value === 'string' && /^\d+$/.test(value) ? Number(value) : value;
}

interface Column {
  readonly key: string;
  readonly label: string;
  readonly purpose?: 'stroke' | 'weight' | 'force';
}

/** A short list of alike things, a row of boxes for each. */
function Rows({
  path,
  called,
  one,
  columns,
}: {
  readonly path: Path;
  readonly called: string;
  readonly one: string;
  readonly columns: readonly Column[];
}) {
  const { place } = useNotebook();
  const rows = useStore(place, ({ document }) => recordsIn(valueAt(document, path)));
  const change = (next: readonly PlainRecord[], what: string): void =>
    place.update((state) =>
      putDocument(dropUnread(state, path), {
        document: withValue(state.document, path, next.length === 0 ? undefined : next),
        path,
        called: what,
      }),
    );
  return (
    <div className="setting-rows">
      {rows.map((row, i) => (
        // A row is known by its place in the list: that is what its path says too.
        // biome-ignore lint/suspicious/noArrayIndexKey: the place in the list is the identity
        <fieldset key={i} className="setting-row">
          <legend className="for-ears">{`${one} ${i + 1}`}</legend>
          {columns.map(({ key, label, purpose }) =>
            purpose === undefined ? (
              <TextField
                key={key}
                path={[...path, i, key]}
                label={label}
                called={`the ${one} ${i + 1}`}
              />
            ) : (
              <QuantityField
                key={key}
                path={[...path, i, key]}
                label={label}
                called={`${label} of ${one} ${i + 1}`}
                purpose={purpose}
              />
            ),
          )}
          <button
            type="button"
            className="button plain"
            onClick={() =>
              change(
                rows.filter((_, at) => at !== i),
                `${textOf(row.name) || one}, taken out`,
              )
            }
          >
            Take out<span className="for-ears"> {textOf(row.name) || `${one} ${i + 1}`}</span>
          </button>
        </fieldset>
      ))}
      <button
        type="button"
        className="button plain"
        onClick={() => change([...rows, {}], `${called}: one more`)}
      >
        Add a {one}
      </button>
    </div>
  );
}
