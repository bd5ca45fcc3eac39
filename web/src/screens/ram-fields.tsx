import { lazy, Suspense } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { AssumedValue, useAssumedWords } from '../fields/assumed-value.tsx';
import { Firm } from '../fields/origin-choice.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { SelectField } from '../fields/select-field.tsx';
import { RangeChoice } from '../range/range-choice.tsx';
import { SIZES } from '../range/sizes.ts';
import { textOf } from '../state/entry.ts';
import { otherRamParts, ramPart, withRamPart, withTypicalRam } from '../state/ram-entry.ts';
import { RamParts } from './ram-parts.tsx';

/** It reads the range, which a place without a ram of it need not fetch. */
const RangeRam = lazy(() =>
  import('../range/range-ram.tsx').then((part) => ({ default: part.RangeRam })),
);

export function RamFields({
  whenNone = 'the one that fits',
}: {
  /** What stands in the box of typical rams when none is chosen. */
  readonly whenNone?: string;
}) {
  const { place, answer } = useNotebook();
  const isOfRange = useStore(place, ({ document }) => ramPart(document, ['range']) !== undefined);
  const assumed = useAssumedWords('ram');
  const others = useStore(place, (state) => otherRamParts(state.document).join(', '));
  const isOwn = useStore(
    place,
    ({ document }) =>
      ramPart(document, ['typical']) === undefined && ramPart(document, ['bore']) !== undefined,
  );
  const isHeldByForce = useStore(place, ({ document }) =>
    ['sprung', 'swing'].includes(textOf(ramPart(document, ['wasteValve', 'kind']))),
  );
  const ram = useStore(answer, (state) => state.shown?.value.installation.ram);
  return (
    <>
      {isOfRange && (
        <Suspense>
          <RangeRam />
        </Suspense>
      )}
      <SelectField
        path={['ram']}
        label="Typical ram"
        called="the ram"
        none={isOwn ? 'a ram of its own' : whenNone}
        isOptional={false}
        options={SIZES}
        read={(document) => ramPart(document, ['typical'])}
        write={withTypicalRam}
        reading={
          assumed === undefined ? (
            <span>
              {isOfRange
                ? 'that of your range, above'
                : isOwn
                  ? 'of your own parts, below'
                  : 'a usual one; put in your own parts below'}
            </span>
          ) : (
            <Firm origin="assumed">{assumed}</Firm>
          )
        }
      />
      {!isOfRange && <RangeChoice />}
      <QuantityField
        path={['ram', 'stroke']}
        label="Stroke"
        called="the stroke"
        purpose="stroke"
        whenEmpty={
          ram !== undefined && <AssumedValue value={ram.wasteValve.stroke} purpose="stroke" />
        }
        read={(document) => ramPart(document, ['stroke'])}
        write={(document, entry) => withRamPart(document, ['stroke'], entry)}
      />
      {!isHeldByForce && (
        <QuantityField
          path={['ram', 'weight']}
          label="Valve weight"
          called="the valve weight"
          purpose="weight"
          whenEmpty={
            ram?.wasteValve.kind === 'weighted' && (
              <AssumedValue value={ram.wasteValve.movingMass} purpose="mass" />
            )
          }
          read={(document) => ramPart(document, ['weight'])}
          write={(document, entry) => withRamPart(document, ['weight'], entry)}
        />
      )}
      <RamParts />
      {others !== '' && (
        <p className="note">The file also gives: {others}. They are kept and used.</p>
      )}
    </>
  );
}
