/** One pipe of a line: by its name or spelled out, its length, and how it lies. */
import { findPipe, MATERIALS } from '@fallwright/engine';
import type { System } from '@fallwright/units';
import { formatQuantity } from '@fallwright/units';
import { useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { textOf } from '../state/entry.ts';
import type { LineName } from '../state/lines.ts';
import { isSpelledOut, pipesOf, withoutPipe } from '../state/lines.ts';
import { dropUnread, putDocument } from '../state/place.ts';
import type { PlainRecord, SiteDocument } from '../state/site-document.ts';
import { withValue } from '../state/site-document.ts';
import { More } from './more.tsx';
import { PipeNameField } from './pipe-name-field.tsx';
import { QuantityField } from './quantity-field.tsx';
import { SelectField } from './select-field.tsx';
import { TextField } from './text-field.tsx';

const MATERIAL_OPTIONS = Object.values(MATERIALS).map(({ displayName }) => ({
  value: displayName,
  label: displayName,
}));

const HELD_OPTIONS = ['buried', 'clamped', 'at the upper end', 'loose'].map((value) => ({
  value,
  label: value,
}));
const LAID_OPTIONS = ['straight', 'over a crest'].map((value) => ({ value, label: value }));
const MORE_KEYS = ['fittings', 'laid', 'held', 'air', 'vents', 'freeAir'];

export function PipeCard({
  line,
  index,
  count,
}: {
  readonly line: LineName;
  readonly index: number;
  readonly count: number;
}) {
  const { place, settings } = useNotebook();
  const pipe = useStore(place, (state) => pipesOf(state.document, line)[index]) ?? {};
  const [wantsSpelling, setWantsSpelling] = useState(false);
  const isSpelled = wantsSpelling || isSpelledOut(pipe);
  // Without a delivery line the answer takes a usual one and says so.
  const isOptional = line === 'delivery' && count === 1;
  const at = [line, index] as const;
  const lineName = line === 'drive' ? 'drive pipe' : 'delivery pipe';
  const called = count === 1 ? `the ${lineName}` : `${lineName} ${index + 1}`;

  const change = (document: SiteDocument): void =>
    place.update((state) =>
      putDocument(dropUnread(state, [...at, 'pipe']), { path: at, called, document }),
    );

  const spellOut = (): void => {
    setWantsSpelling(true);
    change(withValue(place.get().document, at, spelledOut(pipe, settings.get().system)));
  };

  const takeFromTables = (): void => {
    setWantsSpelling(false);
    const {
      material: _material,
      bore: _bore,
      wall: _wall,
      roughness: _roughness,
      ...others
    } = pipe;
    change(withValue(place.get().document, at, others));
  };

  return (
    <fieldset className="pipe-card">
      <legend className={count === 1 ? 'for-ears' : undefined}>
        {count === 1 ? lineName : `pipe ${index + 1} of ${count}`}
      </legend>
      {isSpelled ? (
        <>
          <SelectField
            path={[...at, 'material']}
            label="Material"
            called={`the material of ${called}`}
            none="choose"
            options={MATERIAL_OPTIONS}
            isOptional={false}
          />
          <QuantityField
            path={[...at, 'bore']}
            label="Bore"
            called={`the bore of ${called}`}
            purpose="bore"
            isRequired
          />
          <QuantityField
            path={[...at, 'wall']}
            label="Wall"
            called={`the wall of ${called}`}
            purpose="bore"
            isRequired
          />
          <button type="button" className="button plain" onClick={takeFromTables}>
            Take it from the tables
          </button>
        </>
      ) : (
        <PipeNameField
          path={[...at, 'pipe']}
          called={called}
          isOptional={isOptional}
          aside={
            <button type="button" className="origin-opener" onClick={spellOut}>
              spell it out
            </button>
          }
        />
      )}
      <QuantityField
        path={[...at, 'length']}
        label="Length"
        called={`the length of ${called}`}
        purpose="pipeLength"
        example={line === 'delivery' ? { metric: '160 m', us: '520 ft' } : undefined}
        isRequired={!isOptional}
      />
      <More
        summary={line === 'drive' ? 'Bends, crests, how it is held' : 'Bends, fittings, vents'}
        isUsed={MORE_KEYS.some((key) => pipe[key] !== undefined)}
      >
        <TextField
          path={[...at, 'fittings']}
          label="Bends and fittings"
          called={`the fittings of ${called}`}
          placeholder="2 x bend, ball valve"
          isListed
        />
        {/* The air vessel keeps the beat away from the delivery line: there these change nothing. */}
        {line === 'drive' && (
          <>
            <SelectField
              path={[...at, 'laid']}
              label="Laid"
              called={`how ${called} is laid`}
              none="straight"
              options={LAID_OPTIONS}
            />
            <TextField
              path={[...at, 'air']}
              label="Air caught in it"
              called={`the air in ${called}`}
              placeholder="10 mL at 6 m"
            />
            <SelectField
              path={[...at, 'held']}
              label="Held"
              called={`how ${called} is held`}
              none="not said"
              options={HELD_OPTIONS}
            />
          </>
        )}
        <TextField
          path={[...at, 'vents']}
          label="Vents"
          called={`the vents of ${called}`}
          placeholder="6 m"
          whenEmpty="along this pipe, where a crest lets its air out"
          isListed
        />
        {isSpelled && (
          <QuantityField
            path={[...at, 'rating']}
            label="Pressure rating"
            called={`the rating of ${called}`}
            purpose="pressure"
          />
        )}
      </More>
      {count > 1 && (
        <button
          type="button"
          className="button plain"
          onClick={() => change(withoutPipe(place.get().document, line, index))}
        >
          Take out pipe {index + 1}
        </button>
      )}
    </fieldset>
  );
}

/** The pipe's name replaced by what the tables say of it, so that spelling it out begins from the same pipe. */
function spelledOut(pipe: PlainRecord, system: System): PlainRecord {
  const { pipe: name, ...others } = pipe;
  const found = findPipe(textOf(name));
  if (!found.ok) return others;
  const { material, innerDiameter, wallThickness, rating } = found.pipe;
  const inTable = (text: string) => ({ value: text.replaceAll('\u00a0', ' '), origin: 'table' });
  return {
    material: MATERIALS[material].displayName,
    bore: inTable(formatQuantity(innerDiameter, 'bore', system, { figures: 4 })),
    wall: inTable(formatQuantity(wallThickness, 'bore', system, { figures: 4 })),
    ...(rating === undefined
      ? {}
      : { rating: inTable(formatQuantity(rating, 'pressure', system)) }),
    ...others,
  };
}
